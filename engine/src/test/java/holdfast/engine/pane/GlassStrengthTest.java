package holdfast.engine.pane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class GlassStrengthTest {
  private static GlassStrength glass(double edge, boolean tempered) {
    return new GlassStrength(45, edge, 1, tempered, 1.35, 5.05);
  }

  /** EN 16612 form (published, secondary copies): 0.29 x 45 / 1.8 = 7.25, and 5.37 on the plain load with 1.35. */
  @Test
  void annealedForGood() {
    assertThat(glass(1, false).designNmm2(LoadDuration.PERMANENT)).isCloseTo(7.25, within(1e-9));
    assertThat(glass(1, false).limitNmm2(LoadDuration.PERMANENT)).isCloseTo(5.37, within(0.005));
  }

  /** 45 k_mod / 1.8 (published, secondary copies): 12.00 for a week, 11.00 for a month, 25 for seconds. */
  @ParameterizedTest
  @CsvSource({"WEEK, 12.0", "MONTH, 11.0", "BLOW, 25.0"})
  void annealedForAWhile(LoadDuration duration, double strength) {
    assertThat(glass(1, false).designNmm2(duration)).isCloseTo(strength, within(1e-9));
    assertThat(glass(0.9, false).designNmm2(duration)).isCloseTo(0.9 * strength, within(1e-9));
  }

  /** 45 x 0.29 / 1.8 + 75 / 1.2 = 69.75 (memory). */
  @Test
  void toughened() {
    assertThat(glass(1, true).designNmm2(LoadDuration.PERMANENT)).isCloseTo(69.75, within(1e-9));
    assertThat(glass(1, true).tradeLimitNmm2()).isCloseTo(20.2, within(1e-9));
  }

  /** The table's readings round the formula 0.663 t^(-1/16) (published, secondary copies). */
  @ParameterizedTest
  @EnumSource(LoadDuration.class)
  void tableAgreesWithTheFormula(LoadDuration duration) {
    assertThat(duration.kMod()).isCloseTo(LoadDuration.kModFor(duration.hours()), within(0.005));
  }

  @ParameterizedTest
  @CsvSource({"0.00138889, 1.0", "0.00833333, 0.89", "0.0833333, 0.77", "0.166667, 0.74", "0.5, 0.69", "5, 0.60", "168, 0.48",
    "730, 0.44", "2190, 0.41", "438300, 0.29"})
  void formulaAgreesWithTheTable(double hours, double read) {
    assertThat(LoadDuration.kModFor(hours)).isCloseTo(read, within(0.005));
  }
}
