package holdfast.engine.pane;

/**
 * A bedded plate that ends in one free edge, y = 0, and is endless elsewhere, by Fourier's integral along the edge (derived; the
 * way of Westergaard 1926). With lengths in L and D = 1, each wave cos(q x) bends as w'''' - 2 q^2 w'' + (q^4 + 1) w = p:
 * w = Im W + Re[A e^(-a y)], a^2 = q^2 + i, W of the endless plate from 1 / (z^2 + 1) = Im 1 / (z - i), and the complex A from no
 * moment w'' - nu q^2 w and no edge force w''' - (2 - nu) q^2 w' at y = 0.
 *
 * <p>The load: one newton evenly over x in (-halfX, halfX), y in (from, to).
 */
final class HalfPlate {
  private static final double STEP = 0.01;
  private static final double HIGHEST = 3000;

  private final double nu;
  private final double lengthM;
  private final double stiffness;
  private final double halfX;
  private final double from;
  private final double to;

  HalfPlate(Plate plate, double foundationNm3, double halfXM, double fromM, double toM) {
    this.nu = plate.poisson();
    this.stiffness = plate.stiffnessNm();
    this.lengthM = Math.pow(stiffness / foundationNm3, 0.25);
    this.halfX = halfXM / lengthM;
    this.from = fromM / lengthM;
    this.to = toM / lengthM;
  }

  /** Deflection, m_xx and m_yy at (0, y) per newton; by trapezia. */
  double[] at(double yM) {
    double y = yM / lengthM;
    double[] sum = new double[3];
    // q = sinh u: even steps near nil, a growing stride above.
    int count = (int) Math.ceil(Math.log(2 * HIGHEST) / STEP);
    for (int i = 0; i <= count; i++) {
      double q = Math.sinh(i * STEP);
      double weight = STEP * Math.cosh(i * STEP) * (i == 0 ? 0.5 : 1);
      double along = q * halfX < 1e-9 ? 1 : Math.sin(q * halfX) / (q * halfX);
      double[] w = wave(q, y);
      double scale = weight * along / Math.PI;
      sum[0] += scale * w[0];
      sum[1] += scale * (q * q * w[0] - nu * w[2]);
      sum[2] += scale * (nu * q * q * w[0] - w[2]);
    }
    return new double[] {sum[0] * lengthM * lengthM / stiffness, sum[1], sum[2]};
  }

  /** w and its first three derivatives at y for the wave q of a load of one. */
  private double[] wave(double q, double y) {
    double m = Math.sqrt(Math.hypot(q * q, 1));
    double angle = 0.5 * Math.atan2(1, q * q);
    double ar = m * Math.cos(angle);
    double ai = m * Math.sin(angle);
    double[] here = endless(ar, ai, y);
    double[] edge = endless(ar, ai, 0);
    double moment = edge[2] - nu * q * q * edge[0];
    double force = edge[3] - (2 - nu) * q * q * edge[1];
    // Re[A u] = -moment, Re[A v] = -force; u = a^2 - nu q^2, v = -a (a^2 - (2 - nu) q^2), a^2 = q^2 + i
    double ur = (1 - nu) * q * q;
    double ui = 1;
    double tr = q * q - (2 - nu) * q * q;
    double vr = -(ar * tr - ai);
    double vi = -(ai * tr + ar);
    // Re[A u] = Ar ur - Ai ui
    double det = -ur * vi + ui * vr;
    double aR = (moment * vi - force * ui) / det;
    double aI = (moment * vr - force * ur) / det;
    double size = Math.exp(-ar * y);
    double er = size * Math.cos(ai * y);
    double ei = -size * Math.sin(ai * y);
    double br = aR * er - aI * ei;
    double bi = aR * ei + aI * er;
    for (int k = 0; k < 4; k++) {
      here[k] += br;
      double next = -(br * ar - bi * ai);
      bi = -(br * ai + bi * ar);
      br = next;
    }
    return here;
  }

  /** The endless plate's part: Im of the integral of -e^(-a |y - s|) / 2a over the load, and its derivatives. */
  private double[] endless(double ar, double ai, double y) {
    double[] all = new double[4];
    double per = 1 / (to - from);
    for (int end = 0; end < 2; end++) {
      double s = end == 0 ? from : to;
      double size = Math.exp(-ar * Math.abs(y - s));
      double er = size * Math.cos(ai * Math.abs(y - s));
      double ei = -size * Math.sin(ai * Math.abs(y - s));
      // The n-th derivative of the integral up to s: divide by a^2, times (-+a)^n.
      double squareR = ar * ar - ai * ai;
      double squareI = 2 * ar * ai;
      double norm = squareR * squareR + squareI * squareI;
      double tr = (er * squareR + ei * squareI) / norm;
      double ti = (ei * squareR - er * squareI) / norm;
      // y below s: e^(-a (s - y)), each derivative times +a; above: times -a. Sign as it stands in the integral.
      double sign = end == 0 ? (y < s ? -1 : 1) : (y < s ? 1 : -1);
      double turn = y < s ? 1 : -1;
      for (int k = 0; k < 4; k++) {
        all[k] += 0.5 * per * sign * ti;
        double next = turn * (tr * ar - ti * ai);
        ti = turn * (tr * ai + ti * ar);
        tr = next;
      }
    }
    // Within the load the integral has a constant, -1 / a^2; its imaginary part is squareI / norm.
    if (y >= from && y < to) {
      double squareR = ar * ar - ai * ai;
      double squareI = 2 * ar * ai;
      all[0] += per * squareI / (squareR * squareR + squareI * squareI);
    }
    return all;
  }
}
