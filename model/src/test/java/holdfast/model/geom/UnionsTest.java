package holdfast.model.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Expected values: sums of disjoint boxes by the parallel-axis theorem (derived, exact). */
class UnionsTest {
  /** x, y, z of the lower corner, then the size. */
  private static MassProperties disjoint(double[]... boxes) {
    double v = 0;
    Vec3 first = Vec3.ZERO;
    for (double[] b : boxes) {
      double w = b[3] * b[4] * b[5];
      v += w;
      first = first.plusTimes(w, middle(b));
    }
    Vec3 c = first.times(1 / v);
    Mat3 inertia = Mat3.ZERO;
    for (double[] b : boxes) {
      double w = b[3] * b[4] * b[5];
      Vec3 d = middle(b).minus(c);
      double x2 = w * (b[3] * b[3] / 12 + d.x() * d.x());
      double y2 = w * (b[4] * b[4] / 12 + d.y() * d.y());
      double z2 = w * (b[5] * b[5] / 12 + d.z() * d.z());
      double xy = -w * d.x() * d.y();
      double xz = -w * d.x() * d.z();
      double yz = -w * d.y() * d.z();
      inertia = inertia.plus(new Mat3(y2 + z2, xy, xz, xy, x2 + z2, yz, xz, yz, x2 + y2));
    }
    return new MassProperties(v, c, inertia);
  }

  private static Vec3 middle(double[] b) {
    return new Vec3(b[0] + b[3] / 2, b[1] + b[4] / 2, b[2] + b[5] / 2);
  }

  private static void same(MassProperties a, MassProperties b, double tolerance) {
    assertThat(a.volumeM3()).isCloseTo(b.volumeM3(), within(tolerance));
    assertThat(a.centre().distanceTo(b.centre())).isLessThan(tolerance);
    Mat3 d = a.inertia().plus(b.inertia().times(-1));
    for (double e : new double[] {d.xx(), d.yy(), d.zz(), d.xy(), d.xz(), d.yz()}) assertThat(e).isCloseTo(0, within(tolerance));
  }

  @Test
  void twoOverlappingBoxes() {
    List<Hull> lobes = List.of(Solids.boxHull(0, 0, 0, 2, 1, 1), Solids.boxHull(1, 0, 0, 1, 1, 3));
    MassProperties expected = disjoint(new double[] {0, 0, 0, 2, 1, 1}, new double[] {1, 0, 1, 1, 1, 2});
    assertThat(expected.volumeM3()).isEqualTo(4);
    same(Unions.massProperties(lobes).orElseThrow(), expected, 1e-12);
  }

  @Test
  void threeBoxesThatShareOneCorner() {
    List<Hull> lobes = List.of(
        Solids.boxHull(0, 0, 0, 3, 1, 1), Solids.boxHull(0, 0, 0, 1, 2, 1), Solids.boxHull(0, 0, 0, 1, 1, 4));
    MassProperties expected = disjoint(
        new double[] {0, 0, 0, 3, 1, 1}, new double[] {0, 1, 0, 1, 1, 1}, new double[] {0, 0, 1, 1, 1, 3});
    assertThat(expected.volumeM3()).isEqualTo(7);
    same(Unions.massProperties(lobes).orElseThrow(), expected, 1e-12);
  }

  @Test
  void apartAndTouchingHullsSimplyAdd() {
    List<Hull> lobes = List.of(
        Solids.boxHull(0, 0, 0, 1, 1, 1), Solids.boxHull(1, 0, 0, 1, 1, 1), Solids.boxHull(5, 0, 0, 1, 2, 1));
    same(Unions.massProperties(lobes).orElseThrow(),
        disjoint(new double[] {0, 0, 0, 2, 1, 1}, new double[] {5, 0, 0, 1, 2, 1}), 1e-11);
  }

  @Test
  void aHullInsideAnotherCountsOnce() {
    List<Hull> lobes = List.of(Solids.boxHull(0, 0, 0, 2, 2, 2), Solids.boxHull(0.5, 0.5, 0.5, 1, 1, 1));
    same(Unions.massProperties(lobes).orElseThrow(), disjoint(new double[] {0, 0, 0, 2, 2, 2}), 1e-12);
  }

  @Test
  void fourTurnedHullsAgainstCountedPoints() {
    Random random = new Random(11);
    List<Hull> lobes = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      lobes.add(Solids.hull(Solids.cobble(random, 40, 0.5)).moved(
          new Pose(new Vec3(0.3 * i, 0, 0), Solids.anyPose(random).turn())));
    }
    double v = Unions.massProperties(lobes).orElseThrow().volumeM3();
    int inside = 0;
    int n = 400_000;
    for (int i = 0; i < n; i++) {
      Vec3 p = new Vec3(-0.5 + 1.9 * random.nextDouble(), random.nextDouble() - 0.5, random.nextDouble() - 0.5);
      if (lobes.stream().anyMatch(h -> Polyhedra.contains(h, p, 0))) inside++;
    }
    double counted = 1.9 * inside / n;
    // Four standard deviations of a binomial count with p about 0.35.
    assertThat(v).isCloseTo(counted, within(4 * 1.9 * 0.5 / Math.sqrt(n)));
  }

  @Test
  void tooManyLobesInOnePlaceAreRefused() {
    List<Hull> lobes = new ArrayList<>();
    for (int i = 0; i < 40; i++) lobes.add(Solids.boxHull(0.001 * i, 0, 0, 1, 1, 1));
    assertThat(Unions.massProperties(lobes)).isEmpty();
  }
}
