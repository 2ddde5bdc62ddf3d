package holdfast.model.geom;

/** Where a body is: its own origin goes to {@code at} (metres), turned by {@code turn}. */
public record Pose(Vec3 at, Quat turn) {
  public static final Pose IDENTITY = new Pose(Vec3.ZERO, Quat.IDENTITY);

  /** A point of the body's own frame, in the world. */
  public Vec3 apply(Vec3 local) {
    return at.plus(turn.rotate(local));
  }

  /** A point of the world, in the body's own frame. */
  public Vec3 applyInverse(Vec3 world) {
    return turn.conjugate().rotate(world.minus(at));
  }

  public Pose movedBy(Vec3 shift) {
    return new Pose(at.plus(shift), turn);
  }
}
