package holdfast.engine.statics.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A cube of 100 mm and 1 kg on the ground, friction 0.6, with a rod of 8 mm up its middle, glued or not. A rod carries shear,
 * bending and, glued, pull, but no twist; so what a cube bears must not be less with a rod than without.
 */
class RodTest {
  private static final double A = 0.1;
  private static final double W = 9.81;
  private static final double MU = 0.6;
  /** What the rod bears in bending, newton metres. */
  private static final double BENDING = 0.1;
  /** Mean distance of a unit square from its centre: the arm of its twist under even pressure (derived). */
  private static final double ARM = 0.382598;

  private static PartJudge cube(Link... rods) {
    List<Vec3> foot = List.of(
        new Vec3(-A / 2, -A / 2, 0), new Vec3(A / 2, -A / 2, 0), new Vec3(A / 2, A / 2, 0), new Vec3(-A / 2, A / 2, 0));
    List<Link> links = new ArrayList<>(List.of(new Link.Bearing(0, Heap.GROUND, Vec3.Z, foot, MU)));
    links.addAll(List.of(rods));
    Heap heap = new Heap(List.of(new Heap.Body("cube", new Vec3(0, 0, A / 2), A * Math.sqrt(3), W / 9.81)), links);
    return new PartJudge(heap.part(List.of(0)), List.of(new Wrench(new Vec3(0, 0, -W), Vec3.ZERO)));
  }

  private static Link.Rod rod(double pullN) {
    return new Link.Rod(0, Heap.GROUND, Vec3.Z, Vec3.ZERO, 0.008, 1000, BENDING, pullN);
  }

  private static double bears(PartJudge judge, Wrench live, double cap) {
    return LoadCase.least(List.of(new LoadCase(State.DRY, judge, List.of(live))), cap, 1e-3).factor();
  }

  @Test
  void aGluedRodTakesNoTwistAndNoFrictionAway() {
    Wrench twist = new Wrench(Vec3.ZERO, new Vec3(0, 0, 1));
    // The rod's hundredth of the weight and the search's thousandth are what it may read less.
    double expected = ARM * MU * W * A;
    for (PartJudge judge : List.of(cube(), cube(rod(0)), cube(rod(100)))) {
      assertThat(judge.safe()).isTrue();
      assertThat(bears(judge, twist, 10)).isBetween(0.985 * expected, 1.0001 * expected);
    }
  }

  @Test
  void aGluedRodHoldsTheCubeDown() {
    // Pushed at the top it tips about an edge at W / 2, with the rod's bending on top; glued with 5 N of pull, by half of that
    // more, since weight and rod have the same arm (derived: moments about the edge).
    double top = A;
    Wrench push = Wrench.of(Vec3.X, new Vec3(0, 0, top), new Vec3(0, 0, A / 2));
    assertThat(bears(cube(rod(0)), push, 100)).isCloseTo(W / 2 + BENDING / top, within(0.02 * W));
    // Pull and bending do not reach their limits together, and the first one ends it: less than both, to the safe side.
    double most = (W + 5) / 2 + BENDING / top;
    assertThat(bears(cube(rod(5)), push, 100)).isBetween(0.9 * most, most);
  }
}
