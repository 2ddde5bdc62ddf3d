package holdfast.engine.pane;

/**
 * A bedded plate with free edges by Ritz's method with products of Legendre polynomials over the whole plate, an answer that owes
 * nothing to the endless plate, to images or to meshes. Only for patches in which the pressure is even, sides along x and y.
 */
final class RitzPlate {
  private final Plate plate;
  private final int terms;
  private final double[] unknowns;

  /** {@code terms} polynomials each way; the patch from (x0, y0) to (x1, y1) carries one newton. */
  RitzPlate(Plate plate, double foundationNm3, int terms, double x0, double y0, double x1, double y1) {
    this.plate = plate;
    this.terms = terms;
    double[][][] x = products(plate.lengthM());
    double[][][] y = products(plate.widthM());
    double d = plate.stiffnessNm();
    double nu = plate.poisson();
    int size = terms * terms;
    double[][] a = new double[size][size];
    unknowns = new double[size];
    double[] loadX = means(plate.lengthM(), x0, x1);
    double[] loadY = means(plate.widthM(), y0, y1);
    for (int i = 0; i < terms; i++) {
      for (int j = 0; j < terms; j++) {
        unknowns[i * terms + j] = loadX[i] * loadY[j];
        for (int k = 0; k < terms; k++) {
          for (int l = 0; l < terms; l++) {
            a[i * terms + j][k * terms + l] = d * (x[2][i][k] * y[0][j][l] + x[0][i][k] * y[2][j][l]
                + nu * (x[3][k][i] * y[3][j][l] + x[3][i][k] * y[3][l][j]) + 2 * (1 - nu) * x[1][i][k] * y[1][j][l])
                + foundationNm3 * x[0][i][k] * y[0][j][l];
          }
        }
      }
    }
    solve(a, unknowns);
  }

  double deflection(double x, double y) {
    return sum(x, 0, y, 0);
  }

  Bending bending(double x, double y) {
    double d = plate.stiffnessNm();
    return Bending.ofCurvature(-d * sum(x, 2, y, 0), -d * sum(x, 0, y, 2), -d * sum(x, 1, y, 1), plate.poisson());
  }

  private double sum(double x, int dx, double y, int dy) {
    double[] fx = legendre(x, plate.lengthM())[dx];
    double[] fy = legendre(y, plate.widthM())[dy];
    double sum = 0;
    for (int i = 0; i < terms; i++) for (int j = 0; j < terms; j++) sum += unknowns[i * terms + j] * fx[i] * fy[j];
    return sum;
  }

  /** Polynomials of unit mean square on (0, length), with first and second derivatives. */
  private double[][] legendre(double at, double length) {
    double s = 2 * at / length - 1;
    double[][] f = new double[3][terms];
    for (int n = 0; n < terms; n++) {
      if (n < 2) {
        f[0][n] = n == 0 ? 1 : s;
        f[1][n] = n;
        continue;
      }
      f[0][n] = ((2 * n - 1) * s * f[0][n - 1] - (n - 1) * f[0][n - 2]) / n;
      // P'(n) = P'(n-2) + (2n-1) P(n-1)
      f[1][n] = f[1][n - 2] + (2 * n - 1) * f[0][n - 1];
      f[2][n] = f[2][n - 2] + (2 * n - 1) * f[1][n - 1];
    }
    for (int n = 0; n < terms; n++) {
      double scale = Math.sqrt(2 * n + 1);
      for (int k = 0; k < 3; k++, scale *= 2 / length) f[k][n] *= scale;
    }
    return f;
  }

  /** Integrals of products of derivatives (0,0), (1,1), (2,2), (2,0), by a Gauss rule in each of many short parts. */
  private double[][][] products(double length) {
    int[][] kinds = {{0, 0}, {1, 1}, {2, 2}, {2, 0}};
    double[][][] all = new double[4][terms][terms];
    int parts = terms;
    for (int part = 0; part < parts; part++) {
      for (double[] g : SplineLine.GAUSS) {
        double[][] f = legendre(length * (part + g[0]) / parts, length);
        for (int kind = 0; kind < 4; kind++) {
          for (int i = 0; i < terms; i++) {
            for (int k = 0; k < terms; k++) {
              all[kind][i][k] += g[1] * length / parts * f[kinds[kind][0]][i] * f[kinds[kind][1]][k];
            }
          }
        }
      }
    }
    return all;
  }

  private double[] means(double length, double from, double to) {
    double[] all = new double[terms];
    int parts = 8;
    for (int part = 0; part < parts; part++) {
      for (double[] g : SplineLine.GAUSS) {
        double[][] f = legendre(from + (to - from) * (part + g[0]) / parts, length);
        for (int i = 0; i < terms; i++) all[i] += g[1] / parts * f[0][i];
      }
    }
    return all;
  }

  /** Gauss elimination; the matrix is symmetric and positive definite, so no rows need change places. */
  private static void solve(double[][] a, double[] b) {
    int n = b.length;
    for (int p = 0; p < n; p++) {
      for (int r = p + 1; r < n; r++) {
        double factor = a[r][p] / a[p][p];
        if (factor == 0) continue;
        for (int c = p; c < n; c++) a[r][c] -= factor * a[p][c];
        b[r] -= factor * b[p];
      }
    }
    for (int p = n - 1; p >= 0; p--) {
      for (int c = p + 1; c < n; c++) b[p] -= a[p][c] * b[c];
      b[p] /= a[p][p];
    }
  }
}
