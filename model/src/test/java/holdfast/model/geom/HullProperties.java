package holdfast.model.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What holds for any stone; jqwik prints the seed of a failing try. */
class HullProperties {
  @Property(tries = 150)
  void turningAStoneTurnsItsInertiaAndKeepsItsVolume(@ForAll long seed, @ForAll @IntRange(min = 8, max = 120) int n) {
    Random random = new Random(seed);
    List<Vec3> points = Solids.cobble(random, n, 0.1);
    Pose pose = Solids.anyPose(random);
    MassProperties here = Polyhedra.massProperties(Solids.hull(points));
    MassProperties there = Polyhedra.massProperties(Solids.hull(Solids.moved(points, pose)));
    assertThat(there.volumeM3()).isCloseTo(here.volumeM3(), within(Tolerances.FLAT * here.volumeM3()));
    assertThat(there.centre().distanceTo(pose.apply(here.centre()))).isLessThan(Tolerances.FLAT * 0.2);
    Mat3 r = Mat3.of(pose.turn());
    Mat3 d = r.times(here.inertia()).times(r.transposed()).plus(there.inertia().times(-1)).times(1 / here.volumeM3());
    for (double e : new double[] {d.xx(), d.yy(), d.zz(), d.xy(), d.xz(), d.yz()}) {
      assertThat(e).isCloseTo(0, within(Tolerances.FLAT * 0.01));
    }
  }

  @Property(tries = 150)
  void everyHullIsSound(@ForAll long seed, @ForAll @IntRange(min = 4, max = 200) int n) {
    Random random = new Random(seed);
    // Coordinates on a coarse lattice: many duplicates, many points in common lines and planes.
    int steps = 2 + random.nextInt(6);
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      points.add(new Vec3(random.nextInt(steps), random.nextInt(steps), random.nextInt(steps)).times(0.03));
    }
    List<Vec3> turned = random.nextBoolean() ? points : Solids.moved(points, Solids.anyPose(random));
    HullResult r = HullBuilder.build(turned);
    if (r instanceof HullResult.Solid s) assertThat(HullBuilder.sound(s.hull(), turned, 0.03 * (steps - 1))).isTrue();
    // Lattice points either span whole cells or lie exactly in a plane: their hull has a sixth of a cell at least.
    if (r instanceof HullResult.Solid s) assertThat(Polyhedra.volume(s.hull())).isGreaterThan(0.16 * 0.03 * 0.03 * 0.03);
  }
}
