package holdfast.engine.contact;

import holdfast.model.geom.Vec3;

/**
 * The least distance of two convex polyhedra that are apart, by trying the features that can be nearest: corner against
 * face, and edge against edge (with their ends: corner against edge and corner against corner).
 *
 * <p>Exact, since the nearest points always lie on such a pair. Features too far behind the separating plane to beat
 * the best pair so far are left out: with separation s along the axis, a pair whose corners lie at depths d1 and d2
 * behind it is at least s + d1 + d2 apart.
 */
final class ClosestFeatures {
  /** The nearest points and their distance. */
  record Pair(double distanceM, Vec3 onA, Vec3 onB) {}

  private final Polytope a;
  private final Polytope b;
  private final double separation;
  private final double[] depthA;
  private final double[] depthB;
  private double best = Double.POSITIVE_INFINITY;
  private Vec3 bestA;
  private Vec3 bestB;

  private ClosestFeatures(Polytope a, Polytope b, Vec3 normal, double separation) {
    this.a = a;
    this.b = b;
    this.separation = separation;
    depthA = new double[a.corners];
    depthB = new double[b.corners];
    double leastA = a.least(normal);
    double mostB = b.reach(normal);
    for (int i = 0; i < a.corners; i++) depthA[i] = a.corner(i).dot(normal) - leastA;
    for (int i = 0; i < b.corners; i++) depthB[i] = mostB - b.corner(i).dot(normal);
  }

  /** Nearest points of two bodies that are {@code separation} apart along {@code normal}, which goes out of b into a. */
  static Pair of(Polytope a, Polytope b, Vec3 normal, double separation) {
    ClosestFeatures search = new ClosestFeatures(a, b, normal, separation);
    search.cornersOnFaces(a, b, search.depthA, true);
    search.cornersOnFaces(b, a, search.depthB, false);
    search.edgesOnEdges();
    return new Pair(search.best, search.bestA, search.bestB);
  }

  private void offer(Vec3 onA, Vec3 onB) {
    double d = onA.distanceTo(onB);
    if (d < best) {
      best = d;
      bestA = onA;
      bestB = onB;
    }
  }

  private void cornersOnFaces(Polytope p, Polytope q, double[] depth, boolean pIsA) {
    for (int i = 0; i < p.corners; i++) {
      if (separation + depth[i] > best) continue;
      Vec3 c = p.corner(i);
      for (int f = 0; f < q.faces; f++) {
        double above = q.normal[f].dot(c) - q.offset[f];
        if (above <= 0 || above >= best || !over(q, f, c)) continue;
        Vec3 foot = c.plusTimes(-above, q.normal[f]);
        if (pIsA) offer(c, foot);
        else offer(foot, c);
      }
    }
  }

  /** Whether a point lies over a face, within the walls that stand on its edges. */
  private static boolean over(Polytope q, int f, Vec3 c) {
    int[] loop = q.loop[f];
    Vec3 from = q.corner(loop[loop.length - 1]);
    for (int k : loop) {
      Vec3 to = q.corner(k);
      if (to.minus(from).cross(c.minus(from)).dot(q.normal[f]) < 0) return false;
      from = to;
    }
    return true;
  }

  private void edgesOnEdges() {
    for (int i = 0; i < a.edges; i++) {
      double dA = Math.min(depthA[a.from[i]], depthA[a.to[i]]);
      if (separation + dA > best) continue;
      Vec3 p = a.corner(a.from[i]);
      Vec3 u = a.corner(a.to[i]).minus(p);
      double uu = u.dot(u);
      for (int j = 0; j < b.edges; j++) {
        if (separation + dA + Math.min(depthB[b.from[j]], depthB[b.to[j]]) > best) continue;
        Vec3 q = b.corner(b.from[j]);
        Vec3 v = b.corner(b.to[j]).minus(q);
        double vv = v.dot(v);
        Vec3 w = p.minus(q);
        endsOn(p, u, uu, q, v);
        double t = clamp(w.dot(v) / vv);
        offer(p, q.plusTimes(t, v));
        Vec3 pEnd = p.plus(u);
        t = clamp(pEnd.minus(q).dot(v) / vv);
        offer(pEnd, q.plusTimes(t, v));
        double uv = u.dot(v);
        double sine = uu * vv - uv * uv;
        if (sine > 1e-14 * uu * vv) {
          double s = (uv * v.dot(w) - vv * u.dot(w)) / sine;
          t = (uu * v.dot(w) - uv * u.dot(w)) / sine;
          if (s > 0 && s < 1 && t > 0 && t < 1) offer(p.plusTimes(s, u), q.plusTimes(t, v));
        }
      }
    }
  }

  private void endsOn(Vec3 p, Vec3 u, double uu, Vec3 q, Vec3 v) {
    double s = clamp(q.minus(p).dot(u) / uu);
    offer(p.plusTimes(s, u), q);
    Vec3 qEnd = q.plus(v);
    s = clamp(qEnd.minus(p).dot(u) / uu);
    offer(p.plusTimes(s, u), qEnd);
  }

  private static double clamp(double t) {
    return Math.max(0, Math.min(1, t));
  }
}
