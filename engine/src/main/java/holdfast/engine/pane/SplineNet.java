package holdfast.engine.pane;

/** Products of the splines along two sides of a pane: where the unknowns are numbered, and how a field of them is read. */
final class SplineNet {
  private final SplineLine alongX;
  private final SplineLine alongY;
  /** How far apart the numbers of neighbours along x and along y are; one apart along the line with fewer, for a narrow band. */
  private final int strideX;
  private final int strideY;

  SplineNet(SplineLine alongX, SplineLine alongY) {
    this.alongX = alongX;
    this.alongY = alongY;
    boolean yFirst = alongY.functions() <= alongX.functions();
    this.strideX = yFirst ? alongY.functions() : 1;
    this.strideY = yFirst ? 1 : alongX.functions();
  }

  SplineLine alongX() {
    return alongX;
  }

  SplineLine alongY() {
    return alongY;
  }

  int unknowns() {
    return alongX.functions() * alongY.functions();
  }

  /** Number of the unknown that goes with 1D functions {@code i} along x and {@code j} along y. */
  int index(int i, int j) {
    return i * strideX + j * strideY;
  }

  /** The functions at one place, to read many fields there. */
  Place place(double x, double y) {
    int ex = alongX.elementAt(x);
    int ey = alongY.elementAt(y);
    return new Place(index(ex, ey), strideX, strideY, alongX.at(ex, x), alongY.at(ey, y));
  }

  /** Where a place lies: its first unknown, the distances to the next ones, and the functions along x and y. */
  static final class Place {
    private final int first;
    private final int strideX;
    private final int strideY;
    private final double[][] fx;
    private final double[][] fy;

    private Place(int first, int strideX, int strideY, double[][] fx, double[][] fy) {
      this.first = first;
      this.strideX = strideX;
      this.strideY = strideY;
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
      for (int i = 0; i < SplineLine.LIVE; i++) {
        int at = first + i * strideX;
        double g = 0;
        double g1 = 0;
        double g2 = 0;
        for (int j = 0; j < SplineLine.LIVE; j++, at += strideY) {
          double u = unknowns[at];
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
}
