package holdfast.model.shape;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * Cuts a convex stone out of a smooth body with planes: each plane is tangent to the body and then moved a little in or
 * out, so that broken faces of uneven size come about.
 *
 * <p>The half-spaces {@code n . x <= d} about an inner point have their corners where the hull of the points n / d has
 * its faces (polar duality), so one hull finds all corners at once.
 *
 * @see "de Berg, Cheong, van Kreveld &amp; Overmars 2008, Computational Geometry, 3rd ed., section 11.4"
 */
final class StoneCutter {
  /** A half-space: unit normal out of the stone, and distance of the plane from the origin. */
  record Plane(Vec3 normal, double offset) {}

  private StoneCutter() {}

  /** The corners common to all half-spaces; empty when they leave the stone open or miss {@code inner}. */
  static List<Vec3> corners(List<Plane> planes, Vec3 inner) {
    List<Vec3> dual = new ArrayList<>(planes.size());
    for (Plane p : planes) {
      double d = p.offset - p.normal.dot(inner);
      if (!(d > 0)) return List.of();
      dual.add(p.normal.times(1 / d));
    }
    return HullBuilder.build(dual).match(h -> polar(h, inner), why -> List.of());
  }

  private static List<Vec3> polar(Hull dual, Vec3 inner) {
    List<Vec3> corners = new ArrayList<>(dual.faces().size());
    for (Hull.Face f : dual.faces()) {
      if (!(f.offset() > 0)) return List.of();
      corners.add(inner.plusTimes(1 / f.offset(), f.normal()));
    }
    return corners;
  }

  /** Directions spread evenly over the sphere (a golden spiral), turned and shaken at random. */
  static List<Vec3> directions(int n, double shake, Random random) {
    Quat turn = new Quat(centred(random), centred(random), centred(random), centred(random) + 1e-3).unit();
    double golden = Math.PI * (3 - Math.sqrt(5));
    List<Vec3> out = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      double z = 1 - (2 * i + 1.0) / n;
      double r = Math.sqrt(1 - z * z);
      // StrictMath: the same stone on every machine.
      Vec3 u = new Vec3(r * StrictMath.cos(i * golden), r * StrictMath.sin(i * golden), z);
      Vec3 jolt = new Vec3(centred(random), centred(random), centred(random)).times(2 * shake);
      out.add(turn.rotate(u).plus(jolt).unit());
    }
    return out;
  }

  /** Evenly from -0.5 to 0.5. */
  static double centred(Random random) {
    return random.nextDouble() - 0.5;
  }

  /** How far a rough surface lies from the smooth one, as a factor near 1: a few broad swells, and a step for each face. */
  static ToDoubleFunction<Vec3> roughness(double swell, double step, Random random) {
    Vec3[] wave = new Vec3[3];
    double[] phase = new double[wave.length];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = new Vec3(centred(random), centred(random), centred(random)).unit().times(1.5 + 1.5 * random.nextDouble());
      phase[i] = 2 * Math.PI * random.nextDouble();
    }
    return n -> {
      double s = 0;
      for (int i = 0; i < wave.length; i++) s += StrictMath.sin(wave[i].dot(n) + phase[i]);
      return 1 + swell * s / wave.length + 2 * step * centred(random);
    };
  }
}
