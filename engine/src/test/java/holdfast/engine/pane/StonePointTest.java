package holdfast.engine.pane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StonePointTest {
  private static final Percentage TENTH = Percentage.withPercentage(0.1);
  /** Glass 70 GPa, 0.23; limestone 50 GPa, 0.25. */
  private static final StonePoint PAIR = new StonePoint(50e9, 0.25, 70e9, 0.23);

  /** Johnson, Contact Mechanics 1985: formulas from memory, figures recomputed. */
  @ParameterizedTest
  @CsvSource({"10, 0.229609, 452.83, 81.51", "50, 0.392625, 154.87, 27.88"})
  void pressedWithFiftyNewtons(double radiusMm, double aMm, double p0MPa, double ringMPa) {
    assertThat(PAIR.effectivePa()).isCloseTo(30.979e9, TENTH);
    StonePoint.Contact c = PAIR.press(1e-3 * radiusMm, 50);
    assertThat(c.radiusM()).isCloseTo(1e-3 * aMm, TENTH);
    assertThat(c.peakPa()).isCloseTo(1e6 * p0MPa, TENTH);
    assertThat(c.ringPa()).isCloseTo(1e6 * ringMPa, TENTH);
  }

  /** Limestone ball, R 30 mm, 2600 kg/m3, 0.294053 kg: Hertz's law of impact, recomputed (Johnson 1985, from memory). */
  @Test
  void droppedOnAStiffPane() {
    double fallen = StonePoint.fallSpeed(0.05);
    assertThat(PAIR.drop(0.03, 0.294053, fallen, Double.POSITIVE_INFINITY).peakN()).isCloseTo(4742.7, TENTH);
    assertThat(PAIR.contactSeconds(0.03, 0.294053, fallen)).isCloseTo(225.9e-6, TENTH);
    assertThat(PAIR.drop(0.03, 0.294053, 0.1, Double.POSITIVE_INFINITY).peakN()).isCloseTo(302.7, TENTH);
    assertThat(PAIR.contactSeconds(0.03, 0.294053, 0.1)).isCloseTo(357.4e-6, TENTH);
  }

  /** Against a soft spring alone: F = v sqrt(k m) (exact in the limit). */
  @Test
  void aSoftSpringTakesTheBlow() {
    double spring = 1e4;
    double peak = PAIR.drop(0.03, 0.3, 1, spring).peakN();
    assertThat(peak).isLessThan(Math.sqrt(spring * 0.3)).isCloseTo(Math.sqrt(spring * 0.3), Percentage.withPercentage(2));
  }

  @Test
  void energyIsKept() {
    double spring = 1e6;
    double peak = PAIR.drop(0.01, 2, 0.9, spring).peakN();
    double hertz = 4.0 / 3 * PAIR.effectivePa() * Math.sqrt(0.01);
    double stored = 0.4 * peak * Math.pow(peak / hertz, 2.0 / 3) + peak * peak / (2 * spring);
    assertThat(stored).isCloseTo(0.5 * 2 * 0.81, within(1e-9));
  }
}
