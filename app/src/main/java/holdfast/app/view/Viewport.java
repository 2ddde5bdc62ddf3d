package holdfast.app.view;

import holdfast.app.edit.UserFolder;
import holdfast.app.report.Units;
import holdfast.app.view.gl.GlContext;
import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckOptions.Pushes;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.engine.statics.Recall;
import holdfast.model.io.TankSizes;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lwjgl.glfw.GLFW;

/** Opens the viewport and stays until it is closed. */
public final class Viewport {
  private static final int WIDTH = 1440;
  private static final int HEIGHT = 900;
  private static final String USUAL_TANK = "60x30x35 cm";

  private Viewport() {}

  /** Opens the scene, or a first choice of tanks without one; the reason, a sentence for people, when no window can be had. */
  public static Optional<String> open(Optional<Path> file, Optional<Scene> scene, Units units) {
    if (System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("mac")) {
      return Optional.of("The viewport is not there yet on macOS; every other command works.");
    }
    return GlContext.seen("Holdfast", WIDTH, HEIGHT).match(gl -> {
      try (gl) {
        Scene first = scene.orElseGet(() -> ScenesSheet.empty(TankSizes.named(USUAL_TANK).orElseThrow()));
        Workbench bench = new Workbench(first, UserFolder.ofThisUser(), judging(), GLFW::glfwPostEmptyEvent);
        bench.setUnits(units);
        try (ViewWindow window = new ViewWindow(gl, bench, ViewWindow.Quality.USUAL)) {
          if (file.isPresent()) window.commands().open(file.get());
          else window.commands().begin();
          window.run();
        }
        return Optional.empty();
      } catch (LinkageError e) {
        return Optional.of("A library that the window needs could not be loaded: "
            + String.valueOf(e.getMessage()).lines().findFirst().orElse("") + ".");
      }
    }, Optional::of);
  }

  /** Judges with the engine. */
  static Judge.Work judging() {
    int threads = Math.max(1, Runtime.getRuntime().availableProcessors() - 1);
    // Whoever drags a rock asks the first steps over and over: what was found of all margins must not be forgotten over that.
    Recall held = new Recall();
    Recall recall = new Recall(held);
    return new Judge.Work() {
      @Override
      public CheckReport judge(Scene scene, Shapes shapes, Judge.Depth depth, CheckWatch watch) {
        sound(shapes);
        return switch (depth) {
          case STANDING -> Check.standing(scene, shapes, options(Pushes.NONE), watch, held);
          case BEARING -> Check.standing(scene, shapes, options(Pushes.TIER), watch, held);
          case ROOM -> Check.run(scene, shapes, options(Pushes.TIER), watch, recall);
          case FULL -> Check.run(scene, shapes, options(Pushes.WEAKEST), watch, recall);
        };
      }

      @Override
      public List<CheckReport.PushLine> rose(Scene scene, Shapes shapes, String rock) {
        return Check.rose(scene, shapes, rock, options(Pushes.ROSES), recall);
      }

      private CheckOptions options(Pushes pushes) {
        return new CheckOptions(threads, pushes, 0, 1);
      }
    };
  }

  private static void sound(Shapes shapes) {
    if (!shapes.sound()) {
      Shapes.Problem p = shapes.problems().get(0);
      throw new IllegalStateException("'" + p.rock() + "' has no shape: " + p.reason() + ".");
    }
  }
}
