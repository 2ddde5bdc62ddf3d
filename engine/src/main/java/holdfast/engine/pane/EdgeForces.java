package holdfast.engine.pane;

/**
 * What point loads on an endless bedded plate leave along the outline of a pane cut out of it: deflection, slopes, shear
 * force, moment and twist at the Gauss points of a {@link FreePlateMesh}'s sides, and the work that those forces do.
 *
 * <p>With g_A the endless plate's answer to a newton at A, T_A(v) = integral of Q_n v - m_nn v_n - m_ns v_s over the outline is
 * the work of its edge forces on a field v; then a(g_A, v) + k (g_A, v) = v(A) + T_A(v) for every v inside (Green's formula for
 * plates; Timoshenko and Woinowsky-Krieger, article 22).
 */
final class EdgeForces {
  /** Figures kept for each Gauss point: deflection, slopes across and along the side, shear force, moment, twist. */
  private static final int FIGURES = 6;

  /** The mean of ln |s| over a length l about s = 0 is ln(l / 2e): what a Gauss point stands for when a load lies on it. */
  private static final double CELL_MEAN = 0.5 / Math.E;

  private final Plate plate;
  private final double lengthM;
  private final FreePlateMesh mesh;
  private final int count;
  private final double[] x;
  private final double[] y;
  private final boolean[] facingX;
  /** Length that the point stands for times +1 where the outward normal points up an axis, -1 where down. */
  private final double[] weight;

  EdgeForces(Plate plate, double lengthM, FreePlateMesh mesh) {
    this.plate = plate;
    this.lengthM = lengthM;
    this.mesh = mesh;
    this.count = 2 * (mesh.nx() + mesh.ny()) * FreePlateMesh.GAUSS.length;
    this.x = new double[count];
    this.y = new double[count];
    this.facingX = new boolean[count];
    this.weight = new double[count];
    int at = 0;
    for (int side = 0; side < 4; side++) {
      for (int e = 0; e < elements(side); e++) {
        for (double[] g : FreePlateMesh.GAUSS) {
          double s = (e + g[0]) * stepM(side);
          double fixed = side % 2 == 0 ? 0 : side < 2 ? plate.lengthM() : plate.widthM();
          x[at] = side < 2 ? fixed : s;
          y[at] = side < 2 ? s : fixed;
          facingX[at] = side < 2;
          weight[at++] = g[1] * stepM(side) * (side % 2 == 0 ? -1 : 1);
        }
      }
    }
  }

  /** Sides 0 left and 1 right run along y, 2 front and 3 back along x. */
  private int elements(int side) {
    return side < 2 ? mesh.ny() : mesh.nx();
  }

  private double stepM(int side) {
    return side < 2 ? mesh.hy() : mesh.hx();
  }

  /** Distance that is never quite zero, metres: the kernels have no value on their own point. */
  static double distance(double dx, double dy, double lengthM) {
    return Math.max(Math.sqrt(dx * dx + dy * dy), 1e-12 * lengthM);
  }

  /** Everything that the loads at {@code points} (x, y, newtons) leave along the outline. */
  double[] of(double[] points) {
    double[] all = new double[FIGURES * count];
    double[] kelvin = new double[4];
    double d = plate.stiffnessNm();
    double nu = plate.poisson();
    double unit = 1 / (2 * Math.PI);
    for (int i = 0; i < count; i++) {
      double w = 0;
      double across = 0;
      double along = 0;
      double shear = 0;
      double kxx = 0;
      double kyy = 0;
      double kxy = 0;
      for (int p = 0; p < points.length; p += 3) {
        double dx = x[i] - points[p];
        double dy = y[i] - points[p + 1];
        double apart = distance(dx, dy, lengthM);
        double rho = Math.max(apart, CELL_MEAN * Math.abs(weight[i])) / lengthM;
        if (rho >= Kelvin.REACH) continue;
        Kelvin.quick(rho, kelvin);
        double scale = -points[p + 2] * unit;
        // A load right on the point acts as one beside it along the edge.
        boolean same = dx == 0 && dy == 0;
        double c = same && !facingX[i] ? 1 : dx / apart;
        double s = same && facingX[i] ? 1 : dy / apart;
        double hoop = -kelvin[3] / rho;
        double radial = -kelvin[0] - hoop;
        kxx += scale * (radial * c * c + hoop * s * s);
        kyy += scale * (radial * s * s + hoop * c * c);
        kxy += scale * (radial - hoop) * c * s;
        w += scale * kelvin[1];
        double slope = scale * kelvin[3];
        across += slope * (facingX[i] ? c : s);
        along += slope * (facingX[i] ? s : c);
        // Q = -D grad lap w, lap w = -(1 / (2 pi D)) ker
        shear -= scale * kelvin[2] / lengthM * (facingX[i] ? c : s);
      }
      int at = FIGURES * i;
      all[at] = w * lengthM * lengthM / d;
      all[at + 1] = across * lengthM / d;
      all[at + 2] = along * lengthM / d;
      all[at + 3] = shear;
      all[at + 4] = facingX[i] ? kxx + nu * kyy : kyy + nu * kxx;
      all[at + 5] = (1 - nu) * kxy;
    }
    return all;
  }

  /** T_a(b): the work of the edge forces of one field on the motion of another. */
  double work(double[] forces, double[] field) {
    double sum = 0;
    for (int i = 0, at = 0; i < count; i++, at += FIGURES) {
      sum += weight[i] * (forces[at + 3] * field[at] - forces[at + 4] * field[at + 1] - forces[at + 5] * field[at + 2]);
    }
    return sum;
  }

  /** Minus the work of the edge forces on each unknown of the mesh: the load that cancels them. */
  double[] cancelling(double[] forces) {
    double[] load = new double[mesh.unknowns()];
    eachShape((i, value, slope, f, f1) -> {
      int at = FIGURES * i;
      load[value] -= weight[i] * (forces[at + 3] * f - forces[at + 5] * f1);
      load[slope] += weight[i] * forces[at + 4] * f;
    });
    return load;
  }

  /** Deflection and slopes of a solution of the mesh along the outline, to have work done on. */
  double[] trace(double[] unknowns) {
    double[] field = new double[FIGURES * count];
    eachShape((i, value, slope, f, f1) -> {
      int at = FIGURES * i;
      field[at] += unknowns[value] * f;
      field[at + 1] += unknowns[slope] * f;
      field[at + 2] += unknowns[value] * f1;
    });
    return field;
  }

  /** One shape function at one Gauss point: the unknowns of its value and its slope across the side, and its value and slope. */
  @FunctionalInterface
  private interface Shape {
    void at(int point, int value, int slope, double f, double f1);
  }

  private void eachShape(Shape shape) {
    int point = 0;
    for (int side = 0; side < 4; side++) {
      boolean alongY = side < 2;
      int across = side % 2 == 0 ? 0 : 2 * (alongY ? mesh.nx() : mesh.ny());
      double h = stepM(side);
      for (int e = 0; e < elements(side); e++) {
        for (double[] g : FreePlateMesh.GAUSS) {
          for (int i = 0; i < 4; i++) {
            int along = 2 * e + i;
            shape.at(point, alongY ? mesh.index(across, along) : mesh.index(along, across),
                alongY ? mesh.index(across + 1, along) : mesh.index(along, across + 1),
                FreePlateMesh.shape(i, g[0], h, 0), FreePlateMesh.shape(i, g[0], h, 1));
          }
          point++;
        }
      }
    }
  }
}
