package holdfast.app.report.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Geometry on the paper. */
final class Flat {
  private Flat() {}

  /** Convex hull, counter-clockwise (Andrew 1979, Inf. Process. Lett. 9:216). */
  static List<double[]> hull(List<double[]> points) {
    List<double[]> p = new ArrayList<>(points);
    p.sort((u, v) -> u[0] != v[0] ? Double.compare(u[0], v[0]) : Double.compare(u[1], v[1]));
    double[][] h = new double[2 * p.size() + 1][];
    int k = 0;
    for (double[] q : p) {
      while (k >= 2 && turn(h[k - 2], h[k - 1], q) <= 0) k--;
      h[k++] = q;
    }
    int lower = k + 1;
    for (int i = p.size() - 2; i >= 0; i--) {
      while (k >= lower && turn(h[k - 2], h[k - 1], p.get(i)) <= 0) k--;
      h[k++] = p.get(i);
    }
    return new ArrayList<>(Arrays.asList(h).subList(0, Math.max(1, k - 1)));
  }

  private static double turn(double[] a, double[] b, double[] c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
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
