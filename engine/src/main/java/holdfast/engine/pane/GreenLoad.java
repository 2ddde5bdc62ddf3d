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
    this.smoothPoints = patch.pointsFrom(plate.edgeDistanceM(c.x(), c.y()));
  }

  /**
   * Adds the response at (x, y) to forces at points.
   *
   * @param points x, y, newtons of each
   * @param withoutCore leave out the core
   * @param k stiffness times minus the curvatures xx, yy, xy: added to
   */
  abstract void addPoints(double x, double y, double[] points, boolean withoutCore, double[] k);

  @Override
  public final Patch patch() {
    return patch;
  }

  /** Points that stand for the patch in what the pane's edges add. */
  final double[] smoothPoints() {
    return smoothPoints;
  }

  @Override
  public final void addCurvature(double x, double y, double[] k) {
    Point2 c = patch.centre();
    double dx = x - c.x();
    double dy = y - c.y();
    double distance = Math.sqrt(dx * dx + dy * dy);
    if (distance >= Tolerances.NEAR_RADII * patch.radiusM()) {
      addPoints(x, y, patch.pointsFrom(distance), false, k);
      return;
    }
    double[] means = new double[3];
    patch.logMeans(x, y, means);
    double scale = -1 / (8 * Math.PI);
    k[0] += scale * (2 * means[0] + 2 + means[1]);
    k[1] += scale * (2 * means[0] + 2 - means[1]);
    k[2] += scale * means[2];
    // The rest is smooth, but is a difference of logarithms that must not be asked right on a point.
    addPoints(x + Tolerances.BESIDE_M, y, smoothPoints, true, k);
  }

  /** Takes the core of a point load off an accumulated response. */
  static void subtractCore(double dx, double dy, double weight, double[] k) {
    double r2 = dx * dx + dy * dy;
    double scale = weight / (8 * Math.PI);
    double log = Math.log(r2) + 1;
    k[0] += scale * (log + 2 * dx * dx / r2);
    k[1] += scale * (log + 2 * dy * dy / r2);
    k[2] += scale * 2 * dx * dy / r2;
  }
}
