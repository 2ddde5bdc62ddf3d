package holdfast.engine.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class FloorCutsTest {

  /** One piece of one panel; waste 0.36 - 0.59 x 0.29 = 0.1889 m2; 46 x 22 whole cells of 12.7 mm (derived). */
  @Test
  void cutsASmallFloorFromOneSquarePanel() {
    FloorCuts cuts = FloorCuts.plan(590, 290, 12.7, 600, 600, 2, List.of()).orElseThrow();
    assertThat(cuts.panels()).hasSize(1);
    assertThat(cuts.pieces()).containsExactly(new FloorCuts.Piece(0, 0, 590, 290, 46, 22));
    assertThat(cuts.fewest()).isTrue();
    assertThat(cuts.wasteM2()).isCloseTo(0.1889, within(1e-12));
  }

  /** Area asks for 1.0089 / 0.72 = 1.4, so two panels; two pieces meet, 1200 and 570 long; waste 0.4311 m2 (derived). */
  @Test
  void cutsALongFloorFromTwoPanels() {
    FloorCuts cuts = FloorCuts.plan(1770, 570, 12.7, 600, 1200, 2, List.of()).orElseThrow();
    assertThat(cuts.panels()).hasSize(2);
    assertThat(cuts.fewest()).isTrue();
    assertThat(cuts.pieces()).extracting(FloorCuts.Piece::lengthMm).containsExactly(1200.0, 570.0);
    assertThat(cuts.pieces()).extracting(FloorCuts.Piece::widthMm).containsOnly(570.0);
    assertThat(cuts.wasteM2()).isCloseTo(0.4311, within(1e-12));
  }

  /** 1210 = 600 + 600 + 10 would leave a strip of ten millimetres that breaks: three equal parts instead. */
  @Test
  void leavesNoSliver() {
    FloorCuts cuts = FloorCuts.plan(1210, 590, 12.7, 600, 600, 2, List.of()).orElseThrow();
    assertThat(cuts.panels()).hasSize(3);
    assertThat(cuts.pieces()).allSatisfy(p -> assertThat(p.lengthMm()).isGreaterThan(FloorCuts.SLIVER_MM));
  }

  /** Two pieces 590 x 290 with one cut of 2 mm stand in a panel of 600: 290 + 2 + 290 = 582 (derived). */
  @Test
  void usesOnePanelTwiceWhereItYieldsTwo() {
    FloorCuts cuts = FloorCuts.plan(1180, 290, 12.7, 600, 600, 2, List.of()).orElseThrow();
    assertThat(cuts.panels()).hasSize(1);
    assertThat(cuts.pieces()).hasSize(2);
  }

  @Test
  void piecesCoverTheFloorExactly() {
    for (double length = 200; length < 2500; length += 137) {
      for (double width = 150; width < 900; width += 211) {
        FloorCuts cuts = FloorCuts.plan(length, width, 12.7, 600, 1200, 2, List.of()).orElseThrow();
        double area = cuts.pieces().stream().mapToDouble(p -> p.lengthMm() * p.widthMm()).sum();
        assertThat(area).isCloseTo(length * width, within(1e-6));
        assertThat(cuts.panels().stream().mapToInt(List::size).sum()).isEqualTo(cuts.pieces().size());
      }
    }
  }
}
