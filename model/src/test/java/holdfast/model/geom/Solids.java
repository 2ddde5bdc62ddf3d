package holdfast.model.geom;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Points of well-known solids for tests. */
public final class Solids {
  private Solids() {}

  /** A box from its lower corner and its size. */
  public static List<Vec3> box(double x, double y, double z, double length, double width, double height) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      p.add(new Vec3(x + (i & 1) * length, y + (i >> 1 & 1) * width, z + (i >> 2) * height));
    }
    return p;
  }

  public static Hull boxHull(double x, double y, double z, double length, double width, double height) {
    return hull(box(x, y, z, length, width, height));
  }

  public static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, why -> {
      throw new AssertionError("no hull: " + why);
    });
  }

  public static String degenerate(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> {
      throw new AssertionError("a hull of " + h.corners().size() + " corners where none should be");
    }, why -> why);
  }

  /** All points of a lattice on the surface of a cube of side {@code side}, n steps along each edge. */
  public static List<Vec3> latticeCube(int n, double side) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i <= n; i++) {
      for (int j = 0; j <= n; j++) {
        for (int k = 0; k <= n; k++) {
          if (i % n == 0 || j % n == 0 || k % n == 0) p.add(new Vec3(side * i / n, side * j / n, side * k / n));
        }
      }
    }
    return p;
  }

  public static List<Vec3> moved(List<Vec3> points, Pose pose) {
    return points.stream().map(pose::apply).toList();
  }

  public static Pose anyPose(Random random) {
    Quat q = new Quat(random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    return new Pose(new Vec3(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble()), q.unit());
  }

  /** Points spread over an ellipsoid with half axes a, 0.7 a and 0.4 a. */
  public static List<Vec3> cobble(Random random, int n, double a) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Vec3 u = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      p.add(new Vec3(a * u.x(), 0.7 * a * u.y(), 0.4 * a * u.z()));
    }
    return p;
  }

  /** The five regular solids with edge 1, in the order tetrahedron, cube, octahedron, icosahedron, dodecahedron. */
  public static List<List<Vec3>> regular() {
    double phi = (1 + Math.sqrt(5)) / 2;
    double r = 1 / Math.sqrt(8);
    List<Vec3> tet = List.of(new Vec3(r, r, r), new Vec3(r, -r, -r), new Vec3(-r, r, -r), new Vec3(-r, -r, r));
    double o = 1 / Math.sqrt(2);
    List<Vec3> oct = new ArrayList<>();
    for (int s = -1; s <= 1; s += 2) {
      oct.add(new Vec3(s * o, 0, 0));
      oct.add(new Vec3(0, s * o, 0));
      oct.add(new Vec3(0, 0, s * o));
    }
    List<Vec3> ico = cyclic(0.5, phi / 2);
    List<Vec3> dod = new ArrayList<>(box(-phi / 2, -phi / 2, -phi / 2, phi, phi, phi));
    dod.addAll(cyclic(0.5, phi * phi / 2));
    return List.of(tet, box(0, 0, 0, 1, 1, 1), oct, ico, dod);
  }

  /** (0, ±s, ±t) and its cyclic shifts. */
  private static List<Vec3> cyclic(double s, double t) {
    List<Vec3> p = new ArrayList<>();
    for (int i = -1; i <= 1; i += 2) {
      for (int j = -1; j <= 1; j += 2) {
        p.add(new Vec3(0, i * s, j * t));
        p.add(new Vec3(i * s, j * t, 0));
        p.add(new Vec3(j * t, 0, i * s));
      }
    }
    return p;
  }
}
