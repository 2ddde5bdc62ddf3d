package holdfast.engine.light;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.List;

/**
 * Irradiance under flat rectangular lamps that shine downward, evenly over their face and by the cosine law (Lambert).
 *
 * <p>The lamp's face is cut into strata and a straight ray goes from the surface to the middle of each: a stratum of area
 * dA at distance r adds cos(a) cos(b) / (pi r^2) dA, which is the integral of the view factor, times exp(-k s) for the
 * way s under water, and nothing when a hull stands between. The same rays every time: no chance is involved.
 *
 * <p>Left out: refraction at the water's surface (it bends light toward the vertical, so shadows in truth are a little
 * narrower at the sides), light thrown back by panes, sand and rock, scattering, and lamps with lenses that beam more
 * narrowly than the cosine law.
 *
 * @see "Howell, A Catalog of Radiation Configuration Factors, B-3/B-4: differential element to rectangle"
 */
final class LampLight {
  /** Strata along the longer and shorter side of a lamp; 0.2 % on the view factor at a distance of half its length. */
  static final int STRATA = 14;

  /** Rays start this far off the surface, metres, so that a surface does not shade itself by rounding. */
  private static final double LIFT_M = 1e-6;

  private final List<Stratum> strata = new ArrayList<>();
  private final List<Blocker> blockers;
  private final double waterLevelM;
  private final double attenuation1M;

  private record Stratum(Vec3 at, double areaM2, double exitance) {}

  /** A hull with a ball round it, so that most rays are done with at once. */
  private record Blocker(Hull hull, Vec3 middle, double radiusM) {
    static Blocker of(Hull hull) {
      Vec3 sum = Vec3.ZERO;
      for (Vec3 p : hull.corners()) sum = sum.plus(p);
      Vec3 middle = sum.times(1.0 / hull.corners().size());
      double radius = 0;
      for (Vec3 p : hull.corners()) radius = Math.max(radius, p.distanceTo(middle));
      return new Blocker(hull, middle, radius);
    }
  }

  LampLight(List<Scene.Lamp> lamps, List<Hull> rock, double waterLevelM, double attenuation1M) {
    this.blockers = rock.stream().map(Blocker::of).toList();
    this.waterLevelM = waterLevelM;
    this.attenuation1M = attenuation1M;
    for (Scene.Lamp lamp : lamps) {
      double dx = lamp.lengthMm() * 1e-3 / STRATA;
      double dy = lamp.widthMm() * 1e-3 / STRATA;
      Vec3 middle = lamp.atMm().times(1e-3);
      for (int i = 0; i < STRATA; i++) {
        for (int j = 0; j < STRATA; j++) {
          Vec3 at = middle.plus(new Vec3((i + 0.5 - STRATA / 2.0) * dx, (j + 0.5 - STRATA / 2.0) * dy, 0));
          strata.add(new Stratum(at, dx * dy, lamp.share() / (dx * dy * STRATA * STRATA)));
        }
      }
    }
  }

  /**
   * Irradiance of a small surface.
   *
   * @param open without any rock, water counted
   * @param reached with all the rock in the way
   */
  record Irradiance(double open, double reached) {}

  /**
   * Irradiance at a point of a surface, in units of the lamps' shares per square metre.
   *
   * @param normal outward unit normal of the surface
   */
  Irradiance at(Vec3 point, Vec3 normal) {
    Vec3 from = point.plusTimes(LIFT_M, normal);
    double open = 0;
    double reached = 0;
    for (Stratum s : strata) {
      Vec3 way = s.at.minus(from);
      double r2 = way.dot(way);
      double r = Math.sqrt(r2);
      double cosSurface = normal.dot(way) / r;
      double cosLamp = way.z() / r;
      if (cosSurface <= 0 || cosLamp <= 0) continue;
      double e = s.exitance * s.areaM2 * cosSurface * cosLamp / (Math.PI * r2) * throughWater(from, s.at, r);
      open += e;
      if (!blocked(from, way)) reached += e;
    }
    return new Irradiance(open, reached);
  }

  private double throughWater(Vec3 from, Vec3 to, double r) {
    double rise = to.z() - from.z();
    double wet = Math.max(0, Math.min(to.z(), waterLevelM) - from.z());
    return rise > 0 ? Math.exp(-attenuation1M * r * wet / rise) : 1;
  }

  private boolean blocked(Vec3 from, Vec3 way) {
    double length2 = way.dot(way);
    for (Blocker b : blockers) {
      Vec3 to = b.middle.minus(from);
      double along = Math.max(0, Math.min(1, to.dot(way) / length2));
      if (from.plusTimes(along, way).distanceTo(b.middle) > b.radiusM) continue;
      if (crosses(b.hull, from, way)) return true;
    }
    return false;
  }

  /** Whether the segment {@code from + t way}, t from 0 to 1, has a stretch inside the hull. */
  static boolean crosses(Hull hull, Vec3 from, Vec3 way) {
    double enter = 0;
    double leave = 1;
    for (Hull.Face f : hull.faces()) {
      double distance = f.normal().dot(from) - f.offset();
      double speed = f.normal().dot(way);
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
