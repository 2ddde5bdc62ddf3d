package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.edit.Edit;
import holdfast.app.edit.Scenes;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Projector;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/** Where one looks from, what is drawn, and when. */
class WindowViewTest extends WindowCase {
  private static final int LEFT = GLFW.GLFW_MOUSE_BUTTON_LEFT;
  private static final int RIGHT = GLFW.GLFW_MOUSE_BUTTON_RIGHT;

  @Test
  void standardViewsByKeyAndButton() {
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    assertThat(d.bench.sight().camera().pitchDeg()).isEqualTo(90);
    assertThat(d.bench.sight().camera().flat()).isTrue();
    d.click("Front");
    d.rest();
    assertThat(d.bench.sight().camera().pitchDeg()).isEqualTo(0);
    assertThat(d.bench.sight().camera().yawDeg()).isEqualTo(90);
  }

  @Test
  void circlesSlidesAndZooms() {
    Camera before = d.bench.sight().camera();
    d.drag(320, 600, 420, 640, LEFT, 0);
    assertThat(d.bench.sight().camera().yawDeg()).isNotCloseTo(before.yawDeg(), within(5.0));
    assertThat(d.bench.sight().camera().pitchDeg()).isGreaterThan(before.pitchDeg());
    Camera circled = d.bench.sight().camera();
    d.drag(500, 600, 560, 600, RIGHT, 0);
    assertThat(d.bench.sight().camera().target().distanceTo(circled.target())).isGreaterThan(0.01);
    d.window.scroll(0, 3);
    d.frames(2);
    assertThat(d.bench.sight().camera().distanceM()).isLessThan(circled.distanceM());
    d.key(GLFW.GLFW_KEY_F, 0);
    d.rest();
    Projector.Spot corner = d.spot(new Vec3(0, 0, 0));
    assertThat(d.window.layout().inScene(corner.x(), corner.y())).isTrue();
  }

  @Test
  void cutsOpenAndShowsLayers() {
    d.click("Show");
    int[] whole = d.window.pixels();
    d.click("left to right");
    d.rest();
    assertThat(d.window.pixels()).isNotEqualTo(whole);
    assertThat(d.bench.shown().cutWay()).isEqualTo(Shown.CutWay.ALONG);
    d.click("names");
    assertThat(d.bench.shown().has(Shown.Layer.NAMES)).isTrue();
  }

  @Test
  void drawsOnlyWhenSomethingChanged() {
    d.rest();
    long frames = d.window.frames();
    for (int i = 0; i < 50; i++) d.frame();
    assertThat(d.window.frames()).isEqualTo(frames);
    long scenes = d.window.scenesPainted();
    d.moveTo(20, 20);
    d.frames(3);
    assertThat(d.window.frames()).isGreaterThan(frames);
    assertThat(d.window.scenesPainted()).as("panels moved, the picture did not").isEqualTo(scenes);
  }

  /** On a slow machine things that move are drawn with one sample a pixel, and finely again as soon as they are still. */
  @Test
  void sketchesWhileThingsMoveAndDrawsFinelyWhenTheyAreStill() {
    d = window(Scenes.small(), new ViewWindow.Quality(4, 512, 0));
    d.rest();
    assertThat(d.window.sketched()).isFalse();
    d.moveTo(320, 600);
    d.press(RIGHT, 0);
    d.moveTo(330, 610);
    assertThat(d.window.sketched()).isTrue();
    d.moveTo(320, 600);
    d.release(RIGHT, 0);
    d.rest();
    assertThat(d.window.sketched()).isFalse();
    // The same view as a window shows it that never moved.
    int[] still = d.window.pixels();
    Camera there = d.bench.sight().camera();
    d = window(Scenes.small(), new ViewWindow.Quality(4, 512, 1e9));
    d.bench.sight().set(there);
    d.moveTo(320, 600);
    d.press(RIGHT, 0);
    d.moveTo(330, 610);
    assertThat(d.window.sketched()).as("fast enough to be drawn finely").isFalse();
    d.moveTo(320, 600);
    d.release(RIGHT, 0);
    d.bench.sight().set(there);
    d.rest();
    assertThat(Pictures.worst(Pictures.of(still, Graphics.WIDTH, Graphics.HEIGHT),
        Pictures.of(d.window.pixels(), Graphics.WIDTH, Graphics.HEIGHT))).isLessThan(1);
  }

  /** Shadows are kept while only the view changes, and cast anew when a rock moves: else they would lie where it was. */
  @Test
  void shadowsFollowTheRocks() {
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    d.bench.apply(new Edit.Move("move", "block", new Vec3(480, 100, 10), Quat.IDENTITY));
    d.rest();
    int[] moved = d.window.pixels();
    Scene after = d.bench.scene();
    d = window(after, PLAIN);
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    Layout l = d.window.layout();
    assertThat(Pictures.worst(
        Pictures.of(moved, Graphics.WIDTH, Graphics.HEIGHT).getSubimage(l.sceneX(), l.sceneY(), l.sceneWidth(), l.sceneHeight()),
        Pictures.of(d.window.pixels(), Graphics.WIDTH, Graphics.HEIGHT)
            .getSubimage(l.sceneX(), l.sceneY(), l.sceneWidth(), l.sceneHeight()))).isLessThan(1);
  }
}
