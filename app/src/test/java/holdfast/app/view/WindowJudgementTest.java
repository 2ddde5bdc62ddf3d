package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.app.report.JointNumbers;
import holdfast.app.report.sheet.SheetContent;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Projector;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Twist;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lwjgl.glfw.GLFW;

/**
 * Live judgement and its drawings in the real window. The scene that fails was sketched to do so: its faults and figures
 * are those of its own test among the shipped scenes.
 */
class WindowJudgementTest extends OpenedWindow {
  private static final int LEFT = GLFW.GLFW_MOUSE_BUTTON_LEFT;

  @Test
  void judgementOfAnOlderSceneIsNeverShown() {
    open(Scenes.small(), WindowCase::nothingFound);
    d.rest();
    assertThat(d.bench.report().orElseThrow().scene()).isEqualTo(d.bench.scene());
    d.click("block");
    for (int i = 0; i < 30; i++) {
      d.key(GLFW.GLFW_KEY_RIGHT, 0);
      Optional<CheckReport> r = d.bench.report();
      if (r.isPresent()) assertThat(r.get().scene()).isEqualTo(d.bench.scene());
    }
    d.rest();
    assertThat(d.bench.report().orElseThrow().scene()).isEqualTo(d.bench.scene());
  }

  @Test
  void drawingGoesOnWhileJudgingAndOnlyTheLatestSceneCounts() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    open(Scenes.small(), (s, shapes, depth, watch) -> {
      if (s.placement("block").orElseThrow().atMm().x() < 310 || depth == Judge.Depth.FULL) go.await();
      return WindowCase.nothingFound(s, shapes, depth, watch);
    });
    d.click("block");
    // The first scene is never answered, and yet every frame is drawn and every key works.
    for (int i = 0; i < 10; i++) d.key(GLFW.GLFW_KEY_RIGHT, 0);
    assertThat(d.placement("block").atMm().x()).isEqualTo(310);
    for (int i = 0; i < 400 && d.bench.found().isEmpty(); i++) {
      d.frame();
      TimeUnit.MILLISECONDS.sleep(5);
    }
    assertThat(d.bench.found().orElseThrow().full()).as("the quick answer to the latest scene").isFalse();
    assertThat(d.bench.found().orElseThrow().report().orElseThrow().scene()).isEqualTo(d.bench.scene());
    assertThat(d.bench.judgementSettled()).isFalse();
    go.countDown();
    d.rest();
    assertThat(d.bench.found().orElseThrow().full()).isTrue();
  }

  @Test
  void verdictAppearsWithoutAnyEvent() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    open(Scenes.small(), (s, shapes, depth, watch) -> {
      go.await();
      return WindowCase.nothingFound(s, shapes, depth, watch);
    });
    d.frames(6);
    BufferedImage judging = picture();
    go.countDown();
    d.rest();
    assertThat(Pictures.alike(judging, picture())).as("the panel still says that it is judging").isFalse();
  }

  private BufferedImage picture() {
    return Pictures.of(d.window.pixels(), Graphics.WIDTH, Graphics.HEIGHT);
  }

  @Test
  void clickedFindingFliesThereChoosesTheRockAndOpensItsDrawing() {
    open(Judged.scene("bad"), Judged.WORK);
    d.rest();
    Camera before = d.bench.sight().camera();
    int i = number(Code.GAP);
    Finding f = d.bench.findings().get(i);
    d.scrollTo("finding " + i);
    d.click("finding " + i);
    d.rest();
    assertThat(d.bench.opened()).contains(f);
    assertThat(d.bench.chosen()).contains(f.about().get(0));
    assertThat(d.bench.sight().camera().target().distanceTo(before.target())).isGreaterThan(0.05);
    Projector.Spot p = d.spot(f.about().get(0));
    assertThat(d.window.layout().inScene(p.x(), p.y())).isTrue();
    // Pressed again it closes.
    d.scrollTo("finding " + i);
    d.click("finding " + i);
    assertThat(d.bench.opened()).isEmpty();
  }

  private int number(Code code) {
    List<Finding> all = d.bench.findings();
    for (int i = 0; i < all.size(); i++) if (all.get(i).code() == code) return i;
    throw new AssertionError("no " + code + " among " + all);
  }

  @Test
  void aToppleIsPlayedSlowlyAndEnds() {
    open(Judged.scene("bad"), Judged.WORK);
    d.rest();
    int i = number(Code.TOPPLES);
    Finding f = d.bench.findings().get(i);
    d.scrollTo("finding " + i);
    d.click("finding " + i);
    d.frames(2);
    FirstMovement shown = d.window.player().first().orElseThrow();
    assertThat(shown.mechanism()).as("the one that the report carries").isEqualTo(f.mechanism().orElseThrow());
    assertThat(shown.words()).startsWith(f.about().get(0) + " topples under ");
    // The flight to the place is over before the comparison begins.
    d.frames(12);
    BufferedImage start = picture();
    d.frames(40);
    assertThat(Pictures.alike(start, picture())).as("something moves").isFalse();
    d.rest();
    assertThat(d.window.player().playing()).isFalse();
  }

  /** Each kind of finding that moves shows the movement of its own report; what is lifted out is not drawn meanwhile. */
  @ParameterizedTest
  @CsvSource({"PRESSED, tips pressed down with", "SHAKES, shaken sideways with", "LIFTED, lifted out"})
  void otherMovementsArePlayedToo(Code code, String words) {
    open(Judged.scene("peninsula-before"), Judged.WORK);
    d.rest();
    Camera before = d.bench.sight().camera();
    int i = number(code);
    Finding f = d.bench.findings().get(i);
    d.scrollTo("finding " + i);
    d.click("finding " + i);
    d.frames(30);
    FirstMovement shown = d.window.player().first().orElseThrow();
    assertThat(shown.mechanism()).isEqualTo(f.mechanism().orElseThrow());
    assertThat(shown.words().replace(",", "")).contains(words);
    assertThat(shown.out().isPresent()).isEqualTo(code == Code.LIFTED);
    assertThat(shown.on(d.bench.tableau(), d.bench.now()).stones())
        .hasSize(d.bench.tableau().stones().size() - (code == Code.LIFTED ? 1 : 0));
    assertThat(d.bench.sight().camera().target().distanceTo(before.target())).as("flown to what moves").isGreaterThan(0.01);
  }

  private static void pause() {
    try {
      TimeUnit.MILLISECONDS.sleep(5);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void anEditEndsWhatIsPlayed() {
    open(Scenes.small(), WindowCase::nothingFound);
    d.rest();
    d.click("block");
    d.window.player().show(new Mechanism(List.of(
        Twist.ZERO, new Twist(Vec3.X, Vec3.ZERO))),
        "block slides", Optional.empty());
    d.frames(3);
    assertThat(d.window.player().playing()).isTrue();
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    d.frames(2);
    assertThat(d.window.player().playing()).isFalse();
  }

  /** Every drawing changes the picture when it is put on, and taking it off gives the same picture as before. */
  @Test
  void everyDrawingComesAndGoes() {
    open(Judged.scene("bad"), Judged.WORK);
    d.rest();
    d.click("Show");
    d.frames(3);
    for (Shown.Layer l : Shown.Layer.values()) {
      if (l == Shown.Layer.ROSE) continue;
      BufferedImage before = scene();
      d.scrollTo(l.word());
      d.click(l.word());
      d.rest();
      BufferedImage with = scene();
      assertThat(Pictures.worst(before, with)).as(l.word()).isGreaterThan(4);
      d.click(l.word());
      d.rest();
      assertThat(Pictures.worst(before, scene())).as(l.word() + " taken off").isLessThan(1);
    }
  }

  /** The picture in the middle only. */
  private BufferedImage scene() {
    Layout l = d.window.layout();
    return picture().getSubimage(l.sceneX(), l.sceneY(), l.sceneWidth(), l.sceneHeight());
  }

  @Test
  void pushRoseOfTheChosenRock() {
    open(Judged.scene("cube"), Judged.WORK);
    d.rest();
    d.click("span");
    d.rest();
    BufferedImage with = scene();
    d.click("Show");
    d.click("push rose");
    d.rest();
    assertThat(Pictures.worst(with, scene())).isGreaterThan(10);
  }

  /** A judge of which nothing is known but what a push does: from one side less than from the others. */
  private static final class Pushed implements Judge.Work {
    final List<String> asked = Collections.synchronizedList(new ArrayList<>());
    volatile CountDownLatch go = new CountDownLatch(0);

    private static CheckReport.PushLine side(double degrees, double newtons) {
      return new CheckReport.PushLine(degrees, newtons, OptionalDouble.empty(), false, Movement.SLIDES, State.FILLED);
    }

    @Override
    public CheckReport judge(Scene s, Shapes shapes, Judge.Depth depth, CheckWatch watch) {
      List<CheckReport.RockLine> rocks = s.placements().stream().map(p -> new CheckReport.RockLine(
          p.rock(), "dry", 1, 6, 150, List.of(), Optional.of(side(0, 10)), 20)).toList();
      return new CheckReport(s, CheckReport.Verdict.PASSES, "", List.of(), List.of(), rocks, List.of(), List.of(), List.of(),
          Optional.empty(), List.of());
    }

    @Override
    public List<CheckReport.PushLine> rose(Scene s, Shapes shapes, String rock) throws InterruptedException {
      asked.add(rock);
      go.await();
      return List.of(side(0, 10), side(90, 30), side(180, 30), side(270, 30));
    }
  }

  @Test
  void aRockThatIsChosenGetsItsRoseAndAnEditDropsIt() {
    Pushed work = new Pushed();
    open(Scenes.small(), work);
    d.rest();
    assertThat(work.asked).as("no rock is chosen").isEmpty();
    d.click("block");
    d.rest();
    assertThat(work.asked).containsExactly("block");
    assertThat(d.bench.judgement().rose().orElseThrow().sides()).hasSize(4);
    BufferedImage whole = scene();
    work.go = new CountDownLatch(1);
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    for (int i = 0; i < 100 && work.asked.size() < 2; i++) {
      assertThat(d.bench.judgement().rose()).as("that of the place before").isEmpty();
      d.frame();
      pause();
    }
    assertThat(work.asked).containsExactly("block", "block");
    assertThat(d.bench.judgementSettled()).as("the verdict does not wait for it").isTrue();
    assertThat(d.bench.judgement().roseLate()).isFalse();
    d.frames(40);
    assertThat(d.bench.judgement().roseLate()).isTrue();
    BufferedImage waiting = scene();
    work.go.countDown();
    d.rest();
    assertThat(d.bench.judgement().roseLate()).isFalse();
    assertThat(d.bench.judgement().rose().orElseThrow().revision()).isEqualTo(d.bench.document().revision());
    assertThat(Pictures.worst(waiting, scene())).as("its petals came").isGreaterThan(4);
    assertThat(Pictures.worst(waiting, whole)).as("none were drawn before").isGreaterThan(4);
    d.click("slab");
    d.rest();
    assertThat(work.asked).containsExactly("block", "block", "slab");
    assertThat(d.bench.judgement().rose().orElseThrow().rock()).isEqualTo("slab");
    d.click("Show");
    d.click("push rose");
    d.click("block");
    d.rest();
    assertThat(work.asked).as("the layer is off").hasSize(3);
  }

  /** The number on the scene is that in the list and on the build sheet: the joint that is clicked is the one that opens. */
  @ParameterizedTest
  @CsvSource({"peninsula-before, 0", "cube, 5"})
  void jointNumbersAgree(String name, int fixed) {
    Scene scene = Judged.scene(name);
    open(scene, Judged.WORK);
    d.key(GLFW.GLFW_KEY_J, 0);
    d.rest();
    JointNumbers listed = JointNumbers.of(scene, d.bench.report().orElseThrow().joints().stream()
        .map(j -> new JointNumbers.Pair(j.a(), j.b())).toList());
    assertThat(JointNumbers.of(scene, d.window.survey().orElseThrow().pairs())).as("as drawn").isEqualTo(listed);
    assertThat(listed.fixed()).isEqualTo(fixed);
    for (SheetContent.JointLine j : sheet(scene).joints()) {
      assertThat(listed.number(j.spec().a(), j.spec().b())).as("on the sheet").contains(j.number());
    }
    for (int n = 1; n <= listed.pairs().size(); n++) {
      JointNumbers.Pair pair = listed.pairs().get(n - 1);
      d.click("joint " + n);
      d.rest();
      assertThat(d.window.findings().joints().open()).contains(pair);
      d.click("joint " + n);
    }
    // Every joint that a finding wants fixed is marked; a note that joints do not mend a heap marks none.
    long wanted = d.bench.findings().stream()
        .filter(f -> f.code() == Code.NEEDS_BOND && f.severity() == Severity.FAIL && f.about().size() == 2).count();
    assertThat(d.window.findings().joints().wanted()).hasSize((int) wanted);
    if (fixed == 0) assertThat(wanted).isPositive();
  }

  private static SheetContent sheet(Scene scene) {
    return SheetContent.of(scene, Shapes.of(scene, MeshLoader.NONE), Optional.empty(), (placed, cured) -> true);
  }

  @Test
  void bumpShowsTheSectionStripBesideIt() {
    open(Scenes.small(), WindowCase::nothingFound);
    d.key(GLFW.GLFW_KEY_B, 0);
    d.key(GLFW.GLFW_KEY_1, 0);
    d.rest();
    Projector.Spot p = d.spot("block");
    d.drag(p.x(), p.y(), p.x() - 120, p.y(), LEFT, 0);
    for (int k = 0; k < 4000 && !d.window.player().hasSection(); k++) {
      d.frame();
      pause();
    }
    assertThat(d.window.player().hasSection()).isTrue();
    // It stays until the scene changes.
    d.rest();
    assertThat(d.window.player().hasSection()).isTrue();
    d.key(GLFW.GLFW_KEY_ESCAPE, 0);
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    d.frames(3);
    assertThat(d.window.player().hasSection()).isFalse();
  }

  @Test
  void aRockWithoutAShapeIsSaidNotHidden() {
    Scene broken = Scenes.small();
    open(broken, (s, shapes, depth, watch) -> {
      throw new IllegalStateException("'block' has no shape: the file is gone.");
    });
    d.rest();
    assertThat(d.bench.report()).isEmpty();
    assertThat(d.bench.found().orElseThrow().trouble().orElseThrow()).contains("has no shape");
  }

  /** Shapes are not made anew when only a place changes. */
  @Test
  void movingReusesShapes() {
    open(Scenes.small(), WindowCase::nothingFound);
    Shapes before = d.bench.stones().shapes(d.bench.scene());
    d.click("block");
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    Shapes after = d.bench.stones().shapes(d.bench.scene());
    assertThat(after.bodies().get("block")).isSameAs(before.bodies().get("block"));
  }
}
