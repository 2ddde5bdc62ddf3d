package holdfast.engine.statics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Sparse Cholesky factors of a symmetric positive definite matrix made of 6 x 6 blocks, one row of blocks a rock.
 * The blocks are eliminated in the order of least degree; the pattern of the factor is worked out once for a heap and
 * the numbers are then filled in without allocation.
 *
 * @see <a href="https://doi.org/10.1137/1.9780898718881">Davis 2006, Direct Methods for Sparse Linear Systems</a>,
 *     chapters 4 (right-looking elimination) and 7 (minimum degree)
 */
final class BlockCholesky {
  static final int B = 6;
  static final int BB = B * B;

  private final int n;
  private final int[] order;
  private final int[] place;
  /** Blocks of column j (in elimination order): first the diagonal, then the rows below. */
  private final int[] columnStart;
  private final int[] rowOf;
  /** For every column, for every pair of its rows (i, k) with i at or below k: the block that is updated. */
  private final int[] updateStart;
  private final int[] updateTarget;
  private final double[] blocks;
  private final double[] work;

  /** A pattern for {@code n} rows of blocks with an off-diagonal block for every pair in {@code pairs}. */
  BlockCholesky(int n, List<int[]> pairs) {
    this.n = n;
    List<TreeSet<Integer>> near = new ArrayList<>();
    for (int i = 0; i < n; i++) near.add(new TreeSet<>());
    for (int[] p : pairs) {
      near.get(p[0]).add(p[1]);
      near.get(p[1]).add(p[0]);
    }
    order = new int[n];
    place = new int[n];
    List<List<Integer>> below = leastDegree(near);
    columnStart = new int[n + 1];
    for (int j = 0; j < n; j++) columnStart[j + 1] = columnStart[j] + 1 + below.get(j).size();
    rowOf = new int[columnStart[n]];
    for (int j = 0; j < n; j++) {
      int[] rows = below.get(j).stream().mapToInt(r -> place[r]).sorted().toArray();
      rowOf[columnStart[j]] = j;
      System.arraycopy(rows, 0, rowOf, columnStart[j] + 1, rows.length);
    }
    updateStart = new int[n + 1];
    for (int j = 0; j < n; j++) {
      int m = columnStart[j + 1] - columnStart[j] - 1;
      updateStart[j + 1] = updateStart[j] + m * (m + 1) / 2;
    }
    updateTarget = new int[updateStart[n]];
    for (int j = 0; j < n; j++) {
      int u = updateStart[j];
      for (int k = columnStart[j] + 1; k < columnStart[j + 1]; k++) {
        for (int i = k; i < columnStart[j + 1]; i++) updateTarget[u++] = find(rowOf[i], rowOf[k]);
      }
    }
    blocks = new double[rowOf.length * BB];
    work = new double[n * B];
  }

  private List<List<Integer>> leastDegree(List<TreeSet<Integer>> near) {
    boolean[] done = new boolean[n];
    List<List<Integer>> below = new ArrayList<>();
    for (int j = 0; j < n; j++) {
      int best = -1;
      for (int i = 0; i < n; i++) {
        if (!done[i] && (best < 0 || near.get(i).size() < near.get(best).size())) best = i;
      }
      done[best] = true;
      order[j] = best;
      place[best] = j;
      List<Integer> rows = List.copyOf(near.get(best));
      for (int r : rows) {
        near.get(r).remove(best);
        for (int s : rows) {
          if (s != r) near.get(r).add(s);
        }
      }
      below.add(rows);
    }
    return below;
  }

  /** The block at (row, column) of the factor, both in elimination order, row at or below column. */
  private int find(int row, int column) {
    int at = Arrays.binarySearch(rowOf, columnStart[column], columnStart[column + 1], row);
    if (at < 0) throw new IllegalStateException("no block at " + row + ", " + column);
    return at;
  }

  /** Where the block of bodies {@code i}, {@code j} is kept; when {@link #flipped} it is kept transposed. */
  int blockOf(int i, int j) {
    int p = place[i];
    int q = place[j];
    return p >= q ? find(p, q) : find(q, p);
  }

  boolean flipped(int i, int j) {
    return place[i] < place[j];
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

  /**
   * Factors in place.
   *
   * @param least a pivot below this is replaced by it
   * @return how many pivots were replaced
   */
  int factor(double least) {
    int replaced = 0;
    for (int j = 0; j < n; j++) {
      int diagonal = columnStart[j] * BB;
      replaced += factorDiagonal(diagonal, least);
      for (int i = columnStart[j] + 1; i < columnStart[j + 1]; i++) solveRight(i * BB, diagonal);
      int u = updateStart[j];
      for (int k = columnStart[j] + 1; k < columnStart[j + 1]; k++) {
        for (int i = k; i < columnStart[j + 1]; i++) subtractProduct(updateTarget[u++] * BB, i * BB, k * BB);
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
    for (int j = 0; j < n; j++) System.arraycopy(rhs, order[j] * B, work, j * B, B);
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
    for (int j = 0; j < n; j++) System.arraycopy(work, j * B, out, order[j] * B, B);
  }
}
