package holdfast.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.scene.Setting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Every figure of the settings in US units. Factors: NIST Special Publication 811 (2008), appendix B.8 (published). */
class SettingUnitsTest {
  @ParameterizedTest
  @CsvSource({
    "PUSH_TIER_N, lbf, 4.448222", "GAP_VIEWED_MM, in, 25.4", "LIFT_ONE_KG, lb, 0.4535924", "GROWTH_KG, lb submerged, 0.4535924",
    "CEMENT_BATCH_G, oz, 28.34952", "MINERAL_DENSITY, lb/ft³, 16.01846", "FLOOR_LOAD_KG_M2, lb/ft², 4.882428",
    "SAND_GRAIN_KG_PER_L, lb/gal, 0.1198264", "SALT_G_PER_L, oz/gal, 7.489152", "GLASS_STRENGTH_N_MM2, psi, 0.006894757",
    // From the same page: 28.34952 g and 29.57353 ml; 4.448222 N and 16.387064 cm3; 0.3048 m; 0.4535924 kg; 3.785412 L.
    "CEMENT_G_PER_ML, oz/fl oz mixed, 0.9586113", "FOAM_SOFT_N_M3, lbf/in³, 271447.1", "LIGHT_ATTENUATION_1_M, 1/ft, 3.280840",
    "PRICE_DRY, money/lb, 2.204623", "PRICE_STARTER, money/gal, 0.2641720"})
  void oneOfTheUsUnit(Setting s, String sign, double metric) {
    assertThat(SettingUnits.sign(s, Units.US)).isEqualTo(sign);
    assertThat(SettingUnits.metric(s, 1, Units.US)).isCloseTo(metric, within(2e-6 * metric));
  }

  /** Metric units stay with the metric choice: none is left over in the other. */
  @ParameterizedTest
  @EnumSource(Setting.class)
  void everyFigureHasAUnitOfTheChosenSystem(Setting s) {
    assertThat(SettingUnits.sign(s, Units.METRIC)).isNotBlank();
    assertThat(SettingUnits.sign(s, Units.US)).isNotBlank().doesNotContainPattern("(^|[ /])(mm.?|m.?|kg|ml|L|N)($|[ /²³])");
    assertThat(SettingUnits.metric(s, 7, Units.METRIC)).isEqualTo(7);
    // What is shown is what the file has, to the digits that are shown.
    double shown = Double.parseDouble(SettingUnits.shown(s, s.initial(), Units.US));
    assertThat(SettingUnits.metric(s, shown, Units.US)).isCloseTo(s.initial(), within(6e-4 * s.initial() + 1e-9));
    assertThat(Double.parseDouble(SettingUnits.shown(s, s.initial(), Units.METRIC))).isCloseTo(s.initial(), within(5e-5));
  }

  /** Shaking is counted in standard gravity in both systems. */
  @Test
  void shakingIsNotGrams() {
    assertThat(SettingUnits.shown(Setting.SHAKE_G, 0.1, Units.US)).isEqualTo("0.1");
    assertThat(SettingUnits.sign(Setting.SHAKE_G, Units.METRIC)).isEqualTo("g (gravity)");
    assertThat(SettingUnits.shown(Setting.PUSH_TIER_N, 20, Units.US)).isEqualTo("4.496");
    assertThat(SettingUnits.sign(Setting.FRICTION_SLIMY, Units.US)).isEqualTo("no unit");
  }
}
