package holdfast.engine.pane;

/**
 * A patch load by superposing a plate's response to point loads.
 *
 * <p>Every plate shares the core w = r^2 ln r / (8 pi D) near a point load. Close to the patch the core is integrated
 * exactly over the polygon and only the smooth rest is summed over points; from afar the points carry both.
 */
abstract class GreenLoad implements PlateModel.UnitLoad {
  private final Plate plate;
  private final Patch patch;
  private final double[] smoothPoints;

  GreenLoad(Plate plate, Patch patch) {
    this.plate = plate;
    this.patch = patch;
    Point2 c = patch.centre();
    boolean small = patch.radiusM() < Tolerances.SMALL_BY_EDGE * plate.edgeDistanceM(c.x(), c.y());
    this.smoothPoints = small ? patch.coarse() : patch.fine();
  }

  /**
   * Adds {@code weight} times the response at (x, y) to one newton at (sourceX, sourceY).
   *
   * @param withoutCore leave out the core
   * @param k stiffness times minus the curvatures xx, yy, xy: added to
   */
  abstract void addPoint(double x, double y, double sourceX, double sourceY, double weight, boolean withoutCore, double[] k);

  /** Adds what the plate's edges do beyond the point responses; nothing by default. */
  void addEdges(double x, double y, double[] k) {}

  @Override
  public final Patch patch() {
    return patch;
  }

  @Override
  public final Bending at(double x, double y) {
    double[] k = new double[3];
    Point2 c = patch.centre();
    double radii = c.distanceTo(new Point2(x, y)) / patch.radiusM();
    boolean near = radii < Tolerances.FAR_RADII;
    if (near) {
      double[] means = new double[3];
      patch.logMeans(x, y, means);
      double scale = -1 / (8 * Math.PI);
      k[0] = scale * (2 * means[0] + 2 + means[1]);
      k[1] = scale * (2 * means[0] + 2 - means[1]);
      k[2] = scale * means[2];
    }
    double[] points = near ? smoothPoints : radii < Tolerances.VERY_FAR_RADII ? patch.coarse() : patch.middle();
    for (int i = 0; i < points.length; i += 3) {
      addPoint(x, y, points[i], points[i + 1], points[i + 2], near, k);
    }
    addEdges(x, y, k);
    return Bending.ofCurvature(k[0], k[1], k[2], plate.poisson());
  }

  /** Takes the core of a point load off an accumulated response. */
  static void subtractCore(double dx, double dy, double weight, double[] k) {
    double r2 = Math.max(dx * dx + dy * dy, Tolerances.SAME_POINT_M2);
    double scale = weight / (8 * Math.PI);
    double log = Math.log(r2) + 1;
    k[0] += scale * (log + 2 * dx * dx / r2);
    k[1] += scale * (log + 2 * dy * dy / r2);
    k[2] += scale * 2 * dx * dy / r2;
  }
}
