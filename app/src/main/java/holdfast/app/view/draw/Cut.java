package holdfast.app.view.draw;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A plane that cuts the picture open.
 *
 * @param normal unit vector towards what is taken away
 * @param offsetM {@code normal . p} of the points of the plane
 */
public record Cut(Vec3 normal, double offsetM) {

  /** The outline where the plane meets a convex solid, in order; empty when it misses. */
  public List<Vec3> outline(Hull hull) {
    List<Vec3> found = new ArrayList<>();
    for (Hull.Face f : hull.faces()) {
      List<Vec3> loop = hull.loop(f);
      for (int i = 0; i < loop.size(); i++) {
        Vec3 a = loop.get(i);
        Vec3 b = loop.get((i + 1) % loop.size());
        double da = normal.dot(a) - offsetM;
        double db = normal.dot(b) - offsetM;
        if (da < 0 != db < 0) found.add(a.plusTimes(da / (da - db), b.minus(a)));
      }
    }
    if (found.size() < 3) return List.of();
    Vec3 middle = Vec3.ZERO;
    for (Vec3 p : found) middle = middle.plus(p);
    Vec3 m = middle.times(1.0 / found.size());
    Vec3 u = normal.anyPerpendicular();
    Vec3 v = normal.cross(u);
    found.sort(Comparator.comparingDouble(p -> Math.atan2(p.minus(m).dot(v), p.minus(m).dot(u))));
    return found;
  }
}
