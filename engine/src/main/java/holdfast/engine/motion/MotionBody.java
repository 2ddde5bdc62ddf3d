package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Mat3;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Objects;

/**
 * A rigid body that can move, in metres and kilograms.
 *
 * @param name the rock's name
 * @param surface what its outside is
 * @param lobes convex pieces in the body's own frame
 * @param massKg mass that resists acceleration, above zero
 * @param centre centre of mass in the body's own frame
 * @param inertia about the centre, along the axes of the body's own frame, kg m2
 * @param pose where it is
 */
public record MotionBody(
    String name, Solid.Surface surface, List<Hull> lobes, double massKg, Vec3 centre, Mat3 inertia, Pose pose) {

  public MotionBody {
    Objects.requireNonNull(name);
    Objects.requireNonNull(surface);
    Objects.requireNonNull(centre);
    Objects.requireNonNull(inertia);
    Objects.requireNonNull(pose);
    lobes = List.copyOf(lobes);
    if (lobes.isEmpty()) throw new IllegalArgumentException("body '" + name + "' has no lobes");
    if (!(massKg > 0) || !Double.isFinite(massKg)) throw new IllegalArgumentException("massKg must be above 0, was " + massKg);
  }

  /** The same body at another pose. */
  public MotionBody at(Pose next) {
    return new MotionBody(name, surface, lobes, massKg, centre, inertia, next);
  }

  /** The body in place, as the contact search wants it. */
  public Solid solid(boolean fixed) {
    return new Solid(name, surface, fixed, lobes.stream().map(h -> h.moved(pose)).toList());
  }

  /** Where its centre of mass is. */
  public Vec3 centreInWorld() {
    return pose.apply(centre);
  }

  /** Heights of a body's lowest and highest corner, metres. */
  public record Heights(double lowM, double highM) {
    public double extentM() {
      return highM - lowM;
    }
  }

  /** Its heights where it is. */
  public Heights heights() {
    return heights(pose);
  }

  /** Its heights if it were at {@code there}. */
  public Heights heights(Pose there) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Hull h : lobes) {
      for (Vec3 p : h.corners()) {
        double z = there.apply(p).z();
        low = Math.min(low, z);
        high = Math.max(high, z);
      }
    }
    return new Heights(low, high);
  }

  /** Largest distance of a corner from the centre of mass, metres. */
  public double reachM() {
    double r = 0;
    for (Hull h : lobes) {
      for (Vec3 p : h.corners()) r = Math.max(r, p.distanceTo(centre));
    }
    return r;
  }
}
