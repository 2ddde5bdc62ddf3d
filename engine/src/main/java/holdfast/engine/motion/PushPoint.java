package holdfast.engine.motion;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;

/** Where a rock is struck: on the vertical line through its centre of mass, at a share of its height. */
public final class PushPoint {
  private PushPoint() {}

  /** The point at {@code share} of the rock's own height, world, metres. */
  public static Vec3 of(MotionBody body, double share) {
    double lo = Double.POSITIVE_INFINITY;
    double hi = Double.NEGATIVE_INFINITY;
    for (Hull h : body.lobes()) {
      for (Vec3 c : h.corners()) {
        double z = body.pose().apply(c).z();
        lo = Math.min(lo, z);
        hi = Math.max(hi, z);
      }
    }
    Vec3 centre = body.centreInWorld();
    return new Vec3(centre.x(), centre.y(), lo + share * (hi - lo));
  }
}
