package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What findings of the shipped scenes say: no figure without its unit, and none left metric for who reads inches. */
class FindingWordsTest {
  /** A figure with a point, and what follows it. */
  private static final Pattern FIGURE = Pattern.compile("\\d\\.\\d+(?! to )(.{0,8})");
  private static final Pattern UNIT = Pattern.compile("^ (N|N/mm2|mm|mm2|kg|kg/L|g|%|ml|L|J|litres|times|hours|days)\\b.*|^ %.*");

  @ParameterizedTest
  @ValueSource(strings = {"cube", "bad", "peninsula-before", "nano"})
  void everyFigureHasItsUnit(String name) throws Exception {
    Scene scene = Judged.scene(name);
    CheckReport report = Judged.judge(scene, Shapes.of(scene, MeshLoader.NONE), Judge.Depth.FULL, CheckWatch.NONE);
    assertThat(report.findings()).isNotEmpty();
    for (Finding f : report.findings()) {
      for (String words : List.of(f.sentence(), f.remedy())) {
        Matcher m = FIGURE.matcher(words);
        while (m.find()) assertThat(m.group(1)).as(words).matches(UNIT);
        assertThat(Units.US.prose(words)).doesNotContainPattern("\\d (N|mm|mm2|kg|kg/L|N/mm2|ml)\\b");
      }
    }
  }

  /** What the two kinds of judgement under one code are called must not say the opposite of their sentences. */
  @ParameterizedTest
  @ValueSource(strings = {"handling", "peninsula-before"})
  void aHeapThatJointsDoNotMendIsNotToldToNeedFixing(String name) throws Exception {
    Scene scene = Judged.scene(name);
    CheckReport report = Judged.judge(scene, Shapes.of(scene, MeshLoader.NONE), Judge.Depth.FULL, CheckWatch.NONE);
    List<Finding> joints = report.findings().stream().filter(f -> f.code() == Code.NEEDS_BOND).toList();
    assertThat(joints).isNotEmpty().allSatisfy(f -> assertThat(f.title())
        .isEqualTo(f.sentence().contains("not mend") ? "joints do not mend it" : "joint needs fixing"));
  }
}
