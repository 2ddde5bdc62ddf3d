package holdfast.engine.contact;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Bodies for tests. */
final class Bodies {
  private Bodies() {}

  static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, reason -> {
      throw new AssertionError("no hull: " + reason);
    });
  }

  static Hull box(Vec3 low, Vec3 high) {
    List<Vec3> c = new ArrayList<>();
    for (double x : new double[] {low.x(), high.x()}) {
      for (double y : new double[] {low.y(), high.y()}) {
        for (double z : new double[] {low.z(), high.z()}) c.add(new Vec3(x, y, z));
      }
    }
    return hull(c);
  }

  /** A box about the origin. */
  static Hull box(double length, double width, double height) {
    return box(new Vec3(-length / 2, -width / 2, -height / 2), new Vec3(length / 2, width / 2, height / 2));
  }

  static Solid rock(String name, Hull... lobes) {
    return new Solid(name, Surface.ROCK, false, List.of(lobes));
  }

  static Solid moved(Solid s, Pose pose) {
    return new Solid(s.name(), s.surface(), s.fixed(), s.lobes().stream().map(h -> h.moved(pose)).toList());
  }

  static Hull scaled(Hull h, double factor) {
    return hull(h.corners().stream().map(p -> p.times(factor)).toList());
  }

  /** Hull of random points in a box, of about the given width. */
  static Hull stone(Random random, int points, double width) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      Vec3 d = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      double r = width * (0.4 + 0.1 * random.nextDouble());
      p.add(new Vec3(d.x() * r, d.y() * r, 0.7 * d.z() * r));
    }
    return hull(p);
  }

  static Quat turn(Random random) {
    return new Quat(random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  static Vec3 direction(Random random) {
    return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  /** Two stones, the first moved along a random direction until they are {@code gap} apart along it, or nearly so. */
  static List<Hull> facing(Random random, int points, double width, double gap) {
    Hull a = stone(random, points, width).moved(new Pose(Vec3.ZERO, turn(random)));
    Hull b = stone(random, points, width).moved(new Pose(Vec3.ZERO, turn(random)));
    Vec3 d = direction(random);
    a = a.moved(new Pose(d.times(3 * width), Quat.IDENTITY));
    // Steps of the distance itself never pass through: the bodies come together along d from outside.
    for (int k = 0; k < 200; k++) {
      double distance = distance(a, b);
      double along = (distance - gap) * 0.999;
      if (Math.abs(distance - gap) < 1e-9 * width) break;
      a = a.moved(new Pose(d.times(-along), Quat.IDENTITY));
    }
    return List.of(a, b);
  }

  static double distance(Hull a, Hull b) {
    return Separation.of(new Polytope(a), new Polytope(b), Double.POSITIVE_INFINITY, 0).distanceM();
  }

  /**
   * Where the line {@code p + t d} runs inside a hull: {from, to}, empty when from > to. Independent of the code under
   * test (clipping against half-spaces, Cyrus and Beck 1978).
   */
  static double[] inside(Hull h, Vec3 p, Vec3 d) {
    double from = Double.NEGATIVE_INFINITY;
    double to = Double.POSITIVE_INFINITY;
    for (Hull.Face f : h.faces()) {
      double rate = f.normal().dot(d);
      double room = f.offset() - f.normal().dot(p);
      if (Math.abs(rate) < 1e-12) {
        if (room < -1e-9) return new double[] {1, 0};
      } else if (rate > 0) {
        to = Math.min(to, room / rate);
      } else {
        from = Math.max(from, room / rate);
      }
    }
    return new double[] {from, to};
  }

  /** The gap between b below and a above along a normal at a point; not a number where one of them casts no shadow. */
  static double gap(Hull a, Hull b, Vec3 normal, Vec3 at) {
    double[] inA = inside(a, at, normal);
    double[] inB = inside(b, at, normal);
    return inA[0] > inA[1] || inB[0] > inB[1] ? Double.NaN : inA[0] - inB[1];
  }
}
