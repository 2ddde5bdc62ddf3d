package holdfast.app;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.JsonReport;
import holdfast.app.report.TextReport;
import holdfast.app.report.Units;
import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The same scene gives the same bytes of report: run after run, on one thread, on two and on more than there are cores. */
class SameBytesTest {
  private static final int VARIATIONS = 4;
  /** With the states left out of what is asked, three rounds in four differ (18 of 24). */
  private static final int ROUNDS = 8;

  static List<Path> scenes() throws IOException {
    return ShippedScenesTest.scenes();
  }

  @Test
  void aSmallSceneWithVariations() throws IOException {
    Path nano = scenes().stream().filter(p -> p.endsWith("nano.json")).findFirst().orElseThrow();
    sameOnAnyThreads(nano, VARIATIONS);
  }

  /**
   * Filled, and at three quarters, half and a quarter of the water, this heap weighs the same: it lies below the lowest of
   * these levels. What was found of one of these states must not be told of another, whichever thread was first; as it is
   * by chance which one is, this is tried several times.
   */
  @Test
  void aHeapThatWeighsTheSameInSeveralStates() {
    Path low = Path.of("src/test/resources/holdfast/app/low.json");
    String first = report(low, 1, 0);
    for (int k = 0; k < ROUNDS; k++) assertThat(report(low, 7, 0)).as("round %d", k).isEqualTo(first);
  }

  @ParameterizedTest
  @MethodSource("scenes")
  @Tag("slow")
  void everyShippedScene(Path file) {
    sameOnAnyThreads(file, 0);
  }

  private static void sameOnAnyThreads(Path file, int variations) {
    String first = report(file, 1, variations);
    assertThat(report(file, 1, variations)).as("%s again", file).isEqualTo(first);
    assertThat(report(file, 2, variations)).as("%s on two threads", file).isEqualTo(first);
    assertThat(report(file, 7, variations)).as("%s on seven threads", file).isEqualTo(first);
  }

  /** Text and JSON of a check of the file as read anew. */
  private static String report(Path file, int threads, int variations) {
    Scene scene = SceneReader.read(file).match(s -> s, problems -> {
      throw new AssertionError(file + ": " + problems);
    });
    CheckReport report = Check.run(
        scene, Shapes.of(scene, MeshLoader.NONE), new CheckOptions(threads, CheckOptions.Pushes.ROSES, variations, 1));
    return TextReport.of(report, Units.METRIC, false) + TextReport.of(report, Units.US, false) + JsonReport.of(report);
  }
}
