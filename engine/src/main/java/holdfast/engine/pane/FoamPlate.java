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
 * The stress under a load closer to an edge than a tenth of L is off by a hundredth, in a corner by some.
 */
public final class FoamPlate implements PlateModel {
  /** A patch smaller than this share of the characteristic length deflects others as its middle does. */
  private static final double SMALL_LENGTHS = 0.2;

  private final Plate plate;
  private final double foundationNm3;
  private final double lengthM;
  private final FreePlateMesh mesh;
  private final EdgeForces forces;

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
    double least = Tolerances.LEAST_ELEMENTS * Math.max(1, elementsPerLength / Tolerances.ELEMENTS_PER_LENGTH);
    int nx = (int) Math.max(least, Math.min(limit, Math.ceil(elementsPerLength * plate.lengthM() / lengthM)));
    int ny = (int) Math.max(least, Math.min(limit, Math.ceil(elementsPerLength * plate.widthM() / lengthM)));
    this.mesh = new FreePlateMesh(plate, foundationNm3, nx, ny);
    this.forces = new EdgeForces(plate, lengthM, mesh);
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

  /**
   * Deflection by Green's formula, with the newton at the place asked for as the second field:
   * w(B) = [g_A(B) + g_B(A) - T_A(g_B) - T_B(g_A)] / 2 - T_B(w_edge) (see {@link EdgeForces}). What the mesh and the sums over
   * the edges leave out is the same when A and B change places, so deflection is reciprocal to rounding; and it errs with the
   * product of both meshes' errors, not with the mesh's error at the place.
   */
  @Override
  public Deflection deflection(List<UnitLoad> loads, double[] forcesN, double waterPa) {
    double[] unknowns = new double[mesh.unknowns()];
    double[] field = null;
    double[][] points = new double[loads.size()][];
    double[][] mirrored = new double[loads.size()][];
    for (int i = 0; i < points.length; i++) {
      Bedded load = (Bedded) loads.get(i);
      if (field == null) field = new double[load.field.length];
      for (int u = 0; u < unknowns.length; u++) unknowns[u] += forcesN[i] * load.edges[u];
      for (int f = 0; f < field.length; f++) field[f] += forcesN[i] * load.field[f];
      boolean small = load.patch().radiusM() < SMALL_LENGTHS * lengthM;
      // Deflection is flat under a small patch: its middle does.
      points[i] = small ? load.patch().middle() : load.smoothPoints();
      mirrored[i] = withImages(points[i], load.patch().centre());
    }
    if (field == null) return (x, y) -> waterPa / foundationNm3;
    double[] loaded = field;
    double[] moved = forces.trace(unknowns);
    return (x, y) -> {
      double[] here = withImages(new double[] {x, y, 1}, new Point2(x, y));
      double[] asked = forces.of(here);
      double sum = -forces.work(loaded, asked) - forces.work(asked, loaded);
      for (int i = 0; i < points.length; i++) {
        sum += forcesN[i] * endless(mirrored[i], here, 1);
        sum += forcesN[i] * endless(here, points[i], points[i].length / 3);
      }
      return waterPa / foundationNm3 + 0.5 * sum - forces.work(asked, moved);
    };
  }

  /** Deflection of the endless plate under loads at some points, summed over the first {@code count} places by weight. */
  private double endless(double[] points, double[] places, int count) {
    double[] kelvin = new double[4];
    double sum = 0;
    for (int q = 0; q < 3 * count; q += 3) {
      for (int p = 0; p < points.length; p += 3) {
        double rho = EdgeForces.distance(places[q] - points[p], places[q + 1] - points[p + 1], lengthM) / lengthM;
        if (rho >= Kelvin.REACH) continue;
        Kelvin.quick(rho, kelvin);
        sum -= points[p + 2] * places[q + 2] * kelvin[1];
      }
    }
    return sum * lengthM * lengthM / (2 * Math.PI * plate.stiffnessNm());
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
    /** What the load and its images leave along the edges. */
    private final double[] field;
    /** Unknowns of w_edge, which cancels it. */
    private final double[] edges;

    Bedded(Patch patch) {
      super(plate, patch);
      double[] own = smoothPoints();
      double[] all = withImages(own, patch.centre());
      this.images = Arrays.copyOfRange(all, own.length, all.length);
      this.field = forces.of(all);
      this.edges = forces.cancelling(field);
      mesh.solve(edges);
    }

    @Override
    void addPoints(double x, double y, double[] points, boolean withoutCore, double[] k) {
      double[] kelvin = new double[4];
      for (int p = 0; p < points.length; p += 3) {
        double dx = x - points[p];
        double dy = y - points[p + 1];
        double r = EdgeForces.distance(dx, dy, lengthM);
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
}
