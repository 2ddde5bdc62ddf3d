package holdfast.engine.statics;

import holdfast.model.geom.Vec3;
import java.util.Arrays;
import java.util.List;

/**
 * The cones of friction at the corners of a heap's bearings, with a point inside each, laid flat for {@link CornerPath}.
 *
 * <p>A corner's force is {@code s}, in the cone {@code s0 >= |(s1, s2)|}: s0 is its push times its friction, s1 and s2 its
 * shear. {@code P s} is the wrench on the upper body about an origin that all bodies share, so that a link adds the same
 * 6 x 6 matrix to both of its bodies and takes it from between them. {@code z} is how the corner opens and slides in a
 * movement y of the bodies, {@code z = P' y}, and lies in the same cone where the movement gains nothing from the corner's
 * friction. So that forces which lock against each other have an end, s0 is at most {@code most}; {@code tau} is the
 * multiplier of that, {@code z = P' y + tau e}, and next to nothing elsewhere.
 *
 * <p>In three dimensions the Nesterov-Todd scaling is {@code W^2 = eta (2 w w' - J)}, J = diag(1, -1, -1), hence
 * {@code P W^2 P' = eta (2 (P w)(P w)' - P J P')}: a square, and a matrix that never changes.
 *
 * @see <a href="https://www.seas.ucla.edu/~vandenbe/publications/coneprog.pdf">Vandenberghe 2010, The CVXOPT linear and
 *     quadratic cone program solvers</a>, sections 4 and 5
 */
final class CornerCones {
  /** Entries of a symmetric 6 x 6 matrix, row by row of its lower half. */
  private static final int HALF = 21;

  final int count;
  /** By link: its bodies, the first of its corners, and where its blocks are kept. */
  private final int[] a;
  private final int[] b;
  private final int[] first;
  private final int[] blockAa;
  private final int[] blockBb;
  private final int[] blockAb;
  /** Three columns of six a corner. */
  private final double[] p;
  private final double[] pjp;
  final double[] friction;
  private final double[] most;

  final double[] s;
  final double[] z;
  final double[] tau;
  private final double[] w;
  private final double[] eta;
  private final double[] rootS;
  private final double[] rootZ;
  private final double[] later;
  private final double[] product;
  private final double[] ds;
  private final double[] dz;
  private final double[] dTau;
  private final double[] sum = new double[HALF];
  private final double[] six = new double[6];
  private final double[] force = new double[12];

  /** Sum of s z and of tau times what is left to {@code most}. */
  double gap;
  /** What forces at {@code most} gain where the movement alone is not in the cone; zero for most heaps. */
  double excess;
  /** One over the longest step that stays inside, of forces and of movements. */
  double shortS;
  double shortZ;

  /**
   * The corners of bearings.
   *
   * @param origin what all moments are about
   * @param mostPush largest push of a corner, scaled
   */
  CornerCones(List<Link.Bearing> links, Vec3 origin, double lengthM, double mostPush, BlockCholesky blocks) {
    int n = links.size();
    a = new int[n];
    b = new int[n];
    first = new int[n + 1];
    blockAa = new int[n];
    blockBb = new int[n];
    blockAb = new int[n];
    for (int i = 0; i < n; i++) {
      Link.Bearing l = links.get(i);
      a[i] = l.a();
      b[i] = l.b();
      first[i + 1] = first[i] + l.polygon().size();
      blockAa[i] = blocks.blockOf(a[i], a[i]) * BlockCholesky.BB;
      if (b[i] >= 0) {
        blockBb[i] = blocks.blockOf(b[i], b[i]) * BlockCholesky.BB;
        blockAb[i] = blocks.blockOf(a[i], b[i]) * BlockCholesky.BB;
      }
    }
    count = first[n];
    p = new double[18 * count];
    pjp = new double[HALF * count];
    friction = new double[count];
    most = new double[count];
    s = new double[3 * count];
    z = new double[3 * count];
    tau = new double[count];
    w = new double[3 * count];
    eta = new double[count];
    rootS = new double[count];
    rootZ = new double[count];
    later = new double[3 * count];
    product = new double[count];
    ds = new double[3 * count];
    dz = new double[3 * count];
    dTau = new double[count];
    for (int i = 0; i < n; i++) {
      Link.Bearing l = links.get(i);
      Vec3 u = l.normal().anyPerpendicular();
      Vec3 v = l.normal().cross(u);
      boolean rubs = l.friction() > 0;
      for (int k = first[i]; k < first[i + 1]; k++) {
        Vec3 r = l.polygon().get(k - first[i]).minus(origin).times(1 / lengthM);
        friction[k] = l.friction();
        most[k] = rubs ? l.friction() * mostPush : mostPush;
        column(18 * k, rubs ? l.normal().times(1 / l.friction()) : l.normal(), r);
        if (rubs) {
          column(18 * k + 6, u, r);
          column(18 * k + 12, v, r);
        }
        int to = HALF * k;
        for (int x = 0; x < 6; x++) {
          for (int y = 0; y <= x; y++) {
            int o = 18 * k;
            pjp[to++] = p[o + x] * p[o + y] - p[o + 6 + x] * p[o + 6 + y] - p[o + 12 + x] * p[o + 12 + y];
          }
        }
      }
    }
  }

  private void column(int at, Vec3 f, Vec3 r) {
    Vec3 m = r.cross(f);
    p[at] = f.x();
    p[at + 1] = f.y();
    p[at + 2] = f.z();
    p[at + 3] = m.x();
    p[at + 4] = m.y();
    p[at + 5] = m.z();
  }

  /** Takes up the point of {@code o}, its movements times {@code mu}. */
  void copy(CornerCones o, double mu) {
    System.arraycopy(o.s, 0, s, 0, s.length);
    for (int i = 0; i < z.length; i++) z[i] = mu * o.z[i];
    for (int i = 0; i < tau.length; i++) tau[i] = mu * o.tau[i];
  }

  /** Every corner pushes by as much as a body weighs; the movement is none, and what z has without it is missing from it. */
  void begin() {
    Arrays.fill(s, 0);
    Arrays.fill(z, 0);
    for (int k = 0; k < count; k++) {
      s[3 * k] = Math.min(most[k] / 2, 1);
      z[3 * k] = 1 / s[3 * k];
      tau[k] = 1 / (most[k] - s[3 * k]);
    }
  }

  /** What {@code P' y + tau e} has in excess of z at the beginning. */
  private double beginning(int k) {
    double s0 = Math.min(most[k] / 2, 1);
    return 1 / (most[k] - s0) - 1 / s0;
  }

  // -- one step -------------------------------------------------------------------------------------------------------

  /**
   * Works out the scaling, adds the matrix of every link to {@code blocks} and the wrenches of all forces to {@code on}.
   * False where a point has left its cone.
   */
  boolean scale(double[] blocks, double[] on) {
    gap = 0;
    excess = 0;
    for (int i = 0; i < a.length; i++) {
      Arrays.fill(sum, 0);
      Arrays.fill(six, 0);
      for (int k = first[i]; k < first[i + 1]; k++) if (!scale(k)) return false;
      int at = 6 * a[i];
      for (int r = 0; r < 6; r++) on[at + r] += six[r];
      addLower(blocks, blockAa[i]);
      if (b[i] < 0) continue;
      at = 6 * b[i];
      for (int r = 0; r < 6; r++) on[at + r] -= six[r];
      addLower(blocks, blockBb[i]);
      int to = blockAb[i];
      for (int r = 0, e = 0; r < 6; r++) {
        for (int c = 0; c < r; c++, e++) {
          blocks[to + 6 * r + c] -= sum[e];
          blocks[to + 6 * c + r] -= sum[e];
        }
        blocks[to + 7 * r] -= sum[e++];
      }
    }
    return true;
  }

  private void addLower(double[] blocks, int to) {
    for (int r = 0, e = 0; r < 6; r++) for (int c = 0; c <= r; c++) blocks[to + 6 * r + c] += sum[e++];
  }

  private boolean scale(int k) {
    int o = 3 * k;
    double s0 = s[o];
    double s1 = s[o + 1];
    double s2 = s[o + 2];
    double z0 = z[o];
    double z1 = z[o + 1];
    double z2 = z[o + 2];
    double ts = Math.sqrt(s1 * s1 + s2 * s2);
    double tz = Math.sqrt(z1 * z1 + z2 * z2);
    double js = (s0 - ts) * (s0 + ts);
    double jz = (z0 - tz) * (z0 + tz);
    double left = most[k] - s0;
    if (!(s0 > ts) || !(z0 > tz) || !(left > 0) || !(tau[k] > 0)) return false;
    double rs = 1 / Math.sqrt(js);
    double rz = 1 / Math.sqrt(jz);
    double dot = s0 * z0 + s1 * z1 + s2 * z2;
    double half = 0.5 / Math.sqrt(0.5 * (1 + dot * rs * rz));
    double w1 = half * (s1 * rs - z1 * rz);
    double w2 = half * (s2 * rs - z2 * rz);
    double w0 = Math.sqrt(1 + w1 * w1 + w2 * w2);
    double f = js * rs * rz;
    w[o] = w0;
    w[o + 1] = w1;
    w[o + 2] = w2;
    eta[k] = f;
    rootS[k] = rs;
    rootZ[k] = rz;
    gap += dot + left * tau[k];
    double over = tz - z0 + tau[k];
    if (over > 0) excess += over * most[k];

    int q = 18 * k;
    double root = Math.sqrt(2 * f);
    double a0 = root * w0;
    double a1 = root * w1;
    double a2 = root * w2;
    double p0 = a0 * p[q] + a1 * p[q + 6] + a2 * p[q + 12];
    double p1 = a0 * p[q + 1] + a1 * p[q + 7] + a2 * p[q + 13];
    double p2 = a0 * p[q + 2] + a1 * p[q + 8] + a2 * p[q + 14];
    double p3 = a0 * p[q + 3] + a1 * p[q + 9] + a2 * p[q + 15];
    double p4 = a0 * p[q + 4] + a1 * p[q + 10] + a2 * p[q + 16];
    double p5 = a0 * p[q + 5] + a1 * p[q + 11] + a2 * p[q + 17];
    int c = HALF * k;
    addSquare(sum, p0, p1, p2, p3, p4, p5);
    for (int e = 0; e < HALF; e++) sum[e] -= f * pjp[c + e];
    double d = tau[k] / left;
    double g0 = f * (2 * w0 * w0 - 1);
    double capped = d / (1 + d * g0);
    if (capped * g0 > Tolerances.CORNER_CAPPED) {
      double g = 2 * f * w0;
      double h = Math.sqrt(capped);
      subtractSquare(q, h * g0, h * g * w1, h * g * w2);
    }
    for (int r = 0; r < 6; r++) six[r] += s0 * p[q + r] + s1 * p[q + 6 + r] + s2 * p[q + 12 + r];
    return true;
  }

  private static void addSquare(double[] m, double p0, double p1, double p2, double p3, double p4, double p5) {
    m[0] += p0 * p0;
    m[1] += p1 * p0;
    m[2] += p1 * p1;
    m[3] += p2 * p0;
    m[4] += p2 * p1;
    m[5] += p2 * p2;
    m[6] += p3 * p0;
    m[7] += p3 * p1;
    m[8] += p3 * p2;
    m[9] += p3 * p3;
    m[10] += p4 * p0;
    m[11] += p4 * p1;
    m[12] += p4 * p2;
    m[13] += p4 * p3;
    m[14] += p4 * p4;
    m[15] += p5 * p0;
    m[16] += p5 * p1;
    m[17] += p5 * p2;
    m[18] += p5 * p3;
    m[19] += p5 * p4;
    m[20] += p5 * p5;
  }

  private void subtractSquare(int q, double g0, double g1, double g2) {
    for (int r = 0, e = 0; r < 6; r++) {
      double v = g0 * p[q + r] + g1 * p[q + 6 + r] + g2 * p[q + 12 + r];
      for (int c = 0; c <= r; c++) sum[e++] -= v * (g0 * p[q + c] + g1 * p[q + 6 + c] + g2 * p[q + 12 + c]);
    }
  }

  /**
   * What a step towards forces and movements with products {@code mu} asks of the balance, added to {@code once}; the
   * movement is missing {@code rest} of what {@link #begin} left out.
   */
  void centring(double mu, double rest, double[] once) {
    for (int i = 0; i < a.length; i++) {
      Arrays.fill(force, 0);
      for (int k = first[i]; k < first[i + 1]; k++) {
        int o = 3 * k;
        double jz = 1 / (rootZ[k] * rootZ[k]);
        later[o] = later[o + 1] = later[o + 2] = 0;
        product[k] = 0;
        double left = most[k] - s[o];
        double t0 = mu / left - tau[k] + rest * beginning(k);
        double v0 = mu * z[o] / jz;
        double g0 = eta[k] * (2 * w[o] * w[o] - 1);
        double d = tau[k] / left;
        double kappa = -t0 - d * (v0 - s[o] - t0 * g0) / (1 + d * g0);
        double g = 2 * eta[k] * w[o] * kappa;
        addWrench(k, 0, v0 + kappa * g0, -mu * z[o + 1] / jz + g * w[o + 1], -mu * z[o + 2] / jz + g * w[o + 2]);
      }
      addForce(i, 0, once);
    }
  }

  /** What a step to the very edge asks of the balance, added to {@code once}. */
  void predicting(double[] once) {
    for (int i = 0; i < a.length; i++) {
      Arrays.fill(force, 0);
      for (int k = first[i]; k < first[i + 1]; k++) {
        int o = 3 * k;
        double kappa = edge(k);
        double g = 2 * eta[k] * w[o] * kappa;
        addWrench(k, 0, g * w[o] - eta[k] * kappa, g * w[o + 1], g * w[o + 2]);
      }
      addForce(i, 0, once);
    }
  }

  private double edge(int k) {
    double d = tau[k] / (most[k] - s[3 * k]);
    double g0 = eta[k] * (2 * w[3 * k] * w[3 * k] - 1);
    return tau[k] - d * (tau[k] * g0 - s[3 * k]) / (1 + d * g0);
  }

  private void addWrench(int k, int to, double v0, double v1, double v2) {
    int q = 18 * k;
    for (int r = 0; r < 6; r++) force[to + r] += v0 * p[q + r] + v1 * p[q + 6 + r] + v2 * p[q + 12 + r];
  }

  private void addForce(int i, int from, double[] on) {
    for (int r = 0; r < 6; r++) on[6 * a[i] + r] += force[from + r];
    if (b[i] >= 0) for (int r = 0; r < 6; r++) on[6 * b[i] + r] -= force[from + r];
  }

  private void relative(int i, double[] y) {
    int at = 6 * a[i];
    for (int r = 0; r < 6; r++) six[r] = y[at + r];
    if (b[i] < 0) return;
    at = 6 * b[i];
    for (int r = 0; r < 6; r++) six[r] -= y[at + r];
  }

  /**
   * The step to the very edge with the movement {@code dy}: how far it stays inside, and what its second order asks of the
   * balance, {@code twice + mu once}, added to both.
   */
  void predicted(double[] dy, double[] twice, double[] once) {
    shortS = 0;
    shortZ = 0;
    for (int i = 0; i < a.length; i++) {
      relative(i, dy);
      Arrays.fill(force, 0);
      for (int k = first[i]; k < first[i + 1]; k++) {
        int o = 3 * k;
        later[o] = later[o + 1] = later[o + 2] = 0;
        direction(k, edge(k), -tau[k], 0);
        second(k);
      }
      addForce(i, 0, twice);
      addForce(i, 6, once);
    }
  }

  /** The step itself: s moves by -s + later + kappa g - (W^2 - capped g g') u. */
  private void direction(int k, double kappa, double t0, double rest) {
    int q = 18 * k;
    int o = 3 * k;
    double u0 = 0;
    double u1 = 0;
    double u2 = 0;
    for (int r = 0; r < 6; r++) {
      double v = six[r];
      u0 += p[q + r] * v;
      u1 += p[q + 6 + r] * v;
      u2 += p[q + 12 + r] * v;
    }
    double f = eta[k];
    double w0 = w[o];
    double w1 = w[o + 1];
    double w2 = w[o + 2];
    double g0 = f * (2 * w0 * w0 - 1);
    double g1 = 2 * f * w0 * w1;
    double g2 = 2 * f * w0 * w2;
    double d = tau[k] / (most[k] - s[o]);
    double along = kappa + d / (1 + d * g0) * (g0 * u0 + g1 * u1 + g2 * u2);
    double wu = 2 * f * (w0 * u0 + w1 * u1 + w2 * u2);
    double d0 = -s[o] + later[o] + along * g0 - wu * w0 + f * u0;
    double d1 = -s[o + 1] + later[o + 1] + along * g1 - wu * w1 - f * u1;
    double d2 = -s[o + 2] + later[o + 2] + along * g2 - wu * w2 - f * u2;
    double dt = t0 + d * d0;
    ds[o] = d0;
    ds[o + 1] = d1;
    ds[o + 2] = d2;
    dTau[k] = dt;
    dz[o] = u0 + dt + rest;
    dz[o + 1] = u1;
    dz[o + 2] = u2;
    shortS = Math.max(shortS, Math.max(shortest(s, ds, o, rootS[k]), d0 / (most[k] - s[o])));
    shortZ = Math.max(shortZ, Math.max(shortest(z, dz, o, rootZ[k]), -dt / tau[k]));
  }

  /** One over the longest step from v along d, with {@code root} one over the root of v's determinant. */
  private static double shortest(double[] v, double[] d, int o, double root) {
    double v0 = v[o] * root;
    double v1 = v[o + 1] * root;
    double v2 = v[o + 2] * root;
    double d0 = d[o] * root;
    double d1 = d[o + 1] * root;
    double d2 = d[o + 2] * root;
    double r0 = v0 * d0 - v1 * d1 - v2 * d2;
    double t = (r0 + d0) / (1 + v0);
    double r1 = d1 - t * v1;
    double r2 = d2 - t * v2;
    return Math.sqrt(r1 * r1 + r2 * r2) - r0;
  }

  /** Second order of the step to the edge, W (l \ ((W^-1 ds) o (W dz))), kept, and its wrenches. */
  private void second(int k) {
    int o = 3 * k;
    double w0 = w[o];
    double w1 = w[o + 1];
    double w2 = w[o + 2];
    double n = 1 / (1 + w0);
    double f = Math.sqrt(eta[k]);
    double h = 1 / f;
    // l = W z, a = W^-1 ds, b = W dz.
    double dot = w1 * z[o + 1] + w2 * z[o + 2];
    double c = z[o] + dot * n;
    double l0 = f * (w0 * z[o] + dot);
    double l1 = f * (z[o + 1] + c * w1);
    double l2 = f * (z[o + 2] + c * w2);
    dot = w1 * ds[o + 1] + w2 * ds[o + 2];
    c = -ds[o] + dot * n;
    double a0 = h * (w0 * ds[o] - dot);
    double a1 = h * (ds[o + 1] + c * w1);
    double a2 = h * (ds[o + 2] + c * w2);
    dot = w1 * dz[o + 1] + w2 * dz[o + 2];
    c = dz[o] + dot * n;
    double b0 = f * (w0 * dz[o] + dot);
    double b1 = f * (dz[o + 1] + c * w1);
    double b2 = f * (dz[o + 2] + c * w2);
    double r0 = -(a0 * b0 + a1 * b1 + a2 * b2);
    double r1 = -(a0 * b1 + b0 * a1);
    double r2 = -(a0 * b2 + b0 * a2);
    double lt = Math.sqrt(l1 * l1 + l2 * l2);
    double x0 = (l0 * r0 - l1 * r1 - l2 * r2) / ((l0 - lt) * (l0 + lt));
    double i0 = 1 / l0;
    double x1 = (r1 - x0 * l1) * i0;
    double x2 = (r2 - x0 * l2) * i0;
    dot = w1 * x1 + w2 * x2;
    c = x0 + dot * n;
    double v0 = f * (w0 * x0 + dot);
    double v1 = f * (x1 + c * w1);
    double v2 = f * (x2 + c * w2);
    later[o] = v0;
    later[o + 1] = v1;
    later[o + 2] = v2;
    double left = 1 / (most[k] - s[o]);
    double prod = ds[o] * dTau[k];
    product[k] = prod;
    // The part that does not depend on mu, and that which goes with it.
    double d = tau[k] * left;
    double g0 = eta[k] * (2 * w0 * w0 - 1);
    double g = 2 * eta[k] * w0;
    double share = d / (1 + d * g0);
    double t0 = prod * left - tau[k];
    double kappa = -t0 - share * (v0 - s[o] - t0 * g0);
    double jz = rootZ[k] * rootZ[k];
    double kappaMu = -left - share * (z[o] * jz - g0 * left);
    addWrench(k, 0, v0 + kappa * g0, v1 + kappa * g * w1, v2 + kappa * g * w2);
    addWrench(k, 6, z[o] * jz + kappaMu * g0, -z[o + 1] * jz + kappaMu * g * w1, -z[o + 2] * jz + kappaMu * g * w2);
  }

  /** The step towards products {@code mu} with the movement {@code dy}, second order and all. */
  void corrected(double[] dy, double mu, double rest) {
    shortS = 0;
    shortZ = 0;
    for (int i = 0; i < a.length; i++) {
      relative(i, dy);
      for (int k = first[i]; k < first[i + 1]; k++) {
        int o = 3 * k;
        double jz = mu * rootZ[k] * rootZ[k];
        later[o] += z[o] * jz;
        later[o + 1] -= z[o + 1] * jz;
        later[o + 2] -= z[o + 2] * jz;
        double left = most[k] - s[o];
        double d = tau[k] / left;
        double g0 = eta[k] * (2 * w[o] * w[o] - 1);
        double missing = rest == 0 ? 0 : rest * beginning(k);
        double t0 = (mu + product[k]) / left - tau[k];
        double all = t0 + missing;
        direction(k, -all - d * (later[o] - s[o] - all * g0) / (1 + d * g0), t0, missing);
      }
    }
  }

  /** Sum of products after steps of these lengths. */
  double gapAfter(double lengthS, double lengthZ) {
    double sum = 0;
    for (int i = 0; i < s.length; i++) sum += (s[i] + lengthS * ds[i]) * (z[i] + lengthZ * dz[i]);
    for (int k = 0; k < count; k++) {
      sum += (most[k] - s[3 * k] - lengthS * ds[3 * k]) * (tau[k] + lengthZ * dTau[k]);
    }
    return sum;
  }

  void move(double lengthS, double lengthZ) {
    for (int i = 0; i < s.length; i++) {
      s[i] += lengthS * ds[i];
      z[i] += lengthZ * dz[i];
    }
    for (int k = 0; k < count; k++) tau[k] += lengthZ * dTau[k];
  }

  /** The largest difference from one of any product. */
  double uneven() {
    double worst = 0;
    for (int k = 0; k < count; k++) {
      int o = 3 * k;
      double dot = s[o] * z[o] + s[o + 1] * z[o + 1] + s[o + 2] * z[o + 2];
      worst = Math.max(worst, Math.max(Math.abs(dot - 1), Math.abs((most[k] - s[o]) * tau[k] - 1)));
    }
    return worst;
  }
}
