package holdfast.model.scene;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.io.TankSizes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UsualGlassTest {
  /** Builders' table (common practice); sizes in inches made millimetres. */
  @ParameterizedTest
  @CsvSource({"610, 305, 305, 5", "290, 290, 300, 5", "900, 450, 450, 8", "600, 600, 600, 10", "1210, 450, 450, 10",
    "1190, 440, 480, 12", "1770, 570, 580, 12", "740, 440, 590, 12"})
  void followsTheTable(double length, double width, double height, double glassMm) {
    assertThat(UsualGlass.forInsideMm(length, width, height)).isEqualTo(glassMm);
    assertThat(UsualGlass.forInsideMm(width, length, height)).isEqualTo(glassMm);
  }

  /**
   * The same table by hand: behind 5 mm, 60 x 30 x 35 cm is 345 mm high inside, above a foot and its slack; behind 8 mm it
   * stays below a foot and a half. 60 cm cubes leave 580 x 580 x 590 mm behind 10 mm, within two feet.
   */
  @ParameterizedTest
  @CsvSource({"600, 300, 300, 5", "600, 300, 350, 8", "350, 300, 600, 10", "900, 450, 450, 8", "600, 600, 600, 10",
    "1219.2, 457.2, 457.2, 10", "1829, 610, 610, 12"})
  void anOutsideSizeTakesTheThinnestThatIsUsualForWhatItLeaves(double length, double width, double height, double glassMm) {
    assertThat(UsualGlass.forOutsideMm(length, width, height)).isEqualTo(glassMm);
  }

  @Test
  void noCommonSizeIsListedWithGlassThinnerThanUsual() {
    assertThat(TankSizes.all()).allSatisfy(s -> assertThat(s.glassMm())
        .isGreaterThanOrEqualTo(UsualGlass.forInsideMm(s.lengthMm(), s.widthMm(), s.heightMm())));
  }
}
