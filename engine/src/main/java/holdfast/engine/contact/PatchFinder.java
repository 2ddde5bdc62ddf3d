package holdfast.engine.contact;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * The patch of two convex bodies that face each other along a normal: where the gap between them, measured along the
 * normal, is at most a given height.
 *
 * <p>Seen along the normal the lower surface of {@code a} is the maximum of its face planes, the upper surface of
 * {@code b} the minimum of its own, so the gap is convex and the patch is exactly a convex polygon: the shadow of
 * {@code a}, cut by the shadow of {@code b}, cut by one half-plane {@code gap_ij <= height} for every face i of
 * {@code a} that looks against the normal and every face j of {@code b} that looks along it. Faces that begin above
 * the other body's highest point plus the height cannot bound it and are left out.
 *
 * <p>Limits: the patch is flat, in the plane midway between the two bodies; a patch narrower than a few patch
 * tolerances is given as the line of least gap in it, or a point. Corners beyond eight are dropped from inside.
 */
final class PatchFinder {
  private final Polytope a;
  private final Polytope b;
  private final Vec3 n;
  private final Vec3 u;
  private final Vec3 v;
  private final Vec3 origin;
  private final double size;
  private final double onLine;
  private final double weld;
  /** Half-plane normals (not unit) and the gap at the origin, per pair of faces: gap = gu u + gv v + g0. */
  private double[] gu;
  private double[] gv;
  private double[] g0;

  private PatchFinder(Polytope a, Polytope b, Vec3 normal) {
    this.a = a;
    this.b = b;
    n = normal;
    u = n.anyPerpendicular();
    v = n.cross(u);
    size = Math.min(a.sizeM, b.sizeM);
    double rounding = Tolerances.ROUNDING * Math.max(a.magnitudeM, b.magnitudeM);
    onLine = Math.max(Tolerances.ON_LINE_SHARE * size, rounding);
    weld = Math.max(Tolerances.WELD_SHARE * size, 10 * rounding);
    // Close to where they meet, so that the numbers in the plane are small: the middle of the smaller body, moved along
    // the normal to midway between the two surfaces.
    Polytope small = a.sizeM <= b.sizeM ? a : b;
    Vec3 middle = new Vec3(
        (small.low[0] + small.high[0]) / 2, (small.low[1] + small.high[1]) / 2, (small.low[2] + small.high[2]) / 2);
    origin = middle.plusTimes((a.least(n) + b.reach(n)) / 2 - middle.dot(n), n);
  }

  /**
   * Corners of the patch in its plane, counter-clockwise seen from the tip of the normal; empty when the bodies do not
   * face each other along it.
   *
   * @param heightM gap at the rim of the patch, metres, along the normal
   * @param sliverM narrower than this is an edge or a point
   */
  static List<Vec3> patch(Polytope a, Polytope b, Vec3 normal, double heightM, double sliverM) {
    PatchFinder f = new PatchFinder(a, b, normal);
    double[] both = Planar.clip(f.shadow(a), f.shadow(b), f.onLine);
    if (both.length < 6 || Planar.width(both)[0] < Tolerances.GRAZING_SHARE * f.size) return List.of();
    f.gaps(heightM);
    double[] region = f.within(both, heightM);
    if (region.length == 0) return List.of();
    double[] shape = Planar.simplified(region, Tolerances.CORNER_SHARE * f.size, Tolerances.MAX_CORNERS);
    if (Planar.diameter(region) < sliverM) shape = f.lowestPoint(region, heightM);
    else if (Planar.corners(shape) < 3 || Planar.width(shape)[0] < sliverM) shape = f.lowestLine(region);
    List<Vec3> corners = new ArrayList<>();
    for (int i = 0; i < Planar.corners(shape); i++) {
      corners.add(f.origin.plusTimes(shape[2 * i], f.u).plusTimes(shape[2 * i + 1], f.v));
    }
    return corners;
  }

  /** A body's outline along the normal. */
  private double[] shadow(Polytope p) {
    double[] points = new double[2 * p.corners];
    for (int i = 0; i < p.corners; i++) {
      Vec3 c = p.corner(i).minus(origin);
      points[2 * i] = c.dot(u);
      points[2 * i + 1] = c.dot(v);
    }
    return Planar.hull(points, weld);
  }

  /** The gap as a maximum of affine functions: one per pair of faces that look at each other near the patch. */
  private void gaps(double heightM) {
    double lowest = a.least(n);
    double highest = b.reach(n);
    List<double[]> under = new ArrayList<>();
    List<double[]> over = new ArrayList<>();
    for (int f = 0; f < a.faces; f++) {
      double along = a.normal[f].dot(n);
      if (along < -Tolerances.WALL_COSINE && begins(a, f, 1) <= highest + heightM + weld) {
        under.add(plane(a, f, along));
      }
    }
    for (int f = 0; f < b.faces; f++) {
      double along = b.normal[f].dot(n);
      if (along > Tolerances.WALL_COSINE && -begins(b, f, -1) >= lowest - heightM - weld) over.add(plane(b, f, along));
    }
    gu = new double[under.size() * over.size()];
    gv = new double[gu.length];
    g0 = new double[gu.length];
    int k = 0;
    for (double[] i : under) {
      for (double[] j : over) {
        gu[k] = i[0] - j[0];
        gv[k] = i[1] - j[1];
        g0[k] = i[2] - j[2];
        k++;
      }
    }
  }

  /** Least of {@code sign * (n . p)} over the corners of a face. */
  private double begins(Polytope p, int f, double sign) {
    double least = Double.POSITIVE_INFINITY;
    for (int c : p.loop[f]) least = Math.min(least, sign * p.corner(c).dot(n));
    return least;
  }

  /** A face plane as height over the patch's plane: {slope along u, slope along v, height at the origin}. */
  private double[] plane(Polytope p, int f, double along) {
    Vec3 m = p.normal[f];
    return new double[] {-m.dot(u) / along, -m.dot(v) / along, (p.offset[f] - m.dot(origin)) / along};
  }

  private double[] within(double[] polygon, double heightM) {
    double[] rest = polygon;
    for (int k = 0; k < gu.length && rest.length > 0; k++) {
      double slope = Math.hypot(gu[k], gv[k]);
      if (slope < 1e-12) {
        if (g0[k] > heightM + onLine) return new double[0];
        continue;
      }
      rest = Planar.clip(rest, gu[k] / slope, gv[k] / slope, (heightM - g0[k]) / slope, onLine);
    }
    return rest;
  }

  private double gapAt(double pu, double pv) {
    double most = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < gu.length; k++) most = Math.max(most, gu[k] * pu + gv[k] * pv + g0[k]);
    return most;
  }

  /** The point of least gap in a small region: the height is halved as long as some of the region stays under it. */
  private double[] lowestPoint(double[] region, double heightM) {
    double[] rest = region;
    double high = heightM;
    double low = heightM - size;
    for (int k = 0; k < 60 && Planar.diameter(rest) > weld; k++) {
      double middle = (low + high) / 2;
      double[] part = within(rest, middle);
      if (part.length == 0) {
        low = middle;
      } else {
        high = middle;
        rest = part;
      }
    }
    return Planar.centroid(rest);
  }

  /** The line of least gap along a thin region, from end to end. */
  private double[] lowestLine(double[] region) {
    double[] axis = Planar.width(region);
    double du = axis[1];
    double dv = axis[2];
    double first = Double.POSITIVE_INFINITY;
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < Planar.corners(region); i++) {
      double s = region[2 * i] * du + region[2 * i + 1] * dv;
      first = Math.min(first, s);
      last = Math.max(last, s);
    }
    double length = last - first;
    if (!(length > weld)) return Planar.centroid(region);
    double inset = 1e-6 * length;
    double[] p = lowestAcross(region, du, dv, first + inset);
    double[] q = lowestAcross(region, du, dv, last - inset);
    return Planar.chord(region, p, q);
  }

  /** The point of least gap on the cut of a region at distance {@code s} along a direction. */
  private double[] lowestAcross(double[] region, double du, double dv, double s) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    int n = Planar.corners(region);
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      double si = region[2 * i] * du + region[2 * i + 1] * dv - s;
      double sj = region[2 * j] * du + region[2 * j + 1] * dv - s;
      if (si * sj > 0 || si == sj) continue;
      double t = si / (si - sj);
      double w = -(region[2 * i] + t * (region[2 * j] - region[2 * i])) * dv
          + (region[2 * i + 1] + t * (region[2 * j + 1] - region[2 * i + 1])) * du;
      least = Math.min(least, w);
      most = Math.max(most, w);
    }
    double span = most - least;
    return lowestOn(s * du - least * dv, s * dv + least * du, -span * dv, span * du);
  }

  /** The point of least gap on a segment; the middle of the stretch where the gap is least to rounding. */
  private double[] lowestOn(double pu, double pv, double du, double dv) {
    double lo = 0;
    double hi = 1;
    for (int k = 0; k < 100 && hi - lo > 1e-15; k++) {
      double p = lo + (hi - lo) / 3;
      double q = hi - (hi - lo) / 3;
      if (gapAt(pu + p * du, pv + p * dv) <= gapAt(pu + q * du, pv + q * dv)) hi = q;
      else lo = p;
    }
    double least = gapAt(pu + lo * du, pv + lo * dv) + 1e-11 * size;
    double from = 0;
    double to = 1;
    for (int k = 0; k < gu.length; k++) {
      double slope = gu[k] * du + gv[k] * dv;
      double room = least - (gu[k] * pu + gv[k] * pv + g0[k]);
      if (Math.abs(slope) < 1e-12 * size) continue;
      if (slope > 0) to = Math.min(to, room / slope);
      else from = Math.max(from, room / slope);
    }
    double t = from <= to ? (from + to) / 2 : lo;
    return new double[] {pu + t * du, pv + t * dv};
  }
}
