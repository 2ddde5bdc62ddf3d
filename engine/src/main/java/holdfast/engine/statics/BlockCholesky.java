package holdfast.engine.statics;

import java.util.Arrays;
import java.util.List;

/**
 * Sparse Cholesky factors of a symmetric positive definite matrix made of 6 x 6 blocks, one row of blocks a rock, on a
 * {@link BlockPattern}.
 */
final class BlockCholesky {
  static final int B = BlockPattern.B;
  static final int BB = BlockPattern.BB;

  private final BlockPattern pattern;
  private final int n;
  private final int[] columnStart;
  private final int[] rowOf;
  private final double[] blocks;
  private final double[] work;

  /** Factors for {@code n} rows of blocks with an off-diagonal block for every pair in {@code pairs}. */
  BlockCholesky(int n, List<int[]> pairs) {
    this(new BlockPattern(n, pairs));
  }

  BlockCholesky(BlockPattern pattern) {
    this.pattern = pattern;
    n = pattern.n;
    columnStart = pattern.columnStart;
    rowOf = pattern.rowOf;
    blocks = new double[rowOf.length * BB];
    work = new double[n * B];
  }

  /** Where the block of bodies {@code i}, {@code j} is kept; when {@link #flipped} it is kept transposed. */
  int blockOf(int i, int j) {
    return pattern.blockOf(i, j);
  }

  boolean flipped(int i, int j) {
    return pattern.flipped(i, j);
  }

  void clear() {
    Arrays.fill(blocks, 0);
  }

  /** The numbers of all blocks, 36 each, row by row; to be added to between {@link #clear} and {@link #factor}. */
  double[] values() {
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
  void factorRegular(double share) {
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
      replaced += factorDiagonal(diagonal, least);
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) solveRight(i * BB, diagonal);
      for (int k = columnStart[j] + 1; k < columnStart[j + 1]; k++) {
        for (int i = k; i < columnStart[j + 1]; i++) subtractProduct(pattern.updateTarget[u++] * BB, i * BB, k * BB);
      }
    }
    return replaced;
  }

  private int factorDiagonal(int at, double least) {
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
      for (int i = j + 1; i < B; i++) {
        double v = blocks[at + 6 * i + j];
        for (int k = 0; k < j; k++) v -= blocks[at + 6 * i + k] * blocks[at + 6 * j + k];
        blocks[at + 6 * i + j] = v / root;
      }
    }
    return replaced;
  }

  /** X := X L^-T for the block X at {@code at} and the lower triangle L at {@code diagonal}. */
  private void solveRight(int at, int diagonal) {
    for (int r = 0; r < B; r++) {
      int row = at + 6 * r;
      for (int j = 0; j < B; j++) {
        double v = blocks[row + j];
        for (int k = 0; k < j; k++) v -= blocks[row + k] * blocks[diagonal + 6 * j + k];
        blocks[row + j] = v / blocks[diagonal + 7 * j];
      }
    }
  }

  /** T := T - X Y^T. */
  private void subtractProduct(int t, int x, int y) {
    for (int r = 0; r < B; r++) {
      int xr = x + 6 * r;
      double x0 = blocks[xr];
      double x1 = blocks[xr + 1];
      double x2 = blocks[xr + 2];
      double x3 = blocks[xr + 3];
      double x4 = blocks[xr + 4];
      double x5 = blocks[xr + 5];
      for (int c = 0; c < B; c++) {
        int yc = y + 6 * c;
        blocks[t + 6 * r + c] -= x0 * blocks[yc] + x1 * blocks[yc + 1] + x2 * blocks[yc + 2]
            + x3 * blocks[yc + 3] + x4 * blocks[yc + 4] + x5 * blocks[yc + 5];
      }
    }
  }

  /** Solves for {@code rhs} (6 a body) into {@code out}; the two may be the same array. */
  void solve(double[] rhs, double[] out) {
    for (int j = 0; j < n; j++) System.arraycopy(rhs, pattern.order[j] * B, work, j * B, B);
    for (int j = 0; j < n; j++) {
      int d = columnStart[j] * BB;
      int v = j * B;
      for (int r = 0; r < B; r++) {
        double s = work[v + r];
        for (int k = 0; k < r; k++) s -= blocks[d + 6 * r + k] * work[v + k];
        work[v + r] = s / blocks[d + 7 * r];
      }
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) {
        int at = i * BB;
        int w = rowOf[i] * B;
        for (int r = 0; r < B; r++) {
          double s = 0;
          for (int k = 0; k < B; k++) s += blocks[at + 6 * r + k] * work[v + k];
          work[w + r] -= s;
        }
      }
    }
    for (int j = n - 1; j >= 0; j--) {
      int d = columnStart[j] * BB;
      int v = j * B;
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) {
        int at = i * BB;
        int w = rowOf[i] * B;
        for (int k = 0; k < B; k++) {
          double s = 0;
          for (int r = 0; r < B; r++) s += blocks[at + 6 * r + k] * work[w + r];
          work[v + k] -= s;
        }
      }
      for (int r = B - 1; r >= 0; r--) {
        double s = work[v + r];
        for (int k = r + 1; k < B; k++) s -= blocks[d + 6 * k + r] * work[v + k];
        work[v + r] = s / blocks[d + 7 * r];
      }
    }
    for (int j = 0; j < n; j++) System.arraycopy(work, j * B, out, pattern.order[j] * B, B);
  }
}
