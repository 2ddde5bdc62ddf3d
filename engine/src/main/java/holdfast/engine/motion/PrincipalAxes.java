package holdfast.engine.motion;

import holdfast.model.geom.Mat3;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;

/**
 * The principal axes of an inertia tensor, by cyclic Jacobi rotations (Golub & Van Loan, Matrix Computations,
 * section 8.5).
 *
 * @param moments principal moments, kg m2
 * @param turn from the principal frame to the tensor's frame
 */
record PrincipalAxes(Vec3 moments, Quat turn) {

  static PrincipalAxes of(Mat3 m) {
    double[][] a = {
        {m.xx(), (m.xy() + m.yx()) / 2, (m.xz() + m.zx()) / 2},
        {(m.xy() + m.yx()) / 2, m.yy(), (m.yz() + m.zy()) / 2},
        {(m.xz() + m.zx()) / 2, (m.yz() + m.zy()) / 2, m.zz()}};
    double[][] v = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    double scale = Math.abs(a[0][0]) + Math.abs(a[1][1]) + Math.abs(a[2][2]);
    for (int sweep = 0; sweep < 30; sweep++) {
      double off = Math.abs(a[0][1]) + Math.abs(a[0][2]) + Math.abs(a[1][2]);
      if (off <= 1e-16 * scale) break;
      for (int p = 0; p < 2; p++) {
        for (int q = p + 1; q < 3; q++) rotate(a, v, p, q);
      }
    }
    Vec3 c0 = new Vec3(v[0][0], v[1][0], v[2][0]);
    Vec3 c1 = new Vec3(v[0][1], v[1][1], v[2][1]);
    return new PrincipalAxes(new Vec3(a[0][0], a[1][1], a[2][2]), ofAxes(c0, c1, c0.cross(c1)));
  }

  private static void rotate(double[][] a, double[][] v, int p, int q) {
    if (a[p][q] == 0) return;
    double theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
    double t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(1 + theta * theta));
    double c = 1 / Math.sqrt(1 + t * t);
    double s = t * c;
    for (int k = 0; k < 3; k++) {
      double x = a[k][p];
      double y = a[k][q];
      a[k][p] = c * x - s * y;
      a[k][q] = s * x + c * y;
    }
    for (int k = 0; k < 3; k++) {
      double x = a[p][k];
      double y = a[q][k];
      a[p][k] = c * x - s * y;
      a[q][k] = s * x + c * y;
    }
    for (int k = 0; k < 3; k++) {
      double x = v[k][p];
      double y = v[k][q];
      v[k][p] = c * x - s * y;
      v[k][q] = s * x + c * y;
    }
  }

  /** The rotation that takes x, y, z to three right-handed orthonormal axes; by the largest of the four squared parts. */
  static Quat ofAxes(Vec3 a, Vec3 b, Vec3 c) {
    double ww = 1 + a.x() + b.y() + c.z();
    double xx = 1 + a.x() - b.y() - c.z();
    double yy = 1 - a.x() + b.y() - c.z();
    double zz = 1 - a.x() - b.y() + c.z();
    double most = Math.max(Math.max(ww, xx), Math.max(yy, zz));
    Quat q;
    if (most == ww) {
      q = new Quat(ww, b.z() - c.y(), c.x() - a.z(), a.y() - b.x());
    } else if (most == xx) {
      q = new Quat(b.z() - c.y(), xx, a.y() + b.x(), c.x() + a.z());
    } else if (most == yy) {
      q = new Quat(c.x() - a.z(), a.y() + b.x(), yy, b.z() + c.y());
    } else {
      q = new Quat(a.y() - b.x(), c.x() + a.z(), b.z() + c.y(), zz);
    }
    return q.unit();
  }
}
