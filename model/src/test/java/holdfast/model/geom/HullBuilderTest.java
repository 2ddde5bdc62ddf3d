package holdfast.model.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.github.quickhull3d.Point3d;
import com.github.quickhull3d.QuickHull3D;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HullBuilderTest {
  @Test
  void regularSolidsHaveTheirCornersAndFaces() {
    // Euclid, Elements XIII; the counts again in checks/polyhedra.csv (exact).
    int[][] cornersAndFaces = {{4, 4}, {8, 6}, {6, 8}, {12, 20}, {20, 12}};
    for (int i = 0; i < 5; i++) {
      Hull h = Solids.hull(Solids.regular().get(i));
      assertThat(h.corners()).hasSize(cornersAndFaces[i][0]);
      assertThat(h.faces()).hasSize(cornersAndFaces[i][1]);
      for (Hull.Face f : h.faces()) assertThat(f.normal().norm()).isCloseTo(1, within(1e-12));
    }
  }

  @Test
  void latticeOnACubeGivesSixSquaresWhicheverWayItIsTurned() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      int n = 1 + random.nextInt(6);
      double side = new double[] {0.001, 0.1, 0.5}[seed % 3];
      Hull h = Solids.hull(Solids.moved(Solids.latticeCube(n, side), Solids.anyPose(random)));
      assertThat(h.faces()).as("seed %d", seed).hasSize(6);
      assertThat(h.corners()).as("seed %d", seed).hasSize(8);
      assertThat(h.faces()).allSatisfy(f -> assertThat(f.loop()).hasSize(4));
      assertThat(Polyhedra.volume(h)).isCloseTo(side * side * side, within(1e-12 * side * side));
    }
  }

  @Test
  void noiseBelowTheToleranceDoesNotSplitAFace() {
    for (int seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      // From far under the noise of doubles to a tenth of the tolerance; a generic library hull came out open here.
      double noise = 0.1 * Math.pow(10, -16 + 9 * random.nextDouble());
      List<Vec3> p = new ArrayList<>();
      for (Vec3 q : Solids.moved(Solids.latticeCube(1 + random.nextInt(5), 0.1), Solids.anyPose(random))) {
        p.add(q.plus(new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).times(noise)));
      }
      Hull h = Solids.hull(p);
      assertThat(h.faces()).as("seed %d noise %.2g", seed, noise).hasSize(6);
      assertThat(HullBuilder.sound(h, p, 0.1)).as("seed %d", seed).isTrue();
    }
  }

  @Test
  void noiseNearTheToleranceStillGivesASoundHull() {
    for (int seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      double noise = 0.1 * Math.pow(10, -7 + 4 * random.nextDouble());
      List<Vec3> p = new ArrayList<>();
      for (Vec3 q : Solids.moved(Solids.latticeCube(1 + random.nextInt(5), 0.1), Solids.anyPose(random))) {
        p.add(q.plus(new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).times(noise)));
      }
      Hull h = Solids.hull(p);
      assertThat(HullBuilder.sound(h, p, 0.1)).as("seed %d noise %.2g", seed, noise).isTrue();
      // No corner leaves the cube by more than five times the noise (normal deviates), on either side.
      assertThat(Polyhedra.volume(h)).isCloseTo(1e-3, within(6 * 5 * noise * 0.01 + 1e-8));
    }
  }

  @Test
  void volumeAgreesWithAnIndependentHull() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      List<Vec3> p = Solids.cobble(random, 10 + random.nextInt(90), 0.05);
      Hull h = Solids.hull(p);
      // Two triangles within the tolerance of one plane make one face here and two there.
      double v = oracleVolume(p);
      assertThat(Polyhedra.volume(h)).as("seed %d", seed).isCloseTo(v, within(Tolerances.FLAT * v));
    }
  }

  /** Volume by com.github.quickhull3d 1.0.0, a separate implementation. */
  private static double oracleVolume(List<Vec3> points) {
    QuickHull3D q = new QuickHull3D();
    q.build(points.stream().map(v -> new Point3d(v.x(), v.y(), v.z())).toArray(Point3d[]::new));
    Point3d[] c = q.getVertices();
    double six = 0;
    for (int[] f : q.getFaces()) {
      for (int i = 2; i < f.length; i++) {
        Vec3 a = new Vec3(c[f[0]].x, c[f[0]].y, c[f[0]].z);
        Vec3 b = new Vec3(c[f[i - 1]].x, c[f[i - 1]].y, c[f[i - 1]].z);
        six += a.dot(b.cross(new Vec3(c[f[i]].x, c[f[i]].y, c[f[i]].z)));
      }
    }
    return six / 6;
  }

  @Test
  void duplicatesAndInnerPointsAreDropped() {
    List<Vec3> p = new ArrayList<>(Solids.box(0, 0, 0, 0.1, 0.2, 0.3));
    p.addAll(Solids.box(0, 0, 0, 0.1, 0.2, 0.3));
    p.addAll(Solids.box(1e-9, 0, -1e-9, 0.1, 0.2, 0.3));
    p.addAll(Solids.box(0.02, 0.02, 0.02, 0.05, 0.05, 0.05));
    Hull h = Solids.hull(p);
    assertThat(h.corners()).hasSize(8);
    assertThat(h.faces()).hasSize(6);
    assertThat(h.corners()).containsExactlyElementsOf(Solids.box(0, 0, 0, 0.1, 0.2, 0.3));
  }

  @Test
  void cornersOnAnEdgeAreDropped() {
    List<Vec3> p = new ArrayList<>(Solids.box(0, 0, 0, 0.1, 0.1, 0.1));
    p.add(0, new Vec3(0.03, 0, 0));
    p.add(0, new Vec3(0.1, 0.07, 0.1));
    assertThat(Solids.hull(p).corners()).hasSize(8);
  }

  @Test
  void whatIsNoSolidComesBackWithAReason() {
    Random random = new Random(7);
    List<Vec3> flat = Solids.cobble(random, 40, 0.1).stream().map(v -> new Vec3(v.x(), v.y(), 0.05)).toList();
    assertThat(Solids.degenerate(flat)).isEqualTo("all points lie in one plane");
    assertThat(Solids.degenerate(Solids.moved(flat, Solids.anyPose(random)))).isEqualTo("all points lie in one plane");
    List<Vec3> line = flat.stream().map(v -> new Vec3(v.x(), 2 * v.x(), 3 * v.x())).toList();
    assertThat(Solids.degenerate(line)).isEqualTo("all points lie in one line");
    Vec3 one = new Vec3(0.1, 0.1, 0.1);
    assertThat(Solids.degenerate(List.of(one, one, one, one, one))).startsWith("size 0");
    assertThat(Solids.degenerate(List.of())).isEqualTo("0 points; a solid needs four");
    assertThat(Solids.degenerate(List.of(one, Vec3.X, one, Vec3.Z, Vec3.X)))
        .isEqualTo("3 different points; a solid needs four");
    List<Vec3> bad = new ArrayList<>(Solids.box(0, 0, 0, 1, 1, 1));
    bad.set(4, new Vec3(0, Double.NaN, 1));
    assertThat(Solids.degenerate(bad)).isEqualTo("point 5 is not a finite number");
    bad.set(4, new Vec3(0, Double.POSITIVE_INFINITY, 1));
    assertThat(Solids.degenerate(bad)).isEqualTo("point 5 is not a finite number");
  }

  @Test
  void sliversAreSoundOrDegenerateButNeverBroken() {
    int solid = 0;
    for (int seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      double thin = Math.pow(10, -8 + 7 * random.nextDouble());
      double size = new double[] {0.001, 0.1, 0.5}[seed % 3];
      List<Vec3> p = Solids.cobble(random, 60, size / 2).stream().map(v -> new Vec3(v.x(), v.y(), thin * v.z())).toList();
      List<Vec3> turned = Solids.moved(p, Solids.anyPose(random));
      HullResult r = HullBuilder.build(turned);
      if (r instanceof HullResult.Solid s) {
        solid++;
        assertThat(HullBuilder.sound(s.hull(), turned, size)).as("seed %d thin %.2g", seed, thin).isTrue();
      } else {
        assertThat(thin).as("seed %d", seed).isLessThan(1e-4);
      }
    }
    assertThat(solid).isGreaterThan(100);
  }

  @Test
  void sameBytesEachTime() {
    List<Vec3> p = Solids.cobble(new Random(3), 80, 0.1);
    Hull a = Solids.hull(p);
    Hull b = Solids.hull(new ArrayList<>(p));
    assertThat(a.corners()).isEqualTo(b.corners());
    assertThat(a.faces()).isEqualTo(b.faces());
  }

  @Test
  void movedPointsGiveTheMovedHull() {
    for (int seed = 0; seed < 50; seed++) {
      Random random = new Random(seed);
      List<Vec3> p = Solids.cobble(random, 60, 0.1);
      Pose pose = Solids.anyPose(random);
      Hull moved = Solids.hull(p).moved(pose);
      Hull again = Solids.hull(Solids.moved(p, pose));
      assertThat(again.corners()).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(moved.corners());
      assertThat(again.faces()).hasSameSizeAs(moved.faces());
    }
  }
}
