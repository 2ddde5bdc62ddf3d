package holdfast.engine.pane;

/**
 * A pane with free edges on an elastic foundation by the finite element method: rectangles with bicubic Hermite shape
 * functions (Bogner, Fox and Schmit 1965), whose deflection and slope are continuous, so that free edges need no condition.
 *
 * <p>Solves a(w, v) + k (w, v) = l(v) for edge loads l; every matrix is a sum of products of one-dimensional ones.
 */
final class FreePlateMesh {
  /** Abscissae on (0, 1) and weights of the five-point Gauss rule. */
  static final double[][] GAUSS = gauss5();

  private final int nx;
  private final int ny;
  private final double hx;
  private final double hy;
  private final BandMatrix matrix;

  FreePlateMesh(Plate plate, double foundationNm3, int nx, int ny) {
    this.nx = nx;
    this.ny = ny;
    this.hx = plate.lengthM() / nx;
    this.hy = plate.widthM() / ny;
    int sx = 2 * (nx + 1);
    int sy = 2 * (ny + 1);
    double[][][] x = lineMatrices(nx, hx);
    double[][][] y = lineMatrices(ny, hy);
    double d = plate.stiffnessNm();
    double nu = plate.poisson();
    matrix = new BandMatrix(sx * sy, 3 * sy + 3);
    for (int i = 0; i < sx; i++) {
      for (int k = Math.max(0, i - 3); k <= Math.min(sx - 1, i + 3); k++) {
        int dx = k - i + 3;
        for (int j = 0; j < sy; j++) {
          for (int l = Math.max(0, j - 3); l <= Math.min(sy - 1, j + 3); l++) {
            int row = i * sy + j;
            int column = k * sy + l;
            if (column > row) continue;
            int dy = l - j + 3;
            double value = d * (x[2][i][dx] * y[0][j][dy] + x[0][i][dx] * y[2][j][dy]
                + nu * (x[3][k][i - k + 3] * y[3][j][dy] + x[3][i][dx] * y[3][l][j - l + 3])
                + 2 * (1 - nu) * x[1][i][dx] * y[1][j][dy])
                + foundationNm3 * x[0][i][dx] * y[0][j][dy];
            matrix.add(row, column, value);
          }
        }
      }
    }
    if (!matrix.factor()) throw new IllegalStateException("a bedded plate must be positive definite");
  }

  int nx() {
    return nx;
  }

  int ny() {
    return ny;
  }

  double hx() {
    return hx;
  }

  double hy() {
    return hy;
  }

  int unknowns() {
    return 4 * (nx + 1) * (ny + 1);
  }

  /** Number of the unknown that goes with 1D functions {@code i} along x and {@code j} along y. */
  int index(int i, int j) {
    return i * 2 * (ny + 1) + j;
  }

  void solve(double[] loadsToUnknowns) {
    matrix.solve(loadsToUnknowns);
  }

  /** The shape functions at one place, to read many solutions there. */
  Place place(double x, double y) {
    int ex = Math.min(nx - 1, Math.max(0, (int) (x / hx)));
    int ey = Math.min(ny - 1, Math.max(0, (int) (y / hy)));
    double[][] fx = new double[3][4];
    double[][] fy = new double[3][4];
    for (int derivative = 0; derivative < 3; derivative++) {
      for (int i = 0; i < 4; i++) {
        fx[derivative][i] = shape(i, x / hx - ex, hx, derivative);
        fy[derivative][i] = shape(i, y / hy - ey, hy, derivative);
      }
    }
    return new Place(index(2 * ex, 2 * ey), 2 * (ny + 1), fx, fy);
  }

  /** Where a place lies: its first unknown, the distance to the next row of unknowns, and the functions along x and y. */
  static final class Place {
    private final int first;
    private final int stride;
    private final double[][] fx;
    private final double[][] fy;

    private Place(int first, int stride, double[][] fx, double[][] fy) {
      this.first = first;
      this.stride = stride;
      this.fx = fx;
      this.fy = fy;
    }

    /**
     * A solution here.
     *
     * @param out receives w, w_xx, w_yy, w_xy
     */
    void of(double[] unknowns, double[] out) {
      double w = 0;
      double wxx = 0;
      double wyy = 0;
      double wxy = 0;
      for (int i = 0; i < 4; i++) {
        int row = first + i * stride;
        double g = 0;
        double g1 = 0;
        double g2 = 0;
        for (int j = 0; j < 4; j++) {
          double u = unknowns[row + j];
          g += u * fy[0][j];
          g1 += u * fy[1][j];
          g2 += u * fy[2][j];
        }
        w += fx[0][i] * g;
        wxx += fx[2][i] * g;
        wyy += fx[0][i] * g2;
        wxy += fx[1][i] * g1;
      }
      out[0] = w;
      out[1] = wxx;
      out[2] = wyy;
      out[3] = wxy;
    }
  }

  /** Cubic Hermite function {@code i} (value, slope at 0; value, slope at h) or its derivative, at s = x / h. */
  static double shape(int i, double s, double h, int derivative) {
    double r = 1 - s;
    return switch (4 * derivative + i) {
      case 0 -> r * r * (1 + 2 * s);
      case 1 -> h * s * r * r;
      case 2 -> s * s * (3 - 2 * s);
      case 3 -> -h * s * s * r;
      case 4 -> -6 * s * r / h;
      case 5 -> r * (1 - 3 * s);
      case 6 -> 6 * s * r / h;
      case 7 -> s * (3 * s - 2);
      case 8 -> (12 * s - 6) / (h * h);
      case 9 -> (6 * s - 4) / h;
      case 10 -> (6 - 12 * s) / (h * h);
      case 11 -> (6 * s - 2) / h;
      default -> throw new IllegalArgumentException("no shape function " + i + " with derivative " + derivative);
    };
  }

  /** Integrals of products of derivatives (0,0), (1,1), (2,2), (2,0) along a line, as bands: [kind][i][k - i + 3]. */
  private static double[][][] lineMatrices(int elements, double h) {
    int[][] kinds = {{0, 0}, {1, 1}, {2, 2}, {2, 0}};
    double[][][] all = new double[4][2 * (elements + 1)][7];
    for (int kind = 0; kind < 4; kind++) {
      double[][] element = new double[4][4];
      for (double[] g : GAUSS) {
        for (int i = 0; i < 4; i++) {
          for (int k = 0; k < 4; k++) {
            element[i][k] += g[1] * h * shape(i, g[0], h, kinds[kind][0]) * shape(k, g[0], h, kinds[kind][1]);
          }
        }
      }
      for (int e = 0; e < elements; e++) {
        for (int i = 0; i < 4; i++) {
          for (int k = 0; k < 4; k++) all[kind][2 * e + i][k - i + 3] += element[i][k];
        }
      }
    }
    return all;
  }

  private static double[][] gauss5() {
    double inner = Math.sqrt(5 - 2 * Math.sqrt(10.0 / 7)) / 3;
    double outer = Math.sqrt(5 + 2 * Math.sqrt(10.0 / 7)) / 3;
    double wInner = (322 + 13 * Math.sqrt(70)) / 900;
    double wOuter = (322 - 13 * Math.sqrt(70)) / 900;
    double[][] rule = {{-outer, wOuter}, {-inner, wInner}, {0, 128.0 / 225}, {inner, wInner}, {outer, wOuter}};
    for (double[] g : rule) {
      g[0] = 0.5 * (1 + g[0]);
      g[1] *= 0.5;
    }
    return rule;
  }
}
