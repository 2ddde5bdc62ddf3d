package holdfast.engine.contact;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * The signed distance of two bodies made of convex lobes, with the places where it is taken.
 *
 * @param distanceM least distance, metres; below zero minus the shortest move that parts the two lobes that overlap most
 * @param onA a nearest point of the first; when they overlap, its deepest corner along the parting direction
 * @param onB the matching point of the second
 */
public record HullDistance(double distanceM, Vec3 onA, Vec3 onB) {

  /** Least over all pairs of lobes; exact. Both lists hold at least one lobe. */
  public static HullDistance between(List<Hull> a, List<Hull> b) {
    HullDistance best = null;
    List<Polytope> ofB = b.stream().map(Polytope::new).toList();
    for (Hull h : a) {
      Polytope p = new Polytope(h);
      for (Polytope q : ofB) {
        double giveUp = best == null ? Double.POSITIVE_INFINITY : best.distanceM;
        Separation s = Separation.of(p, q, giveUp, 0);
        if (s != null && (best == null || s.distanceM() < best.distanceM)) best = of(p, s);
      }
    }
    if (best == null) throw new IllegalArgumentException("a body needs at least one lobe");
    return best;
  }

  private static HullDistance of(Polytope a, Separation s) {
    if (s.onA() != null) return new HullDistance(s.distanceM(), s.onA(), s.onB());
    Vec3 normal = s.normals().get(0);
    Vec3 deepest = a.deepest(normal);
    return new HullDistance(s.distanceM(), deepest, deepest.plusTimes(-s.distanceM(), normal));
  }
}
