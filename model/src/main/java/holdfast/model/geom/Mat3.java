package holdfast.model.geom;

/** A 3 x 3 matrix, row by row; used for inertia (kg m2) and for rotations. */
public record Mat3(
    double xx, double xy, double xz,
    double yx, double yy, double yz,
    double zx, double zy, double zz) {

  public static final Mat3 ZERO = new Mat3(0, 0, 0, 0, 0, 0, 0, 0, 0);

  public static Mat3 of(Quat q) {
    Vec3 a = q.rotate(Vec3.X);
    Vec3 b = q.rotate(Vec3.Y);
    Vec3 c = q.rotate(Vec3.Z);
    return new Mat3(a.x(), b.x(), c.x(), a.y(), b.y(), c.y(), a.z(), b.z(), c.z());
  }

  public Mat3 plus(Mat3 o) {
    return new Mat3(xx + o.xx, xy + o.xy, xz + o.xz, yx + o.yx, yy + o.yy, yz + o.yz, zx + o.zx, zy + o.zy, zz + o.zz);
  }

  public Mat3 times(double s) {
    return new Mat3(xx * s, xy * s, xz * s, yx * s, yy * s, yz * s, zx * s, zy * s, zz * s);
  }

  public Mat3 times(Mat3 o) {
    return new Mat3(
        xx * o.xx + xy * o.yx + xz * o.zx, xx * o.xy + xy * o.yy + xz * o.zy, xx * o.xz + xy * o.yz + xz * o.zz,
        yx * o.xx + yy * o.yx + yz * o.zx, yx * o.xy + yy * o.yy + yz * o.zy, yx * o.xz + yy * o.yz + yz * o.zz,
        zx * o.xx + zy * o.yx + zz * o.zx, zx * o.xy + zy * o.yy + zz * o.zy, zx * o.xz + zy * o.yz + zz * o.zz);
  }

  public Vec3 times(Vec3 v) {
    return new Vec3(
        xx * v.x() + xy * v.y() + xz * v.z(),
        yx * v.x() + yy * v.y() + yz * v.z(),
        zx * v.x() + zy * v.y() + zz * v.z());
  }

  public Mat3 transposed() {
    return new Mat3(xx, yx, zx, xy, yy, zy, xz, yz, zz);
  }
}
