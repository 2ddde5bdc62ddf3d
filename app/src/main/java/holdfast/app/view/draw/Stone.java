package holdfast.app.view.draw;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import java.util.List;

/**
 * A rock as it is drawn and picked.
 *
 * @param name its name
 * @param kind dry, live or cast: tone and pattern
 * @param lobes convex pieces in the rock's own frame, metres; the same list object as long as the shape is the same
 * @param centre its centre of mass in its own frame
 * @param pose where it is
 */
public record Stone(String name, Rock.Kind kind, List<Hull> lobes, Vec3 centre, Pose pose) {

  public Stone at(Pose other) {
    return new Stone(name, kind, lobes, centre, other);
  }

  public Vec3 centreInTank() {
    return pose.apply(centre);
  }

  /** The farthest reach along a direction in the tank, metres. */
  public double reach(Vec3 direction) {
    Vec3 local = pose.turn().conjugate().rotate(direction);
    double best = Double.NEGATIVE_INFINITY;
    for (Hull h : lobes) best = Math.max(best, h.reach(local));
    return best + pose.at().dot(direction);
  }

  public Vec3 low() {
    return new Vec3(-reach(Vec3.X.negated()), -reach(Vec3.Y.negated()), -reach(Vec3.Z.negated()));
  }

  public Vec3 high() {
    return new Vec3(reach(Vec3.X), reach(Vec3.Y), reach(Vec3.Z));
  }
}
