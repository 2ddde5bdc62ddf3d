package holdfast.engine.statics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Gravity;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Why every push is asked whether the heap stays, however far the force balance would let it grow: a stone on the ground
 * between two others that it just touches. The balance may squeeze it between them as hard as it likes and hold it by their
 * friction, so it sets no limit at all; but nothing squeezes it, and it moves as if it stood alone (derived: friction on the
 * ground, moments about the edge). No multiple of the tier makes a bound a verdict.
 */
class BoundIsNoVerdictTest {
  private static final double A = 0.1;
  private static final double W = 20;
  private static final double CAP = 1000;

  /** A cube between walls at y = 0 and y = A, all of friction {@code mu}. */
  private static PartJudge between(double mu) {
    Vec3 middle = new Vec3(A / 2, A / 2, A / 2);
    List<Link> links = new ArrayList<>();
    links.add(new Link.Bearing(0, Heap.GROUND, Vec3.Z,
        List.of(Vec3.ZERO, new Vec3(A, 0, 0), new Vec3(A, A, 0), new Vec3(0, A, 0)), mu));
    links.add(new Link.Bearing(0, Heap.GROUND, Vec3.Y,
        List.of(Vec3.ZERO, new Vec3(0, 0, A), new Vec3(A, 0, A), new Vec3(A, 0, 0)), mu));
    links.add(new Link.Bearing(0, Heap.GROUND, Vec3.Y.negated(),
        List.of(new Vec3(0, A, 0), new Vec3(A, A, 0), new Vec3(A, A, A), new Vec3(0, A, A)), mu));
    Heap heap = new Heap(List.of(new Heap.Body("stone", middle, A * Math.sqrt(3), W / Gravity.G)), links);
    return new PartJudge(heap.part(List.of(0)), List.of(new Wrench(new Vec3(0, 0, -W), Vec3.ZERO)));
  }

  private static List<Wrench> push(double height) {
    return List.of(Wrench.of(Vec3.X, new Vec3(A / 2, A / 2, height), new Vec3(A / 2, A / 2, A / 2)));
  }

  private static double stays(PartJudge judge, List<Wrench> live) {
    return LoadCase.least(List.of(new LoadCase(State.DRY, judge, live)), CAP, 1e-4).factor();
  }

  @Test
  void pushedLowItSlidesByTheGroundAlone() {
    PartJudge judge = between(0.4);
    List<Wrench> low = push(0.3 * A);
    assertThat(judge.atMost(low, CAP)).isInstanceOf(Margin.Beyond.class);
    assertThat(stays(judge, low)).isCloseTo(0.4 * W, within(1e-3 * W));
  }

  @Test
  void pushedHighItTipsByItsWeightAlone() {
    PartJudge judge = between(0.8);
    List<Wrench> high = push(0.9 * A);
    assertThat(judge.atMost(high, CAP)).isInstanceOf(Margin.Beyond.class);
    // derived: W a / 2 over the height
    assertThat(stays(judge, high)).isCloseTo(W * A / 2 / (0.9 * A), within(1e-3 * W));
  }
}
