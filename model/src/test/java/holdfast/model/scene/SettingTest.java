package holdfast.model.scene;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The defaults on which a verdict hangs, against what they were taken from. A figure without a source is one of the
 * definitions of the design (common practice, or memory); it is here so that none is changed by a slip.
 */
class SettingTest {
  @ParameterizedTest
  @CsvSource({
    // definitions of the push: an urchin or a large fish; high on the rock; near its sides; a collapse is not a slide
    "push.tier_n, 20", "push.height, 0.9", "push.offset, 0.8", "push.loose_n, 1", "push.shake_g, 0.1", "push.slide_test_mm, 20",
    "push.growth_kg, 0.5", "contact.inset_mm, 5",
    // tan 31 degrees = 0.60, wet limestone (published, Cafaro et al. 2022 citing Barton 1973); the others from memory
    "friction.rock_rock, 0.60", "friction.slimy, 0.35", "friction.rock_glass, 0.35", "friction.rock_grid, 0.35",
    "friction.grid_glass, 0.35", "friction.rock_sand, 0.45",
    // solid part of coral skeleton, 2.78 to 2.87 kg/L (published)
    "weight.mineral_kg_m3, 2780", "weight.damp_share, 0.15",
    // two thirds of the water's depth (common practice)
    "gap.height_share, 0.6666666666666666",
    // mortar 0.3 with a factor of 3; putty as mortar; gel half of that (memory); volume over 10 mm
    "bond.mortar_n_mm2, 0.1", "bond.putty_n_mm2, 0.1", "bond.gel_n_mm2, 0.05", "bond.reach_mm, 10",
    // bored coral rock crushes at 1 to 2.5 N/mm2 (published, Li et al. 2022)
    "bond.rock_n_mm2, 1.0",
    // float glass, EN 572-1 (published); seamed edge, load factor, EN 16612 (published); 19.2 / 3.8 (common practice)
    "glass.young_n_mm2, 70000", "glass.poisson, 0.20", "glass.strength_n_mm2, 45", "glass.edge_factor, 0.9",
    "glass.surface_factor, 1.0", "glass.load_factor, 1.35", "glass.trade_allowable_n_mm2, 5.05",
    // foam under a tank, both ends (memory); a foot bears on one spot (common practice)
    "glass.foam_soft_n_m3, 5e6", "glass.foam_stiff_n_m3, 5e7", "glass.spot_mm, 10",
    // one person close to the body and with arms out 25 and 16 kg (memory)
    "handling.lift_one_kg, 16", "handling.lift_two_kg, 32", "handling.cement_working_min, 15", "handling.cement_batch_g, 250",
    "handling.cement_waste, 0.3",
  })
  void theDefaultsAreThoseOfTheDefinitions(String key, double value) {
    assertThat(Arrays.stream(Setting.values()).filter(s -> s.key().equals(key)).findFirst().orElseThrow().initial())
        .isEqualTo(value);
  }
}
