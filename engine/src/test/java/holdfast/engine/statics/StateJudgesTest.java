package holdfast.engine.statics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.statics.StateJudges.Judged;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.model.geom.Vec3;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Dry friction knows no size of force: what rests under some loads rests under all of them made so many times as large, with
 * forces so many times as large (exact: balance and Coulomb's limits are homogeneous). A bond has a strength of its own.
 */
class StateJudgesTest {
  private static final double A = 0.1;
  private static final double W = 9.81;

  private static Heap cube(Link link) {
    return new Heap(List.of(new Heap.Body("cube", new Vec3(0, 0, A / 2), A, W / 9.81)), List.of(link));
  }

  private static final List<Vec3> FACE = List.of(
      new Vec3(-A / 2, -A / 2, 0), new Vec3(A / 2, -A / 2, 0), new Vec3(A / 2, A / 2, 0), new Vec3(-A / 2, A / 2, 0));

  private static List<Wrench> weight(double newtons, double offM) {
    return List.of(Wrench.of(new Vec3(0, 0, -newtons), new Vec3(offM, 0, 0), Vec3.ZERO));
  }

  private static List<Judged> judged(Heap heap, Map<State, List<Wrench>> loads) {
    return StateJudges.all(heap.separate(), loads, 1, new Recall()).get(0);
  }

  @Test
  void aWallWeighsTheSameWayDryFilledAndDrained() {
    SceneHeap wall = SceneHeap.of(Family.WALL.of(10, 2), Shapes.of(Family.WALL.of(10, 2), MeshLoader.NONE).placed());
    List<Judged> all = StateJudges.all(wall.heap().separate(), wall.weights().loads(), 2, new Recall()).get(0);
    assertThat(all).extracting(Judged::state).isEqualTo(wall.weights().states());
    for (Judged j : all) {
      PartJudge alone = new PartJudge(j.judge().part(), wall.weights().loads(j.state()));
      assertThat(j.judge().dead()).isEqualTo(alone.dead());
      assertThat(j.judge().safe()).as("%s", j.state()).isEqualTo(alone.safe()).isTrue();
      Forces forces = ((Rest.Stays) j.judge().rest()).forces();
      for (Wrench left : forces.unbalance(j.judge().heap(), j.judge().dead())) {
        assertThat(left.force().norm()).as("%s", j.state()).isLessThan(1e-6 * j.judge().deadN());
      }
    }
  }

  @Test
  void tenTimesTheWeightBearsTenTimesThePush() {
    Map<State, List<Wrench>> loads = new LinkedHashMap<>();
    loads.put(State.DRY, weight(W, 0));
    loads.put(State.DRAINED, weight(10 * W, 0));
    List<Judged> all = judged(cube(new Link.Bearing(0, Heap.GROUND, Vec3.Z, FACE, 0.6)), loads);
    double[] tips = all.stream().mapToDouble(j -> LoadCase.least(
        List.of(new LoadCase(j.state(), j.judge(), List.of(Wrench.of(Vec3.X, new Vec3(0, 0, A), new Vec3(0, 0, A / 2))))),
        1000, 1e-4).factor()).toArray();
    // derived: W a / 2 over a, moments about the edge
    assertThat(tips[0]).isCloseTo(W / 2, within(1e-3 * W));
    assertThat(tips[1]).isCloseTo(10 * W / 2, within(1e-2 * W));
    assertThat(((Rest.Stays) all.get(1).judge().rest()).forces().links().get(0).normalN()).isCloseTo(10 * W, within(1e-6 * W));
  }

  @Test
  void aWeightThatHasMovedIsJudgedAnew() {
    Map<State, List<Wrench>> loads = new LinkedHashMap<>();
    loads.put(State.FILLED, weight(W, 0));
    // Past its edge: it falls, whatever its weight was before.
    loads.put(State.HALF, weight(2 * W, 0.6 * A));
    List<Judged> all = judged(cube(new Link.Bearing(0, Heap.GROUND, Vec3.Z, FACE, 0.6)), loads);
    assertThat(all).extracting(j -> j.judge().safe()).containsExactly(true, false);
  }

  @Test
  void aBondThatHoldsTheWeightNeedNotHoldTwice() {
    // Hung from above by a bond of 1.5 times its weight.
    Link.Bond bond = new Link.Bond(0, Heap.GROUND, Vec3.Z.negated(), FACE, A * A, 1.5 * W / (A * A), 1e6, 1e6, true);
    Map<State, List<Wrench>> loads = new LinkedHashMap<>();
    loads.put(State.FILLED, weight(W, 0));
    loads.put(State.DRAINED, weight(2 * W, 0));
    assertThat(judged(cube(bond), loads)).extracting(j -> j.judge().safe()).containsExactly(true, false);
  }

  @Test
  void theFirstUnsafeOneEndsItOnAnyNumberOfThreads() {
    Map<State, List<Wrench>> loads = new LinkedHashMap<>();
    loads.put(State.DRY, weight(W, 0));
    loads.put(State.FILLED, weight(0.6 * W, 0));
    loads.put(State.HALF, weight(0.7 * W, 0.6 * A));
    loads.put(State.DRAINED, weight(1.2 * W, 0.55 * A));
    Heap heap = cube(new Link.Bearing(0, Heap.GROUND, Vec3.Z, FACE, 0.6));
    for (int threads : new int[] {1, 4}) {
      List<Judged> some = StateJudges.toFirstUnsafe(heap.separate(), loads, threads, new Recall()).get(0);
      assertThat(some).extracting(Judged::state).containsExactly(State.DRY, State.FILLED, State.HALF);
      assertThat(some).extracting(j -> j.judge().safe()).containsExactly(true, true, false);
    }
  }

  @Test
  void theLightestOfStatesInProportionGoverns() {
    Map<State, List<Wrench>> loads = new LinkedHashMap<>();
    loads.put(State.DRY, weight(W, 0));
    loads.put(State.FILLED, weight(0.6 * W, 0));
    loads.put(State.HALF, weight(0.8 * W, 0.1 * A));
    loads.put(State.DRAINED, weight(1.2 * W, 0));
    List<Judged> all = judged(cube(new Link.Bearing(0, Heap.GROUND, Vec3.Z, FACE, 0.6)), loads);
    assertThat(StateJudges.governing(all)).extracting(Judged::state).containsExactly(State.FILLED, State.HALF);
  }

  /** Definition: every part and state is answered for, also by judgements recalled from an equal heap made before. */
  @Test
  void whatIsRecalledAnswersForItsPart() {
    Recall recall = new Recall();
    for (int round = 0; round < 2; round++) {
      SceneHeap towers = SceneHeap.of(Family.TOWERS.of(15, 2), Shapes.of(Family.TOWERS.of(15, 2), MeshLoader.NONE).placed());
      List<Heap.Part> parts = towers.heap().separate();
      List<List<Judged>> all = StateJudges.toFirstUnsafe(parts, towers.weights().loads(), 2, recall);
      assertThat(all).hasSameSizeAs(parts);
      for (int p = 0; p < parts.size(); p++) {
        assertThat(all.get(p)).extracting(Judged::state).isEqualTo(towers.weights().states());
        assertThat(all.get(p)).extracting(j -> j.judge().part()).containsOnly(parts.get(p));
      }
    }
  }
}
