package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.model.scene.Setting;
import org.junit.jupiter.api.Test;

class DefaultsCommandTest {
  @Test
  void everySettingIsListedWithItsDefaultAndHowItIsKnown() throws Exception {
    Run text = Run.holdfast("defaults");
    JsonNode json = new ObjectMapper().readTree(Run.holdfast("defaults", "--format", "json").out()).path("defaults");
    assertThat(text.exit()).isZero();
    assertThat(text.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    for (Setting s : Setting.values()) {
      assertThat(text.out()).contains("  " + s.key() + " ");
      assertThat(json).anySatisfy(row -> {
        assertThat(row.path("part").asText() + "." + row.path("key").asText()).isEqualTo("settings." + s.key());
        assertThat(Double.parseDouble(row.path("default").asText())).isEqualTo(s.initial());
        assertThat(row.path("grade").asText()).isEqualTo(s.grade().word());
        assertThat(row.path("unit").asText()).isEqualTo(s.unit());
      });
    }
  }

  @Test
  void onlyThoseAskedFor() {
    Run r = Run.holdfast("defaults", "Friction");
    assertThat(r.exit()).isZero();
    assertThat(r.out()).contains("friction.rock_rock", "0.6", "[published]").doesNotContain("cell_mm");
    assertThat(Run.holdfast("defaults", "gravel"))
        .isEqualTo(new Run(2, "", "holdfast: no default has 'gravel' in its name or meaning.\n"));
  }

  @Test
  void theSameBytesEveryTime() {
    assertThat(Run.holdfast("defaults", "--format=json")).isEqualTo(Run.holdfast("defaults", "--format=json"));
  }
}
