package holdfast.engine.contact;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * The signed distance of two convex polyhedra and the direction in which it is measured.
 *
 * <p>The axes tried are the normals of the facets of the Minkowski difference: the face normals of both, and the cross
 * products of those edge pairs whose arcs cross on the Gauss map (no other pair gives a facet). The largest separation
 * over them is minus the penetration depth when the bodies overlap, exactly; when they are apart it is a lower bound
 * of the distance, reached unless the nearest features are corner to corner or corner to edge, which {@link
 * ClosestFeatures} then finds.
 *
 * @param distanceM signed distance, metres: above zero apart, below zero how deep they overlap
 * @param normals unit directions out of {@code b} into {@code a}, the one to use first; the others are alternatives for
 *     when the two do not face each other along it
 * @param onA when they are apart, the nearest point of {@code a}; else null
 * @param onB when they are apart, the nearest point of {@code b}; else null
 * @see "C. Ericson, Real-Time Collision Detection, 2005, chapter 5; D. Gregorius, The Separating Axis Test between
 *     Convex Polyhedra, 2013 (arc test)"
 */
record Separation(double distanceM, List<Vec3> normals, Vec3 onA, Vec3 onB) {

  /** One axis: out of b into a, the separation along it, the area of its face (0 for a pair of edges). */
  private record Axis(Vec3 normal, double separationM, double area) {}

  /**
   * Finds it.
   *
   * @param giveUpM returns null as soon as the bodies are known to be farther apart than this
   * @param faceTieM face normals within this of the best axis are as good as it
   */
  static Separation of(Polytope a, Polytope b, double giveUpM, double faceTieM) {
    List<Axis> faces = new ArrayList<>(a.faces + b.faces);
    double best = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < a.faces; f++) {
      double s = b.least(a.normal[f]) - a.offset[f];
      if (s > giveUpM) return null;
      best = Math.max(best, s);
      faces.add(new Axis(a.normal[f].negated(), s, a.area[f]));
    }
    for (int f = 0; f < b.faces; f++) {
      double s = a.least(b.normal[f]) - b.offset[f];
      if (s > giveUpM) return null;
      best = Math.max(best, s);
      faces.add(new Axis(b.normal[f], s, b.area[f]));
    }
    double size = Math.min(a.sizeM, b.sizeM);
    double rounding = Tolerances.WELD_SHARE * size + 10 * Tolerances.ROUNDING * Math.max(a.magnitudeM, b.magnitudeM);
    Axis edge = bestEdgePair(a, b, rounding);
    if (edge != null) {
      if (edge.separationM > giveUpM) return null;
      best = Math.max(best, edge.separationM);
    }
    ClosestFeatures.Pair near = null;
    double distance = best;
    // Bodies that touch to the last digit have no nearest points worth the name: the search for them starts from noise.
    if (best > rounding) {
      Vec3 along = bestOf(faces, edge, best).normal;
      near = ClosestFeatures.of(a, b, along, best);
      if (near.distanceM() > giveUpM) return null;
      distance = Math.max(best, near.distanceM());
    }
    List<Vec3> normals = ranked(faces, edge, near, distance, faceTieM, rounding);
    return new Separation(distance, normals, near == null ? null : near.onA(), near == null ? null : near.onB());
  }

  private static Axis bestOf(List<Axis> faces, Axis edge, double best) {
    if (edge != null && edge.separationM >= best) return edge;
    for (Axis f : faces) if (f.separationM >= best) return f;
    throw new IllegalStateException("no axis reaches the largest separation");
  }

  /** The axis to use, then those to fall back on. */
  private static List<Vec3> ranked(
      List<Axis> faces, Axis edge, ClosestFeatures.Pair near, double distance, double faceTieM, double rounding) {
    List<Vec3> order = new ArrayList<>();
    List<Axis> tied = new ArrayList<>();
    for (Axis f : faces) if (f.separationM >= distance - faceTieM) tied.add(f);
    while (!tied.isEmpty()) {
      Axis first = tied.get(0);
      for (Axis f : tied) if (better(f, first)) first = f;
      order.add(first.normal);
      tied.remove(first);
    }
    if (edge != null && edge.separationM >= distance - rounding) order.add(edge.normal);
    if (near != null && near.distanceM() > 10 * rounding) {
      order.add(near.onA().minus(near.onB()).unit());
    }
    if (order.isEmpty()) order.add(bestOf(faces, edge, bestSeparation(faces, edge)).normal);
    return order;
  }

  private static double bestSeparation(List<Axis> faces, Axis edge) {
    double best = edge == null ? Double.NEGATIVE_INFINITY : edge.separationM;
    for (Axis f : faces) best = Math.max(best, f.separationM);
    return best;
  }

  /**
   * The larger face; of equal ones the less upright normal, since a bearing straight up promises more than one that
   * leans; then by components, so that the order of the two bodies does not matter.
   */
  private static boolean better(Axis p, Axis q) {
    if (Math.abs(p.area - q.area) > 1e-9 * Math.max(p.area, q.area)) return p.area > q.area;
    double upright = Math.abs(p.normal.z()) - Math.abs(q.normal.z());
    if (Math.abs(upright) > 1e-9) return upright < 0;
    Vec3 d = p.normal.minus(q.normal);
    for (double c : new double[] {d.x(), d.y(), d.z()}) if (Math.abs(c) > 1e-9) return c > 0;
    return false;
  }

  /**
   * The best axis across two edges. An edge of each makes one where the arc between the normals of the one's faces and the reversed
   * arc of the other's cross: where each one's ends lie on either side of the other, in the same half of the sphere.
   */
  private static Axis bestEdgePair(Polytope a, Polytope b, double rounding) {
    double[] crossB = new double[3 * b.edges];
    for (int j = 0; j < b.edges; j++) {
      // Right times left, negated twice: the arc of b's normals turned round.
      Vec3 c = b.normal[b.right[j]].cross(b.normal[b.left[j]]);
      crossB[3 * j] = c.x();
      crossB[3 * j + 1] = c.y();
      crossB[3 * j + 2] = c.z();
    }
    double[] side = new double[b.faces];
    Axis best = null;
    for (int i = 0; i < a.edges; i++) {
      Vec3 p = a.normal[a.left[i]];
      Vec3 q = a.normal[a.right[i]];
      Vec3 across = q.cross(p);
      // On which side of a's arc the normals of b lie, reversed: one product a face serves all its edges.
      for (int f = 0; f < b.faces; f++) side[f] = -b.normal[f].dot(across);
      for (int j = 0; j < b.edges; j++) {
        double left = side[b.left[j]];
        if (left * side[b.right[j]] >= 0) continue;
        double bx = crossB[3 * j];
        double by = crossB[3 * j + 1];
        double bz = crossB[3 * j + 2];
        double ofP = p.x() * bx + p.y() * by + p.z() * bz;
        double ofQ = q.x() * bx + q.y() * by + q.z() * bz;
        if (ofP * ofQ >= 0 || left * ofQ <= 0) continue;
        Axis axis = edgeAxis(a, i, b, j);
        if (axis == null || best != null && axis.separationM <= best.separationM - rounding) continue;
        axis = measured(axis, a, b);
        if (best == null || axis.separationM > best.separationM + rounding
            || axis.separationM > best.separationM - rounding && better(axis, best)) {
          best = axis;
        }
      }
    }
    return best;
  }

  /**
   * The axis with what really separates the bodies along it. Edges that are all but parallel, as coordinates rounded in a
   * file are, have a cross product that is noise: the distance of the two edges along it then says nothing.
   */
  private static Axis measured(Axis axis, Polytope a, Polytope b) {
    return new Axis(axis.normal, Math.min(axis.separationM, a.least(axis.normal) - b.reach(axis.normal)), 0);
  }

  /** The axis across two edges; null when they are parallel. */
  private static Axis edgeAxis(Polytope a, int i, Polytope b, int j) {
    Vec3 e = a.corner(a.to[i]).minus(a.corner(a.from[i]));
    Vec3 f = b.corner(b.to[j]).minus(b.corner(b.from[j]));
    Vec3 n = e.cross(f);
    double length = n.norm();
    if (!(length > 1e-9 * e.norm() * f.norm())) return null;
    n = n.times(1 / length);
    // Out of a where the edge lies between its two faces; minus that goes out of b into a.
    if (n.dot(a.normal[a.left[i]].plus(a.normal[a.right[i]])) < 0) n = n.negated();
    return new Axis(n.negated(), n.dot(b.corner(b.from[j]).minus(a.corner(a.from[i]))), 0);
  }
}
