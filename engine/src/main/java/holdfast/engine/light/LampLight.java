package holdfast.engine.light;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.util.Arrays;
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

  private final List<Lamp> lamps;
  private final List<Obstacle> obstacles;
  private final double waterLevelM;
  private final double attenuation1M;

  /**
   * One lamp's strata.
   *
   * @param x across the strata's middles, metres; {@code y} likewise
   * @param power light of one stratum
   */
  private record Lamp(double[] x, double[] y, double z, Vec3 middle, double radiusM, double power) {
    static Lamp of(Scene.Lamp lamp) {
      double dx = lamp.lengthMm() * 1e-3 / STRATA;
      double dy = lamp.widthMm() * 1e-3 / STRATA;
      Vec3 middle = lamp.atMm().times(1e-3);
      double[] x = new double[STRATA];
      double[] y = new double[STRATA];
      for (int i = 0; i < STRATA; i++) {
        x[i] = middle.x() + (i + 0.5 - STRATA / 2.0) * dx;
        y[i] = middle.y() + (i + 0.5 - STRATA / 2.0) * dy;
      }
      double exitance = lamp.share() / (dx * dy * STRATA * STRATA);
      double radius = 0.5 * Math.hypot(lamp.lengthMm(), lamp.widthMm()) * 1e-3;
      return new Lamp(x, y, middle.z(), middle, radius, exitance * (dx * dy));
    }
  }

  LampLight(List<Scene.Lamp> lamps, List<Hull> rock, double waterLevelM, double attenuation1M) {
    this.lamps = lamps.stream().map(Lamp::of).toList();
    this.obstacles = rock.stream().map(Obstacle::of).toList();
    this.waterLevelM = waterLevelM;
    this.attenuation1M = attenuation1M;
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
    Obstacle[] above = obstacles.stream().filter(o -> o.above(from, normal)).toArray(Obstacle[]::new);
    double open = 0;
    double reached = 0;
    for (Lamp lamp : lamps) {
      Obstacle[] between = between(above, from, lamp);
      double z = lamp.z - from.z();
      if (!(z > 0)) continue;
      double wet = Math.max(0, Math.min(lamp.z, waterLevelM) - from.z());
      for (int i = 0; i < STRATA; i++) {
        double x = lamp.x[i] - from.x();
        for (int j = 0; j < STRATA; j++) {
          double y = lamp.y[j] - from.y();
          double facing = normal.x() * x + normal.y() * y + normal.z() * z;
          if (facing <= 0) continue;
          double r2 = x * x + y * y + z * z;
          double r = Math.sqrt(r2);
          double e = lamp.power * (facing / r) * (z / r) / (Math.PI * r2) * Math.exp(-attenuation1M * r * wet / z);
          open += e;
          if (!blocked(between, from, x, y, z)) reached += e;
        }
      }
    }
    return new Irradiance(open, reached);
  }

  /** Those that some ray to the lamp could meet: they reach into the cone round the lamp. */
  private static Obstacle[] between(Obstacle[] above, Vec3 from, Lamp lamp) {
    Vec3 axis = lamp.middle.minus(from);
    double far = axis.norm();
    if (far <= lamp.radiusM) return above;
    double half = Math.asin(lamp.radiusM / far);
    Obstacle[] in = new Obstacle[above.length];
    int n = 0;
    for (Obstacle o : above) if (o.inCone(from, axis, half)) in[n++] = o;
    return Arrays.copyOf(in, n);
  }

  private static boolean blocked(Obstacle[] between, Vec3 from, double x, double y, double z) {
    for (int k = 0; k < between.length; k++) {
      if (!between[k].crosses(from, x, y, z)) continue;
      // The next ray runs close by: it most likely meets the same rock.
      Obstacle met = between[k];
      between[k] = between[0];
      between[0] = met;
      return true;
    }
    return false;
  }
}
