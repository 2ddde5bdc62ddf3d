package holdfast.engine.statics.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Where a sparse matrix with one row of 6 x 6 blocks a body fills in when it is eliminated: the bodies in the order of
 * least fill, the blocks of every column, and which block each product of two falls on. Worked out once for a heap; the
 * factors of {@link BlockCholesky} and {@link BlockLu} are then filled in without allocation.
 *
 * @see <a href="https://doi.org/10.1137/1.9780898718881">Davis 2006, Direct Methods for Sparse Linear Systems</a>,
 *     chapter 4 (right-looking elimination)
 * @see <a href="https://doi.org/10.1109/PROC.1967.6011">Tinney and Walker 1967, Direct solutions of sparse network equations
 *     by optimally ordered triangular factorization</a>, scheme 3 (least fill): in piles it makes a twentieth fewer products
 *     than least degree does
 */
public final class BlockPattern {
  static final int B = 6;
  /** Numbers in a block. */
  public static final int BB = B * B;

  final int n;
  final int[] order;
  final int[] place;
  /** Blocks of column j (in elimination order): first the diagonal, then the rows below. */
  final int[] columnStart;
  final int[] rowOf;
  /** For every column, for every pair of its rows (i, k) with i at or below k: the block that is updated. */
  final int[] updateTarget;

  /** A pattern for {@code n} rows of blocks with an off-diagonal block for every pair in {@code pairs}. */
  public BlockPattern(int n, List<int[]> pairs) {
    this.n = n;
    List<TreeSet<Integer>> near = new ArrayList<>();
    for (int i = 0; i < n; i++) near.add(new TreeSet<>());
    for (int[] p : pairs) {
      near.get(p[0]).add(p[1]);
      near.get(p[1]).add(p[0]);
    }
    order = new int[n];
    place = new int[n];
    List<List<Integer>> below = leastFill(near);
    columnStart = new int[n + 1];
    for (int j = 0; j < n; j++) columnStart[j + 1] = columnStart[j] + 1 + below.get(j).size();
    rowOf = new int[columnStart[n]];
    for (int j = 0; j < n; j++) {
      int[] rows = below.get(j).stream().mapToInt(r -> place[r]).sorted().toArray();
      rowOf[columnStart[j]] = j;
      System.arraycopy(rows, 0, rowOf, columnStart[j] + 1, rows.length);
    }
    int updates = 0;
    for (int j = 0; j < n; j++) {
      int m = columnStart[j + 1] - columnStart[j] - 1;
      updates += m * (m + 1) / 2;
    }
    updateTarget = new int[updates];
    int u = 0;
    for (int j = 0; j < n; j++) {
      for (int k = columnStart[j] + 1; k < columnStart[j + 1]; k++) {
        for (int i = k; i < columnStart[j + 1]; i++) updateTarget[u++] = find(rowOf[i], rowOf[k]);
      }
    }
  }

  private List<List<Integer>> leastFill(List<TreeSet<Integer>> near) {
    boolean[] done = new boolean[n];
    List<List<Integer>> below = new ArrayList<>();
    for (int j = 0; j < n; j++) {
      int best = -1;
      int least = Integer.MAX_VALUE;
      for (int i = 0; i < n; i++) {
        if (done[i]) continue;
        int fill = fill(near, i);
        if (fill > least || fill == least && near.get(i).size() <= near.get(best).size()) continue;
        best = i;
        least = fill;
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

  /** How many pairs of neighbours are no neighbours of each other yet. */
  private static int fill(List<TreeSet<Integer>> near, int i) {
    int fill = 0;
    for (int r : near.get(i)) {
      for (int s : near.get(i).tailSet(r, false)) if (!near.get(r).contains(s)) fill++;
    }
    return fill;
  }

  /** The block at (row, column) of the factor, both in elimination order, row at or below column. */
  private int find(int row, int column) {
    int at = Arrays.binarySearch(rowOf, columnStart[column], columnStart[column + 1], row);
    if (at < 0) throw new IllegalStateException("no block at " + row + ", " + column);
    return at;
  }

  /** Where the block of bodies {@code i}, {@code j} is kept; when {@link #flipped} it is kept transposed. */
  public int blockOf(int i, int j) {
    int p = place[i];
    int q = place[j];
    return p >= q ? find(p, q) : find(q, p);
  }

  boolean flipped(int i, int j) {
    return place[i] < place[j];
  }
}
