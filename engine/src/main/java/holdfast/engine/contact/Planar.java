package holdfast.engine.contact;

import java.util.Arrays;

/**
 * Convex polygons in a plane as flat arrays {@code u0, v0, u1, v1, ...}, counter-clockwise. Empty arrays are empty
 * polygons. Nothing here knows of bodies.
 */
public final class Planar {
  private static final double[] EMPTY = {};

  private Planar() {}

  public static int corners(double[] p) {
    return p.length / 2;
  }

  /**
   * The convex hull of points: corners nearer than {@code weld} are one, corners that stand out by less than
   * {@code weld} are dropped (monotone chain, Andrew 1979).
   */
  public static double[] hull(double[] points, double weld) {
    int n = corners(points);
    Integer[] order = new Integer[n];
    for (int i = 0; i < n; i++) order[i] = i;
    Arrays.sort(order, (i, j) -> {
      int c = Double.compare(points[2 * i], points[2 * j]);
      return c != 0 ? c : Double.compare(points[2 * i + 1], points[2 * j + 1]);
    });
    double[] chain = new double[4 * n + 4];
    int m = 0;
    for (int pass = 0; pass < 2; pass++) {
      int start = m;
      for (int k = 0; k < n; k++) {
        int i = order[pass == 0 ? k : n - 1 - k];
        double u = points[2 * i];
        double v = points[2 * i + 1];
        while (m - start >= 2
            && turn(chain[2 * m - 4], chain[2 * m - 3], chain[2 * m - 2], chain[2 * m - 1], u, v) <= 0) {
          m--;
        }
        chain[2 * m] = u;
        chain[2 * m + 1] = v;
        m++;
      }
      m--;
    }
    return m <= 0 ? Arrays.copyOf(points, Math.min(2, points.length)) : simplified(Arrays.copyOf(chain, 2 * m), weld, n);
  }

  private static double turn(double au, double av, double bu, double bv, double cu, double cv) {
    return (bu - au) * (cv - av) - (bv - av) * (cu - au);
  }

  /**
   * The part where {@code gu u + gv v <= c}; {@code (gu, gv)} is a unit vector, points up to {@code onLine} outside
   * count as on the line.
   */
  public static double[] clip(double[] p, double gu, double gv, double c, double onLine) {
    int n = corners(p);
    boolean all = true;
    double[] d = new double[n];
    for (int i = 0; i < n; i++) {
      d[i] = gu * p[2 * i] + gv * p[2 * i + 1] - c;
      if (d[i] > onLine) all = false;
    }
    if (all) return p;
    double[] out = new double[2 * n + 4];
    int m = 0;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      boolean in = d[i] <= onLine;
      boolean nextIn = d[j] <= onLine;
      if (in) {
        out[m++] = p[2 * i];
        out[m++] = p[2 * i + 1];
      }
      if (in != nextIn && Math.abs(d[in ? i : j]) > onLine) {
        double t = d[i] / (d[i] - d[j]);
        out[m++] = p[2 * i] + t * (p[2 * j] - p[2 * i]);
        out[m++] = p[2 * i + 1] + t * (p[2 * j + 1] - p[2 * i + 1]);
      }
    }
    return m == 0 ? EMPTY : Arrays.copyOf(out, m);
  }

  /** The side that begins at a corner: its outward unit normal, and how far along that it lies; empty where it has no length. */
  static double[] side(double[] p, int from) {
    int to = (from + 1) % corners(p);
    double du = p[2 * to] - p[2 * from];
    double dv = p[2 * to + 1] - p[2 * from + 1];
    double length = Math.hypot(du, dv);
    if (length == 0) return new double[0];
    double gu = dv / length;
    double gv = -du / length;
    return new double[] {gu, gv, gu * p[2 * from] + gv * p[2 * from + 1]};
  }

  /** The part of {@code p} inside the convex polygon {@code q}, which has an inside. */
  public static double[] clip(double[] p, double[] q, double onLine) {
    double[] rest = p;
    int n = corners(q);
    for (int i = 0; i < n && rest.length > 0; i++) {
      double[] side = side(q, i);
      if (side.length > 0) rest = clip(rest, side[0], side[1], side[2], onLine);
    }
    return rest;
  }

  /** Signed area; above zero when counter-clockwise. */
  public static double area(double[] p) {
    double sum = 0;
    for (int i = 1; i + 1 < corners(p); i++) {
      sum += turn(p[0], p[1], p[2 * i], p[2 * i + 1], p[2 * i + 2], p[2 * i + 3]);
    }
    return sum / 2;
  }

  /** Centre of the area; of the length for an edge, of the corners for anything thinner. */
  static double[] centroid(double[] p) {
    int n = corners(p);
    double area = 0;
    double u = 0;
    double v = 0;
    for (int i = 1; i + 1 < n; i++) {
      double t = turn(p[0], p[1], p[2 * i], p[2 * i + 1], p[2 * i + 2], p[2 * i + 3]);
      area += t;
      u += t * (p[2 * i] - p[0] + p[2 * i + 2] - p[0]) / 3;
      v += t * (p[2 * i + 1] - p[1] + p[2 * i + 3] - p[1]) / 3;
    }
    double span = diameter(p);
    if (area > 1e-12 * span * span) return new double[] {p[0] + u / area, p[1] + v / area};
    double su = 0;
    double sv = 0;
    for (int i = 0; i < n; i++) {
      su += p[2 * i];
      sv += p[2 * i + 1];
    }
    return new double[] {su / n, sv / n};
  }

  /** The line through two points of a convex polygon, out to its rim: two points. */
  static double[] chord(double[] polygon, double[] p, double[] q) {
    double du = q[0] - p[0];
    double dv = q[1] - p[1];
    double from = Double.NEGATIVE_INFINITY;
    double to = Double.POSITIVE_INFINITY;
    int n = corners(polygon);
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      double su = polygon[2 * j] - polygon[2 * i];
      double sv = polygon[2 * j + 1] - polygon[2 * i + 1];
      double rate = sv * du - su * dv;
      double room = sv * (polygon[2 * i] - p[0]) - su * (polygon[2 * i + 1] - p[1]);
      if (rate > 0) to = Math.min(to, Math.max(1, room / rate));
      else if (rate < 0) from = Math.max(from, Math.min(0, room / rate));
    }
    return new double[] {p[0] + from * du, p[1] + from * dv, p[0] + to * du, p[1] + to * dv};
  }

  static double diameter(double[] p) {
    double most = 0;
    for (int i = 0; i < corners(p); i++) {
      for (int j = i + 1; j < corners(p); j++) {
        most = Math.max(most, Math.hypot(p[2 * i] - p[2 * j], p[2 * i + 1] - p[2 * j + 1]));
      }
    }
    return most;
  }

  /** The least width and the direction at right angles to it: {@code {width, du, dv}}. */
  static double[] width(double[] p) {
    double[] best = {0, 1, 0};
    double least = Double.POSITIVE_INFINITY;
    int n = corners(p);
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      double du = p[2 * j] - p[2 * i];
      double dv = p[2 * j + 1] - p[2 * i + 1];
      double length = Math.hypot(du, dv);
      if (length == 0) continue;
      double most = 0;
      for (int k = 0; k < n; k++) {
        most = Math.max(most, Math.abs(turn(p[2 * i], p[2 * i + 1], p[2 * j], p[2 * j + 1], p[2 * k], p[2 * k + 1])));
      }
      if (most / length < least) {
        least = most / length;
        best = new double[] {least, du / length, dv / length};
      }
    }
    return best;
  }

  /**
   * Fewer corners, from inside: first, again and again, the corner that loses the least area of those that stand out by
   * less than {@code tolerance} from the line through their neighbours; then, while there are more than {@code most}
   * corners, the one that loses the least area. A polygon thinner than the tolerance ends as the two ends of an edge,
   * or as a point.
   */
  static double[] simplified(double[] polygon, double tolerance, int most) {
    double[] p = polygon;
    while (corners(p) > 1) {
      int victim = cheapest(p, tolerance);
      if (victim < 0 && corners(p) > most) victim = cheapest(p, Double.POSITIVE_INFINITY);
      if (victim < 0) return p;
      double[] q = new double[p.length - 2];
      System.arraycopy(p, 0, q, 0, 2 * victim);
      System.arraycopy(p, 2 * victim + 2, q, 2 * victim, p.length - 2 * victim - 2);
      p = q;
    }
    return p;
  }

  /** The corner whose loss costs the least area among those that stand out by less than a height; -1 when none does. */
  private static int cheapest(double[] p, double height) {
    int n = corners(p);
    int victim = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      int h = (i + n - 1) % n;
      int j = (i + 1) % n;
      double side = Math.hypot(p[2 * i] - p[2 * h], p[2 * i + 1] - p[2 * h + 1]);
      double span = Math.hypot(p[2 * j] - p[2 * h], p[2 * j + 1] - p[2 * h + 1]);
      double lost = n == 2 ? 0
          : Math.abs(turn(p[2 * h], p[2 * h + 1], p[2 * i], p[2 * i + 1], p[2 * j], p[2 * j + 1]));
      double out = n == 2 || span == 0 ? side : Math.min(lost / span, side);
      if (out < height && lost < least) {
        least = lost;
        victim = i;
      }
    }
    return victim;
  }
}
