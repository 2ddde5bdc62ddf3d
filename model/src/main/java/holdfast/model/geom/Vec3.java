package holdfast.model.geom;

/**
 * A vector or point in space: metres where it is a place, no unit where it is a direction.
 * Double precision, immutable; right-handed axes with {@code x} to the right, {@code y} to the back and {@code z} up.
 */
public record Vec3(double x, double y, double z) {
  public static final Vec3 ZERO = new Vec3(0, 0, 0);
  public static final Vec3 X = new Vec3(1, 0, 0);
  public static final Vec3 Y = new Vec3(0, 1, 0);
  public static final Vec3 Z = new Vec3(0, 0, 1);

  /** The horizontal unit vector at {@code degrees}: 0 points to the right, 90 to the back. */
  public static Vec3 heading(double degrees) {
    double a = Math.toRadians(degrees);
    return new Vec3(Math.cos(a), Math.sin(a), 0);
  }

  public Vec3 plus(Vec3 o) {
    return new Vec3(x + o.x, y + o.y, z + o.z);
  }

  public Vec3 minus(Vec3 o) {
    return new Vec3(x - o.x, y - o.y, z - o.z);
  }

  public Vec3 times(double s) {
    return new Vec3(x * s, y * s, z * s);
  }

  /** {@code this + s * o}, the step along a direction. */
  public Vec3 plusTimes(double s, Vec3 o) {
    return new Vec3(x + s * o.x, y + s * o.y, z + s * o.z);
  }

  public Vec3 negated() {
    return new Vec3(-x, -y, -z);
  }

  public double dot(Vec3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Vec3 cross(Vec3 o) {
    return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public double norm() {
    return Math.sqrt(dot(this));
  }

  public double distanceTo(Vec3 o) {
    return minus(o).norm();
  }

  /** This vector at length one; a vector of length zero (or not finite) comes back as it is. */
  public Vec3 unit() {
    double n = norm();
    return n > 0 && Double.isFinite(n) ? times(1 / n) : this;
  }

  public boolean isFinite() {
    return Double.isFinite(x) && Double.isFinite(y) && Double.isFinite(z);
  }

  /**
   * A unit vector at right angles to this unit vector, chosen by its smallest component: the same input gives the same
   * answer.
   */
  public Vec3 anyPerpendicular() {
    double ax = Math.abs(x);
    double ay = Math.abs(y);
    double az = Math.abs(z);
    Vec3 axis = ax <= ay && ax <= az ? X : ay <= az ? Y : Z;
    return cross(axis).unit();
  }
}
