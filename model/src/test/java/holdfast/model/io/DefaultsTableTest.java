package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.scene.Grade;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DefaultsTableTest {
  private static Optional<DefaultsTable.Row> row(String part, String key) {
    return DefaultsTable.rows().stream().filter(r -> r.part().equals(part) && r.key().equals(key)).findFirst();
  }

  @Test
  void everySettingHasARowWithItsGrade() {
    List<DefaultsTable.Row> rows = DefaultsTable.rows().stream().filter(r -> r.part().equals("settings")).toList();
    assertThat(rows).extracting(DefaultsTable.Row::key).isEqualTo(Stream.of(Setting.values()).map(Setting::key).toList());
    assertThat(rows).allSatisfy(r -> {
      assertThat(r.grade()).isPresent();
      assertThat(r.about()).isNotBlank();
    });
  }

  @Test
  void everyPartThatMayBeLeftOutHasItsDefault() {
    assertThat(row("settings", "push.tier_n")).contains(new DefaultsTable.Row("settings", "push.tier_n", "20", "N", "0.1 to 500",
        Optional.of(Grade.COMMON_PRACTICE), Setting.PUSH_TIER_N.about(), ""));
    assertThat(row("floor", "cell_mm").orElseThrow().value()).isEqualTo("12.7");
    assertThat(row("floor", "kind").orElseThrow().value()).isEqualTo("grid");
    assertThat(row("water", "level_mm").orElseThrow().value()).isEqualTo("25 below the rim");
    assertThat(row("tank", "support").orElseThrow().value()).isEqualTo("unknown");
    assertThat(row("rocks[]", "slimy").orElseThrow().value()).isEqualTo("true for live rock, else false");
    assertThat(row("rocks[].mass", "state").orElseThrow().value()).isEqualTo("dry");
    // What must be given has no default.
    assertThat(row("tank", "length_mm")).isEmpty();
  }

  /** The table says what the reader does: the least file that there is has exactly these values. */
  @Test
  void theTableAgreesWithTheReader() {
    Scene s = RoundTripTest.scene("""
        {"format": "holdfast-scene/1", "rocks": [], "placements": [],
         "tank": {"length_mm": 300, "width_mm": 300, "height_mm": 300, "side_glass_mm": 5, "bottom_glass_mm": 5}}""");
    assertThat(row("floor", "cell_mm").orElseThrow().value()).isEqualTo(JsonLayout.number(s.floor().cellMm()));
    assertThat(row("floor", "wall_mm").orElseThrow().value()).isEqualTo(JsonLayout.number(s.floor().wallMm()));
    assertThat(row("floor", "thickness_mm").orElseThrow().value()).isEqualTo(JsonLayout.number(s.floor().thicknessMm()));
    assertThat(row("floor", "margin_mm").orElseThrow().value()).isEqualTo(JsonLayout.number(s.floor().marginMm()));
    assertThat(row("sand", "depth_mm").orElseThrow().value()).isEqualTo(JsonLayout.number(s.sand().depthMm()));
    assertThat(row("sand", "bulk_kg_per_l").orElseThrow().value()).isEqualTo(JsonLayout.number(s.sand().bulkKgPerL()));
    assertThat(row("water", "salinity").orElseThrow().value()).isEqualTo(JsonLayout.number(s.water().salinity()));
    assertThat(row("water", "temperature_c").orElseThrow().value()).isEqualTo(JsonLayout.number(s.water().temperatureC()));
    assertThat(s.water().levelMm()).isEqualTo(275);
    assertThat(row("tank", "support").orElseThrow().value()).isEqualTo(s.tank().bottomSupport().word());
    assertThat(row("tank", "viewed_from").orElseThrow().value()).isEqualTo(s.tank().viewedFrom().get(0).word());
    for (Setting setting : Setting.values()) {
      assertThat(row("settings", setting.key()).orElseThrow().value()).isEqualTo(JsonLayout.number(s.settings().get(setting)));
    }
  }
}
