package holdfast.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.engine.check.CheckReport;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import org.junit.jupiter.api.Test;

/** A scene that passes by figures of its own must not read like one that passes by the usual ones. */
class OwnFiguresTest {
  private static CheckReport with(Settings settings) {
    CheckReport r = Sample.passing();
    Scene s = r.scene();
    Scene own = new Scene(s.name(), s.tank(), s.floor(), s.sand(), s.water(), s.devices(), s.lamps(), s.rocks(), s.placements(),
        s.joints(), settings);
    return new CheckReport(own, r.verdict(), r.headline(), r.findings(), r.states(), r.rocks(), r.joints(), r.feet(), r.gaps(),
        r.pane(), r.cautions());
  }

  /** Slippery stone and pushes of a hair: the defaults are 0.6 and 20 N (table of settings). */
  private static final Settings KIND = Settings.DEFAULT.with(Setting.FRICTION_ROCK_ROCK, 2).with(Setting.PUSH_TIER_N, 0.1)
      .with(Setting.PRICE_DRY, 6).with(Setting.GAP_VIEWED_MM, 50);

  @Test
  void theReportNamesThemBesideWhatIsUsual() {
    String text = TextReport.of(with(KIND), Units.METRIC, false);
    assertThat(text).contains("2 figures of its own\n").contains("Figures of its own\n");
    assertThat(text.lines()).anyMatch(l -> l.matches(" *push\\.tier_n +0\\.1 +20 +N +force every rock must bear from any side"));
    assertThat(text.lines()).anyMatch(l -> l.matches(" *friction\\.rock_rock +2 +0\\.6 +rock on rock"));
    assertThat(text).as("what is as usual, and a price").doesNotContain("gap.viewed_mm").doesNotContain("price.");
    assertThat(TextReport.of(Sample.passing(), Units.METRIC, false)).doesNotContain("of its own");
  }

  @Test
  void soDoesJson() throws Exception {
    JsonNode own = new ObjectMapper().readTree(JsonReport.of(with(KIND))).path("own_figures");
    assertThat(own.size()).isEqualTo(2);
    assertThat(own.get(1).path("setting").asText()).isEqualTo("friction.rock_rock");
    assertThat(own.get(1).path("value").asDouble()).isEqualTo(2);
    assertThat(own.get(1).path("usual").asDouble()).isEqualTo(0.6);
  }

  /** 0.1 N are 0.02248 lbf, 20 N 4.496 (NIST SP 811, published). */
  @Test
  void inPoundsToo() {
    assertThat(OwnFigures.of(KIND).get(0).words(Units.US)).isEqualTo("push.tier_n 0.02248 (usual 4.496) lbf");
  }
}
