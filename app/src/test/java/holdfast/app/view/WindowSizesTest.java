package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.app.report.Units;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lwjgl.glfw.GLFW;

/** In the least window, in a large one and on a fine screen every control along the top is whole and apart from the others. */
class WindowSizesTest {
  @TempDir
  Path folder;

  @AfterEach
  void asBefore() {
    GLFW.glfwSetWindowSize(Graphics.context().window(), Graphics.WIDTH, Graphics.HEIGHT);
  }

  @ParameterizedTest
  @CsvSource({"1024, 640, 1", "1024, 700, 1", "1229, 700, 1", "1230, 700, 1", "2560, 1440, 1", "2048, 1400, 2"})
  void controlsAlongTheTopHaveRoom(int width, int height, float scale) {
    GLFW.glfwSetWindowSize(Graphics.context().window(), width, height);
    try (WindowDriver d = new WindowDriver(Scenes.small(), folder, WindowCase::nothingFound, WindowCase.PLAIN, scale)) {
      d.rest();
      d.click("block");
      d.key(GLFW.GLFW_KEY_RIGHT, 0);
      d.frames(2);
      assertThat(d.bench.document().unsaved()).isTrue();
      List<String> words = new ArrayList<>();
      d.window.ui().words().forEach(words::add);
      words.removeIf(w -> place(d, w).y1() > d.window.layout().top());
      assertThat(words).contains("Scenes", "Undo", "Corner", "Build", "Help");
      for (String a : words) {
        Ui.Place p = place(d, a);
        assertThat(p.x0()).as(a).isGreaterThan(0);
        assertThat(p.x1()).as(a).isLessThanOrEqualTo(width);
        for (String b : words) {
          Ui.Place q = place(d, b);
          if (!a.equals(b)) assertThat(p.x1() <= q.x0() || q.x1() <= p.x0()).as(a + " beside " + b).isTrue();
        }
      }
      // The units can be changed there and back in every window.
      d.click(words.contains("in lb") ? "in lb" : "mm kg");
      assertThat(d.bench.units()).isEqualTo(Units.US);
      d.click(words.contains("in lb") ? "mm kg" : "in lb");
      assertThat(d.bench.units()).isEqualTo(Units.METRIC);
      // The buttons of the chosen rock are above the foot.
      Ui.Place lowest = place(d, "Remove");
      assertThat(lowest.y1()).isLessThan(height - d.window.layout().foot());
    }
  }

  private static Ui.Place place(WindowDriver d, String words) {
    return d.window.ui().place(words).orElseThrow();
  }
}
