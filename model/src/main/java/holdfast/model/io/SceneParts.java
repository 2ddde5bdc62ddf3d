package holdfast.model.io;

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
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Walks the tree of a scene, part after part. Tank and settings come first: the other parts are judged against them. */
final class SceneParts {
  /** Lengths in a file that should be equal may differ by this, millimetres: sums of decimals, inches converted. */
  static final double SAME_MM = 1e-6;
  /** A device's box may stick this far into the glass, millimetres: outer and inner lengths get mixed up by less. */
  static final double DEVICE_SLACK_MM = 1;

  private final Problems problems;
  private final Optional<Path> folder;

  SceneParts(Problems problems, Optional<Path> folder) {
    this.problems = problems;
    this.folder = folder;
  }

  Optional<Scene> read(Json root) {
    if (root instanceof Json.Obj o && otherFormat(o)) return Optional.empty();
    return ObjectWalk.over(root, "$", SceneKeys.SCENE, problems).flatMap(this::scene);
  }

  /** A file of another format would only give pages of unknown keys: one problem says all. */
  private boolean otherFormat(Json.Obj root) {
    Optional<Json> format = root.member(SceneKeys.FORMAT.name()).map(Json.Member::value);
    if (format.isEmpty() || format.get() instanceof Json.Str s && s.text().equals(SceneKeys.FORMAT_NAME)) return false;
    String hint = format.get() instanceof Json.Str s && s.text().equals(LooseBlocksReader.FORMAT_NAME)
        ? " (a file of loose blocks is for 'holdfast solve')" : "";
    problems.add(format.get().at(), "$.format", format.get().shown(), "must be \"" + SceneKeys.FORMAT_NAME + "\"" + hint);
    return true;
  }

  private Optional<Scene> scene(ObjectWalk walk) {
    if (!walk.has(SceneKeys.FORMAT)) walk.refuse(SceneKeys.FORMAT, "must be \"" + SceneKeys.FORMAT_NAME + "\"");
    String name = walk.text(SceneKeys.SCENE_NAME);
    Optional<Tank> tank = walk.part(SceneKeys.SCENE_TANK).flatMap(this::tank);
    Settings settings = walk.part(SceneKeys.SCENE_SETTINGS).map(this::settings).orElse(Settings.DEFAULT);
    Floor floor = walk.has(SceneKeys.SCENE_FLOOR)
        ? walk.part(SceneKeys.SCENE_FLOOR).flatMap(f -> floor(f, tank)).orElse(Floor.DEFAULT) : Floor.DEFAULT;
    Scene.Sand sand = walk.part(SceneKeys.SCENE_SAND).map(s -> sand(s, tank)).orElse(Scene.Sand.DEFAULT);
    Scene.Water water = water(walk.part(SceneKeys.SCENE_WATER), tank);
    List<Scene.Device> devices = devices(walk.parts(SceneKeys.DEVICES), tank);
    List<Scene.Lamp> lamps = lamps(walk.parts(SceneKeys.LAMPS), tank, water);
    RockTable rocks = rocks(walk.parts(SceneKeys.ROCKS), settings);
    List<Placement> placements = new PlacementParts(problems, rocks, tank).read(walk.parts(SceneKeys.PLACEMENTS));
    List<JointSpec> joints = new JointParts(problems, rocks).read(walk.parts(SceneKeys.JOINTS));
    if (problems.any()) return Optional.empty();
    return Optional.of(new Scene(name, tank.orElseThrow(), floor, sand, water, devices, lamps, rocks.rocks(), placements,
        joints, settings));
  }

  private Optional<Tank> tank(ObjectWalk walk) {
    double length = walk.number(SceneKeys.TANK_LENGTH);
    double width = walk.number(SceneKeys.TANK_WIDTH);
    double height = walk.number(SceneKeys.TANK_HEIGHT);
    double side = walk.number(SceneKeys.SIDE_GLASS);
    double bottom = walk.number(SceneKeys.BOTTOM_GLASS);
    Optional<Tank.BottomSupport> support = walk.word(SceneKeys.SUPPORT, Tank.BottomSupport.values());
    boolean tempered = walk.flag(SceneKeys.TEMPERED, false);
    boolean drilled = walk.flag(SceneKeys.DRILLED, false);
    List<Tank.Opening> openings = new ArrayList<>();
    for (ObjectWalk o : walk.parts(SceneKeys.OPENINGS)) {
      double[] r = rectangle(o, length, width, "opening");
      openings.add(new Tank.Opening(r[0], r[1], r[2], r[3]));
    }
    List<Side> viewed = walk.words(SceneKeys.VIEWED, Side.values());
    List<Side> touched = walk.words(SceneKeys.TOUCHED, Side.values());
    if (support.isEmpty() || Double.isNaN(length + width + height)) return Optional.empty();
    return Optional.of(new Tank(length, width, height, side, bottom, support.get(), tempered, drilled, openings, viewed,
        touched));
  }

  /** Corner x, y, length and width of a rectangle that should lie on the bottom. */
  private static double[] rectangle(ObjectWalk walk, double lengthMm, double widthMm, String what) {
    double[] at = walk.vector(SceneKeys.FLAT_AT).orElse(new double[] {Double.NaN, Double.NaN});
    double length = walk.number(SceneKeys.FLAT_LENGTH);
    double width = walk.number(SceneKeys.FLAT_WIDTH);
    // Comparisons with NaN are false: what was refused already is not refused again.
    if (at[0] + length > lengthMm + SAME_MM) {
      walk.refuseWhole("an " + what + " that ends at x = " + JsonLayout.number(at[0] + length) + " mm",
          "must end within the tank's length, " + JsonLayout.number(lengthMm) + " mm");
    }
    if (at[1] + width > widthMm + SAME_MM) {
      walk.refuseWhole("an " + what + " that ends at y = " + JsonLayout.number(at[1] + width) + " mm",
          "must end within the tank's width, " + JsonLayout.number(widthMm) + " mm");
    }
    return new double[] {at[0], at[1], length, width};
  }

  private Optional<Floor> floor(ObjectWalk walk, Optional<Tank> tank) {
    Optional<Floor.Kind> kind = walk.word(SceneKeys.FLOOR_KIND, Floor.Kind.values());
    double cell = walk.number(SceneKeys.CELL);
    double wall = walk.number(SceneKeys.WALL);
    double thickness = walk.number(SceneKeys.FLOOR_THICKNESS);
    double margin = walk.number(SceneKeys.MARGIN);
    double length = tank.map(Tank::lengthMm).orElse(Double.NaN);
    double width = tank.map(Tank::widthMm).orElse(Double.NaN);
    Optional<Floor.Extent> extent = walk.part(SceneKeys.EXTENT).map(e -> {
      double[] r = rectangle(e, length, width, "extent");
      return new Floor.Extent(r[0], r[1], r[2], r[3]);
    });
    if (kind.isEmpty()) return Optional.empty();
    if (kind.get() != Floor.Kind.GRID) walk.notBeside(SceneKeys.WALL, "must be left out: only a grid has walls");
    if (kind.get() == Floor.Kind.BARE) {
      List.of(SceneKeys.FLOOR_THICKNESS, SceneKeys.MARGIN, SceneKeys.EXTENT)
          .forEach(k -> walk.notBeside(k, "must be left out: a bare bottom has none"));
    } else {
      if (kind.get() == Floor.Kind.GRID && wall >= cell) {
        walk.refuse(SceneKeys.WALL, "must be less than cell_mm, " + JsonLayout.number(cell));
      }
      if (extent.isEmpty() && 2 * margin >= Math.min(length, width)) {
        walk.refuse(SceneKeys.MARGIN, "must be less than half the tank's " + JsonLayout.number(Math.min(length, width)) + " mm");
      }
    }
    return Optional.of(new Floor(kind.get(), cell, wall, thickness, margin, extent));
  }

  private Scene.Sand sand(ObjectWalk walk, Optional<Tank> tank) {
    double depth = walk.number(SceneKeys.SAND_DEPTH);
    if (tank.isPresent() && depth >= tank.get().heightMm()) {
      walk.refuse(SceneKeys.SAND_DEPTH, "must be less than the tank's height, " + JsonLayout.number(tank.get().heightMm())
          + " mm");
    }
    return new Scene.Sand(depth, walk.number(SceneKeys.SAND_BULK));
  }

  private Scene.Water water(Optional<ObjectWalk> given, Optional<Tank> tank) {
    double height = tank.map(Tank::heightMm).orElse(Double.NaN);
    OptionalDouble level = given.map(w -> w.maybe(SceneKeys.LEVEL)).orElse(OptionalDouble.empty());
    if (level.isPresent() && level.getAsDouble() > height) {
      given.get().refuse(SceneKeys.LEVEL, "must be at most the tank's height, " + JsonLayout.number(height)
          + " mm: water ends at the rim");
    }
    return new Scene.Water(
        level.orElse(height - SceneKeys.WATER_BELOW_RIM_MM),
        given.map(w -> w.number(SceneKeys.SALINITY)).orElse(SceneKeys.SALINITY.initial().orElseThrow()),
        given.map(w -> w.number(SceneKeys.TEMPERATURE)).orElse(SceneKeys.TEMPERATURE.initial().orElseThrow()));
  }

  private List<Scene.Device> devices(List<ObjectWalk> walks, Optional<Tank> tank) {
    List<Scene.Device> devices = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (ObjectWalk walk : walks) {
      String name = uniqueName(walk, names, "devices");
      Optional<Vec3> at = walk.vec3(SceneKeys.BOX_AT);
      Optional<Vec3> size = walk.vec3(SceneKeys.BOX_SIZE);
      double clear = walk.number(SceneKeys.CLEAR);
      if (at.isEmpty() || size.isEmpty()) continue;
      tank.ifPresent(t -> {
        Vec3 end = at.get().plus(size.get());
        if (end.x() > t.lengthMm() + DEVICE_SLACK_MM || end.y() > t.widthMm() + DEVICE_SLACK_MM) {
          walk.refuse(SceneKeys.BOX_SIZE, "must end within the tank, which is " + JsonLayout.number(t.lengthMm())
              + " mm long and " + JsonLayout.number(t.widthMm()) + " mm wide; this ends at x = "
              + JsonLayout.number(end.x()) + ", y = " + JsonLayout.number(end.y()));
        }
        if (at.get().z() >= t.heightMm()) {
          walk.refuse(SceneKeys.BOX_AT, "must start below the rim, at " + JsonLayout.number(t.heightMm()) + " mm");
        }
      });
      devices.add(new Scene.Device(name, at.get(), size.get(), clear));
    }
    return devices;
  }

  private List<Scene.Lamp> lamps(List<ObjectWalk> walks, Optional<Tank> tank, Scene.Water water) {
    List<Scene.Lamp> lamps = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (ObjectWalk walk : walks) {
      String name = uniqueName(walk, names, "lamps");
      Optional<Vec3> at = walk.vec3(SceneKeys.LAMP_AT);
      double length = walk.number(SceneKeys.LAMP_LENGTH);
      double width = walk.number(SceneKeys.LAMP_WIDTH);
      double share = walk.number(SceneKeys.SHARE);
      if (at.isEmpty()) continue;
      if (at.get().z() <= water.levelMm()) {
        walk.refuse(SceneKeys.LAMP_AT, "must hang above the water, at " + JsonLayout.number(water.levelMm()) + " mm");
      }
      // A lamp far off to the side lights nothing: half its size beyond the pane is the most that makes sense.
      if (tank.isPresent() && (Math.abs(at.get().x() - tank.get().lengthMm() / 2) > (tank.get().lengthMm() + length) / 2
          || Math.abs(at.get().y() - tank.get().widthMm() / 2) > (tank.get().widthMm() + width) / 2)) {
        walk.refuse(SceneKeys.LAMP_AT, "must hang over the tank, which is " + JsonLayout.number(tank.get().lengthMm())
            + " mm long and " + JsonLayout.number(tank.get().widthMm()) + " mm wide");
      }
      lamps.add(new Scene.Lamp(name, at.get(), length, width, share));
    }
    return lamps;
  }

  private static String uniqueName(ObjectWalk walk, Set<String> names, String of) {
    String name = walk.text(SceneKeys.THING_NAME);
    if (!name.isEmpty() && !names.add(name)) walk.refuse(SceneKeys.THING_NAME, "must be different for each of the " + of);
    return name;
  }

  private RockTable rocks(List<ObjectWalk> walks, Settings settings) {
    RockParts parts = new RockParts(folder);
    RockTable table = new RockTable();
    for (ObjectWalk walk : walks) {
      Optional<Rock> rock = parts.read(walk, settings.get(Setting.MINERAL_DENSITY) / 1000, settings.get(Setting.DAMP_SHARE));
      if (walk.value(SceneKeys.ROCK_NAME).orElse(null) instanceof Json.Str s && !table.add(s.text(), rock)) {
        walk.refuse(SceneKeys.ROCK_NAME, "must be different for every rock");
      }
    }
    return table;
  }

  private Settings settings(ObjectWalk walk) {
    Map<Setting, Double> given = new EnumMap<>(Setting.class);
    for (Setting s : Setting.values()) {
      Key.Num key = SceneKeys.setting(s);
      double v = walk.number(key);
      if (walk.has(key) && s.admits(v)) given.put(s, v);
    }
    Settings settings = new Settings(given);
    inOrder(walk, settings, Setting.LIFT_ONE_KG, Setting.LIFT_TWO_KG);
    inOrder(walk, settings, Setting.FOAM_SOFT_N_M3, Setting.FOAM_STIFF_N_M3);
    inOrder(walk, settings, Setting.ROCK_LOW_KG_PER_L, Setting.ROCK_HIGH_KG_PER_L);
    return settings;
  }

  private static void inOrder(ObjectWalk walk, Settings settings, Setting low, Setting high) {
    if (settings.get(low) <= settings.get(high)) return;
    if (walk.has(SceneKeys.setting(high))) {
      walk.refuse(SceneKeys.setting(high), "must be at least " + low.key() + ", " + JsonLayout.number(settings.get(low)));
    } else {
      walk.refuse(SceneKeys.setting(low), "must be at most " + high.key() + ", " + JsonLayout.number(settings.get(high)));
    }
  }
}
