package holdfast.model.io;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;

/** Valid scenes that use the whole of the format, drawn from a seed. */
final class RandomScenes {
  private final Random random;

  private RandomScenes(long seed) {
    random = new Random(seed);
  }

  static Scene of(long seed) {
    return new RandomScenes(seed).scene();
  }

  private Scene scene() {
    Tank tank = tank();
    List<Rock> rocks = new ArrayList<>();
    int count = random.nextInt(8);
    for (int i = 0; i < count; i++) rocks.add(rock("rock " + i + pick("", " ü", " \"x\\", " 岩", "\uD83E\uDEB8", " 'y'"), i));
    List<Placement> placements = new ArrayList<>();
    for (Rock r : rocks) {
      if (random.nextInt(4) > 0) placements.add(placement(r, tank));
    }
    Scene.Sand sand = new Scene.Sand(any(0, 49), any(0.5, 3));
    Scene.Water water = new Scene.Water(any(20, tank.heightMm()), any(0, 42), any(0, 40));
    return new Scene(pick("", "a scene", "…"), tank, floor(), sand, water, devices(tank), lamps(tank), rocks, placements,
        joints(rocks),
        settings());
  }

  private Tank tank() {
    double length = any(300, 3000);
    double width = any(300, 3000);
    List<Tank.Opening> openings = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) openings.add(new Tank.Opening(any(0, 100), any(0, 100), any(10, 200), any(10,
        200)));
    return new Tank(length, width, any(300, 1500), any(2, 30), any(2, 30), pick(Tank.BottomSupport.values()),
        random.nextBoolean(),
        random.nextBoolean(), openings, sides(), sides());
  }

  private List<Side> sides() {
    return Stream.of(Side.values()).filter(s -> random.nextBoolean()).toList();
  }

  private Floor floor() {
    Optional<Floor.Extent> extent = random.nextBoolean() ? Optional.empty()
        : Optional.of(new Floor.Extent(any(0, 20), any(0, 20), any(10, 200), any(10, 200)));
    return new Floor(pick(Floor.Kind.values()), any(12, 60), any(0.5, 11), any(0.5, 50), any(0, 100), extent);
  }

  private List<Scene.Device> devices(Tank tank) {
    List<Scene.Device> devices = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      Vec3 at = new Vec3(any(0, tank.lengthMm() / 2), any(0, tank.widthMm() / 2), any(0, 100));
      devices.add(new Scene.Device("device " + i, at,
          new Vec3(any(1, tank.lengthMm() / 2), any(1, tank.widthMm() / 2), any(1, 2000)), any(0, 200)));
    }
    return devices;
  }

  private List<Scene.Lamp> lamps(Tank tank) {
    List<Scene.Lamp> lamps = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      lamps.add(new Scene.Lamp("lamp " + i, new Vec3(any(0, tank.lengthMm()), any(0, tank.widthMm()), any(1600, 3000)), any(1,
          900),
          any(1, 900), any(0.1, 1)));
    }
    return lamps;
  }

  private Rock rock(String name, int i) {
    Rock.Form form = form(i);
    double held = any(0.001, 0.05);
    Rock.Weighing state = pick(Rock.Weighing.values());
    Rock.Mass mass = random.nextBoolean() ? new Rock.BulkDensity(any(0.1, 2.4))
        : new Rock.Weighed(any(0.06, 0.2), state,
            state == Rock.Weighing.DAMP && random.nextBoolean() ? OptionalDouble.of(held) : OptionalDouble.empty());
    return new Rock(name, pick(Rock.Kind.values()), form, mass, random.nextBoolean() ? 0 : any(0, 50), random.nextBoolean(),
        random.nextBoolean(), random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(any(0, 100)));
  }

  private Rock.Form form(int i) {
    switch (random.nextInt(4)) {
      case 0:
        return new Rock.Points(points());
      case 1:
        return new Rock.Lobes(random.nextBoolean() ? List.of(points()) : List.of(points(), points()));
      case 2:
        return new Rock.Mesh("scans/rock" + i + ".obj", any(0.001, 1000));
      default:
        return new Rock.Measured(pick(Rock.Look.values()), any(60, 150), any(60, 150), any(60, 150), random.nextInt(100_000));
    }
  }

  /** Four corners of a box and some points more: never flat. */
  private List<Vec3> points() {
    List<Vec3> points = new ArrayList<>(List.of(new Vec3(0, 0, 0), new Vec3(any(50, 100), 0, 0), new Vec3(0, any(50, 100), 0),
        new Vec3(0, 0, any(50, 100))));
    for (int i = random.nextInt(20); i > 0; i--) points.add(new Vec3(any(0, 100), any(0, 100), any(0, 100)));
    return points;
  }

  private Placement placement(Rock rock, Tank tank) {
    Quat turn = random.nextInt(3) == 0 ? Quat.IDENTITY
        : new Quat(random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    // The middle of the rock's box goes near the middle of the tank, which is wider than the longest diagonal, 260 mm.
    Vec3 middle = new Vec3(tank.lengthMm() / 2, tank.widthMm() / 2, tank.heightMm() / 2);
    Vec3 own = FormBox.of(rock.form())
        .map(b -> FormBox.least(b.cornersMm()).plus(FormBox.most(b.cornersMm())).times(0.5)).orElse(Vec3.ZERO);
    Vec3 at = middle.plus(new Vec3(any(-10, 10), any(-10, 10), any(-10, 10))).minus(turn.rotate(own));
    return new Placement(rock.name(), at, turn, random.nextBoolean());
  }

  private List<JointSpec> joints(List<Rock> rocks) {
    List<JointSpec> joints = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) {
      for (int j = i + 1; j < rocks.size(); j++) {
        if (random.nextInt(3) > 0) continue;
        String a = rocks.get(random.nextBoolean() ? i : j).name();
        String b = rocks.get(rocks.get(i).name().equals(a) ? j : i).name();
        JointSpec.Bond bond = pick(JointSpec.Bond.values());
        JointSpec joint = switch (bond) {
          case NONE -> JointSpec.paste(a, b, bond, 0);
          case MORTAR, PUTTY, GEL -> JointSpec.paste(a, b, bond, any(0.1, 500));
          case ROD -> new JointSpec(a, b, bond, 0, any(1, 60), any(5, 500), random.nextBoolean());
        };
        joints.add(joint.bonded() ? joint.madeIn(pick(JointSpec.MadeIn.values())) : joint);
      }
    }
    return joints;
  }

  private Settings settings() {
    Map<Setting, Double> given = new EnumMap<>(Setting.class);
    for (Setting s : Setting.values()) {
      boolean ordered = s == Setting.LIFT_ONE_KG || s == Setting.LIFT_TWO_KG || s == Setting.FOAM_SOFT_N_M3
          || s == Setting.FOAM_STIFF_N_M3 || s == Setting.ROCK_LOW_KG_PER_L || s == Setting.ROCK_HIGH_KG_PER_L
          || s == Setting.MINERAL_DENSITY;
      if (ordered || random.nextInt(5) > 0) continue;
      double v = any(s.least(), s.most());
      given.put(s, s.whole() ? Math.rint(v) : v);
    }
    return new Settings(given);
  }

  /** Sometimes an end of the range, sometimes a short decimal, sometimes all the digits a double has. */
  private double any(double least, double most) {
    double v = least + random.nextDouble() * (most - least);
    return switch (random.nextInt(4)) {
      case 0 -> random.nextBoolean() ? least : most;
      case 1 -> Math.min(most, Math.max(least, Math.rint(v * 10) / 10));
      default -> v;
    } + 0.0;
  }

  @SafeVarargs
  private <T> T pick(T... some) {
    return some[random.nextInt(some.length)];
  }
}
