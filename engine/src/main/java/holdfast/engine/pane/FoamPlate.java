package holdfast.engine.pane;

import java.util.Arrays;
import java.util.List;

/**
 * A rectangular pane bedded on foam over a full deck, all edges free.
 *
 * <p>Problem: D lap lap w + k w = q, edge moments and edge forces nil. Split as w = w_inf + w_edge: w_inf is the endless
 * plate's answer to a point load, w = -P L^2 / (2 pi D) kei(r / L), L^4 = D / k (Hertz 1884; Timoshenko and Woinowsky-Krieger,
 * article 57), whose greatest deflection is P / (8 sqrt(k D)); w_edge is smooth inside and cancels what w_inf leaves on the
 * edges, found on a {@link FreePlateMesh}. A load close to an edge is mirrored in it first: load and image leave no shear
 * force and no twist there, so the mesh has only a moment to cancel. Uniform water sinks the pane evenly and bends nothing.
 *
 * <p>Limits: the foam pulls as well as it pushes (lift-off is left out; under a filled tank the water's weight holds the
 * pane down); the side panes' stiffness and weight are not counted, which leaves a load by the edge more stress than it has.
 * A load closer to an edge than a tenth of L is off by percents.
 */
public final class FoamPlate implements PlateModel {
  private final Plate plate;
  private final double foundationNm3;
  private final double lengthM;
  private final FreePlateMesh mesh;

  public FoamPlate(Plate plate, double foundationNm3) {
    this(plate, foundationNm3, Tolerances.ELEMENTS_PER_LENGTH);
  }

  /** For showing convergence: the fineness of the mesh. */
  FoamPlate(Plate plate, double foundationNm3, double elementsPerLength) {
    if (!(foundationNm3 > 0)) throw new IllegalArgumentException("foundationNm3 must be above 0, was " + foundationNm3);
    this.plate = plate;
    this.foundationNm3 = foundationNm3;
    this.lengthM = Math.pow(plate.stiffnessNm() / foundationNm3, 0.25);
    double limit = Tolerances.MOST_ELEMENTS * Math.max(1, elementsPerLength / Tolerances.ELEMENTS_PER_LENGTH);
    int nx = (int) Math.max(6, Math.min(limit, Math.ceil(elementsPerLength * plate.lengthM() / lengthM)));
    int ny = (int) Math.max(6, Math.min(limit, Math.ceil(elementsPerLength * plate.widthM() / lengthM)));
    this.mesh = new FreePlateMesh(plate, foundationNm3, nx, ny);
  }

  public double foundationNm3() {
    return foundationNm3;
  }

  /** The characteristic length (D / k)^(1/4), metres. */
  public double characteristicLengthM() {
    return lengthM;
  }

  @Override
  public Plate plate() {
    return plate;
  }

  @Override
  public UnitLoad unitLoad(Patch patch) {
    return new Bedded(patch);
  }

  @Override
  public Bending unitWater(double x, double y) {
    return Bending.ZERO;
  }

  @Override
  public double[] influences(List<UnitLoad> loads, double x, double y) {
    FreePlateMesh.Place place = mesh.place(x, y);
    double[] all = new double[3 * loads.size()];
    double[] k = new double[3];
    double[] w = new double[4];
    double d = plate.stiffnessNm();
    double nu = plate.poisson();
    for (int i = 0; i < loads.size(); i++) {
      Arrays.fill(k, 0);
      Bedded load = (Bedded) loads.get(i);
      load.addCurvature(x, y, k);
      load.addPoints(x, y, load.images, false, k);
      place.of(load.edges, w);
      double kxx = k[0] - d * w[1];
      double kyy = k[1] - d * w[2];
      all[3 * i] = kxx + nu * kyy;
      all[3 * i + 1] = kyy + nu * kxx;
      all[3 * i + 2] = (1 - nu) * (k[2] - d * w[3]);
    }
    return all;
  }

  @Override
  public Deflection deflection(List<UnitLoad> loads, double[] forcesN, double waterPa) {
    double[] edges = new double[mesh.unknowns()];
    double[][] points = new double[loads.size()][];
    for (int i = 0; i < points.length; i++) {
      Bedded load = (Bedded) loads.get(i);
      for (int u = 0; u < edges.length; u++) edges[u] += forcesN[i] * load.edges[u];
      Point2 c = load.patch().centre();
      boolean small = load.patch().radiusM() < 0.2 * lengthM;
      // Deflection is flat under a small patch: its middle does.
      points[i] = small ? withImages(load.patch().middle(), c) : withImages(load.smoothPoints(), c);
    }
    double unit = lengthM * lengthM / (2 * Math.PI * plate.stiffnessNm());
    return (x, y) -> {
      double[] w = new double[4];
      mesh.place(x, y).of(edges, w);
      double sum = waterPa / foundationNm3 + w[0];
      double[] kelvin = new double[4];
      for (int i = 0; i < points.length; i++) {
        double[] p = points[i];
        for (int at = 0; at < p.length; at += 3) {
          double rho = distance(x - p[at], y - p[at + 1]) / lengthM;
          if (rho >= Kelvin.REACH) continue;
          Kelvin.quick(rho, kelvin);
          sum -= forcesN[i] * p[at + 2] * unit * kelvin[1];
        }
      }
      return sum;
    };
  }

  private double distance(double dx, double dy) {
    return Math.max(Math.sqrt(dx * dx + dy * dy), 1e-12 * lengthM);
  }

  /** Points, then their mirror images in the free edges close to {@code centre}. */
  private double[] withImages(double[] points, Point2 centre) {
    double a = plate.lengthM();
    double b = plate.widthM();
    double near = Tolerances.MIRROR_LENGTHS * lengthM;
    boolean inX = Math.min(centre.x(), a - centre.x()) < near;
    boolean inY = Math.min(centre.y(), b - centre.y()) < near;
    double acrossX = centre.x() < 0.5 * a ? 0 : 2 * a;
    double acrossY = centre.y() < 0.5 * b ? 0 : 2 * b;
    double[] all = Arrays.copyOf(points, points.length * (inX ? 2 : 1) * (inY ? 2 : 1));
    int at = points.length;
    for (int copy = 1; copy < 4; copy++) {
      boolean flipX = (copy & 1) != 0;
      boolean flipY = (copy & 2) != 0;
      if ((flipX && !inX) || (flipY && !inY)) continue;
      for (int p = 0; p < points.length; p += 3) {
        all[at++] = flipX ? acrossX - points[p] : points[p];
        all[at++] = flipY ? acrossY - points[p + 1] : points[p + 1];
        all[at++] = points[p + 2];
      }
    }
    return all;
  }

  private final class Bedded extends GreenLoad {
    private final double[] images;
    private final double[] edges;

    Bedded(Patch patch) {
      super(plate, patch);
      double[] own = smoothPoints();
      double[] all = withImages(own, patch.centre());
      this.images = Arrays.copyOfRange(all, own.length, all.length);
      this.edges = edgeSolution(all);
    }

    @Override
    void addPoints(double x, double y, double[] points, boolean withoutCore, double[] k) {
      double[] kelvin = new double[4];
      for (int p = 0; p < points.length; p += 3) {
        double dx = x - points[p];
        double dy = y - points[p + 1];
        double r = distance(dx, dy);
        double rho = r / lengthM;
        if (rho < Kelvin.REACH) {
          Kelvin.quick(rho, kelvin);
          // g = -kei, g'' + g'/rho = -ker; stiffness times minus curvature = -(1 / 2 pi) g''
          double hoop = -kelvin[3] / rho;
          double radial = -kelvin[0] - hoop;
          double scale = -points[p + 2] / (2 * Math.PI);
          double cc = dx * dx / (r * r);
          double ss = dy * dy / (r * r);
          k[0] += scale * (radial * cc + hoop * ss);
          k[1] += scale * (radial * ss + hoop * cc);
          k[2] += scale * (radial - hoop) * dx * dy / (r * r);
        }
        if (withoutCore) subtractCore(dx, dy, points[p + 2], k);
      }
    }
  }

  /** Unknowns of w_edge for loads at points, images included. */
  private double[] edgeSolution(double[] points) {
    double[] load = new double[mesh.unknowns()];
    for (int side = 0; side < 4; side++) addSide(side, points, load);
    mesh.solve(load);
    return load;
  }

  /**
   * Minus the work of w_inf's edge forces: -integral of Q_n v - m_nn v_n - m_ns v_s along one side
   * (0 left, 1 right: normal along x; 2 front, 3 back: normal along y).
   */
  private void addSide(int side, double[] points, double[] load) {
    boolean alongY = side < 2;
    double n = side % 2 == 0 ? -1 : 1;
    int elements = alongY ? mesh.ny() : mesh.nx();
    double h = alongY ? mesh.hy() : mesh.hx();
    int across = side % 2 == 0 ? 0 : 2 * (alongY ? mesh.nx() : mesh.ny());
    double fixed = side % 2 == 0 ? 0 : alongY ? plate.lengthM() : plate.widthM();
    double[] traction = new double[3];
    double[] kelvin = new double[4];
    for (int e = 0; e < elements; e++) {
      for (double[] g : FreePlateMesh.GAUSS) {
        double s = (e + g[0]) * h;
        traction(alongY ? fixed : s, alongY ? s : fixed, alongY, points, kelvin, traction);
        double weight = g[1] * h * n;
        for (int i = 0; i < 4; i++) {
          double f = FreePlateMesh.shape(i, g[0], h, 0);
          double f1 = FreePlateMesh.shape(i, g[0], h, 1);
          int along = 2 * e + i;
          int value = alongY ? mesh.index(across, along) : mesh.index(along, across);
          int slope = alongY ? mesh.index(across + 1, along) : mesh.index(along, across + 1);
          load[value] -= weight * (traction[0] * f - traction[2] * f1);
          load[slope] += weight * traction[1] * f;
        }
      }
    }
  }

  /** Shear force Q, moment and twist of w_inf on a section facing x (or y), under one newton over the points. */
  private void traction(double x, double y, boolean facingX, double[] points, double[] kelvin, double[] out) {
    double q = 0;
    double kxx = 0;
    double kyy = 0;
    double kxy = 0;
    for (int p = 0; p < points.length; p += 3) {
      double dx = x - points[p];
      double dy = y - points[p + 1];
      double r = distance(dx, dy);
      double rho = r / lengthM;
      if (rho >= Kelvin.REACH) continue;
      Kelvin.quick(rho, kelvin);
      double scale = -points[p + 2] / (2 * Math.PI);
      double hoop = -kelvin[3] / rho;
      double radial = -kelvin[0] - hoop;
      double c = dx / r;
      double s = dy / r;
      kxx += scale * (radial * c * c + hoop * s * s);
      kyy += scale * (radial * s * s + hoop * c * c);
      kxy += scale * (radial - hoop) * c * s;
      // Q = -D grad lap w, lap w = -(1 / (2 pi D)) ker
      q -= scale * kelvin[2] / lengthM * (facingX ? c : s);
    }
    double nu = plate.poisson();
    out[0] = q;
    out[1] = facingX ? kxx + nu * kyy : kyy + nu * kxx;
    out[2] = (1 - nu) * kxy;
  }
}
