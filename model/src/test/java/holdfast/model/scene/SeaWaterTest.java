package holdfast.model.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeaWaterTest {

  /** Check values at zero pressure, UNESCO Technical Papers in Marine Science 44 (1983), p. 19 (published). */
  @ParameterizedTest
  @CsvSource({"0, 5, 999.96675", "0, 25, 997.04796", "35, 5, 1027.67547", "35, 25, 1023.34306"})
  void givesThePublishedCheckValues(double salinity, double t68, double expected) {
    assertThat(SeaWater.densityT68(salinity, t68)).isCloseTo(expected, within(5e-6));
  }

  /** The same table, at 0 and 1000 bar (published). */
  @ParameterizedTest
  @CsvSource({
    "0, 5, 0, 999.96675", "0, 5, 1000, 1044.12802", "0, 25, 0, 997.04796", "0, 25, 1000, 1037.90204",
    "35, 5, 0, 1027.67547", "35, 5, 1000, 1069.48914", "35, 25, 0, 1023.34306", "35, 25, 1000, 1062.53817"})
  void givesAllEightPublishedCheckValues(double salinity, double t68, double bar, double expected) {
    assertThat(SeaWater.densityT68(salinity, t68, bar)).isCloseTo(expected, within(5e-6));
  }

  /** 25 degrees of 1968 are 25 / 1.00024 = 24.9940 of 1990 (Saunders 1990, from memory). */
  @Test
  void readsTodaysTemperatureScale() {
    assertThat(SeaWater.densityKgM3(35, 25 / 1.00024)).isCloseTo(1023.34306, within(5e-6));
  }

  @Test
  void staysWithinTheRangeOfTheEquation() {
    assertThat(SeaWater.densityKgM3(99, 25)).isEqualTo(SeaWater.densityKgM3(42, 25));
    assertThat(SeaWater.densityKgM3(-1, 25)).isEqualTo(SeaWater.densityKgM3(0, 25));
  }
}
