package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.app.view.draw.Projector;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/**
 * A rock that is dragged is judged while it is, and a judgement that takes long says what it is at. What is to be seen
 * follows from the window's own promise: of the present place a judgement or that it is being worked out, never an older one.
 */
class WindowHeldTest extends OpenedWindow {
  private static final int LEFT = GLFW.GLFW_MOUSE_BUTTON_LEFT;

  /** Frames go on being drawn until it is so. */
  private void until(BooleanSupplier done) throws InterruptedException {
    for (int i = 0; i < 4000 && !done.getAsBoolean(); i++) {
      d.frame();
      TimeUnit.MILLISECONDS.sleep(5);
    }
    assertThat(done.getAsBoolean()).isTrue();
  }

  @Test
  void aLongJudgementSaysWhatItIsAtAfterASecond() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    CountDownLatch told = new CountDownLatch(1);
    open(Scenes.small(), (s, shapes, depth, watch) -> {
      if (depth == Judge.Depth.FULL) {
        watch.best(5);
        watch.at(CheckWatch.Stage.JOINTS, 128, 1471);
        told.countDown();
        go.await();
      }
      return WindowCase.nothingFound(s, shapes, depth, watch);
    });
    assertThat(told.await(20, TimeUnit.SECONDS)).isTrue();
    d.frames(2);
    assertThat(d.window.ui().place("judging at")).as("at once there is nothing to tell").isEmpty();
    // A frame is 40 ms; nobody touches anything.
    d.frames(30);
    assertThat(d.bench.judgement().at().orElseThrow())
        .startsWith("which joints to fix: 5 would do, cheaper sets 128 of 1471, ").endsWith(" s");
    Ui.Place words = d.window.ui().place("judging at").orElseThrow();
    Layout l = d.window.layout();
    assertThat(words.x0()).isGreaterThan(l.width() - l.right());
    assertThat(words.x1()).as("not cut").isLessThanOrEqualTo(l.width());
    String before = d.bench.judgement().at().orElseThrow();
    long frames = d.window.frames();
    d.frames(50);
    assertThat(d.bench.judgement().at().orElseThrow()).as("the seconds go on").isNotEqualTo(before);
    assertThat(d.window.frames() - frames).as("drawn anew for each second, and no more than that").isBetween(2L, 3L);
    go.countDown();
    d.rest();
    assertThat(d.bench.judgement().at()).isEmpty();
    assertThat(d.window.ui().place("judging at")).isEmpty();
  }

  /** The block is dragged over the edge of the slab it stands on, and judged at every place by the real judge. */
  @Test
  void aDraggedRockIsJudgedWhereItIs() throws Exception {
    List<Judge.Depth> asked = Collections.synchronizedList(new ArrayList<>());
    Judge.Work real = Viewport.judging();
    open(Scenes.small(), (s, shapes, depth, watch) -> {
      asked.add(depth);
      return real.judge(s, shapes, depth, watch);
    });
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    asked.clear();
    Projector.Spot from = d.spot("block");
    d.moveTo(from.x() + 20, from.y() + 20);
    d.press(LEFT, 0);
    assertThat(d.bench.found().orElseThrow().full()).as("a rock that is only grasped is where it was").isTrue();
    List<String> told = new ArrayList<>();
    for (double x = 0.32; x < 0.44; x += 0.02) {
      Projector.Spot to = d.spot(new Vec3(x, 0.2, 0.11));
      Vec3 before = d.placement("block").atMm();
      d.window.pointer(to.x() + 20, to.y() + 20, 1);
      assertThat(d.placement("block").atMm()).isNotEqualTo(before);
      d.frame();
      d.bench.report().ifPresent(r -> assertThat(r.scene()).isEqualTo(d.bench.scene()));
      until(() -> d.bench.found().filter(f -> f.depth() == Judge.Depth.BEARING).isPresent());
      assertThat(d.bench.found().orElseThrow().full()).as("no verdict while it is held").isFalse();
      assertThat(d.bench.report().orElseThrow().scene()).as("of the present place").isEqualTo(d.bench.scene());
      told.add(HeldMark.words("block", d.bench.found()));
    }
    assertThat(asked).containsOnly(Judge.Depth.STANDING, Judge.Depth.BEARING);
    // Pushed at 0.9 x 80 = 72 mm it goes over before it slides where the edge is nearer to its middle than 0.6 x 72 = 43 mm
    // (moments, derived). Contacts end 5 mm within: 45 mm from it at 320 and 340 mm, 35 mm where 360 mm leave 40 to the slab's
    // end, and beyond that end it falls.
    assertThat(told).containsExactly("bears the push so far", "bears the push so far", "topples when pushed", "topples when pushed",
        "falls", "falls");
    d.release(LEFT, 0);
    d.rest();
    assertThat(d.bench.found().orElseThrow().full()).isTrue();
    assertThat(d.bench.report().orElseThrow().scene()).isEqualTo(d.bench.scene());
    assertThat(asked.subList(asked.size() - 2, asked.size())).containsExactly(Judge.Depth.ROOM, Judge.Depth.FULL);
  }

  /** A judge that never answers keeps no frame waiting, and what he found of the place before is not to be seen. */
  @Test
  void whileItIsWorkedOutNothingOlderIsShown() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    Scene start = Scenes.small();
    open(start, (s, shapes, depth, watch) -> {
      if (!s.equals(start)) go.await();
      return WindowCase.nothingFound(s, shapes, depth, watch);
    });
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    Projector.Spot from = d.spot("block");
    d.moveTo(from.x() + 20, from.y() + 20);
    d.press(LEFT, 0);
    for (int i = 1; i <= 40; i++) {
      d.window.pointer(from.x() + 20 + 3 * i, from.y() + 20, 1);
      assertThat(d.frame()).isTrue();
      if (d.bench.scene().equals(start)) continue;
      assertThat(d.bench.report()).isEmpty();
      assertThat(HeldMark.words("block", d.bench.found())).isEqualTo("judging…");
    }
    assertThat(d.placement("block").atMm().x()).isGreaterThan(340);
    d.frames(30);
    assertThat(d.window.ui().place("judging at")).as("a rest of over a second").isPresent();
    go.countDown();
    until(() -> d.bench.found().isPresent());
    assertThat(d.bench.found().orElseThrow().depth().whileHeld()).isTrue();
    d.release(LEFT, 0);
    d.rest();
    CheckReport last = d.bench.report().orElseThrow();
    assertThat(last.scene()).isEqualTo(d.bench.scene());
  }
}
