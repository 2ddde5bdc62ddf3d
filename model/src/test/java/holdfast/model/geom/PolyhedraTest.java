package holdfast.model.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PolyhedraTest {
  @Test
  void regularSolids() {
    double s5 = Math.sqrt(5);
    double phi = (1 + s5) / 2;
    // Exact closed forms for edge 1 (derived; the decimals are those of checks/polyhedra.csv).
    double[] volume = {1 / (6 * Math.sqrt(2)), 1, Math.sqrt(2) / 3, 5 * (3 + s5) / 12, (15 + 7 * s5) / 4};
    double[] decimals = {0.117851130198, 1.000000000000, 0.471404520791, 2.181694990625, 7.663118960625};
    double[] inertiaOverMass = {1.0 / 20, 1.0 / 6, 1.0 / 10, phi * phi / 10, (39 * phi + 28) / 150};
    double[] inertiaDecimals = {0.050000000000, 0.166666666667, 0.100000000000, 0.261803398875, 0.607355503742};
    for (int i = 0; i < 5; i++) {
      assertThat(volume[i]).isCloseTo(decimals[i], within(1e-12));
      assertThat(inertiaOverMass[i]).isCloseTo(inertiaDecimals[i], within(1e-12));
      Pose pose = Solids.anyPose(new Random(i));
      MassProperties m = Polyhedra.massProperties(Solids.hull(Solids.moved(Solids.regular().get(i), pose)));
      assertThat(m.volumeM3()).isCloseTo(volume[i], within(1e-13 * 8));
      Mat3 t = m.inertia().times(1 / m.volumeM3());
      assertThat(t.xx()).isCloseTo(inertiaOverMass[i], within(1e-12));
      assertThat(t.yy()).isCloseTo(inertiaOverMass[i], within(1e-12));
      assertThat(t.zz()).isCloseTo(inertiaOverMass[i], within(1e-12));
      assertThat(t.xy()).isCloseTo(0, within(1e-12));
      assertThat(t.xz()).isCloseTo(0, within(1e-12));
      assertThat(t.yz()).isCloseTo(0, within(1e-12));
    }
  }

  @Test
  void rightTetrahedron() {
    // checks/README.md, "Water, minerals, solids" (derived): V 10, centre (1.25, 1, 0.75), moments about the centre.
    List<Vec3> p = List.of(Vec3.ZERO, new Vec3(5, 0, 0), new Vec3(0, 4, 0), new Vec3(0, 0, 3));
    MassProperties m = Polyhedra.massProperties(Solids.hull(p));
    assertThat(m.volumeM3()).isCloseTo(10, within(1e-12));
    assertThat(m.centre().distanceTo(new Vec3(1.25, 1, 0.75))).isLessThan(1e-13);
    assertThat(m.inertia().xx()).isCloseTo(9.375, within(1e-12));
    assertThat(m.inertia().yy()).isCloseTo(12.75, within(1e-12));
    assertThat(m.inertia().zz()).isCloseTo(15.375, within(1e-12));
    assertThat(m.inertia().xy()).isCloseTo(2.5, within(1e-12));
    assertThat(m.inertia().xz()).isCloseTo(1.875, within(1e-12));
    assertThat(m.inertia().yz()).isCloseTo(1.5, within(1e-12));
  }

  @Test
  void cutsAddUp() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      Hull h = Solids.hull(Solids.cobble(random, 60, 0.1));
      Vec3 n = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      double d = 0.04 * (random.nextDouble() - 0.5);
      Hull below = Polyhedra.clip(h, n, d).orElseThrow();
      Hull above = Polyhedra.clip(h, n.negated(), -d).orElseThrow();
      double whole = Polyhedra.volume(h);
      assertThat(Polyhedra.volume(below) + Polyhedra.volume(above)).as("seed %d", seed)
          .isCloseTo(whole, within(Tolerances.FLAT * whole));
      assertThat(below.reach(n)).isCloseTo(d, within(1e-12));
    }
  }

  @Test
  void cutOfACubeAcrossACorner() {
    // x + y + z <= t of the unit cube: t^3/6 up to 1, then less 3 (t-1)^3/6 up to 2 (Irwin-Hall distribution, exact).
    Hull cube = Solids.boxHull(0, 0, 0, 1, 1, 1);
    Vec3 n = new Vec3(1, 1, 1).unit();
    for (double t : new double[] {0.3, 0.9, 1.4, 1.9}) {
      double expected = (Math.pow(t, 3) - 3 * Math.pow(Math.max(0, t - 1), 3)) / 6;
      Hull part = Polyhedra.clip(cube, n, t / Math.sqrt(3)).orElseThrow();
      assertThat(Polyhedra.volume(part)).isCloseTo(expected, within(1e-12));
    }
    assertThat(Polyhedra.clip(cube, n, -0.01)).isEmpty();
    assertThat(Polyhedra.clip(cube, n, 1e-9)).isEmpty();
    assertThat(Polyhedra.clip(cube, n, 2).orElseThrow()).isSameAs(cube);
    assertThat(Polyhedra.clip(cube, Vec3.Z, 1).orElseThrow()).isSameAs(cube);
    assertThat(Polyhedra.clip(cube, Vec3.Z, 0)).isEmpty();
  }

  @Test
  void boxesMeetInABox() {
    Hull a = Solids.boxHull(0, 0, 0, 1, 1, 1);
    Optional<Hull> both = Polyhedra.intersect(a, Solids.boxHull(0.5, 0.25, -1, 2, 0.5, 1.75));
    assertThat(Polyhedra.volume(both.orElseThrow())).isCloseTo(0.5 * 0.5 * 0.75, within(1e-14));
    assertThat(both.orElseThrow().faces()).hasSize(6);
    assertThat(Polyhedra.intersect(a, Solids.boxHull(1, 0, 0, 1, 1, 1))).as("touching in a face").isEmpty();
    assertThat(Polyhedra.intersect(a, Solids.boxHull(1, 1, 1, 1, 1, 1))).as("touching in a corner").isEmpty();
    assertThat(Polyhedra.intersect(a, Solids.boxHull(3, 0, 0, 1, 1, 1))).isEmpty();
    assertThat(Polyhedra.volume(Polyhedra.intersect(a, a).orElseThrow())).isCloseTo(1, within(1e-14));
  }

  @Test
  void commonPartOfACubeAndItselfTurnedAboutZ() {
    // Unit square turned by 45 degrees about its middle: regular octagon of area 2 (sqrt 2 - 1) (exact).
    Hull a = Solids.boxHull(-0.5, -0.5, 0, 1, 1, 1);
    Hull b = a.moved(new Pose(Vec3.ZERO, Quat.about(Vec3.Z, Math.PI / 4)));
    Hull both = Polyhedra.intersect(a, b).orElseThrow();
    assertThat(Polyhedra.volume(both)).isCloseTo(2 * (Math.sqrt(2) - 1), within(1e-13));
    assertThat(both.faces()).hasSize(10);
  }

  @Test
  void hullsThatShareAPlaneMeetInAllOfTheirCommonFace() {
    // Cutting before or after intersecting is the same; cut first, both have a face in the plane of the cut.
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      Hull a = Solids.hull(Solids.cobble(random, 40, 0.1));
      Hull b = Solids.hull(Solids.cobble(random, 40, 0.1)).moved(
          new Pose(new Vec3(0.06 * random.nextDouble(), 0, 0), Solids.anyPose(random).turn()));
      Vec3 n = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      double first = Polyhedra.clip(a, n, 0).flatMap(p -> Polyhedra.clip(b, n, 0).flatMap(q -> Polyhedra.intersect(p, q)))
          .map(Polyhedra::volume).orElse(0.0);
      double last = Polyhedra.intersect(a, b).flatMap(p -> Polyhedra.clip(p, n, 0)).map(Polyhedra::volume).orElse(0.0);
      assertThat(first).as("seed %d", seed).isCloseTo(last, within(1e-9));
    }
  }

  @Test
  void commonPartIsTheSameFromBothSidesAndLiesInBoth() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      Hull a = Solids.hull(Solids.cobble(random, 40, 0.1));
      Hull b = Solids.hull(Solids.cobble(random, 40, 0.1)).moved(
          new Pose(new Vec3(0.1 * random.nextDouble(), 0, 0), Solids.anyPose(random).turn()));
      Optional<Hull> ab = Polyhedra.intersect(a, b);
      Optional<Hull> ba = Polyhedra.intersect(b, a);
      assertThat(ab.isPresent()).isEqualTo(ba.isPresent());
      if (ab.isEmpty()) continue;
      double v = Polyhedra.volume(ab.get());
      assertThat(v).as("seed %d", seed).isCloseTo(Polyhedra.volume(ba.get()), within(1e-11));
      // The same part by successive cuts: a second route to the figure.
      Optional<Hull> cut = Optional.of(a);
      for (Hull.Face f : b.faces()) cut = cut.flatMap(h -> Polyhedra.clip(h, f.normal(), f.offset()));
      assertThat(v).as("seed %d", seed).isCloseTo(cut.map(Polyhedra::volume).orElse(0.0), within(1e-10));
    }
  }
}
