package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.Elements;
import holdfast.engine.statics.heap.Patch;

/**
 * The arm of a twist that comes with a shear. The ellipse of shear and twist ({@link Elements}) grants both together on an
 * arm for twist alone; where the pressure sits at one end of a narrow patch no pressure whatever may give that. What any
 * pressure can give at most is friction at the corners, each limited by its own push, since a force at a point of the patch
 * can be shared out among the corners as the point is. So asked is
 *
 * <pre>
 *   most(V) = max T,   over pushes n_k &gt;= 0 with their sum and centre p as they are and friction |f_k| &lt;= mu n_k
 *                      that add up to the shear V and to the twist T about p.
 * </pre>
 *
 * The arm is the one whose ellipse goes through (V, most(V)). It follows the shear as the heap comes to rest; what has come
 * to rest on it can be borne by some pressure on every patch.
 *
 * <p>Solved is the dual, in five unknowns: the least {@code h(p) - a . V} over sliding a and functions h linear over the patch
 * with {@code h(x_k) >= |a + z x (x_k - p)|} at every corner, what turning by one with that sliding dissipates there. Newton
 * steps follow its central path; the gap that is left at the end is taken off, so the answer is below the true one. Pressure
 * at an edge leaves the far corners nothing to bear; its centre is drawn in by a trace ({@link Tolerances#TWIST_DRAWN_IN}).
 * Not for several threads at once.
 *
 * @see <a href="https://doi.org/10.1016/0043-1648(91)90104-3">Goyal, Ruina and Papadopoulos 1991, Planar sliding with dry
 *     friction</a>, for the set of shears and twists that pushes give
 * @see <a href="https://doi.org/10.1017/CBO9780511804441">Boyd and Vandenberghe 2004, Convex Optimization</a>, 11.2 and 11.6,
 *     for the central path under cones
 */
final class TwistArm {
  /** Unknowns: h at p and its two slopes, and the two parts of a. */
  private static final int N = 5;

  private final Patch patch;
  private final double reach;
  private final int corners;
  /** Corners from the centre of the pushes, over the reach. */
  private final double[] x;
  private final double[] y;
  private final double[] z = new double[N];
  private final double[] tried = new double[N];
  private final double[] slope = new double[N];
  private final double[] step = new double[N];
  private final double[] curve = new double[N * N];

  TwistArm(Patch patch) {
    this.patch = patch;
    reach = patch.reachM();
    corners = patch.u.length;
    x = new double[corners];
    y = new double[corners];
  }

  /**
   * An arm that pushes are seen at a glance to give beside a shear; it may be longer ({@link #beside}). Each corner's friction
   * bears its share of the shear along it; what is then left to every corner across the shear gives twist on the arm that
   * lies along it, {@code T = arm sqrt(1 - V^2)}, and what is left along the shear on the arm across,
   * {@code T = arm (1 - V)}. These arms are the pushes' mean distance from their median that way: forces this way and that
   * way of it add up to none.
   *
   * @param u corners along a first axis of the patch, metres
   * @param v the same along the second
   * @param push pushes, from {@code start} on one a corner
   * @param s1 shear along the first axis, over the limit of friction
   * @param s2 the same along the second
   * @return metres
   */
  static double glance(double[] u, double[] v, double[] push, int start, double s1, double s2) {
    double shear = Patch.length(s1, s2);
    double e1 = shear > 0 ? s1 / shear : 1;
    double e2 = shear > 0 ? s2 / shear : 0;
    double along = arm(u, v, push, start, e1, e2);
    double left = Math.max(0, 1 - shear);
    return Math.max(along, arm(u, v, push, start, -e2, e1) * Math.sqrt(left / (1 + shear)));
  }

  private static double arm(double[] u, double[] v, double[] push, int start, double e1, double e2) {
    int n = u.length;
    double total = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int q = 0; q < n; q++) {
      total += push[start + q];
      double at = u[q] * e1 + v[q] * e2;
      double sum = 0;
      for (int k = 0; k < n; k++) sum += push[start + k] * Math.abs(u[k] * e1 + v[k] * e2 - at);
      least = Math.min(least, sum);
    }
    return least / total;
  }

  /**
   * The arm, metres.
   *
   * @param u centre of the pushes
   * @param v the same
   * @param s1 shear along the first axis of the patch, over the limit of friction
   * @param s2 the same along the second
   * @param way sign of the twist
   * @param enough where it is this long it need not be known how much longer, metres
   * @param rough share by which it may come out too short
   */
  double beside(double u, double v, double s1, double s2, double way, double enough, double rough) {
    double share = Math.min(1, Tolerances.MOST_SHEAR / Patch.length(s1, s2));
    double t1 = s1 * share;
    double t2 = s2 * share;
    double left = Math.sqrt(1 - t1 * t1 - t2 * t2);
    return Math.min(enough, Math.max(0, most(u, v, t1, t2, way < 0 ? -1 : 1, enough * left, rough)) / left);
  }

  /** The largest twist, the way of {@code way}, or some that is {@code enough}; over the limit of friction, metres; 0 if lost. */
  double most(double u, double v, double s1, double s2, double way, double enough, double rough) {
    double in = 1 - Tolerances.TWIST_DRAWN_IN;
    double far = 0;
    for (int k = 0; k < corners; k++) {
      x[k] = (patch.u[k] - in * u) / reach;
      y[k] = (patch.v[k] - in * v) / reach;
      far = Math.max(far, x[k] * x[k] + y[k] * y[k]);
    }
    z[0] = 2 * Math.sqrt(far);
    for (int i = 1; i < N; i++) z[i] = 0;
    double last = 2 * corners / Tolerances.TWIST_GAP;
    for (double weight = Tolerances.TWIST_BEGIN; weight < last; weight *= Tolerances.TWIST_PATH) {
      if (!centre(weight, s1, s2, way, Tolerances.TWIST_NEARLY)) return 0;
      // Twice the gap of the path itself: the point is only near it.
      double gap = 4 * corners / weight;
      double borne = z[0] - z[3] * s1 - z[4] * s2 - gap;
      if (borne * reach >= enough || gap <= rough * borne) return borne * reach;
    }
    if (!centre(last, s1, s2, way, Tolerances.TWIST_CENTRED)) return 0;
    return (z[0] - z[3] * s1 - z[4] * s2 - Tolerances.TWIST_GAP) * reach;
  }

  /**
   * Newton's method to the point of the path where the objective has this weight. Returns whether the point is at least near:
   * the gap is known there only, and without it nothing may be granted.
   */
  private boolean centre(double weight, double s1, double s2, double way, double near) {
    double decrement = Double.NaN;
    for (int newton = 0; newton < Tolerances.TWIST_NEWTON; newton++) {
      derive(weight, s1, s2, way);
      decrement = solve();
      if (decrement <= near) return true;
      double share = decrement < 0.25 ? 1 : 1 / (1 + decrement);
      do {
        for (int i = 0; i < N; i++) tried[i] = z[i] + share * step[i];
        share /= 2;
      } while (!inside(tried, way) && share > 1e-12);
      if (!inside(tried, way)) break;
      System.arraycopy(tried, 0, z, 0, N);
    }
    return decrement <= Tolerances.TWIST_NEARLY;
  }

  private boolean inside(double[] at, double way) {
    for (int k = 0; k < corners; k++) {
      double h = at[0] + at[1] * x[k] + at[2] * y[k];
      double w1 = at[3] - way * y[k];
      double w2 = at[4] + way * x[k];
      if (!(h > 0 && h * h > w1 * w1 + w2 * w2)) return false;
    }
    return true;
  }

  /**
   * Slope and curvature of {@code weight (h(p) - a . V) - sum log (h_k^2 - |w_k|^2)}. With q_k the difference, the curvature is
   * the sum of {@code g g' + (2/q) D}, g the slope of log q and D minus the outer product of (1, x, y) with itself for h, and
   * the identity for w. Written out: a short check runs before the compiler that would do it has seen this.
   */
  private void derive(double weight, double s1, double s2, double way) {
    double f0 = weight, f1 = 0, f2 = 0, f3 = -weight * s1, f4 = -weight * s2;
    double c00 = 0, c10 = 0, c11 = 0, c20 = 0, c21 = 0, c22 = 0, c30 = 0, c31 = 0, c32 = 0, c33 = 0;
    double c40 = 0, c41 = 0, c42 = 0, c43 = 0, c44 = 0;
    for (int k = 0; k < corners; k++) {
      double xk = x[k];
      double yk = y[k];
      double h = z[0] + z[1] * xk + z[2] * yk;
      double w1 = z[3] - way * yk;
      double w2 = z[4] + way * xk;
      double c = 2 / (h * h - w1 * w1 - w2 * w2);
      double g0 = c * h;
      double g3 = -c * w1;
      double g4 = -c * w2;
      f0 -= g0;
      f1 -= g0 * xk;
      f2 -= g0 * yk;
      f3 -= g3;
      f4 -= g4;
      double of = g0 * g0 - c;
      c00 += of;
      c10 += of * xk;
      c11 += of * xk * xk;
      c20 += of * yk;
      c21 += of * xk * yk;
      c22 += of * yk * yk;
      c30 += g3 * g0;
      c31 += g3 * g0 * xk;
      c32 += g3 * g0 * yk;
      c33 += g3 * g3 + c;
      c40 += g4 * g0;
      c41 += g4 * g0 * xk;
      c42 += g4 * g0 * yk;
      c43 += g4 * g3;
      c44 += g4 * g4 + c;
    }
    slope[0] = f0;
    slope[1] = f1;
    slope[2] = f2;
    slope[3] = f3;
    slope[4] = f4;
    curve[0] = c00;
    curve[N] = c10;
    curve[N + 1] = c11;
    curve[2 * N] = c20;
    curve[2 * N + 1] = c21;
    curve[2 * N + 2] = c22;
    curve[3 * N] = c30;
    curve[3 * N + 1] = c31;
    curve[3 * N + 2] = c32;
    curve[3 * N + 3] = c33;
    curve[4 * N] = c40;
    curve[4 * N + 1] = c41;
    curve[4 * N + 2] = c42;
    curve[4 * N + 3] = c43;
    curve[4 * N + 4] = c44;
  }

  /** The Newton step, by Cholesky; returns the decrement. Corners in line leave one slope free: it stays. */
  private double solve() {
    for (int j = 0; j < N; j++) {
      double least = Tolerances.TWIST_FREE * curve[j * N + j];
      double d = curve[j * N + j];
      for (int k = 0; k < j; k++) d -= curve[j * N + k] * curve[j * N + k];
      double root = d > least ? Math.sqrt(d) : Double.POSITIVE_INFINITY;
      curve[j * N + j] = root;
      for (int i = j + 1; i < N; i++) {
        double e = curve[i * N + j];
        for (int k = 0; k < j; k++) e -= curve[i * N + k] * curve[j * N + k];
        curve[i * N + j] = e / root;
      }
    }
    double size = 0;
    for (int i = 0; i < N; i++) {
      double e = -slope[i];
      for (int k = 0; k < i; k++) e -= curve[i * N + k] * step[k];
      step[i] = e / curve[i * N + i];
      size += step[i] * step[i];
    }
    for (int i = N - 1; i >= 0; i--) {
      double e = step[i];
      for (int k = i + 1; k < N; k++) e -= curve[k * N + i] * step[k];
      step[i] = e / curve[i * N + i];
    }
    return Math.sqrt(size);
  }
}
