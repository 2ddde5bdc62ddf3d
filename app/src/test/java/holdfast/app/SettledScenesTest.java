package holdfast.app;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Severity;
import holdfast.engine.motion.SceneBodies;
import holdfast.engine.motion.Settle;
import holdfast.engine.motion.SettleResult;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.io.SceneWriter;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Settling changes no more than needed: what lies on real contacts stays, and a scene that passes goes on passing. */
final class SettledScenesTest {
  static List<Path> scenes() throws IOException {
    return ShippedScenesTest.scenes();
  }

  private static Scene read(Path file) {
    return SceneReader.read(file).match(scene -> scene, problems -> {
      throw new AssertionError(file + ": " + problems);
    });
  }

  private static SettleResult.Settled settle(Scene scene) {
    return Settle.settle(SceneBodies.settleJob(scene, Shapes.of(scene, MeshLoader.NONE).bodies().values()))
        .match(s -> s, none -> {
          throw new AssertionError(none.reason());
        });
  }

  /** The same file to the byte: whatever {@code check} says of the one it says of the other. */
  @ParameterizedTest
  @MethodSource("scenes")
  void aSceneAtRestIsLeftAlone(Path file) throws IOException {
    Scene scene = read(file);
    SettleResult.Settled settled = settle(scene);
    assertThat(settled.atRest()).isTrue();
    assertThat(SceneWriter.write(SceneBodies.placed(scene, settled))).isEqualTo(Files.readString(file));
  }

  /** Lifted by 3 mm as a whole and let down again: it comes back to within 0.2 mm and still passes. */
  @ParameterizedTest
  @Tag("slow")
  @ValueSource(strings = {"cube", "islands", "peninsula", "display", "nano"})
  void aLiftedScenePassesAgain(String name) throws IOException {
    Path file = scenes().stream().filter(f -> f.endsWith(name + ".json")).findFirst().orElseThrow();
    Scene scene = read(file);
    Scene lifted = scene.withPlacements(scene.placements().stream()
        .map(p -> new Placement(p.rock(), p.atMm().plus(new Vec3(0, 0, 3)), p.turn(), p.locked())).toList());
    SettleResult.Settled settled = settle(lifted);
    assertThat(settled.atRest()).isTrue();
    Scene again = SceneBodies.placed(lifted, settled);
    for (int i = 0; i < scene.placements().size(); i++) {
      assertThat(again.placements().get(i).atMm().distanceTo(scene.placements().get(i).atMm()))
          .as(scene.placements().get(i).rock()).isLessThan(0.2);
    }
    CheckReport report = Check.run(again, Shapes.of(again, MeshLoader.NONE), CheckOptions.DEFAULT);
    assertThat(report.verdict()).isEqualTo(CheckReport.Verdict.PASSES);
    assertThat(report.findings()).noneMatch(f -> f.severity() == Severity.FAIL);
  }
}
