package holdfast.engine.statics.solver;

import java.util.Arrays;

/**
 * Sparse factors, A = L U, of a matrix made of 6 x 6 blocks whose pattern is symmetric and whose numbers need not be, on a
 * {@link BlockPattern}. Pivots are sought inside a diagonal block only; the matrices it is for are positive definite but
 * for what sliding adds, and whoever uses the solution checks that it helped.
 */
public final class BlockLu {
  private static final int B = BlockPattern.B;
  private static final int BB = BlockPattern.BB;

  private final BlockPattern pattern;
  private final int n;
  private final int[] columnStart;
  private final int[] rowOf;
  /** Blocks on and below the diagonal; after factoring the diagonal ones hold their inverses. */
  private final double[] lower;
  /** At the place of the block (i, j) below the diagonal, the block (j, i) above it. */
  private final double[] upper;
  private final double[] work;
  private final int[] pivoted = new int[B];
  private final double[] product = new double[BB];

  /** Factors on a pattern that is known. */
  public BlockLu(BlockPattern pattern) {
    this.pattern = pattern;
    n = pattern.n;
    columnStart = pattern.columnStart;
    rowOf = pattern.rowOf;
    lower = new double[rowOf.length * BB];
    upper = new double[rowOf.length * BB];
    work = new double[n * B];
  }

  /** Sets every number to zero. */
  public void clear() {
    Arrays.fill(lower, 0);
    Arrays.fill(upper, 0);
  }

  /** Takes the numbers of another matrix on the same pattern. */
  public void set(BlockLu other) {
    System.arraycopy(other.lower, 0, lower, 0, lower.length);
    System.arraycopy(other.upper, 0, upper, 0, upper.length);
  }

  /** The array that holds the block (i, j) of bodies i and j, at {@link BlockPattern#blockOf} times 36, row by row. */
  public double[] holding(int i, int j) {
    return pattern.place[i] >= pattern.place[j] ? lower : upper;
  }

  /** Factors in place; false when a pivot block is singular. */
  public boolean factor() {
    int u = 0;
    for (int j = 0; j < n; j++) {
      int diagonal = columnStart[j] * BB;
      if (!invert(diagonal)) return false;
      int from = columnStart[j] + 1;
      int to = columnStart[j + 1];
      for (int i = from; i < to; i++) {
        Arrays.fill(product, 0);
        subtractProduct(product, 0, lower, i * BB, lower, diagonal);
        for (int k = 0; k < BB; k++) lower[i * BB + k] = -product[k];
      }
      for (int k = from; k < to; k++) {
        int target = pattern.updateTarget[u++] * BB;
        subtractProduct(lower, target, lower, k * BB, upper, k * BB);
        for (int i = k + 1; i < to; i++) {
          target = pattern.updateTarget[u++] * BB;
          subtractProduct(lower, target, lower, i * BB, upper, k * BB);
          subtractProduct(upper, target, lower, k * BB, upper, i * BB);
        }
      }
    }
    return true;
  }

  /** T := T - X Y, two rows at a time, so that what is read of Y serves both. */
  private static void subtractProduct(double[] t, int tAt, double[] x, int xAt, double[] y, int yAt) {
    for (int r = 0; r < B; r += 2) {
      int p = xAt + B * r;
      int q = p + B;
      int tp = tAt + B * r;
      int tq = tp + B;
      double p0 = x[p];
      double p1 = x[p + 1];
      double p2 = x[p + 2];
      double p3 = x[p + 3];
      double p4 = x[p + 4];
      double p5 = x[p + 5];
      double q0 = x[q];
      double q1 = x[q + 1];
      double q2 = x[q + 2];
      double q3 = x[q + 3];
      double q4 = x[q + 4];
      double q5 = x[q + 5];
      for (int c = 0; c < B; c++) {
        double y0 = y[yAt + c];
        double y1 = y[yAt + c + 6];
        double y2 = y[yAt + c + 12];
        double y3 = y[yAt + c + 18];
        double y4 = y[yAt + c + 24];
        double y5 = y[yAt + c + 30];
        t[tp + c] -= p0 * y0 + p1 * y1 + p2 * y2 + p3 * y3 + p4 * y4 + p5 * y5;
        t[tq + c] -= q0 * y0 + q1 * y1 + q2 * y2 + q3 * y3 + q4 * y4 + q5 * y5;
      }
    }
  }

  /** The inverse of a diagonal block in its place, by Gauss and Jordan with row pivots. */
  private boolean invert(int at) {
    double[] s = lower;
    for (int j = 0; j < B; j++) {
      int best = j;
      for (int r = j + 1; r < B; r++) if (Math.abs(s[at + B * r + j]) > Math.abs(s[at + B * best + j])) best = r;
      double pivot = s[at + B * best + j];
      if (!(Math.abs(pivot) > Double.MIN_NORMAL)) return false;
      pivoted[j] = best;
      int row = at + B * j;
      if (best != j) {
        for (int c = 0; c < B; c++) {
          double t = s[at + B * best + c];
          s[at + B * best + c] = s[row + c];
          s[row + c] = t;
        }
      }
      s[row + j] = 1;
      double inverse = 1 / pivot;
      for (int c = 0; c < B; c++) s[row + c] *= inverse;
      for (int r = 0; r < B; r++) {
        if (r == j) continue;
        int other = at + B * r;
        double f = s[other + j];
        if (f == 0) continue;
        s[other + j] = 0;
        for (int c = 0; c < B; c++) s[other + c] -= f * s[row + c];
      }
    }
    // Rows were exchanged before: of the inverse, columns are.
    for (int j = B - 1; j >= 0; j--) {
      int best = pivoted[j];
      for (int r = 0; best != j && r < B; r++) {
        double t = s[at + B * r + j];
        s[at + B * r + j] = s[at + B * r + best];
        s[at + B * r + best] = t;
      }
    }
    return true;
  }

  /** Solves for {@code rhs} (6 a body) into {@code out}; the two may be the same array. */
  public void solve(double[] rhs, double[] out) {
    for (int j = 0; j < n; j++) System.arraycopy(rhs, pattern.order[j] * B, work, j * B, B);
    for (int j = 0; j < n; j++) {
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) subtract(lower, i * BB, j * B, rowOf[i] * B);
    }
    for (int j = n - 1; j >= 0; j--) {
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) subtract(upper, i * BB, rowOf[i] * B, j * B);
      int at = columnStart[j] * BB;
      for (int r = 0; r < B; r++) {
        double v = 0;
        for (int c = 0; c < B; c++) v += lower[at + B * r + c] * work[j * B + c];
        product[r] = v;
      }
      System.arraycopy(product, 0, work, j * B, B);
    }
    for (int j = 0; j < n; j++) System.arraycopy(work, j * B, out, pattern.order[j] * B, B);
  }

  /** work[to] -= block . work[from], six rows. */
  private void subtract(double[] blocks, int at, int from, int to) {
    for (int r = 0; r < B; r++) {
      int row = at + B * r;
      double v = 0;
      for (int c = 0; c < B; c++) v += blocks[row + c] * work[from + c];
      work[to + r] -= v;
    }
  }
}
