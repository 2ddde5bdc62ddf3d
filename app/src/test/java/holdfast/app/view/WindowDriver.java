package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.view.draw.Projector;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import java.nio.file.Path;
import org.lwjgl.glfw.GLFW;

/** Drives the real window as a person would: one event a frame, through the same calls that the display makes. */
final class WindowDriver implements AutoCloseable {
  private static final long FRAME_NANOS = 40_000_000L;
  final ViewWindow window;
  final Workbench bench;
  private long now = 1_000_000_000L;

  WindowDriver(Scene scene, Path userFolder, Judge.Work work) {
    this(scene, userFolder, work, new ViewWindow.Quality(1, 512, 0));
  }

  WindowDriver(Scene scene, Path userFolder, Judge.Work work, ViewWindow.Quality quality) {
    this(scene, userFolder, work, quality, 1);
  }

  /** On a screen with {@code scale} times as many pixels for the same length. */
  WindowDriver(Scene scene, Path userFolder, Judge.Work work, ViewWindow.Quality quality, float scale) {
    bench = new Workbench(scene, userFolder, work, () -> { });
    window = new ViewWindow(Graphics.context(), bench, quality, scale);
    window.pointerIn(true);
    frames(4);
  }

  boolean frame() {
    now += FRAME_NANOS;
    return window.frame(now);
  }

  void frames(int n) {
    for (int i = 0; i < n; i++) frame();
  }

  /** Goes on until nothing moves and nothing is being worked out; fails after five minutes. */
  void rest() {
    long end = System.nanoTime() + 300_000_000_000L;
    int quiet = 0;
    while (quiet < 3) {
      quiet = !frame() && bench.judgement().idle() && !busy() ? quiet + 1 : 0;
      assertThat(System.nanoTime()).as("came to rest within five minutes").isLessThan(end);
      if (busy() || !bench.judgement().idle()) pause();
    }
  }

  private boolean busy() {
    return bench.chores().busy() || bench.plans().busy();
  }

  private static void pause() {
    try {
      Thread.sleep(5);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  void moveTo(double x, double y) {
    window.pointer(x, y, 1);
    frames(2);
  }

  void press(int button, int mods) {
    window.button(button, true, mods);
    frames(2);
  }

  void release(int button, int mods) {
    window.button(button, false, mods);
    frames(2);
  }

  void click(double x, double y) {
    moveTo(x, y);
    press(GLFW.GLFW_MOUSE_BUTTON_LEFT, 0);
    release(GLFW.GLFW_MOUSE_BUTTON_LEFT, 0);
  }

  /** Clicks the control with these words. */
  void click(String words) {
    frames(1);
    Ui.Place p = window.ui().place(words)
        .orElseThrow(() -> new AssertionError("no control '" + words + "' among " + window.ui().words()));
    click(p.x(), p.y());
  }

  /** Turns the wheel over the right panel until the control with these words is in sight. */
  void scrollTo(String words) {
    Layout l = window.layout();
    float lowest = l.height() - l.foot() - 60;
    for (int i = 0; i < 200; i++) {
      Ui.Place p = window.ui().place(words).orElseThrow(() -> new AssertionError("no control '" + words + "'"));
      if (p.y1() < lowest) return;
      moveTo(l.width() - l.right() / 2, l.height() / 2.0);
      window.scroll(0, -1);
      frames(2);
    }
    throw new AssertionError("'" + words + "' never came in sight");
  }

  void drag(double x0, double y0, double x1, double y1, int button, int mods) {
    moveTo(x0, y0);
    press(button, mods);
    for (int i = 1; i <= 6; i++) moveTo(x0 + (x1 - x0) * i / 6, y0 + (y1 - y0) * i / 6);
    release(button, mods);
  }

  void key(int key, int mods) {
    window.key(key, 0, GLFW.GLFW_PRESS, mods);
    frames(1);
    window.key(key, 0, GLFW.GLFW_RELEASE, 0);
    frames(1);
  }

  /** Types into the field that was clicked, in place of what it had. */
  void type(String field, String text) {
    click(field);
    window.key(GLFW.GLFW_KEY_A, 0, GLFW.GLFW_PRESS, GLFW.GLFW_MOD_CONTROL);
    frames(1);
    window.key(GLFW.GLFW_KEY_A, 0, GLFW.GLFW_RELEASE, 0);
    frames(1);
    for (char c : text.toCharArray()) {
      window.letter(c);
      frames(1);
    }
  }

  void enter() {
    key(GLFW.GLFW_KEY_ENTER, 0);
    frames(2);
  }

  /** Where a place in the tank is in the window. */
  Projector.Spot spot(Vec3 p) {
    Layout l = window.layout();
    Projector.Spot s = new Projector(bench.sight().camera(), l.sceneWidth(), l.sceneHeight()).spot(p);
    return new Projector.Spot(s.x() + l.sceneX(), s.y() + l.sceneY(), s.inFront());
  }

  Projector.Spot spot(String rock) {
    return spot(bench.stone(rock).orElseThrow().centreInTank());
  }

  Placement placement(String rock) {
    return bench.scene().placement(rock).orElseThrow();
  }

  @Override
  public void close() {
    window.close();
  }
}
