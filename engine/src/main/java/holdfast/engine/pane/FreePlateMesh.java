package holdfast.engine.pane;

/**
 * A pane with free edges on an elastic foundation by the finite element method: products of splines ({@link SplineNet}),
 * smooth far beyond what the plate asks for, so that free edges need no condition.
 *
 * <p>Solves a(w, v) + k (w, v) = l(v) for edge loads l; every matrix is a sum of products of one-dimensional ones.
 */
final class FreePlateMesh {
  private final SplineNet net;
  private final BandMatrix matrix;

  FreePlateMesh(Plate plate, double foundationNm3, SplineNet net) {
    this.net = net;
    int p = SplineLine.DEGREE;
    int sx = net.alongX().functions();
    int sy = net.alongY().functions();
    double[][][] x = net.alongX().products();
    double[][][] y = net.alongY().products();
    double d = plate.stiffnessNm();
    double nu = plate.poisson();
    matrix = new BandMatrix(sx * sy, net.index(p, p));
    for (int i = 0; i < sx; i++) {
      for (int k = Math.max(0, i - p); k <= Math.min(sx - 1, i + p); k++) {
        int dx = k - i + p;
        for (int j = 0; j < sy; j++) {
          for (int l = Math.max(0, j - p); l <= Math.min(sy - 1, j + p); l++) {
            int row = net.index(i, j);
            int column = net.index(k, l);
            if (column > row) continue;
            int dy = l - j + p;
            double value = d * (x[2][i][dx] * y[0][j][dy] + x[0][i][dx] * y[2][j][dy]
                + nu * (x[3][k][i - k + p] * y[3][j][dy] + x[3][i][dx] * y[3][l][j - l + p])
                + 2 * (1 - nu) * x[1][i][dx] * y[1][j][dy])
                + foundationNm3 * x[0][i][dx] * y[0][j][dy];
            matrix.add(row, column, value);
          }
        }
      }
    }
    if (!matrix.factor()) throw new IllegalStateException("a bedded plate must be positive definite");
  }

  SplineNet net() {
    return net;
  }

  void solve(double[] loadsToUnknowns) {
    matrix.solve(loadsToUnknowns);
  }
}
