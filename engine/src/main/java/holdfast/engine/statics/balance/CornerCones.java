package holdfast.engine.statics.balance;

import java.util.Arrays;

/**
 * The cones of friction at the corners of a heap's bearings, and steps of {@link CornerPath} from a {@link CornerPoint} inside
 * all of them.
 *
 * <p>A corner's force is {@code s}, in the cone {@code s0 >= |(s1, s2)|}: s0 is its push times its friction, s1 and s2 its
 * shear. {@code z} is how the corner opens and slides in a movement y of the bodies, {@code z = P' y} ({@link CornerShape}),
 * and lies in the same cone where the movement gains nothing from the corner's friction. So that forces which lock against
 * each other have an end, s0 is at most {@code most}; {@code tau} is the multiplier of that, {@code z = P' y + tau e}, and
 * next to nothing elsewhere.
 *
 * <p>In three dimensions the Nesterov-Todd scaling is {@code W^2 = eta (2 w w' - J)}, J = diag(1, -1, -1), hence
 * {@code P W^2 P' = eta (2 (P w)(P w)' - P J P')}: a square, and a matrix that never changes. With the largest push a step
 * obeys {@code ds + W^2 u = -s + later + kappa g - share g (g' u)}, u = P' dy and g the first column of W^2; kappa is what
 * the multipliers ask for.
 *
 * @see <a href="https://www.seas.ucla.edu/~vandenbe/publications/coneprog.pdf">Vandenberghe 2010, The CVXOPT linear and
 *     quadratic cone program solvers</a>, sections 4 and 5
 */
final class CornerCones {
  private final CornerShape shape;
  private final CornerPoint point;
  private final double[] s;
  private final double[] z;
  private final double[] tau;
  private final double[] w;
  private final double[] eta;
  private final double[] rootS;
  private final double[] rootZ;
  /** One over what is left to the largest push, first entry of g, and tau over what is left over 1 + that times g0, or zero. */
  private final double[] overLeft;
  private final double[] first;
  private final double[] share;
  private final double[] later;
  private final double[] product;
  private final double[] ds;
  private final double[] dz;
  private final double[] dTau;
  private final double[] sum = new double[CornerShape.HALF];
  private final double[] six = new double[6];
  private final double[] force = new double[6];

  /** Whether a largest push counts at any corner. */
  private boolean locks;
  /** Sum of s z and of tau times what is left to {@code most}. */
  private double gap;
  /** One over the longest step that stays inside, of forces and of movements. */
  private double shortS;
  private double shortZ;

  CornerCones(CornerShape shape) {
    this.shape = shape;
    int count = shape.count;
    point = new CornerPoint(shape);
    s = point.s;
    z = point.z;
    tau = point.tau;
    ds = point.ds;
    dz = point.dz;
    dTau = point.dTau;
    w = new double[3 * count];
    eta = new double[count];
    rootS = new double[count];
    rootZ = new double[count];
    overLeft = new double[count];
    first = new double[count];
    share = new double[count];
    later = new double[3 * count];
    product = new double[count];
  }

  CornerPoint point() {
    return point;
  }

  /** Number of products: each corner's, and each one's with its largest push. */
  int degree() {
    return 2 * shape.count;
  }

  double gap() {
    return gap;
  }

  double longestS() {
    return shortS > 0 ? 1 / shortS : Double.POSITIVE_INFINITY;
  }

  double longestZ() {
    return shortZ > 0 ? 1 / shortZ : Double.POSITIVE_INFINITY;
  }

  // -- one step -------------------------------------------------------------------------------------------------------

  /**
   * Works out the scaling and adds the matrix of every link to {@code blocks}. False where a point has left its cone.
   */
  boolean scale(double[] blocks) {
    gap = 0;
    locks = false;
    for (int i = 0; i < shape.links; i++) {
      Arrays.fill(sum, 0);
      for (int k = shape.first[i]; k < shape.first[i + 1]; k++) {
        if (!scale(k)) return false;
        shape.addScaled(k, eta[k], w[3 * k], w[3 * k + 1], w[3 * k + 2], sum);
        if (share[k] > 0) {
          locks = true;
          double h = Math.sqrt(share[k]);
          double g = 2 * eta[k] * w[3 * k] * h;
          shape.subtractSquare(k, h * first[k], g * w[3 * k + 1], g * w[3 * k + 2], sum);
        }
      }
      shape.addMatrix(i, sum, blocks);
    }
    return true;
  }

  private boolean scale(int k) {
    int o = 3 * k;
    double s0 = s[o];
    double s1 = s[o + 1];
    double s2 = s[o + 2];
    double z0 = z[o];
    double z1 = z[o + 1];
    double z2 = z[o + 2];
    double ts = s1 * s1 + s2 * s2;
    double tz = z1 * z1 + z2 * z2;
    double js = s0 * s0 - ts;
    double jz = z0 * z0 - tz;
    double left = shape.most[k] - s0;
    double t = tau[k];
    if (!(js > 0) || !(jz > 0) || !(s0 > 0) || !(z0 > 0) || !(left > 0) || !(t > 0)) return false;
    double rs = 1 / Math.sqrt(js);
    double rz = 1 / Math.sqrt(jz);
    double dot = s0 * z0 + s1 * z1 + s2 * z2;
    double half = 0.5 / Math.sqrt(0.5 + 0.5 * dot * rs * rz);
    double w1 = half * (s1 * rs - z1 * rz);
    double w2 = half * (s2 * rs - z2 * rz);
    // On the hyperboloid w0^2 - |w1|^2 = 1, which rounding would leave.
    double ww = 1 + w1 * w1 + w2 * w2;
    double f = js * rs * rz;
    double g0 = f * (2 * ww - 1);
    double over = 1 / left;
    w[o] = Math.sqrt(ww);
    w[o + 1] = w1;
    w[o + 2] = w2;
    eta[k] = f;
    rootS[k] = rs;
    rootZ[k] = rz;
    first[k] = g0;
    overLeft[k] = over;
    double capped = t / (left + t * g0);
    share[k] = capped * g0 > Tolerances.CORNER_CAPPED ? capped : 0;
    gap += dot + left * t;
    return true;
  }

  /** Adds the wrenches of all forces to {@code on}. */
  void wrenches(double[] on) {
    for (int i = 0; i < shape.links; i++) {
      Arrays.fill(force, 0);
      for (int k = shape.first[i]; k < shape.first[i + 1]; k++) {
        shape.addWrench(k, s[3 * k], s[3 * k + 1], s[3 * k + 2], force, 0);
      }
      shape.addForce(i, force, 0, on);
    }
  }

  /** What the multipliers ask for: t0 is how tau is to move without s, v0 what s0 is to besides -s0. */
  private double kappa(int k, double t0, double v0) {
    return -t0 - share[k] * (v0 - s[3 * k] - t0 * first[k]);
  }

  /**
   * What a step towards forces and movements with products {@code mu} asks of the balance, added to {@code once}; the
   * movement is missing {@code rest} of what {@link CornerPoint#begin} left out.
   */
  void centring(double mu, double rest, double[] once) {
    for (int i = 0; i < shape.links; i++) {
      Arrays.fill(force, 0);
      for (int k = shape.first[i]; k < shape.first[i + 1]; k++) {
        int o = 3 * k;
        double jz = mu * rootZ[k] * rootZ[k];
        later[o] = z[o] * jz;
        later[o + 1] = -z[o + 1] * jz;
        later[o + 2] = -z[o + 2] * jz;
        product[k] = mu;
        addAsked(k, kappa(k, mu * overLeft[k] - tau[k] + rest * point.beginning(k), later[o]));
      }
      shape.addForce(i, force, 0, once);
    }
  }

  /** Adds what {@code later} and kappa ask of the balance at a corner to {@link #force}. */
  private void addAsked(int k, double kappa) {
    int o = 3 * k;
    double g = 2 * eta[k] * w[o] * kappa;
    shape.addWrench(k, later[o] + kappa * first[k], later[o + 1] + g * w[o + 1], later[o + 2] + g * w[o + 2], force, 0);
  }

  /** What a step to the very edge asks of the balance, added to {@code once}: nothing to speak of where none locks. */
  void predicting(double[] once) {
    if (!locks) return;
    for (int i = 0; i < shape.links; i++) {
      Arrays.fill(force, 0);
      for (int k = shape.first[i]; k < shape.first[i + 1]; k++) {
        int o = 3 * k;
        double kappa = kappa(k, -tau[k], 0);
        double g = 2 * eta[k] * w[o] * kappa;
        shape.addWrench(k, kappa * first[k], g * w[o + 1], g * w[o + 2], force, 0);
      }
      shape.addForce(i, force, 0, once);
    }
  }

  /**
   * The step to the very edge with the movement {@code dy}, and what its second order and products of {@code mu} ask of the
   * balance, added to {@code once}.
   */
  void predicted(double[] dy, double mu, double[] once) {
    for (int i = 0; i < shape.links; i++) {
      shape.relative(i, dy, six);
      Arrays.fill(force, 0);
      for (int k = shape.first[i]; k < shape.first[i + 1]; k++) {
        int o = 3 * k;
        later[o] = later[o + 1] = later[o + 2] = 0;
        direction(k, kappa(k, -tau[k], 0), -tau[k], 0);
        second(k, mu);
      }
      shape.addForce(i, force, 0, once);
    }
  }

  private void direction(int k, double kappa, double t0, double rest) {
    double[] p = shape.p;
    int q = CornerShape.COLUMNS * k;
    int o = 3 * k;
    double y0 = six[0];
    double y1 = six[1];
    double y2 = six[2];
    double y3 = six[3];
    double y4 = six[4];
    double y5 = six[5];
    double u0 = p[q] * y0 + p[q + 1] * y1 + p[q + 2] * y2 + p[q + 3] * y3 + p[q + 4] * y4 + p[q + 5] * y5;
    double u1 = p[q + 6] * y0 + p[q + 7] * y1 + p[q + 8] * y2 + p[q + 9] * y3 + p[q + 10] * y4 + p[q + 11] * y5;
    double u2 = p[q + 12] * y0 + p[q + 13] * y1 + p[q + 14] * y2 + p[q + 15] * y3 + p[q + 16] * y4 + p[q + 17] * y5;
    double f = eta[k];
    double w0 = w[o];
    double w1 = w[o + 1];
    double w2 = w[o + 2];
    double g0 = first[k];
    double g1 = 2 * f * w0 * w1;
    double g2 = 2 * f * w0 * w2;
    double along = kappa + share[k] * (g0 * u0 + g1 * u1 + g2 * u2);
    double wu = 2 * f * (w0 * u0 + w1 * u1 + w2 * u2);
    double d0 = later[o] - s[o] + along * g0 - wu * w0 + f * u0;
    double d1 = later[o + 1] - s[o + 1] + along * g1 - wu * w1 - f * u1;
    double d2 = later[o + 2] - s[o + 2] + along * g2 - wu * w2 - f * u2;
    double dt = t0 + tau[k] * overLeft[k] * d0;
    ds[o] = d0;
    ds[o + 1] = d1;
    ds[o + 2] = d2;
    dTau[k] = dt;
    dz[o] = u0 + dt + rest;
    dz[o + 1] = u1;
    dz[o + 2] = u2;
  }

  /** How far the step stays inside. */
  private void measure(int k) {
    int o = 3 * k;
    shortS = Math.max(shortS, Math.max(shortest(s, o, ds[o], ds[o + 1], ds[o + 2], rootS[k]), ds[o] * overLeft[k]));
    shortZ = Math.max(shortZ, Math.max(shortest(z, o, dz[o], dz[o + 1], dz[o + 2], rootZ[k]), -dTau[k] / tau[k]));
  }

  /** One over the longest step from v along d, with {@code root} one over the root of v's determinant. */
  private static double shortest(double[] v, int o, double d0, double d1, double d2, double root) {
    double v0 = v[o] * root;
    double v1 = v[o + 1] * root;
    double v2 = v[o + 2] * root;
    double r0 = v0 * d0 - v1 * d1 - v2 * d2;
    double t = (r0 + d0) / (1 + v0);
    double r1 = d1 - t * v1;
    double r2 = d2 - t * v2;
    return (Math.sqrt(r1 * r1 + r2 * r2) - r0) * root;
  }

  /**
   * Second order of the step to the edge, -W (l \ ((W^-1 ds) o (W dz))) with l = W z, and mu over z: kept, and its wrench. The
   * root of eta in W cancels and is left out.
   */
  private void second(int k, double mu) {
    int o = 3 * k;
    double w0 = w[o];
    double w1 = w[o + 1];
    double w2 = w[o + 2];
    double n = 1 / (1 + w0);
    double dot = w1 * z[o + 1] + w2 * z[o + 2];
    double c = z[o] + dot * n;
    double l0 = w0 * z[o] + dot;
    double l1 = z[o + 1] + c * w1;
    double l2 = z[o + 2] + c * w2;
    dot = w1 * ds[o + 1] + w2 * ds[o + 2];
    c = dot * n - ds[o];
    double a0 = w0 * ds[o] - dot;
    double a1 = ds[o + 1] + c * w1;
    double a2 = ds[o + 2] + c * w2;
    dot = w1 * dz[o + 1] + w2 * dz[o + 2];
    c = dz[o] + dot * n;
    double b0 = w0 * dz[o] + dot;
    double b1 = dz[o + 1] + c * w1;
    double b2 = dz[o + 2] + c * w2;
    double r0 = -(a0 * b0 + a1 * b1 + a2 * b2);
    double r1 = -(a0 * b1 + b0 * a1);
    double r2 = -(a0 * b2 + b0 * a2);
    // W keeps determinants: that of l is that of z.
    double jz = rootZ[k] * rootZ[k];
    double x0 = (l0 * r0 - l1 * r1 - l2 * r2) * jz;
    double i0 = 1 / l0;
    double x1 = (r1 - x0 * l1) * i0;
    double x2 = (r2 - x0 * l2) * i0;
    dot = w1 * x1 + w2 * x2;
    c = x0 + dot * n;
    double towards = mu * jz;
    later[o] = w0 * x0 + dot + z[o] * towards;
    later[o + 1] = x1 + c * w1 - z[o + 1] * towards;
    later[o + 2] = x2 + c * w2 - z[o + 2] * towards;
    product[k] = mu + ds[o] * dTau[k];
    addAsked(k, kappa(k, product[k] * overLeft[k] - tau[k], later[o]));
  }

  /** The step with the movement {@code dy} to the products last asked for, second order and all; how far it stays inside. */
  void corrected(double[] dy, double rest) {
    shortS = 0;
    shortZ = 0;
    for (int i = 0; i < shape.links; i++) {
      shape.relative(i, dy, six);
      for (int k = shape.first[i]; k < shape.first[i + 1]; k++) {
        double missing = rest == 0 ? 0 : rest * point.beginning(k);
        double t0 = product[k] * overLeft[k] - tau[k];
        direction(k, kappa(k, t0 + missing, later[3 * k]), t0, missing);
        measure(k);
      }
    }
  }
}
