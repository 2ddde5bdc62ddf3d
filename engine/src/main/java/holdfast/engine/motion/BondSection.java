package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * The bonded area of a joint as a plane section: one or more convex patches, seen along the joint's normal. Stress over it is
 * linear, as in the statics' bonds.
 *
 * @param areaM2 area of all patches
 * @param xx integral of x squared about the middle, x and y along the two axes that {@link #axes} gives, m4
 * @param yy integral of y squared
 * @param xy integral of x y
 * @param corners x, y of every corner about the middle, metres
 */
public record BondSection(double areaM2, double xx, double yy, double xy, List<double[]> corners) {
  private static final int DISC_CORNERS = 48;

  public BondSection {
    if (!(areaM2 >= 0)) throw new IllegalArgumentException("areaM2 must be 0 or more, was " + areaM2);
    corners = List.copyOf(corners);
  }

  /** The two axes of a section under a normal: x, y and the normal are right-handed. */
  static Vec3[] axes(Vec3 normal) {
    Vec3 x = normal.anyPerpendicular();
    return new Vec3[] {x, normal.cross(x)};
  }

  /** Patches of any attitude near the plane of the normal, projected onto it. */
  static BondSection of(List<List<Vec3>> patches, Vec3 middle, Vec3 normal) {
    Vec3[] axes = axes(normal);
    double area = 0;
    double xx = 0;
    double yy = 0;
    double xy = 0;
    List<double[]> corners = new ArrayList<>();
    for (List<Vec3> patch : patches) {
      List<double[]> flat = patch.stream()
          .map(p -> new double[] {p.minus(middle).dot(axes[0]), p.minus(middle).dot(axes[1])}).toList();
      double sign = twiceArea(flat) >= 0 ? 1 : -1;
      for (int i = 0; i < flat.size(); i++) {
        double[] p = flat.get(i);
        double[] q = flat.get((i + 1) % flat.size());
        double w = sign * (p[0] * q[1] - p[1] * q[0]);
        area += w / 2;
        xx += w * (p[0] * p[0] + p[0] * q[0] + q[0] * q[0]) / 12;
        yy += w * (p[1] * p[1] + p[1] * q[1] + q[1] * q[1]) / 12;
        xy += w * (2 * p[0] * p[1] + p[0] * q[1] + q[0] * p[1] + 2 * q[0] * q[1]) / 24;
      }
      corners.addAll(flat);
    }
    return new BondSection(area, xx, yy, xy, corners);
  }

  /** A disc of an area. */
  static BondSection disc(double areaM2) {
    double r = Math.sqrt(areaM2 / Math.PI);
    double second = Math.PI * r * r * r * r / 4;
    List<double[]> rim = new ArrayList<>();
    for (int i = 0; i < DISC_CORNERS; i++) {
      double a = 2 * Math.PI * i / DISC_CORNERS;
      rim.add(new double[] {r * Math.cos(a), r * Math.sin(a)});
    }
    return new BondSection(areaM2, second, second, 0, rim);
  }

  private static double twiceArea(List<double[]> ring) {
    double sum = 0;
    for (int i = 0; i < ring.size(); i++) {
      double[] p = ring.get(i);
      double[] q = ring.get((i + 1) % ring.size());
      sum += p[0] * q[1] - p[1] * q[0];
    }
    return sum;
  }

  /**
   * The greatest tension at a corner under a push along the normal and a moment about the middle, pascals: stress linear over
   * the section, unsymmetric bending (Roark's Formulas for Stress and Strain, chapter 8).
   */
  double tensionPa(double pushN, double momentX, double momentY) {
    double det = xx * yy - xy * xy;
    // A section without width in one direction bears no moment about it.
    if (!(det > 1e-12 * xx * yy) && (momentX != 0 || momentY != 0)) return Double.POSITIVE_INFINITY;
    double b = det > 0 ? (-momentY * yy - momentX * xy) / det : 0;
    double c = det > 0 ? (momentX * xx + momentY * xy) / det : 0;
    double most = Double.NEGATIVE_INFINITY;
    for (double[] p : corners) most = Math.max(most, -(pushN / areaM2 + b * p[0] + c * p[1]));
    return most;
  }

  /** The greatest shear at the rim, pascals: even over the area, and a twist about the middle by the polar moment. */
  double shearPa(double shearN, double twistNm) {
    double far = corners.stream().mapToDouble(p -> Math.hypot(p[0], p[1])).max().orElse(0);
    double polar = xx + yy;
    double twist = twistNm == 0 ? 0 : polar > 0 ? Math.abs(twistNm) * far / polar : Double.POSITIVE_INFINITY;
    return shearN / areaM2 + twist;
  }
}
