package holdfast.app.view.draw;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Optional;

/** What lies under the pointer: the exact hulls that are drawn and judged, not their pixels. */
public final class Picking {
  private Picking() {}

  /** A stone that was hit, where, and the outward normal there. */
  public record Hit(Stone stone, Vec3 point, Vec3 normal, double distanceM) {}

  /** The nearest stone along a line of sight. */
  public static Optional<Hit> stone(Camera.Ray ray, List<Stone> stones) {
    Hit best = null;
    for (Stone s : stones) {
      Vec3 from = s.pose().applyInverse(ray.from());
      Vec3 along = s.pose().turn().conjugate().rotate(ray.along());
      for (Hull h : s.lobes()) {
        Optional<Entry> e = enter(h, from, along);
        if (e.isPresent() && (best == null || e.get().t < best.distanceM)) {
          best = new Hit(s, ray.at(e.get().t), s.pose().turn().rotate(e.get().normal), e.get().t);
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private record Entry(double t, Vec3 normal) {}

  /**
   * Where a ray enters a convex solid: the last of the planes that it crosses inward, before the first outward (Cyrus and
   * Beck 1978).
   */
  private static Optional<Entry> enter(Hull hull, Vec3 from, Vec3 along) {
    double in = Double.NEGATIVE_INFINITY;
    double out = Double.POSITIVE_INFINITY;
    Vec3 normal = null;
    for (Hull.Face f : hull.faces()) {
      double speed = f.normal().dot(along);
      double gap = f.offset() - f.normal().dot(from);
      if (Math.abs(speed) < 1e-15) {
        if (gap < 0) return Optional.empty();
      } else if (speed < 0) {
        if (gap / speed > in) {
          in = gap / speed;
          normal = f.normal();
        }
      } else {
        out = Math.min(out, gap / speed);
      }
      if (in > out) return Optional.empty();
    }
    return normal != null && in > 0 ? Optional.of(new Entry(in, normal)) : Optional.empty();
  }

  /** Where a line of sight crosses the level {@code z}. */
  public static Optional<Vec3> level(Camera.Ray ray, double z) {
    double speed = ray.along().z();
    if (Math.abs(speed) < 1e-6) return Optional.empty();
    double t = (z - ray.from().z()) / speed;
    return t > 0 ? Optional.of(ray.at(t)) : Optional.empty();
  }
}
