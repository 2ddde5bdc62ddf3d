package holdfast.app.report.sheet;

import holdfast.engine.contact.Planar;
import java.util.ArrayList;
import java.util.List;

/** Geometry on the paper. */
final class Flat {
  private Flat() {}

  /** Convex hull, counter-clockwise. */
  static List<double[]> hull(List<double[]> points) {
    double[] flat = new double[2 * points.size()];
    for (int i = 0; i < points.size(); i++) System.arraycopy(points.get(i), 0, flat, 2 * i, 2);
    double[] hull = Planar.hull(flat, 0);
    List<double[]> out = new ArrayList<>();
    for (int i = 0; i < hull.length; i += 2) out.add(new double[] {hull[i], hull[i + 1]});
    return out;
  }

  /** How deep a point lies in a convex polygon, counter-clockwise: the least distance to a side, below zero outside. */
  static double depth(List<double[]> polygon, double x, double y) {
    if (polygon.size() < 3) return Double.NEGATIVE_INFINITY;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < polygon.size(); i++) {
      double[] a = polygon.get(i);
      double[] b = polygon.get((i + 1) % polygon.size());
      double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length > 0) least = Math.min(least, ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / length);
    }
    return least;
  }

  /** Least and greatest x and y of polygons: x0, y0, x1, y1. */
  static double[] box(List<List<double[]>> polygons) {
    double[] b = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (List<double[]> polygon : polygons) {
      for (double[] p : polygon) {
        b[0] = Math.min(b[0], p[0]);
        b[1] = Math.min(b[1], p[1]);
        b[2] = Math.max(b[2], p[0]);
        b[3] = Math.max(b[3], p[1]);
      }
    }
    return b;
  }
}
