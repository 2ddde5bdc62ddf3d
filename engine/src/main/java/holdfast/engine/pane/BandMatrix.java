package holdfast.engine.pane;

/** A symmetric positive definite band matrix, kept as its lower band, with its Cholesky factor computed in place. */
final class BandMatrix {
  private final int size;
  private final int band;
  private final double[] lower;

  /** All zeros; {@code band} entries below the diagonal. */
  BandMatrix(int size, int band) {
    this.size = size;
    this.band = band;
    this.lower = new double[size * (band + 1)];
  }

  /** Row by row, the band ends with the diagonal. */
  private int at(int row, int column) {
    return row * (band + 1) + band + column - row;
  }

  /** Adds to an entry on or below the diagonal; entries above are the same ones. */
  void add(int row, int column, double value) {
    lower[at(row, column)] += value;
  }

  /** Replaces the matrix by its factor; false where it is not positive definite. */
  boolean factor() {
    for (int i = 0; i < size; i++) {
      int first = Math.max(0, i - band);
      int rowI = at(i, 0);
      for (int j = first; j <= i; j++) {
        int rowJ = at(j, 0);
        int from = Math.max(first, j - band);
        double sum = lower[rowI + j] - dot(rowI + from, rowJ + from, j - from);
        if (j < i) {
          lower[rowI + j] = sum / lower[rowJ + j];
        } else {
          if (!(sum > 0)) return false;
          lower[rowI + i] = Math.sqrt(sum);
        }
      }
    }
    return true;
  }

  /** Four sums side by side: the processor need not wait for one to end. */
  private double dot(int p, int q, int count) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int k = 0;
    for (; k + 3 < count; k += 4) {
      s0 += lower[p + k] * lower[q + k];
      s1 += lower[p + k + 1] * lower[q + k + 1];
      s2 += lower[p + k + 2] * lower[q + k + 2];
      s3 += lower[p + k + 3] * lower[q + k + 3];
    }
    for (; k < count; k++) s0 += lower[p + k] * lower[q + k];
    return s0 + s1 + (s2 + s3);
  }

  /** Solves in place with the factor. */
  void solve(double[] x) {
    for (int i = 0; i < size; i++) {
      int row = at(i, 0);
      double sum = x[i];
      for (int k = Math.max(0, i - band); k < i; k++) sum -= lower[row + k] * x[k];
      x[i] = sum / lower[row + i];
    }
    for (int i = size - 1; i >= 0; i--) {
      int row = at(i, 0);
      x[i] /= lower[row + i];
      for (int k = Math.max(0, i - band); k < i; k++) x[k] -= lower[row + k] * x[i];
    }
  }
}
