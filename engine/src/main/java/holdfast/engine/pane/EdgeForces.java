package holdfast.engine.pane;

import java.util.Arrays;

/**
 * What point loads on an endless bedded plate leave along the outline of a pane cut out of it: deflection, slopes, shear
 * force, moment and twist at the Gauss points of a {@link SplineNet}'s sides, and the work that those forces do.
 *
 * <p>With g_A the endless plate's answer to a newton at A, T_A(v) = integral of Q_n v - m_nn v_n - m_ns v_s over the outline is
 * the work of its edge forces on a field v; then a(g_A, v) + k (g_A, v) = v(A) + T_A(v) for every v inside (Green's formula for
 * plates; Timoshenko and Woinowsky-Krieger, article 22).
 */
final class EdgeForces {
  /** Figures kept for each Gauss point: deflection, slopes across and along the side, shear force, moment, twist. */
  private static final int FIGURES = 6;

  /** How many of them are motions; the rest are forces. */
  private static final int MOTIONS = 3;

  private static final int NODES = SplineLine.GAUSS.length;

  private final Plate plate;
  private final double lengthM;
  private final SplineNet net;
  private final int count;
  private final double[] x;
  private final double[] y;
  private final boolean[] facingX;
  /** Length that the point stands for times +1 where the outward normal points up an axis, -1 where down. */
  private final double[] weight;

  EdgeForces(Plate plate, double lengthM, SplineNet net) {
    this.plate = plate;
    this.lengthM = lengthM;
    this.net = net;
    this.count = 2 * (net.alongX().elements() + net.alongY().elements()) * SplineLine.GAUSS.length;
    this.x = new double[count];
    this.y = new double[count];
    this.facingX = new boolean[count];
    this.weight = new double[count];
    int at = 0;
    for (int side = 0; side < 4; side++) {
      SplineLine line = line(side);
      for (int e = 0; e < line.elements(); e++) {
        for (double[] g : SplineLine.GAUSS) {
          double s = line.start(e) + g[0] * line.step(e);
          double fixed = side % 2 == 0 ? 0 : side < 2 ? plate.lengthM() : plate.widthM();
          x[at] = side < 2 ? fixed : s;
          y[at] = side < 2 ? s : fixed;
          facingX[at] = side < 2;
          weight[at++] = g[1] * line.step(e) * (side % 2 == 0 ? -1 : 1);
        }
      }
    }
  }

  /** Sides 0 left and 1 right run along y, 2 front and 3 back along x. */
  private SplineLine line(int side) {
    return side < 2 ? net.alongY() : net.alongX();
  }

  /** Distance that is never quite zero, metres: the kernels have no value on their own point. */
  static double distance(double dx, double dy, double lengthM) {
    return Math.max(Math.sqrt(dx * dx + dy * dy), 1e-12 * lengthM);
  }

  /** Everything that the loads at {@code points} (x, y, newtons) leave along the outline. */
  double[] of(double[] points) {
    double[] all = new double[FIGURES * count];
    double[] one = new double[FIGURES];
    double[] kelvin = new double[4];
    int node = 0;
    for (int side = 0; side < 4; side++) {
      SplineLine line = line(side);
      for (int e = 0; e < line.elements(); e++, node += NODES) {
        double close = Tolerances.CLOSE_ELEMENTS * line.step(e);
        for (int p = 0; p < points.length; p += 3) {
          double along = side < 2 ? points[p + 1] : points[p];
          double off = side < 2 ? x[node] - points[p] : y[node] - points[p + 1];
          double beside = Math.max(0, Math.max(line.start(e) - along, along - line.start(e) - line.step(e)));
          boolean peak = off * off + beside * beside < close * close;
          for (int i = node; i < node + NODES; i++) {
            one(x[i] - points[p], y[i] - points[p + 1], points[p + 2], side < 2, kelvin, one);
            for (int f = 0; f < (peak ? MOTIONS : FIGURES); f++) all[FIGURES * i + f] += one[f];
          }
          if (peak) addPeak(side, node, line.start(e), line.step(e), new double[] {along, off, points[p + 2]}, all);
        }
      }
    }
    return all;
  }

  /**
   * The forces of a load close to an element: its nodes get what, with the element's Gauss rule, does the work that the true
   * forces do on every motion of the fifth degree.
   *
   * @param load where it is along the side, how far off the side lies, newtons
   */
  private void addPeak(int side, int node, double start, double step, double[] load, double[] all) {
    double[] one = new double[FIGURES];
    double[] kelvin = new double[4];
    double foot = Math.min(Math.max(load[0], start), start + step);
    double least = Math.max(Math.abs(load[1]), Tolerances.LEAST_PANEL * step);
    // Panels grow away from the load.
    for (int way = -1; way <= 1; way += 2) {
      double room = way < 0 ? foot - start : start + step - foot;
      for (double from = 0; from < room; ) {
        double to = Math.min(room, Math.max(Tolerances.PANEL_RATIO * from, least));
        for (double[] g : SplineLine.GAUSS) {
          double s = foot + way * (from + g[0] * (to - from));
          one(side < 2 ? load[1] : s - load[0], side < 2 ? s - load[0] : load[1], load[2], side < 2, kelvin, one);
          for (int i = 0; i < NODES; i++) {
            double part = g[1] * (to - from) * lagrange(i, (s - start) / step) / (SplineLine.GAUSS[i][1] * step);
            for (int f = MOTIONS; f < FIGURES; f++) all[FIGURES * (node + i) + f] += part * one[f];
          }
        }
        from = to;
      }
    }
  }

  /** The polynomial that is one at Gauss point {@code i} of (0, 1) and nil at the others. */
  private static double lagrange(int i, double s) {
    double product = 1;
    for (int k = 0; k < NODES; k++) {
      if (k != i) product *= (s - SplineLine.GAUSS[k][0]) / (SplineLine.GAUSS[i][0] - SplineLine.GAUSS[k][0]);
    }
    return product;
  }

  /** The figures that one load leaves at a point (dx, dy) from it. */
  private void one(double dx, double dy, double newtons, boolean facesX, double[] kelvin, double[] out) {
    double apart = distance(dx, dy, lengthM);
    double rho = apart / lengthM;
    if (rho >= Kelvin.REACH) {
      Arrays.fill(out, 0);
      return;
    }
    Kelvin.quick(rho, kelvin);
    double d = plate.stiffnessNm();
    double nu = plate.poisson();
    double scale = -newtons / (2 * Math.PI);
    double c = dx / apart;
    double s = dy / apart;
    double hoop = -kelvin[3] / rho;
    double radial = -kelvin[0] - hoop;
    double kxx = scale * (radial * c * c + hoop * s * s);
    double kyy = scale * (radial * s * s + hoop * c * c);
    double slope = scale * kelvin[3] * lengthM / d;
    out[0] = scale * kelvin[1] * lengthM * lengthM / d;
    out[1] = slope * (facesX ? c : s);
    out[2] = slope * (facesX ? s : c);
    // Q = -D grad lap w, lap w = -(1 / (2 pi D)) ker
    out[3] = -scale * kelvin[2] / lengthM * (facesX ? c : s);
    out[4] = facesX ? kxx + nu * kyy : kyy + nu * kxx;
    out[5] = (1 - nu) * scale * (radial - hoop) * c * s;
  }

  /** Puts exact moments and twists in the place of those of points, near a patch that lies by the outline. */
  void bend(double[] forces, Point2 centre, double withinM, Curvature curvature) {
    double[] k = new double[3];
    double nu = plate.poisson();
    for (int i = 0; i < count; i++) {
      if (Math.hypot(x[i] - centre.x(), y[i] - centre.y()) > withinM) continue;
      Arrays.fill(k, 0);
      curvature.add(x[i], y[i], k);
      forces[FIGURES * i + 4] = facingX[i] ? k[0] + nu * k[1] : k[1] + nu * k[0];
      forces[FIGURES * i + 5] = (1 - nu) * k[2];
    }
  }

  /** Adds stiffness times minus the curvatures xx, yy, xy at a place. */
  @FunctionalInterface
  interface Curvature {
    void add(double x, double y, double[] k);
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
    double[] load = new double[net.unknowns()];
    eachShape((i, first, second, slope, f, f1) -> {
      int at = FIGURES * i;
      load[first] -= weight[i] * (forces[at + 3] * f + forces[at + 4] * slope * f - forces[at + 5] * f1);
      load[second] += weight[i] * forces[at + 4] * slope * f;
    });
    return load;
  }

  /** Deflection and slopes of a solution of the mesh along the outline, to have work done on. */
  double[] trace(double[] unknowns) {
    double[] field = new double[FIGURES * count];
    eachShape((i, first, second, slope, f, f1) -> {
      int at = FIGURES * i;
      field[at] += unknowns[first] * f;
      field[at + 1] += (unknowns[second] - unknowns[first]) * slope * f;
      field[at + 2] += unknowns[first] * f1;
    });
    return field;
  }

  /**
   * One function along a side at one Gauss point, its value and slope there. Across the side two unknowns go with it: the first
   * alone has a value on the side, and the slope across is {@code slope} times the second less the first.
   */
  @FunctionalInterface
  private interface Shape {
    void at(int point, int first, int second, double slope, double f, double f1);
  }

  private void eachShape(Shape shape) {
    int point = 0;
    for (int side = 0; side < 4; side++) {
      boolean alongY = side < 2;
      boolean start = side % 2 == 0;
      SplineLine line = line(side);
      SplineLine cross = alongY ? net.alongX() : net.alongY();
      int edge = start ? 0 : cross.functions() - 1;
      int inner = start ? 1 : cross.functions() - 2;
      double slope = SplineLine.DEGREE / cross.step(start ? 0 : cross.elements() - 1) * (start ? 1 : -1);
      for (int e = 0; e < line.elements(); e++) {
        for (double[] g : SplineLine.GAUSS) {
          double[][] f = line.at(e, line.start(e) + g[0] * line.step(e));
          for (int i = 0; i < SplineLine.LIVE; i++) {
            int along = e + i;
            shape.at(point, alongY ? net.index(edge, along) : net.index(along, edge),
                alongY ? net.index(inner, along) : net.index(along, inner), slope, f[0][i], f[1][i]);
          }
          point++;
        }
      }
    }
  }
}
