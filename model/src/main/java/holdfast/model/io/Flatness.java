package holdfast.model.io;

import holdfast.model.geom.Vec3;
import java.util.List;

/** Tells points that enclose no volume: all in one place, on one line or in one plane. */
final class Flatness {
  /**
   * Thickness over length below which points are flat. Only what is certainly no stone is caught here: a sheet a tenth of a
   * millimetre thick and a metre long passes, and the hull's own test decides.
   */
  static final double RELATIVE_THICKNESS = 1e-6;

  private Flatness() {}

  static boolean isFlat(List<Vec3> points) {
    Vec3 a = points.get(0);
    Vec3 b = farthest(points, p -> p.distanceTo(a));
    double length = b.distanceTo(a);
    if (length == 0) return true;
    Vec3 along = b.minus(a).times(1 / length);
    Vec3 c = farthest(points, p -> p.minus(a).cross(along).norm());
    Vec3 across = c.minus(a).cross(along);
    if (across.norm() <= RELATIVE_THICKNESS * length) return true;
    Vec3 normal = across.unit();
    Vec3 d = farthest(points, p -> Math.abs(p.minus(a).dot(normal)));
    return Math.abs(d.minus(a).dot(normal)) <= RELATIVE_THICKNESS * length;
  }

  private static Vec3 farthest(List<Vec3> points, java.util.function.ToDoubleFunction<Vec3> measure) {
    Vec3 best = points.get(0);
    double most = -1;
    for (Vec3 p : points) {
      double m = measure.applyAsDouble(p);
      if (m > most) {
        most = m;
        best = p;
      }
    }
    return best;
  }
}
