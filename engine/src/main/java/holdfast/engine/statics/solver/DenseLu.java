package holdfast.engine.statics.solver;

/** Solves small dense equations by elimination with row pivots, in arrays that are kept. */
public final class DenseLu {
  /** The matrix, row by row, {@code n} apart; lost by {@link #solve}. */
  public double[] a = new double[0];
  /** The right side, then the solution. */
  public double[] b = new double[0];
  private int n;

  /** Makes room for {@code size} equations; what {@link #a} and {@link #b} held is lost, and is not zero. */
  public void size(int size) {
    n = size;
    if (b.length < n) {
      a = new double[n * n];
      b = new double[n];
    }
  }

  /** False when a pivot is zero or not a number. */
  public boolean solve() {
    for (int j = 0; j < n; j++) {
      int best = j;
      for (int r = j + 1; r < n; r++) if (Math.abs(a[r * n + j]) > Math.abs(a[best * n + j])) best = r;
      double pivot = a[best * n + j];
      if (!(Math.abs(pivot) > Double.MIN_NORMAL)) return false;
      if (best != j) {
        for (int c = j; c < n; c++) {
          double t = a[best * n + c];
          a[best * n + c] = a[j * n + c];
          a[j * n + c] = t;
        }
        double t = b[best];
        b[best] = b[j];
        b[j] = t;
      }
      for (int r = j + 1; r < n; r++) {
        double f = a[r * n + j] / pivot;
        if (f == 0) continue;
        for (int c = j + 1; c < n; c++) a[r * n + c] -= f * a[j * n + c];
        b[r] -= f * b[j];
      }
    }
    for (int j = n - 1; j >= 0; j--) {
      double v = b[j];
      for (int c = j + 1; c < n; c++) v -= a[j * n + c] * b[c];
      b[j] = v / a[j * n + j];
    }
    return true;
  }
}
