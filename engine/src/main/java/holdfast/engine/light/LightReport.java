package holdfast.engine.light;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Light on the living rock. Empty of rocks when the scene has no lamps or no living rock.
 *
 * @param rocks one line for each living rock, in the order of the placements
 * @param lamps number of lamps that shine
 */
public record LightReport(List<RockLight> rocks, int lamps) {
  /** What the figures leave out; to be told with them. */
  public static final String LIMITS = "Straight rays: no refraction, no light thrown back by glass or sand, lamps that shine"
      + " evenly in all directions downward. A narrow beam casts harder shadows than these figures say.";

  /** Samples along each side of a triangle of the surface. */
  private static final int STEPS = 3;

  /** Faces that look up more than this count as upper surface: cosine of the angle to the vertical. */
  private static final double UPWARD = 0.2;

  public LightReport {
    rocks = List.copyOf(rocks);
  }

  /**
   * One living rock.
   *
   * @param unshaded part of the light on its upper surface that the rock in the way lets through, 0 to 1; its own
   *     lobes count as rock in the way
   * @param ofSurface light that reaches its upper surface, as a part of what falls on the water's surface where it is
   *     brightest, 0 to 1
   * @param least the least share that counts as lit
   */
  public record RockLight(String rock, double unshaded, double ofSurface, double least) {
    public boolean shaded() {
      return unshaded < least;
    }
  }

  /** The light in a scene; {@code bodies} are those of its rocks. */
  public static LightReport of(Scene scene, List<RockBody> bodies) {
    List<Scene.Lamp> lamps = scene.lamps().stream()
        .filter(l -> l.share() > 0 && l.lengthMm() > 0 && l.widthMm() > 0).toList();
    List<Hull> all = new ArrayList<>();
    record Living(String name, List<Hull> lobes) {}

    List<Living> living = new ArrayList<>();
    for (Placement place : scene.placements()) {
      Optional<RockBody> body = bodies.stream().filter(b -> b.name().equals(place.rock())).findFirst();
      Optional<Rock> rock = scene.rock(place.rock());
      if (body.isEmpty() || rock.isEmpty()) continue;
      List<Hull> lobes = body.get().lobes().stream().map(h -> h.moved(place.pose())).toList();
      all.addAll(lobes);
      if (rock.get().kind() == Rock.Kind.LIVE) living.add(new Living(place.rock(), lobes));
    }
    if (lamps.isEmpty() || living.isEmpty()) return new LightReport(List.of(), lamps.size());

    double level = scene.water().levelMm() * 1e-3;
    LampLight light = new LampLight(lamps, all, level, scene.settings().get(Setting.LIGHT_ATTENUATION_1_M));
    double brightest = 0;
    for (Scene.Lamp lamp : lamps) {
      Vec3 below = new Vec3(lamp.atMm().x() * 1e-3, lamp.atMm().y() * 1e-3, level);
      brightest = Math.max(brightest, light.at(below, Vec3.Z).open());
    }
    double least = scene.settings().get(Setting.LIGHT_LEAST_SHARE);
    List<RockLight> out = new ArrayList<>();
    for (Living rock : living) {
      double area = 0;
      double open = 0;
      double reached = 0;
      for (Sample s : samples(rock.lobes)) {
        LampLight.Irradiance e = light.at(s.at, s.normal);
        area += s.areaM2;
        open += s.areaM2 * e.open();
        reached += s.areaM2 * e.reached();
      }
      out.add(new RockLight(
          rock.name, open > 0 ? reached / open : 0, area > 0 && brightest > 0 ? reached / area / brightest : 0, least));
    }
    return new LightReport(out, lamps.size());
  }

  /** A bit of upper surface. */
  private record Sample(Vec3 at, Vec3 normal, double areaM2) {}

  /** Evenly spread bits of the upward faces, those inside another lobe left out. */
  private static List<Sample> samples(List<Hull> lobes) {
    List<Sample> out = new ArrayList<>();
    for (Hull lobe : lobes) {
      for (Hull.Face face : lobe.faces()) {
        if (face.normal().z() < UPWARD) continue;
        List<Vec3> loop = lobe.loop(face);
        for (int i = 1; i + 1 < loop.size(); i++) {
          addTriangle(out, lobes, lobe, face.normal(), loop.get(0), loop.get(i), loop.get(i + 1));
        }
      }
    }
    return out;
  }

  private static void addTriangle(
      List<Sample> out, List<Hull> lobes, Hull own, Vec3 normal, Vec3 a, Vec3 b, Vec3 c) {
    double area = 0.5 * b.minus(a).cross(c.minus(a)).norm() / (STEPS * STEPS);
    Vec3 u = b.minus(a).times(1.0 / STEPS);
    Vec3 v = c.minus(a).times(1.0 / STEPS);
    for (int i = 0; i < STEPS; i++) {
      for (int j = 0; i + j < STEPS; j++) {
        Vec3 corner = a.plusTimes(i, u).plusTimes(j, v);
        addSample(out, lobes, own, normal, corner.plusTimes(1.0 / 3, u).plusTimes(1.0 / 3, v), area);
        if (i + j + 1 < STEPS) addSample(out, lobes, own, normal, corner.plusTimes(2.0 / 3, u).plusTimes(2.0 / 3, v), area);
      }
    }
  }

  private static void addSample(List<Sample> out, List<Hull> lobes, Hull own, Vec3 normal, Vec3 at, double area) {
    for (Hull other : lobes) {
      if (other != own && Polyhedra.contains(other, at, 0)) return;
    }
    out.add(new Sample(at, normal, area));
  }
}
