package holdfast.model.geom;

import java.math.BigInteger;

/**
 * On which side of a plane through three points a fourth lies, decided without error.
 *
 * <p>The points are first put on a grid of 2^40 steps over their extent (a shift of at most 1e-12 of the size). On the
 * grid all differences are exact in double precision; the determinant is computed in doubles with Shewchuk's forward
 * error bound, and in whole numbers where that bound leaves its sign open. An incremental hull that asks only this
 * question cannot be led astray by rounding.
 *
 * @see <a href="https://doi.org/10.1007/PL00009321">Shewchuk 1997, Adaptive precision floating-point arithmetic and fast
 *     robust geometric predicates, Discrete Comput. Geom. 18:305 (the error bound of ORIENT3D, stage A)</a>
 */
final class Orientation {
  private static final double STEPS = 0x1p40;
  /** (7 + 56 u) u with u = 2^-53; here the differences are exact, so the bound is on the safe side. */
  private static final double BOUND = (7 + 56 * 0x1p-53) * 0x1p-53;

  private final double[] x;
  private final double[] y;
  private final double[] z;

  /** {@code size} is the extent of the points, {@code low} their lower corner. */
  Orientation(Vec3[] points, Vec3 low, double size) {
    x = new double[points.length];
    y = new double[points.length];
    z = new double[points.length];
    // A power of two keeps coordinates that differ by a short binary fraction exactly apart.
    double scale = STEPS / Math.scalb(1.0, Math.getExponent(size) + 1);
    for (int i = 0; i < points.length; i++) {
      x[i] = Math.rint((points[i].x() - low.x()) * scale);
      y[i] = Math.rint((points[i].y() - low.y()) * scale);
      z[i] = Math.rint((points[i].z() - low.z()) * scale);
    }
  }

  /** Above 0 when {@code p} lies on the side from which a, b, c run counter-clockwise; 0 when in their plane. */
  int side(int a, int b, int c, int p) {
    double ux = x[b] - x[a];
    double uy = y[b] - y[a];
    double uz = z[b] - z[a];
    double vx = x[c] - x[a];
    double vy = y[c] - y[a];
    double vz = z[c] - z[a];
    double wx = x[p] - x[a];
    double wy = y[p] - y[a];
    double wz = z[p] - z[a];
    double yz = uy * vz;
    double zy = uz * vy;
    double zx = uz * vx;
    double xz = ux * vz;
    double xy = ux * vy;
    double yx = uy * vx;
    double det = wx * (yz - zy) + wy * (zx - xz) + wz * (xy - yx);
    double permanent = (Math.abs(yz) + Math.abs(zy)) * Math.abs(wx)
        + (Math.abs(zx) + Math.abs(xz)) * Math.abs(wy)
        + (Math.abs(xy) + Math.abs(yx)) * Math.abs(wz);
    double bound = BOUND * permanent;
    if (det > bound) return 1;
    if (det < -bound) return -1;
    if (permanent == 0) return 0;
    return minor(uy, vz, uz, vy).multiply(whole(wx))
        .add(minor(uz, vx, ux, vz).multiply(whole(wy)))
        .add(minor(ux, vy, uy, vx).multiply(whole(wz)))
        .signum();
  }

  private static BigInteger minor(double a, double b, double c, double d) {
    return whole(a).multiply(whole(b)).subtract(whole(c).multiply(whole(d)));
  }

  private static BigInteger whole(double v) {
    return BigInteger.valueOf((long) v);
  }
}
