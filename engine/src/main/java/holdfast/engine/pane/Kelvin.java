package holdfast.engine.pane;

/**
 * The Kelvin functions ker and kei of order zero, ker x + i kei x = K0(x exp(i pi / 4)), and their first derivatives.
 *
 * <p>Below {@link #SPLIT} by the power series, above by the asymptotic series of K0 and K1 (Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 9.9.10, 9.9.12, 9.7.2). Relative to the size of the pair the error stays under 1e-7, at the split.
 */
final class Kelvin {
  private static final double SPLIT = 8;
  private static final double EULER = 0.57721566490153286;
  private static final int TERMS = 30;

  private Kelvin() {}

  /** From here to {@link #REACH} the four are read from a table by cubic Hermite interpolation, good to 1e-7. */
  private static final double TABLE_FROM = 0.5;

  /** Beyond this a plate's load is not felt: exp(-14 / sqrt 2) = 5e-5. */
  static final double REACH = 14;

  private static final int PER_UNIT = 64;
  private static final double[] TABLE = table();

  /**
   * All four at once, as {@link #at} to seven digits, for any x up to {@link #REACH}.
   *
   * @param out receives ker, kei, ker', kei'
   */
  static void quick(double x, double[] out) {
    if (x < TABLE_FROM) {
      series(x, out);
      return;
    }
    double at = (x - TABLE_FROM) * PER_UNIT;
    int node = Math.min((int) at, TABLE.length / 6 - 2);
    double s = at - node;
    double r = 1 - s;
    double h = 1.0 / PER_UNIT;
    double v0 = r * r * (1 + 2 * s);
    double d0 = h * s * r * r;
    double v1 = s * s * (3 - 2 * s);
    double d1 = -h * s * s * r;
    int i = 6 * node;
    for (int f = 0; f < 4; f++) {
      out[f] = v0 * TABLE[i + f] + d0 * TABLE[i + f + 2] + v1 * TABLE[i + 6 + f] + d1 * TABLE[i + 8 + f];
    }
  }

  /** At each node the four values and the second derivatives, ker'' = -kei - ker' / x and kei'' = ker - kei' / x. */
  private static double[] table() {
    int nodes = (int) Math.ceil((REACH - TABLE_FROM) * PER_UNIT) + 2;
    double[] all = new double[6 * nodes];
    double[] out = new double[4];
    for (int n = 0; n < nodes; n++) {
      double x = TABLE_FROM + (double) n / PER_UNIT;
      at(x, out);
      System.arraycopy(out, 0, all, 6 * n, 4);
      all[6 * n + 4] = -out[1] - out[2] / x;
      all[6 * n + 5] = out[0] - out[3] / x;
    }
    return all;
  }

  /**
   * All four at once.
   *
   * @param x above zero
   * @param out receives ker, kei, ker', kei'
   */
  static void at(double x, double[] out) {
    if (x < SPLIT) {
      series(x, out);
    } else {
      asymptotic(x, out);
    }
  }

  private static void series(double x, double[] out) {
    double q = 0.25 * x * x;
    double ber = 0;
    double bei = 0;
    double ber1 = 0;
    double bei1 = 0;
    double ker = 0;
    double kei = 0;
    double ker1 = 0;
    double kei1 = 0;
    double term = 1; // q^k / k!^2
    double psi = -EULER; // digamma(k + 1)
    for (int k = 0; k < 2 * TERMS; k++) {
      double sign = (k & 2) == 0 ? 1 : -1;
      double value = sign * term;
      double slope = value * 2 * k / x;
      if ((k & 1) == 0) {
        ber += value;
        ber1 += slope;
        ker += value * psi;
        ker1 += slope * psi;
      } else {
        bei += value;
        bei1 += slope;
        kei += value * psi;
        kei1 += slope * psi;
      }
      term *= q / ((k + 1.0) * (k + 1.0));
      psi += 1.0 / (k + 1);
      if (k > 4 && term * k < 1e-18) break;
    }
    double log = Math.log(0.5 * x);
    double p = 0.25 * Math.PI;
    out[0] = -log * ber + p * bei + ker;
    out[1] = -log * bei - p * ber + kei;
    out[2] = -log * ber1 - ber / x + p * bei1 + ker1;
    out[3] = -log * bei1 - bei / x - p * ber1 + kei1;
  }

  private static void asymptotic(double x, double[] out) {
    // K_n(z) = sqrt(pi / 2z) exp(-z) sum a_j(n) / z^j, z = x e^(i pi/4)
    double root = Math.sqrt(0.5);
    double size = Math.sqrt(Math.PI / (2 * x)) * Math.exp(-x * root);
    double phase = -x * root - Math.PI / 8;
    double re = size * Math.cos(phase);
    double im = size * Math.sin(phase);
    double[] k0 = new double[2];
    double[] k1 = new double[2];
    hankel(x, 0, k0);
    hankel(x, 4, k1);
    out[0] = re * k0[0] - im * k0[1];
    out[1] = re * k0[1] + im * k0[0];
    double r = re * k1[0] - im * k1[1];
    double i = re * k1[1] + im * k1[0];
    // d/dx K0(x e^(i pi/4)) = -e^(i pi/4) K1
    out[2] = -root * (r - i);
    out[3] = -root * (r + i);
  }

  /** sum over j of prod (mu - (2j-1)^2) / (j! (8z)^j), stopped at its smallest term. */
  private static void hankel(double x, double mu, double[] out) {
    double sr = 1;
    double si = 0;
    double tr = 1;
    double ti = 0;
    double last = Double.MAX_VALUE;
    double root = Math.sqrt(0.5);
    for (int j = 1; j < TERMS; j++) {
      double odd = 2 * j - 1;
      double f = (mu - odd * odd) / (j * 8 * x);
      double nr = f * root * (tr + ti);
      double ni = f * root * (ti - tr);
      double size = Math.abs(nr) + Math.abs(ni);
      if (size > last) break;
      tr = nr;
      ti = ni;
      last = size;
      sr += tr;
      si += ti;
      if (size < 1e-17) break;
    }
    out[0] = sr;
    out[1] = si;
  }
}
