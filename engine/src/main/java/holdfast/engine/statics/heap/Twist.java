package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;

/** How a body begins to move: velocity of its centre of mass and angular velocity, in any consistent unit of time. */
public record Twist(Vec3 velocity, Vec3 spin) {
  public static final Twist ZERO = new Twist(Vec3.ZERO, Vec3.ZERO);

  /** Velocity of the point {@code at} of a body whose centre of mass is at {@code centre}. */
  public Vec3 at(Vec3 at, Vec3 centre) {
    return velocity.plus(spin.cross(at.minus(centre)));
  }
}
