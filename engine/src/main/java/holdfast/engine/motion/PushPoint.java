package holdfast.engine.motion;

import holdfast.model.geom.Vec3;

/** Where a rock is struck: on the vertical line through its centre of mass, at a share of its height. */
public final class PushPoint {
  private PushPoint() {}

  /** The point at {@code share} of the rock's own height, world, metres. */
  public static Vec3 of(MotionBody body, double share) {
    MotionBody.Heights tall = body.heights();
    Vec3 centre = body.centreInWorld();
    return new Vec3(centre.x(), centre.y(), tall.lowM() + share * tall.extentM());
  }
}
