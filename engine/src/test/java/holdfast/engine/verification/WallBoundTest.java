package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.balance.PushBound;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.HeapAssembly;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Vec3;
import holdfast.model.io.LooseBlocks;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Bounds of dry walls under a sideways force on every block, with friction at corners as the published limit analyses have it.
 * Ferris and Tin-Loi 2001, Int. J. Mech. Sci. 43:209, as in {@link WallRows}; digits from memory, recomputed 0.642859,
 * 0.403694 and 0.331948.
 */
class WallBoundTest {
  /** Of a factor; the table has five digits. */
  private static final double DIGITS = 2e-5;

  private static Margin.Limited bound(double[][] courses, double thicknessM, Vec3 along, boolean fine) {
    List<Solid> solids = new ArrayList<>();
    List<Heap.Body> bodies = new ArrayList<>();
    List<Wrench> dead = new ArrayList<>();
    List<Wrench> live = new ArrayList<>();
    for (LooseBlocks.Block b : WallRows.wall(courses, thicknessM, along).blocks()) {
      Hull hull = RandomHeap.hull(b.verticesM());
      Solid solid = new Solid(b.id(), Solid.Surface.ROCK, b.fixed(), List.of(hull));
      solids.add(solid);
      if (b.fixed()) continue;
      MassProperties m = Polyhedra.massProperties(hull);
      double n = m.volumeM3() * b.densityKgM3() * 9.81;
      bodies.add(new Heap.Body(b.id(), m.centre(), solid.sizeM(), n / 9.81));
      dead.add(new Wrench(new Vec3(0, 0, -n), Vec3.ZERO));
      live.add(new Wrench(along.times(n), Vec3.ZERO));
    }
    Heap heap = new Heap(bodies, HeapAssembly.bearings(
        solids, ContactFinder.find(solids, ContactRules.DEFAULT).contacts(), (a, b) -> 0.65, 0));
    PushBound of = new PushBound(heap, dead);
    return (Margin.Limited) (fine ? of.fine(live, 100) : of.coarse(live, 100));
  }

  private static void is(double expected, double[][] courses) {
    Margin.Limited fine = bound(courses, 0.2, Vec3.X, true);
    assertThat(fine.factor()).isCloseTo(expected, within(DIGITS));
    assertThat(fine.bound()).isCloseTo(expected, within(DIGITS));
    Margin.Limited coarse = bound(courses, 0.2, Vec3.X, false);
    assertThat(coarse.factor()).isLessThanOrEqualTo(expected + DIGITS);
    assertThat(coarse.bound()).isBetween(expected - DIGITS, coarse.factor() * 1.0102);
  }

  @Test
  void wallsOfThePublishedTable() {
    is(0.64286, WallRows.WALL_1);
    is(0.40369, WallRows.WALL_3);
    is(0.33195, WallRows.WALL_4);
  }

  /** Out of its plane a wall goes over its base edge, at thickness over height (derived). */
  @Test
  void aWallPushedOutOfItsPlane() {
    Margin.Limited m = bound(WallRows.WALL_1, 0.1, Vec3.Y, true);
    assertThat(m.factor()).isCloseTo(0.1 / (6 * 0.175), within(2e-6));
    assertThat(m.bound()).isCloseTo(0.1 / (6 * 0.175), within(2e-6));
  }
}
