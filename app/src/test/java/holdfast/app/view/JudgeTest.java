package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.app.report.SeverityLook;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckReport.PushLine;
import holdfast.engine.check.CheckWatch;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** The judging thread: two steps, only the latest scene, nothing stale. Expected answers follow from its own promise. */
class JudgeTest {
  private static final Scene SCENE = Scenes.small();
  private static final Shapes SHAPES = Shapes.of(SCENE, MeshLoader.NONE);
  private static final Finding NOT_ASKED = new Finding(Code.UNDECIDED, Severity.FAIL, List.of("the heap"), OptionalDouble.empty(),
      OptionalDouble.empty(), "", Optional.empty(), "Pushes were not asked about.", "");
  private static final Finding UNSETTLED = new Finding(Code.UNDECIDED, Severity.FAIL, List.of("block"), OptionalDouble.empty(),
      OptionalDouble.empty(), "", Optional.of(State.DRY), "Whether this heap stays could not be settled.", "");
  private static final Finding FALLS = new Finding(Code.FALLS, Severity.FAIL, List.of("block"), OptionalDouble.empty(),
      OptionalDouble.empty(), "", Optional.empty(), "It falls.", "");

  private static CheckReport report(Scene s, Finding... findings) {
    var verdict = findings.length == 0 ? CheckReport.Verdict.PASSES
        : List.of(findings).contains(FALLS) ? CheckReport.Verdict.FAILS : CheckReport.Verdict.UNDECIDED;
    return new CheckReport(s, verdict, "", List.of(findings), List.of(),
        List.of(new CheckReport.RockLine("block", "dry", 1, 6, 150, List.of(), Optional.empty(), 0)), List.of(), List.of(), List.of(),
        Optional.empty(), List.of());
  }

  private static Optional<Judge.Found> found(CheckReport report) {
    return Optional.of(new Judge.Found(1, Optional.of(report), Optional.empty(), Judge.Depth.STANDING));
  }

  private static void until(BooleanSupplier done) throws InterruptedException {
    for (int i = 0; i < 4000 && !done.getAsBoolean(); i++) Thread.sleep(5);
    assertThat(done.getAsBoolean()).isTrue();
  }

  @Test
  void quickAnswerFirstThenTheFullOne() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    try (Judge judge = new Judge((s, shapes, depth, watch) -> {
      if (depth == Judge.Depth.FULL) go.await();
      return depth == Judge.Depth.FULL ? report(s) : report(s, NOT_ASKED);
    }, () -> { })) {
      judge.ask(SCENE, SHAPES, 7);
      until(() -> judge.found().isPresent());
      assertThat(judge.found().orElseThrow().full()).isFalse();
      assertThat(judge.settled()).isFalse();
      go.countDown();
      until(judge::settled);
      assertThat(judge.found().orElseThrow().report().orElseThrow().verdict()).isEqualTo(CheckReport.Verdict.PASSES);
    }
  }

  /** What keeps up with a rock in the hand is asked of it, and the rest when it is let go. */
  @Test
  void aHeldRockIsAskedWhetherItStandsAndBearsTheTier() throws Exception {
    List<Judge.Depth> asked = Collections.synchronizedList(new ArrayList<>());
    try (Judge judge = new Judge((s, shapes, depth, watch) -> {
      asked.add(depth);
      return report(s);
    }, () -> { })) {
      judge.hold(true);
      judge.ask(SCENE, SHAPES, 1);
      until(() -> judge.found().filter(f -> f.depth() == Judge.Depth.BEARING).isPresent());
      assertThat(judge.at()).as("nothing is being worked out").isEmpty();
      judge.ask(SCENE.withJoints(List.of()), SHAPES, 2);
      until(() -> judge.found().filter(f -> f.revision() == 2 && f.depth() == Judge.Depth.BEARING).isPresent());
      TimeUnit.MILLISECONDS.sleep(100);
      assertThat(asked).containsOnly(Judge.Depth.STANDING, Judge.Depth.BEARING);
      assertThat(judge.settled()).isFalse();
      judge.hold(false);
      until(judge::settled);
      assertThat(asked.subList(asked.size() - 2, asked.size())).containsExactly(Judge.Depth.ROOM, Judge.Depth.FULL);
      assertThat(judge.found().orElseThrow().full()).isTrue();
    }
  }

  /** What an older question was at is never told of the newer one. */
  @Test
  void saysWhatItIsAtWhileItWorks() throws Exception {
    CountDownLatch told = new CountDownLatch(1);
    CountDownLatch go = new CountDownLatch(1);
    try (Judge judge = new Judge((s, shapes, depth, watch) -> {
      watch.best(5);
      watch.at(CheckWatch.Stage.JOINTS, 128, 1471);
      if (s == SCENE) {
        told.countDown();
        TimeUnit.SECONDS.sleep(120);
      } else if (depth == Judge.Depth.FULL) {
        watch.at(CheckWatch.Stage.PUSHES, 0, 0);
        go.await();
      }
      return report(s);
    }, () -> { })) {
      assertThat(judge.at()).isEmpty();
      judge.ask(SCENE, SHAPES, 1);
      assertThat(told.await(20, TimeUnit.SECONDS)).isTrue();
      assertThat(judge.at()).contains("which joints to fix: 5 would do, cheaper sets 128 of 1471");
      judge.ask(SCENE.withJoints(List.of()), SHAPES, 2);
      until(() -> judge.found().filter(f -> f.depth() == Judge.Depth.ROOM).isPresent()
          && judge.at().equals(Optional.of("pushes, supports and the bottom pane")));
      go.countDown();
      until(judge::settled);
      assertThat(judge.at()).isEmpty();
    }
  }

  @Test
  void newerQuestionBreaksOffTheOlderAndItsAnswerIsDropped() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch interrupted = new CountDownLatch(1);
    List<Long> seen = Collections.synchronizedList(new ArrayList<>());
    Scene later = SCENE.withJoints(List.of());
    try (Judge judge = new Judge((s, shapes, depth, watch) -> {
      if (s == SCENE) {
        begun.countDown();
        try {
          TimeUnit.SECONDS.sleep(120);
        } catch (InterruptedException e) {
          interrupted.countDown();
        }
        return report(s, FALLS);
      }
      return report(s);
    }, () -> { })) {
      judge.ask(SCENE, SHAPES, 1);
      assertThat(begun.await(20, TimeUnit.SECONDS)).isTrue();
      judge.ask(later, SHAPES, 2);
      until(() -> {
        judge.found().ifPresent(f -> seen.add(f.revision()));
        return judge.settled();
      });
      assertThat(interrupted.getCount()).as("the older work was interrupted").isZero();
      assertThat(seen).containsOnly(2L);
      assertThat(judge.found().orElseThrow().report().orElseThrow().findings()).isEmpty();
    }
  }

  /** Says at once that all is well; {@code rose} answers for push roses. */
  private static Judge.Work roses(Function<String, List<PushLine>> rose) {
    return new Judge.Work() {
      @Override
      public CheckReport judge(Scene s, Shapes shapes, Judge.Depth depth, CheckWatch watch) {
        return report(s);
      }

      @Override
      public List<PushLine> rose(Scene s, Shapes shapes, String rock) {
        return rose.apply(rock);
      }
    };
  }

  private static List<PushLine> sides(double newtons) {
    return List.of(new PushLine(0, newtons, OptionalDouble.empty(), false, Movement.SLIDES, State.FILLED));
  }

  @Test
  void aPushRoseFollowsTheFullJudgementAndOnlyWhereItIsWanted() throws Exception {
    List<String> asked = Collections.synchronizedList(new ArrayList<>());
    try (Judge judge = new Judge(roses(rock -> {
      asked.add(rock);
      return sides(asked.size());
    }), () -> { })) {
      judge.ask(SCENE, SHAPES, 1);
      until(judge::settled);
      assertThat(judge.awaitsRose()).isFalse();
      TimeUnit.MILLISECONDS.sleep(50);
      assertThat(asked).isEmpty();
      judge.want(Optional.of("block"));
      until(() -> judge.rose().isPresent());
      assertThat(judge.rose()).contains(new Judge.Rose(1, "block", sides(1)));
      judge.want(Optional.empty());
      judge.want(Optional.of("block"));
      assertThat(judge.awaitsRose()).as("it is known").isFalse();
      judge.ask(SCENE.withJoints(List.of()), SHAPES, 2);
      assertThat(judge.rose().filter(r -> r.revision() == 1)).as("of the older scene").isEmpty();
      until(() -> judge.rose().isPresent());
      assertThat(judge.rose()).contains(new Judge.Rose(2, "block", sides(2)));
      assertThat(asked).containsExactly("block", "block");
    }
  }

  /** A rose nobody wants any more is broken off and dropped; one that fails is not asked again. */
  @Test
  void anotherChoiceBreaksOffTheRose() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch interrupted = new CountDownLatch(1);
    List<String> asked = Collections.synchronizedList(new ArrayList<>());
    try (Judge judge = new Judge(roses(rock -> {
      asked.add(rock);
      if (rock.equals("slab")) throw new IllegalStateException("no answer");
      begun.countDown();
      try {
        TimeUnit.SECONDS.sleep(120);
      } catch (InterruptedException e) {
        interrupted.countDown();
      }
      return sides(1);
    }), () -> { })) {
      judge.want(Optional.of("block"));
      judge.ask(SCENE, SHAPES, 1);
      assertThat(begun.await(20, TimeUnit.SECONDS)).isTrue();
      assertThat(judge.settled()).as("the verdict does not wait for it").isTrue();
      assertThat(judge.awaitsRose()).isTrue();
      judge.want(Optional.of("slab"));
      until(() -> judge.rose().isPresent());
      assertThat(interrupted.getCount()).isZero();
      assertThat(judge.rose()).contains(new Judge.Rose(1, "slab", List.of()));
      assertThat(judge.awaitsRose()).isFalse();
      assertThat(judge.found().orElseThrow().full()).isTrue();
      assertThat(asked).containsExactly("block", "slab");
    }
  }

  @Test
  void workThatBreaksOffSaysWhyAndTheNextIsJudged() throws Exception {
    try (Judge judge = new Judge((s, shapes, depth, watch) -> {
      if (s == SCENE) throw new IllegalStateException("'block' has no shape");
      return report(s);
    }, () -> { })) {
      judge.ask(SCENE, SHAPES, 1);
      until(judge::settled);
      assertThat(judge.found().orElseThrow().report()).isEmpty();
      assertThat(judge.found().orElseThrow().trouble()).contains("'block' has no shape");
      judge.ask(SCENE.withJoints(List.of()), SHAPES, 2);
      until(judge::settled);
      assertThat(judge.found().orElseThrow().report()).isPresent();
    }
  }

  @Test
  void whatIsNotAskedYetIsNeitherAFindingNorAPass() {
    CheckReport open = report(SCENE, NOT_ASKED);
    assertThat(SoFar.findings(open)).isEmpty();
    assertThat(SoFar.look(open)).isEmpty();
    for (boolean held : new boolean[] {false, true}) {
      assertThat(SoFar.words(open, Judge.Depth.STANDING, held)).contains("No verdict yet").contains("Pushes, presses");
    }
    assertThat(SoFar.words(open, Judge.Depth.BEARING, true)).contains("No verdict yet").contains("when you let go");
    assertThat(SoFar.words(open, Judge.Depth.ROOM, false)).contains("No verdict yet").contains("still being asked");
    assertThat(HeldMark.words("block", found(open))).isEqualTo("stays so far");
    CheckReport bad = report(SCENE, NOT_ASKED, FALLS);
    assertThat(SoFar.findings(bad)).containsExactly(FALLS);
    assertThat(SoFar.look(bad)).contains(SeverityLook.FAIL);
    assertThat(SoFar.words(bad, Judge.Depth.STANDING, false)).startsWith("Not safe as it is: falls");
    assertThat(HeldMark.words("block", found(bad))).isEqualTo("falls");
    assertThat(HeldMark.words("slab", found(bad))).isEqualTo("block: falls");
    CheckReport unsettled = report(SCENE, NOT_ASKED, UNSETTLED);
    assertThat(SoFar.look(unsettled)).as("undecided is no fail, and no pass").contains(SeverityLook.UNDECIDED);
    assertThat(SoFar.words(unsettled, Judge.Depth.STANDING, false)).contains("treat it as falling");
    assertThat(HeldMark.words("block", found(unsettled))).isEqualTo("not decided");
    assertThat(HeldMark.words("block", Optional.empty())).isEqualTo("judging…");
    Judge.Found broken = new Judge.Found(1, Optional.empty(), Optional.of("no shape"), Judge.Depth.STANDING);
    assertThat(HeldMark.words("block", Optional.of(broken))).isEqualTo("not judged");
  }
}
