package holdfast.model.geom;

/**
 * Integrals of 1, x and x x' over a solid of density one, about a given origin: they add and subtract, which centroids
 * and inertia tensors do not.
 */
record Moments(
    Vec3 origin, double volume, Vec3 first,
    double xx, double yy, double zz, double xy, double xz, double yz) {

  static Moments none(Vec3 origin) {
    return new Moments(origin, 0, Vec3.ZERO, 0, 0, 0, 0, 0, 0);
  }

  /** The integrals over a hull, as a signed sum of tetrahedra with their apex at the origin given. */
  static Moments of(Hull hull, Vec3 origin) {
    double v = 0;
    double fx = 0;
    double fy = 0;
    double fz = 0;
    double xx = 0;
    double yy = 0;
    double zz = 0;
    double xy = 0;
    double xz = 0;
    double yz = 0;
    for (Hull.Face f : hull.faces()) {
      Vec3 a = hull.corners().get(f.loop().get(0)).minus(origin);
      Vec3 b = hull.corners().get(f.loop().get(1)).minus(origin);
      for (int i = 2; i < f.loop().size(); i++) {
        Vec3 c = hull.corners().get(f.loop().get(i)).minus(origin);
        double six = a.dot(b.cross(c));
        double sx = a.x() + b.x() + c.x();
        double sy = a.y() + b.y() + c.y();
        double sz = a.z() + b.z() + c.z();
        v += six / 6;
        fx += six * sx / 24;
        fy += six * sy / 24;
        fz += six * sz / 24;
        // Over a tetrahedron with one corner at the origin: integral of x y = 6V/120 (sum x sum y + sum of x_i y_i).
        xx += six / 120 * (sx * sx + a.x() * a.x() + b.x() * b.x() + c.x() * c.x());
        yy += six / 120 * (sy * sy + a.y() * a.y() + b.y() * b.y() + c.y() * c.y());
        zz += six / 120 * (sz * sz + a.z() * a.z() + b.z() * b.z() + c.z() * c.z());
        xy += six / 120 * (sx * sy + a.x() * a.y() + b.x() * b.y() + c.x() * c.y());
        xz += six / 120 * (sx * sz + a.x() * a.z() + b.x() * b.z() + c.x() * c.z());
        yz += six / 120 * (sy * sz + a.y() * a.z() + b.y() * b.z() + c.y() * c.z());
        b = c;
      }
    }
    return new Moments(origin, v, new Vec3(fx, fy, fz), xx, yy, zz, xy, xz, yz);
  }

  /** {@code this + s * o}; both about the same origin. */
  Moments plusTimes(double s, Moments o) {
    return new Moments(origin, volume + s * o.volume, first.plusTimes(s, o.first),
        xx + s * o.xx, yy + s * o.yy, zz + s * o.zz, xy + s * o.xy, xz + s * o.xz, yz + s * o.yz);
  }

  /** Centroid and inertia about it (parallel axes). */
  MassProperties massProperties() {
    Vec3 c = first.times(1 / volume);
    double cxx = xx - volume * c.x() * c.x();
    double cyy = yy - volume * c.y() * c.y();
    double czz = zz - volume * c.z() * c.z();
    double cxy = xy - volume * c.x() * c.y();
    double cxz = xz - volume * c.x() * c.z();
    double cyz = yz - volume * c.y() * c.z();
    Mat3 inertia = new Mat3(
        cyy + czz, -cxy, -cxz,
        -cxy, cxx + czz, -cyz,
        -cxz, -cyz, cxx + cyy);
    return new MassProperties(volume, origin.plus(c), inertia);
  }
}
