package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
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
import org.junit.jupiter.api.Test;

/** The judging thread: two steps, only the latest scene, nothing stale. Expected answers follow from its own promise. */
class JudgeTest {
  private static final Scene SCENE = Scenes.small();
  private static final Shapes SHAPES = Shapes.of(SCENE, MeshLoader.NONE);
  private static final Finding NOT_ASKED = new Finding(Code.UNDECIDED, Severity.FAIL, List.of("the heap"), OptionalDouble.empty(),
      OptionalDouble.empty(), "", Optional.empty(), "Pushes were not asked about.", "");
  private static final Finding FALLS = new Finding(Code.FALLS, Severity.FAIL, List.of("block"), OptionalDouble.empty(),
      OptionalDouble.empty(), "", Optional.empty(), "It falls.", "");

  private static CheckReport report(Scene s, Finding... findings) {
    var verdict = findings.length == 0 ? CheckReport.Verdict.PASSES : CheckReport.Verdict.UNDECIDED;
    return new CheckReport(s, verdict, "", List.of(findings), List.of(),
        List.of(new CheckReport.RockLine("block", "dry", 1, 6, 150, List.of(), Optional.empty(), 0)), List.of(), List.of(), List.of(),
        Optional.empty(), List.of());
  }

  private static void until(BooleanSupplier done) throws InterruptedException {
    for (int i = 0; i < 4000 && !done.getAsBoolean(); i++) Thread.sleep(5);
    assertThat(done.getAsBoolean()).isTrue();
  }

  @Test
  void quickAnswerFirstThenTheFullOne() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    try (Judge judge = new Judge((s, shapes, full) -> {
      if (full) go.await();
      return full ? report(s) : report(s, NOT_ASKED);
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

  @Test
  void newerQuestionBreaksOffTheOlderAndItsAnswerIsDropped() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch interrupted = new CountDownLatch(1);
    List<Long> seen = Collections.synchronizedList(new ArrayList<>());
    Scene later = SCENE.withJoints(List.of());
    try (Judge judge = new Judge((s, shapes, full) -> {
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

  @Test
  void workThatBreaksOffSaysWhyAndTheNextIsJudged() throws Exception {
    try (Judge judge = new Judge((s, shapes, full) -> {
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
    assertThat(SoFar.fails(open)).isFalse();
    assertThat(SoFar.words(open)).contains("No verdict yet");
    CheckReport bad = report(SCENE, NOT_ASKED, FALLS);
    assertThat(SoFar.findings(bad)).containsExactly(FALLS);
    assertThat(SoFar.fails(bad)).isTrue();
    assertThat(SoFar.words(bad)).startsWith("Not safe as it is: falls");
  }
}
