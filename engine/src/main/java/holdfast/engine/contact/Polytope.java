package holdfast.engine.contact;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A hull laid out for searching: corners in flat arrays, faces with their area, each edge once with the two faces that
 * meet there, and an upright box round it all.
 */
final class Polytope {
  final Hull hull;
  final int corners;
  final double[] x;
  final double[] y;
  final double[] z;
  final int faces;
  final Vec3[] normal;
  final double[] offset;
  final double[] area;
  final int[][] loop;
  final int edges;
  final int[] from;
  final int[] to;
  final int[] left;
  final int[] right;
  final double[] low = new double[3];
  final double[] high = new double[3];
  /** Largest distance between two corners, metres. */
  final double sizeM;
  /** Largest coordinate in absolute value, metres: the measure of rounding. */
  final double magnitudeM;

  Polytope(Hull hull) {
    this.hull = hull;
    List<Vec3> points = hull.corners();
    corners = points.size();
    x = new double[corners];
    y = new double[corners];
    z = new double[corners];
    for (int i = 0; i < corners; i++) {
      x[i] = points.get(i).x();
      y[i] = points.get(i).y();
      z[i] = points.get(i).z();
    }
    magnitudeM = measureBox();
    sizeM = diameter();
    faces = hull.faces().size();
    normal = new Vec3[faces];
    offset = new double[faces];
    area = new double[faces];
    loop = new int[faces][];
    for (int f = 0; f < faces; f++) {
      Hull.Face face = hull.faces().get(f);
      normal[f] = face.normal();
      loop[f] = face.loop().stream().mapToInt(Integer::intValue).toArray();
      // The reach, not the stored offset: merged faces are flat only to rounding, and no corner may stick out of one.
      offset[f] = reach(normal[f]);
      area[f] = areaOf(f);
    }
    Map<Long, int[]> found = edgesByCorners();
    edges = found.size();
    from = new int[edges];
    to = new int[edges];
    left = new int[edges];
    right = new int[edges];
    int e = 0;
    for (int[] edge : found.values()) {
      from[e] = edge[0];
      to[e] = edge[1];
      left[e] = edge[2];
      right[e] = edge[3];
      e++;
    }
  }

  private double measureBox() {
    double largest = 0;
    double[][] axes = {x, y, z};
    for (int k = 0; k < 3; k++) {
      low[k] = Double.POSITIVE_INFINITY;
      high[k] = Double.NEGATIVE_INFINITY;
      for (double v : axes[k]) {
        low[k] = Math.min(low[k], v);
        high[k] = Math.max(high[k], v);
        largest = Math.max(largest, Math.abs(v));
      }
    }
    return largest;
  }

  private double diameter() {
    double most = 0;
    for (int i = 0; i < corners; i++) {
      for (int j = i + 1; j < corners; j++) {
        double dx = x[i] - x[j];
        double dy = y[i] - y[j];
        double dz = z[i] - z[j];
        most = Math.max(most, dx * dx + dy * dy + dz * dz);
      }
    }
    return Math.sqrt(most);
  }

  private double areaOf(int f) {
    Vec3 sum = Vec3.ZERO;
    int[] c = loop[f];
    Vec3 origin = corner(c[0]);
    for (int i = 1; i + 1 < c.length; i++) {
      sum = sum.plus(corner(c[i]).minus(origin).cross(corner(c[i + 1]).minus(origin)));
    }
    return 0.5 * sum.norm();
  }

  private Map<Long, int[]> edgesByCorners() {
    Map<Long, int[]> found = new LinkedHashMap<>();
    for (int f = 0; f < faces; f++) {
      int[] c = loop[f];
      for (int i = 0; i < c.length; i++) {
        int p = c[i];
        int q = c[(i + 1) % c.length];
        long key = (long) Math.min(p, q) * corners + Math.max(p, q);
        int[] known = found.get(key);
        // A lone edge keeps its own face on both sides: it then never counts as a corner line between two faces.
        if (known == null) found.put(key, new int[] {p, q, f, f});
        else known[3] = f;
      }
    }
    return found;
  }

  Vec3 corner(int i) {
    return new Vec3(x[i], y[i], z[i]);
  }

  /** Largest {@code d . p} over the corners. */
  double reach(Vec3 d) {
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < corners; i++) {
      double v = x[i] * d.x() + y[i] * d.y() + z[i] * d.z();
      if (v > best) best = v;
    }
    return best;
  }

  /** Least {@code d . p} over the corners. */
  double least(Vec3 d) {
    return -reach(d.negated());
  }

  /** The first corner that reaches least along {@code d}. */
  Vec3 deepest(Vec3 d) {
    double least = least(d);
    int i = 0;
    while (i + 1 < corners && corner(i).dot(d) > least) i++;
    return corner(i);
  }

  /** Whether the upright boxes come within {@code marginM} of each other along every axis. */
  boolean boxNear(Polytope o, double marginM) {
    for (int k = 0; k < 3; k++) {
      if (low[k] > o.high[k] + marginM || o.low[k] > high[k] + marginM) return false;
    }
    return true;
  }
}
