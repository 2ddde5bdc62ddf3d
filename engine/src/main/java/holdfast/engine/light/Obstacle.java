package holdfast.engine.light;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.List;

/** A hull that rays may meet: its planes in a row, and a ball round it, so that most rays are done with at once. */
final class Obstacle {
  /** Radians: rounding must not put a hull outside a cone that it touches. */
  private static final double CONE_SLACK_RAD = 1e-6;

  /** Outward normal and offset of each face. */
  private final double[] planes;

  private final List<Vec3> corners;
  private final Vec3 middle;
  private final double radiusM;

  private Obstacle(Hull hull) {
    planes = new double[4 * hull.faces().size()];
    int k = 0;
    for (Hull.Face f : hull.faces()) {
      planes[k++] = f.normal().x();
      planes[k++] = f.normal().y();
      planes[k++] = f.normal().z();
      planes[k++] = f.offset();
    }
    corners = hull.corners();
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : corners) sum = sum.plus(p);
    middle = sum.times(1.0 / corners.size());
    double radius = 0;
    for (Vec3 p : corners) radius = Math.max(radius, p.distanceTo(middle));
    radiusM = radius;
  }

  static Obstacle of(Hull hull) {
    return new Obstacle(hull);
  }

  /** Whether any of it lies higher than a point and before the surface there: no other ray leaves the surface upward. */
  boolean above(Vec3 from, Vec3 normal) {
    boolean higher = false;
    boolean before = false;
    for (Vec3 p : corners) {
      higher |= p.z() > from.z();
      before |= normal.dot(p) > normal.dot(from);
      if (higher && before) return true;
    }
    return false;
  }

  /** Whether its ball reaches into the cone of half angle {@code halfRad} about {@code axis}. */
  boolean inCone(Vec3 from, Vec3 axis, double halfRad) {
    Vec3 to = middle.minus(from);
    double far = to.norm();
    if (far <= radiusM) return true;
    double off = Math.acos(Math.max(-1, Math.min(1, to.dot(axis) / (far * axis.norm()))));
    return off <= halfRad + Math.asin(radiusM / far) + CONE_SLACK_RAD;
  }

  /** Whether the segment from {@code from} along (x, y, z), as long as that vector, has a stretch inside the hull. */
  boolean crosses(Vec3 from, double x, double y, double z) {
    double toX = middle.x() - from.x();
    double toY = middle.y() - from.y();
    double toZ = middle.z() - from.z();
    double along = Math.max(0, Math.min(1, (toX * x + toY * y + toZ * z) / (x * x + y * y + z * z)));
    double missX = toX - along * x;
    double missY = toY - along * y;
    double missZ = toZ - along * z;
    if (missX * missX + missY * missY + missZ * missZ > radiusM * radiusM) return false;
    double enter = 0;
    double leave = 1;
    for (int k = 0; k < planes.length; k += 4) {
      double distance = planes[k] * from.x() + planes[k + 1] * from.y() + planes[k + 2] * from.z() - planes[k + 3];
      double speed = planes[k] * x + planes[k + 1] * y + planes[k + 2] * z;
      if (speed == 0) {
        if (distance >= 0) return false;
      } else if (speed < 0) {
        enter = Math.max(enter, -distance / speed);
      } else {
        leave = Math.min(leave, -distance / speed);
      }
      if (enter >= leave) return false;
    }
    return true;
  }
}
