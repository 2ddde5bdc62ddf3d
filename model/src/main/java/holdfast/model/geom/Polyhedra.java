package holdfast.model.geom;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Measures and cuts of convex polyhedra. */
public final class Polyhedra {
  private Polyhedra() {}

  /** Volume in cubic metres, exact but for rounding. */
  public static double volume(Hull hull) {
    return Moments.of(hull, hull.corners().get(0)).volume();
  }

  /**
   * Volume, centroid and inertia about the centroid for density one, exact but for rounding.
   *
   * <p>The solid is the signed sum of the tetrahedra from one point inside to the triangles of its faces; the integrals
   * of 1, x and x y over a tetrahedron are polynomials of its corners.
   *
   * @see "Tonon 2004, Explicit exact formulas for the 3-D tetrahedron inertia tensor, J. Math. Stat. 1:8"
   */
  public static MassProperties massProperties(Hull hull) {
    return Moments.of(hull, middle(hull)).massProperties();
  }

  /** The mean of the corners: inside, not the centroid. */
  public static Vec3 middle(Hull hull) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : hull.corners()) sum = sum.plus(p);
    return sum.times(1.0 / hull.corners().size());
  }

  /** Whether a point lies in the hull or within {@code slackM} of its faces' planes. */
  public static boolean contains(Hull hull, Vec3 p, double slackM) {
    for (Hull.Face f : hull.faces()) if (f.normal().dot(p) > f.offset() + slackM) return false;
    return true;
  }

  /**
   * The part of a hull with {@code normal . p <= offset}; the normal is a unit vector, the offset in metres. Empty when
   * nothing is left, or no more than a film too thin to be a solid. A cut that misses returns the hull itself.
   */
  public static Optional<Hull> clip(Hull hull, Vec3 normal, double offset) {
    List<Vec3> corners = hull.corners();
    double[] above = new double[corners.size()];
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < above.length; i++) {
      above[i] = normal.dot(corners.get(i)) - offset;
      least = Math.min(least, above[i]);
      most = Math.max(most, above[i]);
    }
    if (most <= 0) return Optional.of(hull);
    double film = Tolerances.FLAT * size(hull);
    if (least >= -film) return Optional.empty();
    List<Vec3> kept = new ArrayList<>();
    for (int i = 0; i < above.length; i++) if (above[i] <= 0) kept.add(corners.get(i));
    forEachEdge(hull, (a, b) -> {
      if (above[a] < 0 && above[b] > 0 || above[a] > 0 && above[b] < 0) {
        double t = above[a] / (above[a] - above[b]);
        kept.add(corners.get(a).times(1 - t).plusTimes(t, corners.get(b)));
      }
    });
    return solid(kept);
  }

  /** The longest side of the upright bounding box, metres. */
  static double size(Hull hull) {
    double size = 0;
    for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
      size = Math.max(size, hull.reach(axis) + hull.reach(axis.negated()));
    }
    return size;
  }

  /**
   * What two hulls have in common; empty when they only touch. Its corners are the corners of each inside the other and
   * the points where edges of one pierce faces of the other.
   */
  public static Optional<Hull> intersect(Hull a, Hull b) {
    double film = Tolerances.FLAT * Math.min(size(a), size(b));
    for (Hull.Face f : a.faces()) if (-b.reach(f.normal().negated()) >= f.offset() - film) return Optional.empty();
    for (Hull.Face f : b.faces()) if (-a.reach(f.normal().negated()) >= f.offset() - film) return Optional.empty();
    List<Vec3> points = new ArrayList<>();
    clipEdges(a, b, points);
    clipEdges(b, a, points);
    return solid(points);
  }

  /** The ends of the edges of {@code of} after cutting them by all planes of {@code by}. */
  private static void clipEdges(Hull of, Hull by, List<Vec3> into) {
    // Heights of all corners over all planes first: each corner serves several edges.
    int n = of.corners().size();
    double[][] above = new double[by.faces().size()][n];
    double flush = Tolerances.GRAZING * size(of);
    boolean[] inside = new boolean[n];
    Arrays.fill(inside, true);
    for (int k = 0; k < above.length; k++) {
      Hull.Face f = by.faces().get(k);
      for (int i = 0; i < n; i++) {
        double h = f.normal().dot(of.corners().get(i)) - f.offset();
        // Faces of both in one plane: without this, rounding would decide whether their edges are in or out.
        above[k][i] = Math.abs(h) < flush ? 0 : h;
        inside[i] &= above[k][i] <= 0;
      }
    }
    for (int i = 0; i < n; i++) if (inside[i]) into.add(of.corners().get(i));
    forEachEdge(of, (i, j) -> {
      if (inside[i] && inside[j]) return;
      double from = 0;
      double to = 1;
      for (double[] h : above) {
        if (h[i] <= 0 && h[j] <= 0) continue;
        if (h[i] > 0 && h[j] > 0) return;
        double t = h[i] / (h[i] - h[j]);
        if (h[i] > 0) from = Math.max(from, t);
        else to = Math.min(to, t);
        if (from > to) return;
      }
      Vec3 p = of.corners().get(i);
      Vec3 q = of.corners().get(j);
      if (from > 0) into.add(p.times(1 - from).plusTimes(from, q));
      if (to < 1) into.add(p.times(1 - to).plusTimes(to, q));
    });
  }

  /** Each edge once, as a pair of corner numbers, the smaller first. */
  public static void forEachEdge(Hull hull, EdgeVisitor visitor) {
    for (Hull.Face f : hull.faces()) {
      int n = f.loop().size();
      for (int i = 0; i < n; i++) {
        int a = f.loop().get(i);
        int b = f.loop().get((i + 1) % n);
        if (a < b) visitor.edge(a, b);
      }
    }
  }

  /** Takes one edge. */
  @FunctionalInterface
  public interface EdgeVisitor {
    void edge(int a, int b);
  }

  private static Optional<Hull> solid(List<Vec3> points) {
    return HullBuilder.build(points).match(Optional::of, why -> Optional.empty());
  }
}
