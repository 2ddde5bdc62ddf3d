package holdfast.app.view.draw;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScaleTest {
  /** Three figures, never more than there is; a square inch is 645.16 square millimetres (exact). */
  @ParameterizedTest
  @CsvSource({"26061, 26000 mm², 40.3 in²", "12599.9, 12500 mm², 19.5 in²", "645.16, 645 mm², 1 in²", "7.079, 7.07 mm², 0.0109 in²",
    "100, 100 mm², 0.155 in²", "0, 0 mm², 0 in²"})
  void areasAreRoundedDownToThreeFigures(double mm2, String metric, String us) {
    assertThat(Scale.area(mm2, Units.METRIC)).isEqualTo(metric);
    assertThat(Scale.area(mm2, Units.US)).isEqualTo(us);
  }
}
