package holdfast.app.edit;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * How far a stone can be let straight down until it touches something: for sketching only, contacts and balance are the
 * engine's.
 *
 * <p>Over the part of the ground that two convex solids both cover, the height of the lower side of one above the upper
 * side of the other is a convex function, linear over each pair of faces; its least value lies over a corner of one of
 * them or where two of their edges cross as seen from above. All of these are tried.
 */
public final class Lowering {
  /** Metres: edges that run this close to side by side, as seen from above, do not cross. */
  private static final double PARALLEL = 1e-14;

  /** Metres: a place this far outside a shadow still counts as over it. */
  private static final double EDGE_M = 1e-9;

  private Lowering() {}

  /** The least height of any of these solids above the others or the ground; negative when they are inside each other. */
  public static double heightAbove(List<Hull> stone, List<Hull> others, double groundM) {
    double least = Double.POSITIVE_INFINITY;
    for (Hull a : stone) {
      least = Math.min(least, -a.reach(Vec3.Z.negated()) - groundM);
      for (Hull b : others) least = Math.min(least, between(a, b));
    }
    return least;
  }

  /** The least height of {@code a} above {@code b}; infinite when neither is over the other. */
  static double between(Hull a, Hull b) {
    if (apart(a, b, Vec3.X) || apart(a, b, Vec3.Y)) return Double.POSITIVE_INFINITY;
    double least = Double.POSITIVE_INFINITY;
    for (Vec3 p : a.corners()) {
      if (over(b, p.x(), p.y())) least = Math.min(least, p.z() - upper(b, p.x(), p.y()));
    }
    for (Vec3 p : b.corners()) {
      if (over(a, p.x(), p.y())) least = Math.min(least, lower(a, p.x(), p.y()) - p.z());
    }
    for (Hull.Face f : a.faces()) {
      if (f.normal().z() > 0) continue;
      for (Hull.Face g : b.faces()) {
        if (g.normal().z() >= 0) least = Math.min(least, edges(a.loop(f), b.loop(g)));
      }
    }
    return least;
  }

  private static boolean apart(Hull a, Hull b, Vec3 axis) {
    return a.reach(axis) < -b.reach(axis.negated()) || b.reach(axis) < -a.reach(axis.negated());
  }

  private static double edges(List<Vec3> p, List<Vec3> q) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < p.size(); i++) {
      Vec3 a = p.get(i);
      Vec3 u = p.get((i + 1) % p.size()).minus(a);
      for (int j = 0; j < q.size(); j++) {
        Vec3 b = q.get(j);
        Vec3 v = q.get((j + 1) % q.size()).minus(b);
        double det = u.x() * v.y() - u.y() * v.x();
        if (Math.abs(det) < PARALLEL) continue;
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double s = (dx * v.y() - dy * v.x()) / det;
        double t = (dx * u.y() - dy * u.x()) / det;
        if (s < 0 || s > 1 || t < 0 || t > 1) continue;
        least = Math.min(least, a.z() + s * u.z() - b.z() - t * v.z());
      }
    }
    return least;
  }

  private static boolean over(Hull h, double x, double y) {
    for (Hull.Face f : h.faces()) {
      if (Math.abs(f.normal().z()) < 1e-12 && f.normal().x() * x + f.normal().y() * y > f.offset() + EDGE_M) return false;
    }
    return lower(h, x, y) <= upper(h, x, y) + EDGE_M;
  }

  private static double upper(Hull h, double x, double y) {
    double z = Double.POSITIVE_INFINITY;
    for (Hull.Face f : h.faces()) {
      Vec3 n = f.normal();
      if (n.z() >= 1e-12) z = Math.min(z, (f.offset() - n.x() * x - n.y() * y) / n.z());
    }
    return z;
  }

  private static double lower(Hull h, double x, double y) {
    double z = Double.NEGATIVE_INFINITY;
    for (Hull.Face f : h.faces()) {
      Vec3 n = f.normal();
      if (n.z() <= -1e-12) z = Math.max(z, (f.offset() - n.x() * x - n.y() * y) / n.z());
    }
    return z;
  }
}
