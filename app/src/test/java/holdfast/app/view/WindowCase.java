package holdfast.app.view;

import holdfast.app.edit.Scenes;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;

/** A real window without a display for each test, on a small scene of which nothing is found. */
abstract class WindowCase extends OpenedWindow {
  /** One sample a pixel, and never a sketch. */
  static final ViewWindow.Quality PLAIN = new ViewWindow.Quality(1, 512, 0);

  /** Says nothing about any scene: these tests are about the window. */
  static CheckReport nothingFound(Scene s, Shapes shapes, Judge.Depth depth, CheckWatch watch) {
    return new CheckReport(s, CheckReport.Verdict.PASSES, "Nothing was found.", List.of(), List.of(), List.of(),
        List.of(new CheckReport.JointLine("slab", "block", 1, 10000, 0, JointSpec.Bond.NONE, 0)), List.of(), List.of(),
        Optional.empty(), List.of());
  }

  static Scene read(Path file) {
    return SceneReader.read(file).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    });
  }

  /** What stands in the window when a test begins. */
  Scene scene() {
    return Scenes.small();
  }

  @BeforeEach
  void open() {
    d = window(scene(), PLAIN);
  }

  /** The next window of the same person; the one before is closed. */
  final WindowDriver window(Scene scene, ViewWindow.Quality quality) {
    close();
    return new WindowDriver(scene, folder.resolve("user"), WindowCase::nothingFound, quality);
  }

  final String notice() {
    return d.bench.notice().map(Notice::text).orElse("");
  }
}
