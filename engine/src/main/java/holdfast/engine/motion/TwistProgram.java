package holdfast.engine.motion;

import java.util.Arrays;

/**
 * The convex quadratic program of small rigid motions.
 *
 * <p>Problem solved: minimise {@code x'Hx/2 + c'x} subject to {@code Ax + g + delta lambda >= 0}, where {@code x} holds
 * six numbers a body and each row of {@code A} touches at most two bodies. {@code delta} is a contact compliance, so
 * tiny that it does not show, which gives every program an answer: stones wedged where there is no room keep a residual
 * overlap instead of failing.
 *
 * <p>Method: primal-dual interior point from an infeasible start (Nocedal and Wright, Numerical Optimization, 2nd ed.,
 * chapter 16.6), one Cholesky of {@code H + A'DA} a step, stored by its envelope. All numbers should be of order one.
 */
final class TwistProgram {
  /** Numbers a body. */
  static final int DIM = 6;

  private static final int MOST_STEPS = 80;
  private static final double DONE = 1e-12;

  private final int n;
  private final double delta;
  private final double[] h;
  private final double[] c;
  private final int[] first;
  private int rows;
  private int[] bodyA = new int[64];
  private int[] bodyB = new int[64];
  private double[][] rowA = new double[64][];
  private double[][] rowB = new double[64][];
  private double[] gap = new double[64];

  /** The answer: motions, and one force a row. */
  record Answer(double[] x, double[] forces, boolean converged) {}

  TwistProgram(int bodies, double delta) {
    this.n = bodies * DIM;
    this.delta = delta;
    this.h = new double[n * n];
    this.c = new double[n];
    this.first = new int[n];
    for (int i = 0; i < n; i++) first[i] = i / DIM * DIM;
  }

  /** Adds to the linear term of one coordinate. */
  void pull(int body, int k, double force) {
    c[body * DIM + k] -= force;
  }

  /** Adds to the diagonal of one coordinate. */
  void weigh(int body, int k, double weight) {
    h[(body * DIM + k) * n + body * DIM + k] += weight;
  }

  /** Adds {@code stiffness (row . x)^2 / 2}; a body number below zero is the ground. */
  void spring(int a, double[] ra, int b, double[] rb, double stiffness) {
    if (stiffness > 0) accumulate(h, a, ra, b, rb, stiffness);
  }

  /** Adds a row that has to stay at zero or above; its number comes back. */
  int keepApart(int a, double[] ra, int b, double[] rb, double gapNow) {
    if (rows == gap.length) {
      bodyA = Arrays.copyOf(bodyA, 2 * rows);
      bodyB = Arrays.copyOf(bodyB, 2 * rows);
      rowA = Arrays.copyOf(rowA, 2 * rows);
      rowB = Arrays.copyOf(rowB, 2 * rows);
      gap = Arrays.copyOf(gap, 2 * rows);
    }
    bodyA[rows] = a;
    bodyB[rows] = b;
    rowA[rows] = ra;
    rowB[rows] = rb;
    gap[rows] = gapNow;
    couple(a, b);
    return rows++;
  }

  private void couple(int a, int b) {
    if (a < 0 || b < 0) return;
    int lo = Math.min(a, b) * DIM;
    int hi = Math.max(a, b) * DIM;
    for (int k = 0; k < DIM; k++) first[hi + k] = Math.min(first[hi + k], lo);
  }

  private void accumulate(double[] m, int a, double[] ra, int b, double[] rb, double s) {
    couple(a, b);
    block(m, a, ra, a, ra, s);
    block(m, b, rb, b, rb, s);
    if (a > b) {
      block(m, a, ra, b, rb, s);
    } else {
      block(m, b, rb, a, ra, s);
    }
  }

  private void block(double[] m, int i, double[] u, int j, double[] v, double s) {
    if (i < 0 || j < 0) return;
    for (int p = 0; p < DIM; p++) {
      double su = s * u[p];
      if (su == 0) continue;
      int at = (i * DIM + p) * n + j * DIM;
      for (int q = 0; q < DIM; q++) m[at + q] += su * v[q];
    }
  }

  private double rowTimes(int r, double[] x) {
    double sum = 0;
    if (bodyA[r] >= 0) for (int k = 0; k < DIM; k++) sum += rowA[r][k] * x[bodyA[r] * DIM + k];
    if (bodyB[r] >= 0) for (int k = 0; k < DIM; k++) sum += rowB[r][k] * x[bodyB[r] * DIM + k];
    return sum;
  }

  private void addRow(int r, double s, double[] to) {
    if (bodyA[r] >= 0) for (int k = 0; k < DIM; k++) to[bodyA[r] * DIM + k] += s * rowA[r][k];
    if (bodyB[r] >= 0) for (int k = 0; k < DIM; k++) to[bodyB[r] * DIM + k] += s * rowB[r][k];
  }

  Answer solve() {
    double[] x = new double[n];
    double[] lambda = new double[rows];
    double[] s = new double[rows];
    for (int r = 0; r < rows; r++) {
      s[r] = Math.max(gap[r], 1);
      lambda[r] = 1;
    }
    double[] m = new double[n * n];
    double[] rd = new double[n];
    double[] dx = new double[n];
    double[] rp = new double[rows];
    double[] rc = new double[rows];
    double[] ds = new double[rows];
    double[] dl = new double[rows];
    boolean converged = false;
    for (int step = 0; step < MOST_STEPS; step++) {
      double mu = 0;
      double worst = 0;
      timesH(x, rd);
      for (int i = 0; i < n; i++) rd[i] += c[i];
      for (int r = 0; r < rows; r++) {
        addRow(r, -lambda[r], rd);
        rp[r] = rowTimes(r, x) + gap[r] + delta * lambda[r] - s[r];
        mu += lambda[r] * s[r];
        worst = Math.max(worst, Math.abs(rp[r]));
      }
      mu = rows == 0 ? 0 : mu / rows;
      double force = 1;
      for (double l : lambda) force = Math.max(force, l);
      for (double d : rd) worst = Math.max(worst, Math.abs(d) / force * 1e-3);
      if (mu < DONE && worst < 1e-9) {
        converged = true;
        break;
      }
      double sigma = step == 0 ? 0.5 : 0.1;
      System.arraycopy(h, 0, m, 0, h.length);
      for (int i = 0; i < n; i++) dx[i] = -rd[i];
      for (int r = 0; r < rows; r++) {
        rc[r] = lambda[r] * s[r] - sigma * mu;
        double d = 1 / (delta + s[r] / lambda[r]);
        accumulate(m, bodyA[r], rowA[r], bodyB[r], rowB[r], d);
        addRow(r, -d * (rp[r] + rc[r] / lambda[r]), dx);
      }
      if (!factor(m)) break;
      substitute(m, dx);
      double reach = 1;
      for (int r = 0; r < rows; r++) {
        double d = 1 / (delta + s[r] / lambda[r]);
        dl[r] = -d * (rp[r] + rc[r] / lambda[r] + rowTimes(r, dx));
        ds[r] = (-rc[r] - s[r] * dl[r]) / lambda[r];
        if (dl[r] < 0) reach = Math.min(reach, -0.995 * lambda[r] / dl[r]);
        if (ds[r] < 0) reach = Math.min(reach, -0.995 * s[r] / ds[r]);
      }
      for (int i = 0; i < n; i++) x[i] += reach * dx[i];
      for (int r = 0; r < rows; r++) {
        lambda[r] += reach * dl[r];
        s[r] += reach * ds[r];
      }
    }
    return new Answer(x, lambda, converged);
  }

  /** Product with the symmetric matrix, of which the lower half is kept. */
  private void timesH(double[] x, double[] y) {
    Arrays.fill(y, 0);
    for (int i = 0; i < n; i++) {
      double sum = h[i * n + i] * x[i];
      for (int j = first[i]; j < i; j++) {
        double v = h[i * n + j];
        sum += v * x[j];
        y[j] += v * x[i];
      }
      y[i] += sum;
    }
  }

  /** Cholesky in place within the envelope. */
  private boolean factor(double[] m) {
    for (int i = 0; i < n; i++) {
      for (int j = first[i]; j <= i; j++) {
        double sum = m[i * n + j];
        for (int k = Math.max(first[i], first[j]); k < j; k++) sum -= m[i * n + k] * m[j * n + k];
        if (i == j) {
          if (!(sum > 0)) return false;
          m[i * n + i] = Math.sqrt(sum);
        } else {
          m[i * n + j] = sum / m[j * n + j];
        }
      }
    }
    return true;
  }

  private void substitute(double[] l, double[] b) {
    for (int i = 0; i < n; i++) {
      double sum = b[i];
      for (int k = first[i]; k < i; k++) sum -= l[i * n + k] * b[k];
      b[i] = sum / l[i * n + i];
    }
    for (int i = n - 1; i >= 0; i--) {
      b[i] /= l[i * n + i];
      for (int k = first[i]; k < i; k++) b[k] -= l[i * n + k] * b[i];
    }
  }
}
