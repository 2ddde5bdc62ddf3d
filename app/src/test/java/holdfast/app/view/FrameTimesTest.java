package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Edit;
import holdfast.app.edit.Scenes;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lwjgl.glfw.GLFW;

/**
 * Prints how long a frame takes while the camera circles and while a rock is dragged, and how long the quick and the full
 * judgement take, for heaps of 30 and 100 rocks. No time is asserted: it says what this machine does.
 *
 * <p>{@code mvn -q -Pslow -pl app -am -Dtest=FrameTimesTest -Dsurefire.failIfNoSpecifiedTests=false test}
 */
@Tag("slow")
class FrameTimesTest {
  private static final int FRAMES = 60;

  @TempDir
  Path folder;

  /** Towers of three stones on a raster over the floor, the top one living. */
  private static Scene heap(int rocks) {
    Tank tank = new Tank(1800, 700, 600, 12, 15, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    List<Rock> stones = new ArrayList<>();
    List<Placement> places = new ArrayList<>();
    for (int i = 0; i < rocks; i++) {
      int level = i % 3;
      int tower = i / 3;
      String name = List.of("foot", "waist", "head").get(level) + " " + tower;
      Rock.Kind kind = level == 2 ? Rock.Kind.LIVE : Rock.Kind.DRY;
      stones.add(Scenes.rock(name, kind, Rock.Look.SLAB, 140 - 15 * level, 120 - 12 * level, 60, 1.4 - 0.2 * level));
      Vec3 at = new Vec3(100 + 145 * (tower % 12), 110 + 160 * (tower / 12), 10 + 60 * level);
      places.add(new Placement(name, at, Quat.about(Vec3.Z, 0.3 * tower), false));
    }
    return new Scene(rocks + " rocks", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(560, 35, 25), List.of(), List.of(), stones,
        places, List.of(), Settings.DEFAULT);
  }

  @ParameterizedTest
  @ValueSource(ints = {30, 100})
  void frameAndCheckTimes(int rocks) throws Exception {
    Scene scene = heap(rocks);
    try (WindowDriver d = new WindowDriver(scene, folder, WindowCase::nothingFound, ViewWindow.Quality.USUAL)) {
      d.rest();
      double[] still = new double[FRAMES];
      for (int i = 0; i < FRAMES; i++) {
        d.bench.sight().set(d.bench.sight().camera().turned(2, 0));
        still[i] = timed(d);
      }
      d.moveTo(300, 700);
      d.press(GLFW.GLFW_MOUSE_BUTTON_MIDDLE, 0);
      double[] circling = new double[FRAMES];
      for (int i = 0; i < FRAMES; i++) {
        d.window.pointer(300 + 5 * i, 700, 1);
        circling[i] = timed(d);
      }
      d.release(GLFW.GLFW_MOUSE_BUTTON_MIDDLE, 0);
      long gesture = d.bench.newGesture();
      double[] dragging = new double[FRAMES];
      String rock = scene.placements().get(0).rock();
      Vec3 at = scene.placements().get(0).atMm();
      for (int i = 0; i < FRAMES; i++) {
        d.bench.apply(new Edit.Move("move", rock, at.plus(new Vec3(i, 0, 0)), Quat.IDENTITY), gesture);
        dragging[i] = timed(d);
      }
      assertThat(d.window.scenesPainted()).isGreaterThanOrEqualTo(3L * FRAMES);
      System.out.printf("%d rocks, %d x %d pixels, %s: still, 4 samples %s; circling by pointer %s; "
          + "a rock moved, 4 samples %s%n", rocks, Graphics.WIDTH, Graphics.HEIGHT, Graphics.context().renderer(), spread(still), spread(circling), spread(dragging));
    }
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    long start = System.nanoTime();
    CheckReport quick = Viewport.judging().judge(scene, shapes, Judge.Depth.STANDING, CheckWatch.NONE);
    long middle = System.nanoTime();
    CheckReport full = Viewport.judging().judge(scene, shapes, Judge.Depth.FULL, CheckWatch.NONE);
    long end = System.nanoTime();
    assertThat(quick.rocks()).hasSameSizeAs(full.rocks());
    System.out.printf("%d rocks: quick judgement %.2f s, full judgement %.2f s%n", rocks, (middle - start) * 1e-9, (end - middle) * 1e-9);
  }

  private static double timed(WindowDriver d) {
    // An event, as the moving pointer would be: only then is anything drawn.
    d.window.pointerIn(true);
    long start = System.nanoTime();
    assertThat(d.frame()).isTrue();
    // Reading a pixel waits until the picture is finished.
    d.window.pixels();
    return (System.nanoTime() - start) * 1e-6;
  }

  private static String spread(double[] ms) {
    double[] sorted = ms.clone();
    Arrays.sort(sorted);
    return String.format("median %.0f ms, nine in ten under %.0f ms", sorted[sorted.length / 2], sorted[sorted.length * 9 / 10]);
  }
}
