package holdfast.engine.pane;

/**
 * Bending moments per metre of section at a point of a pane, N m/m; positive where the under side is stretched.
 *
 * @param xx moment that bends along x
 * @param yy moment that bends along y
 * @param xy twisting moment
 */
public record Bending(double xx, double yy, double xy) {
  public static final Bending ZERO = new Bending(0, 0, 0);

  /** From stiffness times negative curvatures: m = (1 - nu) k + nu tr(k) E. */
  static Bending ofCurvature(double kxx, double kyy, double kxy, double poisson) {
    return new Bending(kxx + poisson * kyy, kyy + poisson * kxx, (1 - poisson) * kxy);
  }

  Bending plusTimes(double s, Bending o) {
    return new Bending(xx + s * o.xx, yy + s * o.yy, xy + s * o.xy);
  }

  /** The principal moment of the greater size, with its sign. */
  public double principal() {
    double mean = 0.5 * (xx + yy);
    double radius = Math.hypot(0.5 * (xx - yy), xy);
    return mean >= 0 ? mean + radius : mean - radius;
  }

  /** The moment across a section whose normal is at {@code angleRad} to x. */
  double along(double angleRad) {
    double c = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    return xx * c * c + yy * s * s + 2 * xy * s * c;
  }

  /** Direction, radians from x, of {@link #principal()}. */
  double principalAngle() {
    double major = 0.5 * Math.atan2(2 * xy, xx - yy);
    return xx + yy >= 0 ? major : major + Math.PI / 2;
  }
}
