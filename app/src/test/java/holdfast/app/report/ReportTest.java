package holdfast.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.app.Golden;
import holdfast.engine.check.CheckReport;
import holdfast.model.scene.Scene;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The reports as they were read by a person. */
class ReportTest {
  @Test
  void text() {
    Golden.check(getClass(), "failing.txt", TextReport.of(Sample.failing(), Units.METRIC, false));
  }

  @Test
  void textInInchesAndPounds() {
    Golden.check(getClass(), "failing-us.txt", TextReport.of(Sample.failing(), Units.US, false));
  }

  @Test
  void textThatPasses() {
    Golden.check(getClass(), "passing.txt", TextReport.of(Sample.passing(), Units.METRIC, false));
  }

  @Test
  void json() {
    Golden.check(getClass(), "failing.json", JsonReport.of(Sample.failing()));
  }

  @Test
  void noLineIsWiderThanAPage() {
    for (CheckReport r : List.of(Sample.failing(), Sample.passing())) {
      for (Units u : Units.values()) {
        assertThat(TextReport.of(r, u, false).lines()).allSatisfy(l -> {
          assertThat(Words.width(l)).isLessThanOrEqualTo(100);
          assertThat(l).isEqualTo(l.stripTrailing());
        });
      }
    }
  }

  /** However long the scene's name, the tier and its unit stay on one line. */
  @Test
  void aFigureKeepsItsUnit() {
    CheckReport r = Sample.passing();
    Scene s = r.scene();
    for (int n = 1; n <= 60; n++) {
      Scene named = new Scene("x".repeat(n), s.tank(), s.floor(), s.sand(), s.water(), s.devices(), s.lamps(), s.rocks(),
          s.placements(), s.joints(), s.settings());
      CheckReport longer = new CheckReport(named, r.verdict(), r.headline(), r.findings(), r.states(), r.rocks(), r.joints(),
          r.feet(), r.gaps(), r.pane(), r.cautions());
      assertThat(TextReport.of(longer, Units.METRIC, false).lines()).as("%d letters", n).anyMatch(l -> l.endsWith(" 20 N"));
    }
  }

  @Test
  void colourAddsToWordsAndShapesAndReplacesNone() {
    String plain = TextReport.of(Sample.failing(), Units.METRIC, false);
    String painted = TextReport.of(Sample.failing(), Units.METRIC, true);
    assertThat(plain).doesNotContain("\u001b");
    assertThat(painted).contains("\u001b[1;38;5;");
    assertThat(painted.replaceAll("\u001b\\[[0-9;]*m", "")).isEqualTo(plain);
  }

  @Test
  void jsonIsReadByALibraryAndSaysTheSame() throws Exception {
    JsonNode root = new ObjectMapper().readTree(JsonReport.of(Sample.failing()));
    assertThat(root.path("verdict").asText()).isEqualTo("fails");
    assertThat(root.path("counts").path("fail").asInt()).isEqualTo(2);
    assertThat(root.path("findings").get(0).path("figure").asDouble()).isEqualTo(3.279);
    assertThat(root.path("feet").get(1).path("most_n").isNull()).isTrue();
    assertThat(root.path("rocks").get(3).path("weakest_push").isNull()).isTrue();
  }

  @Test
  void aMarginIsNeverPrintedAboveWhatWasFound() {
    String text = TextReport.of(Sample.failing(), Units.METRIC, false);
    // 22.96 N would round to 23.0; 3.279 N to 3.3
    assertThat(text).contains("22.9").doesNotContain("23.0").contains("found: 3.2 N, wanted: at least 20.0 N");
    // 1.0004 N/mm2 is over the limit of 1, and the figure says so
    assertThat(text).contains("1.01 N/mm², wanted: at most 1.00 N/mm²");
  }

  @Test
  void aNameCannotDisturbTheTerminal() {
    assertThat(Words.clean("a\u001b[31mb\nc\u202ed")).isEqualTo("a [31mb c d");
  }
}
