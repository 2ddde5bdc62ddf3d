package holdfast.model.geom;

/** A rotation as a unit quaternion {@code w + xi + yj + zk} (Hamilton's convention, active, right-handed). */
public record Quat(double w, double x, double y, double z) {
  public static final Quat IDENTITY = new Quat(1, 0, 0, 0);

  /** The rotation by {@code angleRad} about the unit vector {@code axis}. */
  public static Quat about(Vec3 axis, double angleRad) {
    double s = Math.sin(angleRad / 2);
    return new Quat(Math.cos(angleRad / 2), s * axis.x(), s * axis.y(), s * axis.z());
  }

  /** The rotation of a small or large rotation vector (axis times angle in radians). */
  public static Quat ofRotationVector(Vec3 v) {
    double angle = v.norm();
    return angle == 0 ? IDENTITY : about(v.times(1 / angle), angle);
  }

  /** Turns about the fixed x axis, then the fixed y axis, then the fixed z axis; degrees, given in the order z, y, x. */
  public static Quat ofDegreesZyx(double aboutZ, double aboutY, double aboutX) {
    return about(Vec3.Z, Math.toRadians(aboutZ))
        .times(about(Vec3.Y, Math.toRadians(aboutY)))
        .times(about(Vec3.X, Math.toRadians(aboutX)));
  }

  /** This rotation after {@code o}. */
  public Quat times(Quat o) {
    return new Quat(
        w * o.w - x * o.x - y * o.y - z * o.z,
        w * o.x + x * o.w + y * o.z - z * o.y,
        w * o.y - x * o.z + y * o.w + z * o.x,
        w * o.z + x * o.y - y * o.x + z * o.w);
  }

  public Quat conjugate() {
    return new Quat(w, -x, -y, -z);
  }

  public double norm() {
    return Math.sqrt(w * w + x * x + y * y + z * z);
  }

  public Quat unit() {
    double n = norm();
    return n > 0 && Double.isFinite(n) ? new Quat(w / n, x / n, y / n, z / n) : this;
  }

  public Vec3 rotate(Vec3 v) {
    Vec3 u = new Vec3(x, y, z);
    Vec3 t = u.cross(v).times(2);
    return v.plusTimes(w, t).plus(u.cross(t));
  }

  /** The angle of this rotation in radians, from 0 to pi. */
  public double angleRad() {
    return 2 * Math.atan2(Math.sqrt(x * x + y * y + z * z), Math.abs(w));
  }
}
