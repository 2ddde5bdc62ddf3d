package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.model.io.TankSize;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lwjgl.glfw.GLFW;

/**
 * The window in each of its states, driven there by pointer and keys, against kept pictures that were looked at one by
 * one. {@code -Dholdfast.screens=FOLDER} writes them in full size.
 */
class ScreensTest {
  private static final int LEFT = GLFW.GLFW_MOUSE_BUTTON_LEFT;
  private static final TankSize EMPTY =
      new TankSize("60x30x35 cm", 590, 290, 345, 5, Tank.BottomSupport.UNKNOWN);

  @TempDir
  Path folder;

  /** A state: the scene it starts from and how one gets there. */
  enum Screen {
    FIRST_START("", d -> {
      d.window.commands().begin();
      d.moveTo(640, 60);
    }),
    EMPTY_TANK("", d -> {
      d.key(GLFW.GLFW_KEY_A, 0);
      d.frames(3);
      d.type("name", "keystone");
      d.type("weight", "1.9");
    }),
    PASSES("cube", d -> d.click("span")),
    FAILS("peninsula-before", d -> open(d, Code.TOPPLES)),
    GAPS("bad", d -> open(d, Code.GAP)),
    FEET("cube", d -> show(d, "feet")),
    PANE("bad", d -> show(d, "pane stress")),
    REACH("bad", d -> show(d, "reach of the cleaner")),
    LIGHT("bad", d -> {
      show(d, "light");
      d.click("names");
    }),
    HEAVY_LIFT("handling", d -> open(d, Code.HEAVY_LIFT)),
    OPENING("handling", d -> open(d, Code.OPENING_TURN)),
    FLOATS("handling", d -> open(d, Code.FLOATS)),
    DEAD_WATER("handling", d -> open(d, Code.DEAD_WATER)),
    PANE_THICKNESS("handling", d -> open(d, Code.PANE_THICKNESS)),
    PANE_SUPPORT("handling", d -> open(d, Code.PANE_SUPPORT)),
    ROCK_AMOUNT("handling", d -> open(d, Code.ROCK_AMOUNT)),
    JOINTS("peninsula-before", d -> {
      d.key(GLFW.GLFW_KEY_J, 0);
      d.rest();
      d.click("joint 2");
    }),
    CUT("cube", d -> {
      d.click("Show");
      d.click("left to right");
    }),
    STAGES("cube", d -> {
      d.key(GLFW.GLFW_KEY_G, 0);
      d.rest();
      for (int i = 0; i < 3; i++) d.key(GLFW.GLFW_KEY_LEFT, 0);
    }),
    HELD("cube", d -> {
      var p = d.spot("crown");
      d.moveTo(p.x(), p.y());
      d.press(LEFT, 0);
      d.moveTo(p.x() + 25, p.y());
      d.moveTo(p.x() + 50, p.y() + 5);
    }),
    PULL("cube", d -> {
      d.key(GLFW.GLFW_KEY_B, 0);
      var p = d.spot("pillar head");
      d.moveTo(p.x(), p.y());
      d.press(LEFT, 0);
      d.moveTo(p.x() + 40, p.y());
      d.moveTo(p.x() + 120, p.y() + 10);
    }),
    FIRST_MOVEMENT("bad", d -> {
      int i = number(d, Code.TOPPLES);
      d.scrollTo("finding " + i);
      d.click("finding " + i);
      d.frames(52);
    }),
    TANK("cube", d -> d.click("Tank…")),
    FIGURES("cube", d -> d.click("Figures…")),
    FIGURES_US("cube", d -> {
      d.click("in lb");
      d.click("Figures…");
    }),
    KEYBOARD("cube", d -> {
      d.key(GLFW.GLFW_KEY_F6, 0);
      d.key(GLFW.GLFW_KEY_F6, 0);
      for (int i = 0; i < 3; i++) d.key(GLFW.GLFW_KEY_TAB, 0);
      for (int i = 0; i < 5; i++) d.key(GLFW.GLFW_KEY_DOWN, 0);
    }),
    HELP("cube", d -> d.key(GLFW.GLFW_KEY_F1, 0)),
    GIVE_OUT("cube", d -> {
      d.key(GLFW.GLFW_KEY_E, GLFW.GLFW_MOD_CONTROL);
      d.frames(3);
      d.type("picture file", "heap.png");
      d.type("sheet file", "heap.pdf");
    }),
    US_UNITS("nano", d -> {
      d.click("in lb");
      d.click("ledge");
    });

    private final String scene;
    private final Consumer<WindowDriver> way;

    Screen(String scene, Consumer<WindowDriver> way) {
      this.scene = scene;
      this.way = way;
    }
  }

  private static int number(WindowDriver d, Code code) {
    List<Finding> all = d.bench.findings();
    for (int i = 0; i < all.size(); i++) if (all.get(i).code() == code) return i;
    throw new AssertionError("no finding " + code + " among " + all);
  }

  private static void open(WindowDriver d, Code code) {
    int i = number(d, code);
    d.scrollTo("finding " + i);
    d.click("finding " + i);
    d.rest();
  }

  private static void show(WindowDriver d, String layer) {
    d.click("Show");
    d.click(layer);
    d.rest();
  }

  /** On a screen with twice the pixels everything is where it was, twice as fine, and the pointer meets it. */
  @Test
  void fineScreensShowTheSameFiner() throws IOException {
    Scene scene = Judged.scene("cube");
    BufferedImage plain;
    try (WindowDriver d = new WindowDriver(scene, folder.resolve("plain"), Judged.WORK)) {
      d.rest();
      d.click("span");
      d.rest();
      plain = Pictures.of(d.window.pixels(), Graphics.WIDTH, Graphics.HEIGHT);
    }
    long window = Graphics.context().window();
    GLFW.glfwSetWindowSize(window, 2 * Graphics.WIDTH, 2 * Graphics.HEIGHT);
    try (WindowDriver d = new WindowDriver(scene, folder.resolve("fine"), Judged.WORK, new ViewWindow.Quality(1, 512, 0), 2)) {
      d.rest();
      d.click("span");
      d.rest();
      assertThat(d.bench.chosen()).contains("span");
      BufferedImage fine = Pictures.of(d.window.pixels(), 2 * Graphics.WIDTH, 2 * Graphics.HEIGHT);
      String to = System.getProperty("holdfast.screens", "");
      if (!to.isEmpty()) ImageIO.write(fine, "png", Path.of(to, "fine.png").toFile());
      assertThat(Pictures.alike(plain, Pictures.half(fine))).isTrue();
      // A rock in the picture is met as well.
      var p = d.spot("pillar head");
      d.click(p.x(), p.y());
      assertThat(d.bench.chosen()).contains("pillar head");
    } finally {
      GLFW.glfwSetWindowSize(window, Graphics.WIDTH, Graphics.HEIGHT);
    }
  }

  @ParameterizedTest
  @EnumSource(Screen.class)
  void looksAsItWasKept(Screen screen) throws IOException {
    Scene scene = screen.scene.isEmpty() ? ScenesSheet.empty(EMPTY) : Judged.scene(screen.scene);
    try (WindowDriver d = new WindowDriver(scene, folder, Judged.WORK)) {
      d.rest();
      screen.way.accept(d);
      if (screen != Screen.FIRST_MOVEMENT) d.rest();
      BufferedImage now = Pictures.of(d.window.pixels(), Graphics.WIDTH, Graphics.HEIGHT);
      String name = screen.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
      String to = System.getProperty("holdfast.screens", "");
      if (!to.isEmpty()) {
        Files.createDirectories(Path.of(to));
        ImageIO.write(now, "png", Path.of(to, name + ".png").toFile());
        return;
      }
      // The right panel is words of the judgement, which has tests of its own; sheets lie over all of it.
      int right = d.window.commands().sheet().isPresent() ? Graphics.WIDTH : Graphics.WIDTH - (int) d.window.layout().right();
      Pictures.looksAsKept(Pictures.half(now.getSubimage(0, 0, right, Graphics.HEIGHT)), "screen-" + name);
    }
  }
}
