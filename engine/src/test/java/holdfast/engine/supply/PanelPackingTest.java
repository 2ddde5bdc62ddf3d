package holdfast.engine.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PanelPackingTest {

  /**
   * Against a slow search that knows nothing of tables: on a lattice of whole units every guillotine cut of every
   * rectangle is tried for every way to part the pieces, and every way to spread the pieces over panels.
   */
  @Test
  void agreesWithTryingEveryCut() {
    long seed = 20260101;
    Random random = new Random(seed);
    for (int run = 0; run < 120; run++) {
      int panelLength = 5 + random.nextInt(4);
      int panelWidth = 4 + random.nextInt(3);
      int saw = random.nextInt(2);
      List<double[]> pieces = new ArrayList<>();
      int n = 2 + random.nextInt(3);
      for (int i = 0; i < n; i++) pieces.add(new double[] {1 + random.nextInt(panelLength), 1 + random.nextInt(panelWidth)});
      Optional<PanelPacking.Packing> packed = PanelPacking.pack(pieces, panelLength, panelWidth, saw);
      assertThat(packed).as("seed %d run %d", seed, run).isPresent();
      assertThat(packed.get().panels().size())
          .as("seed %d run %d", seed, run)
          .isEqualTo(fewestByTrying(pieces, panelLength, panelWidth, saw));
      assertSound(packed.get(), pieces, panelLength, panelWidth, saw);
    }
  }

  private static int fewestByTrying(List<double[]> pieces, int length, int width, int saw) {
    return spread(pieces, 0, new ArrayList<>(), length, width, saw, Integer.MAX_VALUE);
  }

  private static int spread(
      List<double[]> pieces, int next, List<List<double[]>> panels, int length, int width, int saw, int best) {
    if (panels.size() >= best) return best;
    if (next == pieces.size()) {
      for (List<double[]> panel : panels) if (!cuts(panel, length, width, saw)) return best;
      return panels.size();
    }
    for (int i = 0; i < panels.size(); i++) {
      List<double[]> panel = panels.get(i);
      panel.add(pieces.get(next));
      best = spread(pieces, next + 1, panels, length, width, saw, best);
      panel.remove(panel.size() - 1);
    }
    panels.add(new ArrayList<>(List.of(pieces.get(next))));
    best = spread(pieces, next + 1, panels, length, width, saw, best);
    panels.remove(panels.size() - 1);
    return best;
  }

  private static boolean cuts(List<double[]> pieces, int length, int width, int saw) {
    if (pieces.isEmpty()) return true;
    if (pieces.size() == 1) {
      double a = pieces.get(0)[0];
      double b = pieces.get(0)[1];
      return a <= length && b <= width || b <= length && a <= width;
    }
    for (int mask = 1; mask < (1 << pieces.size()) - 1; mask++) {
      List<double[]> one = new ArrayList<>();
      List<double[]> other = new ArrayList<>();
      for (int i = 0; i < pieces.size(); i++) ((mask >> i & 1) == 1 ? one : other).add(pieces.get(i));
      for (int x = 1; x + saw < length; x++) {
        if (cuts(one, x, width, saw) && cuts(other, length - x - saw, width, saw)) return true;
      }
      for (int y = 1; y + saw < width; y++) {
        if (cuts(one, length, y, saw) && cuts(other, length, width - y - saw, saw)) return true;
      }
    }
    return false;
  }

  private static void assertSound(
      PanelPacking.Packing packing, List<double[]> pieces, double length, double width, double saw) {
    boolean[] seen = new boolean[pieces.size()];
    for (List<PanelPacking.Spot> panel : packing.panels()) {
      for (PanelPacking.Spot s : panel) {
        assertThat(seen[s.piece()]).isFalse();
        seen[s.piece()] = true;
        double[] p = pieces.get(s.piece());
        boolean asIs = s.lengthMm() == p[0] && s.widthMm() == p[1];
        boolean turned = s.lengthMm() == p[1] && s.widthMm() == p[0];
        assertThat(asIs || turned).isTrue();
        assertThat(s.xMm()).isGreaterThanOrEqualTo(0);
        assertThat(s.yMm()).isGreaterThanOrEqualTo(0);
        assertThat(s.xMm() + s.lengthMm()).isLessThanOrEqualTo(length);
        assertThat(s.yMm() + s.widthMm()).isLessThanOrEqualTo(width);
        for (PanelPacking.Spot o : panel) {
          if (o == s) continue;
          boolean apart = s.xMm() + s.lengthMm() + saw <= o.xMm() || o.xMm() + o.lengthMm() + saw <= s.xMm()
              || s.yMm() + s.widthMm() + saw <= o.yMm() || o.yMm() + o.widthMm() + saw <= s.yMm();
          assertThat(apart).isTrue();
        }
      }
    }
    for (boolean s : seen) assertThat(s).isTrue();
  }

  @Test
  void saysSoWhenAPieceIsLargerThanAPanel() {
    assertThat(PanelPacking.pack(List.of(new double[] {700, 100}), 600, 600, 2)).isEmpty();
  }

  /** Twelve pieces of a third by a half panel: six to a panel, two panels by area (derived). */
  @Test
  void packsManyPiecesToTheLowerBound() {
    List<double[]> pieces = new ArrayList<>();
    for (int i = 0; i < 12; i++) pieces.add(new double[] {200, 300});
    PanelPacking.Packing packing = PanelPacking.pack(pieces, 600, 600, 0).orElseThrow();
    assertThat(packing.panels()).hasSize(2);
    assertThat(packing.fewest()).isTrue();
    assertSound(packing, pieces, 600, 600, 0);
  }
}
