package holdfast.engine.statics.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Work for a thread that is interrupted ends before its next question and leaves no answer (definition). What is counted is
 * questions, not seconds.
 */
class InterruptedTest {
  private static final Scene SCENE = Family.PILE.of(6, 3);
  private static final SceneHeap HEAP = SceneHeap.of(SCENE, Shapes.of(SCENE, MeshLoader.NONE).placed());
  private static final List<Wrench> LOADS = HEAP.weights().loads(State.DRY);
  private static final Heap.Part PART = HEAP.heap().separate().get(0);

  /** The mark must not reach the next test. */
  @AfterEach
  void clear() {
    Thread.interrupted();
  }

  private static Resting resting() {
    return new Resting(HEAP.heap(), ForceBalance.typicalN(LOADS));
  }

  /** Rest in which every contact is at its limit, as a heap has that is asked with other stiffnesses. */
  private static Rest slipped() {
    Rest.Stays rest = (Rest.Stays) resting().under(LOADS);
    RestState s = rest.state().copy();
    for (int i = 0; i < s.limit.length; i++) s.held[3 * i] = s.limit[i];
    return new Rest.Stays(rest.forces(), s);
  }

  @Test
  void uninterruptedEveryDrawIsAsked() {
    AtomicInteger asked = new AtomicInteger();
    Rest rest = slipped();
    assertThat(StiffnessCheck.confirmed(rest, draw -> {
      asked.incrementAndGet();
      return rest;
    })).isSameAs(rest);
    assertThat(asked.get()).isEqualTo(Tolerances.STIFFNESS_DRAWS);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 5, 31})
  void noDrawIsBegunAfterAnInterruption(int last) {
    AtomicInteger asked = new AtomicInteger();
    Rest rest = slipped();
    assertThatThrownBy(() -> StiffnessCheck.confirmed(rest, draw -> {
      if (asked.incrementAndGet() == last) Thread.currentThread().interrupt();
      return rest;
    })).isInstanceOf(IllegalStateException.class).hasMessageContaining("interrupted");
    assertThat(asked.get()).isEqualTo(last);
  }

  /** A single question is left between two of its steps too. */
  @Test
  void restIsNotSoughtAnyFurther() {
    Resting resting = resting();
    Rest.Stays before = (Rest.Stays) resting.under(LOADS);
    int solves = resting.solves();
    assertThat(solves).isPositive();
    Thread.currentThread().interrupt();
    assertThatThrownBy(() -> resting.under(LOADS)).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> resting.then(before.state(), LOADS)).isInstanceOf(IllegalStateException.class);
    assertThat(resting.solves()).as("no solve was begun").isEqualTo(solves);
    Thread.interrupted();
    assertThat(((Rest.Stays) resting.under(LOADS)).forces()).as("asked again").isEqualTo(before.forces());
  }

  /** Neither a judgement nor what it bears; asked again, the same is found as by one who was never interrupted. */
  @Test
  void nothingIsKept() {
    Recall recall = new Recall();
    Thread.currentThread().interrupt();
    assertThatThrownBy(() -> recall.judge(PART, LOADS)).isInstanceOf(IllegalStateException.class);
    assertThat(recall.size()).isZero();
    Thread.interrupted();
    PartJudge judge = recall.judge(PART, LOADS);
    PartJudge fresh = new PartJudge(PART, LOADS);
    assertThat(judge.safe()).isTrue();
    assertThat(judge.rest()).usingRecursiveComparison().isEqualTo(fresh.rest());

    List<Wrench> push = PART.of(new Push(0, HEAP.rocks().get(0).centre(), holdfast.model.geom.Vec3.X).unit(HEAP.heap()));
    boolean bears = judge.refuses(push, 1).isEmpty();
    Thread.currentThread().interrupt();
    assertThatThrownBy(() -> judge.refuses(push, 1)).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> judge.atMost(push, 100)).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> judge.range(List.of(0))).isInstanceOf(IllegalStateException.class);
    Thread.interrupted();
    assertThat(judge.refuses(push, 1).isEmpty()).isEqualTo(bears);
    assertThat(judge.atMost(push, 100)).usingRecursiveComparison().isEqualTo(fresh.atMost(push, 100));
  }
}
