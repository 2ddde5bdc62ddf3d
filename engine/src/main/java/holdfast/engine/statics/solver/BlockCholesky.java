package holdfast.engine.statics.solver;

import java.util.Arrays;
import java.util.List;

/**
 * Sparse Cholesky factors of a symmetric positive definite matrix made of 6 x 6 blocks, one row of blocks a rock, on a
 * {@link BlockPattern}.
 */
public final class BlockCholesky {
  static final int B = BlockPattern.B;
  /** Numbers in a block. */
  public static final int BB = BlockPattern.BB;

  private final BlockPattern pattern;
  private final int n;
  private final int[] columnStart;
  private final int[] rowOf;
  private final double[] blocks;
  private final double[] work;
  private final double[] work2;
  /** One over the factor's diagonal. */
  private final double[] over;

  /** Factors for {@code n} rows of blocks with an off-diagonal block for every pair in {@code pairs}. */
  public BlockCholesky(int n, List<int[]> pairs) {
    this(new BlockPattern(n, pairs));
  }

  /** Factors on a pattern that is known. */
  public BlockCholesky(BlockPattern pattern) {
    this.pattern = pattern;
    n = pattern.n;
    columnStart = pattern.columnStart;
    rowOf = pattern.rowOf;
    blocks = new double[rowOf.length * BB];
    over = new double[n * B];
    work = new double[n * B];
    work2 = new double[n * B];
  }

  /** Where the block of bodies {@code i}, {@code j} is kept; when {@link #flipped} it is kept transposed. */
  public int blockOf(int i, int j) {
    return pattern.blockOf(i, j);
  }

  /** Whether the block of i and j is kept transposed. */
  public boolean flipped(int i, int j) {
    return pattern.flipped(i, j);
  }

  /** Sets every number to zero. */
  public void clear() {
    Arrays.fill(blocks, 0);
  }

  /** The numbers of all blocks, 36 each, row by row; to be added to between {@link #clear} and {@link #factor}. */
  public double[] values() {
    return blocks;
  }

  /** Adds {@code value} to every diagonal entry. */
  void addToDiagonal(double value) {
    for (int j = 0; j < n; j++) {
      int at = columnStart[j] * BB;
      for (int i = 0; i < B; i++) blocks[at + 7 * i] += value;
    }
  }

  /** Factors in place, {@code share} of the largest diagonal entry added to all of them. */
  public void factorRegular(double share) {
    double largest = 0;
    for (int j = 0; j < n; j++) {
      int at = columnStart[j] * BB;
      for (int i = 0; i < B; i++) largest = Math.max(largest, blocks[at + 7 * i]);
    }
    double least = share * largest;
    addToDiagonal(least);
    factor(least);
  }

  /**
   * Factors in place.
   *
   * @param least a pivot below this is replaced by it
   * @return how many pivots were replaced
   */
  int factor(double least) {
    int replaced = 0;
    int u = 0;
    for (int j = 0; j < n; j++) {
      int diagonal = columnStart[j] * BB;
      replaced += factorDiagonal(diagonal, j * B, least);
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) solveRight(i * BB, diagonal, j * B);
      for (int k = columnStart[j] + 1; k < columnStart[j + 1]; k++) {
        for (int i = k; i < columnStart[j + 1]; i++) subtractProduct(pattern.updateTarget[u++] * BB, i * BB, k * BB, i == k);
      }
    }
    return replaced;
  }

  private int factorDiagonal(int at, int row, double least) {
    int replaced = 0;
    for (int j = 0; j < B; j++) {
      double d = blocks[at + 7 * j];
      for (int k = 0; k < j; k++) d -= blocks[at + 6 * j + k] * blocks[at + 6 * j + k];
      if (!(d > least)) {
        d = least;
        replaced++;
      }
      double root = Math.sqrt(d);
      blocks[at + 7 * j] = root;
      over[row + j] = 1 / root;
      for (int i = j + 1; i < B; i++) {
        double v = blocks[at + 6 * i + j];
        for (int k = 0; k < j; k++) v -= blocks[at + 6 * i + k] * blocks[at + 6 * j + k];
        blocks[at + 6 * i + j] = v * over[row + j];
      }
    }
    return replaced;
  }

  /** X := X L^-T for the block X at {@code at} and the lower triangle L at {@code diagonal}, of {@code row} and the next five. */
  private void solveRight(int at, int diagonal, int row) {
    double[] m = blocks;
    double o0 = over[row];
    double o1 = over[row + 1];
    double o2 = over[row + 2];
    double o3 = over[row + 3];
    double o4 = over[row + 4];
    double o5 = over[row + 5];
    double l10 = m[diagonal + 6];
    double l20 = m[diagonal + 12];
    double l21 = m[diagonal + 13];
    double l30 = m[diagonal + 18];
    double l31 = m[diagonal + 19];
    double l32 = m[diagonal + 20];
    double l40 = m[diagonal + 24];
    double l41 = m[diagonal + 25];
    double l42 = m[diagonal + 26];
    double l43 = m[diagonal + 27];
    double l50 = m[diagonal + 30];
    double l51 = m[diagonal + 31];
    double l52 = m[diagonal + 32];
    double l53 = m[diagonal + 33];
    double l54 = m[diagonal + 34];
    for (int r = at; r < at + BB; r += B) {
      double x0 = m[r] * o0;
      double x1 = (m[r + 1] - x0 * l10) * o1;
      double x2 = (m[r + 2] - x0 * l20 - x1 * l21) * o2;
      double x3 = (m[r + 3] - x0 * l30 - x1 * l31 - x2 * l32) * o3;
      double x4 = (m[r + 4] - x0 * l40 - x1 * l41 - x2 * l42 - x3 * l43) * o4;
      double x5 = (m[r + 5] - x0 * l50 - x1 * l51 - x2 * l52 - x3 * l53 - x4 * l54) * o5;
      m[r] = x0;
      m[r + 1] = x1;
      m[r + 2] = x2;
      m[r + 3] = x3;
      m[r + 4] = x4;
      m[r + 5] = x5;
    }
  }

  /** T := T - X Y^T, a quarter at a time so that the sums stay in registers; of T on the diagonal no upper quarter. */
  private void subtractProduct(int t, int x, int y, boolean lower) {
    subtractQuarter(blocks, t, x, y);
    if (!lower) subtractQuarter(blocks, t + 3, x, y + 18);
    subtractQuarter(blocks, t + 18, x + 18, y);
    subtractQuarter(blocks, t + 21, x + 18, y + 18);
  }

  private static void subtractQuarter(double[] m, int t, int x, int y) {
    double s00 = 0;
    double s01 = 0;
    double s02 = 0;
    double s10 = 0;
    double s11 = 0;
    double s12 = 0;
    double s20 = 0;
    double s21 = 0;
    double s22 = 0;
    for (int k = 0; k < B; k++) {
      double x0 = m[x + k];
      double x1 = m[x + k + 6];
      double x2 = m[x + k + 12];
      double y0 = m[y + k];
      double y1 = m[y + k + 6];
      double y2 = m[y + k + 12];
      s00 += x0 * y0;
      s01 += x0 * y1;
      s02 += x0 * y2;
      s10 += x1 * y0;
      s11 += x1 * y1;
      s12 += x1 * y2;
      s20 += x2 * y0;
      s21 += x2 * y1;
      s22 += x2 * y2;
    }
    m[t] -= s00;
    m[t + 1] -= s01;
    m[t + 2] -= s02;
    m[t + 6] -= s10;
    m[t + 7] -= s11;
    m[t + 8] -= s12;
    m[t + 12] -= s20;
    m[t + 13] -= s21;
    m[t + 14] -= s22;
  }

  /** Solves for {@code rhs} (6 a body) into {@code out}; the two may be the same array. */
  public void solve(double[] rhs, double[] out) {
    take(rhs, work);
    for (int j = 0; j < n; j++) {
      forward(j, work);
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) below(i * BB, j * B, rowOf[i] * B, work);
    }
    for (int j = n - 1; j >= 0; j--) {
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) above(i * BB, j * B, rowOf[i] * B, work);
      back(j, work);
    }
    give(work, out);
  }

  /** The same for two right-hand sides at once, each block while it is at hand. */
  public void solve(double[] rhs, double[] out, double[] rhs2, double[] out2) {
    take(rhs, work);
    take(rhs2, work2);
    for (int j = 0; j < n; j++) {
      forward(j, work);
      forward(j, work2);
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) {
        below(i * BB, j * B, rowOf[i] * B, work);
        below(i * BB, j * B, rowOf[i] * B, work2);
      }
    }
    for (int j = n - 1; j >= 0; j--) {
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) {
        above(i * BB, j * B, rowOf[i] * B, work);
        above(i * BB, j * B, rowOf[i] * B, work2);
      }
      back(j, work);
      back(j, work2);
    }
    give(work, out);
    give(work2, out2);
  }

  private void take(double[] rhs, double[] x) {
    for (int j = 0; j < n; j++) System.arraycopy(rhs, pattern.order[j] * B, x, j * B, B);
  }

  private void give(double[] x, double[] out) {
    for (int j = 0; j < n; j++) System.arraycopy(x, j * B, out, pattern.order[j] * B, B);
  }

  // The sums of what follows are written out so that they stay in registers, in parts that a processor adds at once.

  private void forward(int j, double[] x) {
    double[] m = blocks;
    double[] o = over;
    int d = columnStart[j] * BB;
    int v = j * B;
    double x0 = x[v] * o[v];
    double x1 = (x[v + 1] - m[d + 6] * x0) * o[v + 1];
    double x2 = (x[v + 2] - m[d + 12] * x0 - m[d + 13] * x1) * o[v + 2];
    double x3 = (x[v + 3] - m[d + 18] * x0 - m[d + 19] * x1 - m[d + 20] * x2) * o[v + 3];
    double x4 = (x[v + 4] - m[d + 24] * x0 - m[d + 25] * x1 - m[d + 26] * x2 - m[d + 27] * x3) * o[v + 4];
    double x5 = (x[v + 5] - m[d + 30] * x0 - m[d + 31] * x1 - m[d + 32] * x2 - m[d + 33] * x3 - m[d + 34] * x4) * o[v + 5];
    x[v] = x0;
    x[v + 1] = x1;
    x[v + 2] = x2;
    x[v + 3] = x3;
    x[v + 4] = x4;
    x[v + 5] = x5;
  }

  private void back(int j, double[] x) {
    double[] m = blocks;
    double[] o = over;
    int d = columnStart[j] * BB;
    int v = j * B;
    double x5 = x[v + 5] * o[v + 5];
    double x4 = (x[v + 4] - m[d + 34] * x5) * o[v + 4];
    double x3 = (x[v + 3] - m[d + 33] * x5 - m[d + 27] * x4) * o[v + 3];
    double x2 = (x[v + 2] - m[d + 32] * x5 - m[d + 26] * x4 - m[d + 20] * x3) * o[v + 2];
    double x1 = (x[v + 1] - m[d + 31] * x5 - m[d + 25] * x4 - m[d + 19] * x3 - m[d + 13] * x2) * o[v + 1];
    double x0 = (x[v] - m[d + 30] * x5 - m[d + 24] * x4 - m[d + 18] * x3 - m[d + 12] * x2 - m[d + 6] * x1) * o[v];
    x[v] = x0;
    x[v + 1] = x1;
    x[v + 2] = x2;
    x[v + 3] = x3;
    x[v + 4] = x4;
    x[v + 5] = x5;
  }

  /** What column {@code v} takes from row {@code w} by the block at {@code at}. */
  private void below(int at, int v, int w, double[] x) {
    double[] m = blocks;
    double x0 = x[v];
    double x1 = x[v + 1];
    double x2 = x[v + 2];
    double x3 = x[v + 3];
    double x4 = x[v + 4];
    double x5 = x[v + 5];
    x[w] -= m[at] * x0 + m[at + 1] * x1 + m[at + 2] * x2 + (m[at + 3] * x3 + m[at + 4] * x4 + m[at + 5] * x5);
    x[w + 1] -= m[at + 6] * x0 + m[at + 7] * x1 + m[at + 8] * x2 + (m[at + 9] * x3 + m[at + 10] * x4 + m[at + 11] * x5);
    x[w + 2] -= m[at + 12] * x0 + m[at + 13] * x1 + m[at + 14] * x2 + (m[at + 15] * x3 + m[at + 16] * x4 + m[at + 17] * x5);
    x[w + 3] -= m[at + 18] * x0 + m[at + 19] * x1 + m[at + 20] * x2 + (m[at + 21] * x3 + m[at + 22] * x4 + m[at + 23] * x5);
    x[w + 4] -= m[at + 24] * x0 + m[at + 25] * x1 + m[at + 26] * x2 + (m[at + 27] * x3 + m[at + 28] * x4 + m[at + 29] * x5);
    x[w + 5] -= m[at + 30] * x0 + m[at + 31] * x1 + m[at + 32] * x2 + (m[at + 33] * x3 + m[at + 34] * x4 + m[at + 35] * x5);
  }

  /** The same with the block turned: what its row takes from column {@code v}. */
  private void above(int at, int v, int w, double[] x) {
    double[] m = blocks;
    double x0 = x[w];
    double x1 = x[w + 1];
    double x2 = x[w + 2];
    double x3 = x[w + 3];
    double x4 = x[w + 4];
    double x5 = x[w + 5];
    x[v] -= m[at] * x0 + m[at + 6] * x1 + m[at + 12] * x2 + (m[at + 18] * x3 + m[at + 24] * x4 + m[at + 30] * x5);
    x[v + 1] -= m[at + 1] * x0 + m[at + 7] * x1 + m[at + 13] * x2 + (m[at + 19] * x3 + m[at + 25] * x4 + m[at + 31] * x5);
    x[v + 2] -= m[at + 2] * x0 + m[at + 8] * x1 + m[at + 14] * x2 + (m[at + 20] * x3 + m[at + 26] * x4 + m[at + 32] * x5);
    x[v + 3] -= m[at + 3] * x0 + m[at + 9] * x1 + m[at + 15] * x2 + (m[at + 21] * x3 + m[at + 27] * x4 + m[at + 33] * x5);
    x[v + 4] -= m[at + 4] * x0 + m[at + 10] * x1 + m[at + 16] * x2 + (m[at + 22] * x3 + m[at + 28] * x4 + m[at + 34] * x5);
    x[v + 5] -= m[at + 5] * x0 + m[at + 11] * x1 + m[at + 17] * x2 + (m[at + 23] * x3 + m[at + 29] * x4 + m[at + 35] * x5);
  }
}
