package holdfast.engine.motion;

import holdfast.model.geom.Vec3;

/**
 * A single rigid block that stands on a plane and is struck: the closed form of its least toppling blow.
 *
 * <p>The block turns about its edge, without sliding and without bouncing. A blow {@code J} at height {@code y} over the
 * edge gives {@code I0 w0 = J y}; it just topples when the energy {@code I0 w0^2 / 2} lifts the centre over the edge,
 * {@code W (R - h)}, with {@code R} the distance of the centre from the edge and {@code h} its height. In water the
 * weight is the submerged one and the inertia that of all that moves along.
 *
 * @see "Housner 1963, The behavior of inverted pendulum structures during earthquakes, Bull. Seism. Soc. Am. 53(2):403"
 */
public final class Housner {
  private Housner() {}

  /**
   * The least blow, newton seconds.
   *
   * @param weightN weight
   * @param inertiaEdge inertia about the edge, kg m2
   * @param edgeM horizontal distance of the centre of mass from the edge
   * @param centreM height of the centre of mass over the edge
   * @param blowM height of the blow over the edge
   */
  public static double leastBlowNs(double weightN, double inertiaEdge, double edgeM, double centreM, double blowM) {
    double lift = Math.hypot(edgeM, centreM) - centreM;
    return Math.sqrt(2 * inertiaEdge * weightN * lift) / blowM;
  }

  /** The least blow on a body that stands alone on a plane, toward a horizontal direction at a point of the world. */
  static double leastBlowNs(PlayBody play, boolean underWater, Vec3 toward, Vec3 at) {
    MotionBody b = play.body();
    Vec3 centre = b.centreInWorld();
    double floor = Double.POSITIVE_INFINITY;
    for (var h : b.lobes()) for (Vec3 c : h.corners()) floor = Math.min(floor, b.pose().apply(c).z());
    double edge = Double.NEGATIVE_INFINITY;
    for (var h : b.lobes()) {
      for (Vec3 c : h.corners()) {
        Vec3 p = b.pose().apply(c);
        if (p.z() < floor + FOOT_M) edge = Math.max(edge, p.minus(centre).dot(toward));
      }
    }
    Vec3 axis = b.pose().turn().conjugate().rotate(Vec3.Z.cross(toward));
    double height = centre.z() - floor;
    double about = axis.dot(b.inertia().times(axis)) + b.massKg() * (edge * edge + height * height);
    return leastBlowNs(underWater ? play.weightUnderN() : play.weightAboveN(), about, edge, height, at.z() - floor);
  }

  /** Metres: corners this near to the lowest one belong to the foot. */
  private static final double FOOT_M = 1e-5;
}
