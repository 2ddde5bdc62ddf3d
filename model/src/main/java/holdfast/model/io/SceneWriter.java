package holdfast.model.io;

import static holdfast.model.io.SceneKeys.*;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.List;

/**
 * Writes a scene as its one canonical text: keys in the order of the table, what equals its default left out (the water's
 * level excepted: it is a measurement), the shortest digits that read back as the same double. Reading that text gives an
 * equal scene, and writing that again the same bytes. Negative zero is written as 0 and a turn in degrees as a quaternion.
 */
public final class SceneWriter {
  private SceneWriter() {}

  /**
   * The text, ended by a line feed.
   *
   * @throws IllegalArgumentException when a number of the scene is not finite
   */
  public static String write(Scene scene) {
    JsonOut out = new JsonOut().text(FORMAT.name(), FORMAT_NAME);
    if (!scene.name().isEmpty()) out.text(SCENE_NAME.name(), scene.name());
    out.object(SCENE_TANK.name(), tank(scene.tank()));
    unlessEmpty(out, SCENE_FLOOR, floor(scene.floor()));
    unlessEmpty(out, SCENE_SAND, sand(scene.sand()));
    out.object(SCENE_WATER.name(), water(scene.water()));
    if (!scene.devices().isEmpty()) out.objects(DEVICES.name(), scene.devices().stream().map(SceneWriter::device).toList());
    if (!scene.lamps().isEmpty()) out.objects(LAMPS.name(), scene.lamps().stream().map(SceneWriter::lamp).toList());
    out.objects(ROCKS.name(), scene.rocks().stream().map(SceneWriter::rock).toList());
    out.objects(PLACEMENTS.name(), scene.placements().stream().map(SceneWriter::placement).toList());
    if (!scene.joints().isEmpty()) out.objects(JOINTS.name(), scene.joints().stream().map(SceneWriter::joint).toList());
    unlessEmpty(out, SCENE_SETTINGS, settings(scene.settings()));
    return out.written();
  }

  /** One rock as it stands in the list of a scene, ended by a line feed. */
  public static String writeRock(Rock rock) {
    return rock(rock).written();
  }

  private static JsonOut tank(Tank t) {
    JsonOut out = new JsonOut()
        .number(TANK_LENGTH.name(), t.lengthMm())
        .number(TANK_WIDTH.name(), t.widthMm())
        .number(TANK_HEIGHT.name(), t.heightMm())
        .number(SIDE_GLASS.name(), t.sideGlassMm())
        .number(BOTTOM_GLASS.name(), t.bottomGlassMm());
    word(out, SUPPORT, t.bottomSupport().word());
    flag(out, TEMPERED, t.temperedBottom(), false);
    flag(out, DRILLED, t.drilledBottom(), false);
    if (!t.openings().isEmpty()) {
      out.objects(OPENINGS.name(),
          t.openings().stream().map(o -> rectangle(o.xMm(), o.yMm(), o.lengthMm(), o.widthMm())).toList());
    }
    sides(out, VIEWED, t.viewedFrom());
    sides(out, TOUCHED, t.mayTouch());
    return out;
  }

  private static JsonOut floor(Floor f) {
    JsonOut out = new JsonOut();
    word(out, FLOOR_KIND, f.kind().word());
    number(out, CELL, f.cellMm());
    if (f.kind() == Floor.Kind.GRID) number(out, WALL, f.wallMm());
    if (f.kind() == Floor.Kind.BARE) return out;
    number(out, FLOOR_THICKNESS, f.thicknessMm());
    number(out, MARGIN, f.marginMm());
    f.extent().ifPresent(e -> out.object(EXTENT.name(), rectangle(e.xMm(), e.yMm(), e.lengthMm(), e.widthMm())));
    return out;
  }

  private static JsonOut rectangle(double x, double y, double length, double width) {
    return new JsonOut().vector(FLAT_AT.name(), x, y).number(FLAT_LENGTH.name(), length).number(FLAT_WIDTH.name(), width);
  }

  private static JsonOut sand(Scene.Sand s) {
    JsonOut out = new JsonOut();
    number(out, SAND_DEPTH, s.depthMm());
    number(out, SAND_BULK, s.bulkKgPerL());
    return out;
  }

  private static JsonOut water(Scene.Water w) {
    JsonOut out = new JsonOut().number(LEVEL.name(), w.levelMm());
    number(out, SALINITY, w.salinity());
    number(out, TEMPERATURE, w.temperatureC());
    return out;
  }

  private static JsonOut device(Scene.Device d) {
    JsonOut out = new JsonOut().text(THING_NAME.name(), d.name());
    vector(out, BOX_AT, d.atMm());
    vector(out, BOX_SIZE, d.sizeMm());
    number(out, CLEAR, d.clearMm());
    return out;
  }

  private static JsonOut lamp(Scene.Lamp l) {
    JsonOut out = new JsonOut().text(THING_NAME.name(), l.name());
    vector(out, LAMP_AT, l.atMm());
    out.number(LAMP_LENGTH.name(), l.lengthMm()).number(LAMP_WIDTH.name(), l.widthMm());
    number(out, SHARE, l.share());
    return out;
  }

  private static JsonOut rock(Rock r) {
    JsonOut out = new JsonOut()
        .text(ROCK_NAME.name(), r.name())
        .text(ROCK_KIND.name(), r.kind().word())
        .object(ROCK_FORM.name(), form(r.form()))
        .object(ROCK_MASS.name(), mass(r.mass()));
    number(out, SEALED, r.sealedVolumeMl());
    flag(out, SLIMY, r.slimy(), r.kind() == Rock.Kind.LIVE);
    flag(out, REMOVABLE, r.removable(), false);
    r.pricePerKg().ifPresent(p -> out.number(PRICE.name(), p));
    return out;
  }

  private static JsonOut form(Rock.Form form) {
    JsonOut out = new JsonOut();
    if (form instanceof Rock.Measured m) {
      out.text(LOOK.name(), m.look().word())
          .number(ROCK_LENGTH.name(), m.lengthMm())
          .number(ROCK_WIDTH.name(), m.widthMm())
          .number(ROCK_HEIGHT.name(), m.heightMm());
      number(out, SEED, m.seed());
    } else if (form instanceof Rock.Points p) {
      out.points(POINTS.name(), p.pointsMm());
    } else if (form instanceof Rock.Lobes l) {
      out.clouds(LOBES.name(), l.lobesMm());
    } else {
      Rock.Mesh mesh = (Rock.Mesh) form;
      out.text(MESH_FILE.name(), mesh.file());
      number(out, MESH_UNIT, mesh.unitMm());
    }
    return out;
  }

  private static JsonOut mass(Rock.Mass mass) {
    JsonOut out = new JsonOut();
    if (mass instanceof Rock.Weighed w) {
      out.number(WEIGHED.name(), w.kg());
      word(out, WEIGHING, w.state().word());
      w.heldWaterKg().ifPresent(h -> out.number(HELD_WATER.name(), h));
    } else {
      out.number(BULK.name(), ((Rock.BulkDensity) mass).kgPerL());
    }
    return out;
  }

  private static JsonOut placement(Placement p) {
    JsonOut out = new JsonOut().text(PLACED_ROCK.name(), p.rock());
    vector(out, PLACED_AT, p.atMm());
    Quat q = p.turn();
    if (!q.equals(Quat.IDENTITY)) out.vector(TURN.name(), q.w(), q.x(), q.y(), q.z());
    flag(out, LOCKED, p.locked(), false);
    return out;
  }

  private static JsonOut joint(JointSpec j) {
    JsonOut out = new JsonOut().texts(BETWEEN.name(), List.of(j.a(), j.b())).text(BOND.name(), j.bond().word());
    if (j.bond() == JointSpec.Bond.ROD) {
      out.number(ROD_DIAMETER.name(), j.rodDiameterMm()).number(ROD_DEPTH.name(), j.rodDepthMm());
      flag(out, ROD_GLUED, j.rodGlued(), false);
    } else if (j.bond() != JointSpec.Bond.NONE) {
      out.number(AMOUNT.name(), j.amountMl());
    }
    if (j.bonded() && j.madeIn() != JointSpec.MadeIn.BENCH) out.text(MADE_IN.name(), j.madeIn().word());
    return out;
  }

  private static JsonOut settings(Settings s) {
    JsonOut out = new JsonOut();
    s.given().forEach((setting, value) -> out.number(setting.key(), value));
    return out;
  }

  private static void unlessEmpty(JsonOut out, Key.Part key, JsonOut value) {
    if (!value.isEmpty()) out.object(key.name(), value);
  }

  private static void number(JsonOut out, Key.Num key, double value) {
    if (key.initial().isEmpty() || key.initial().getAsDouble() != value) out.number(key.name(), value);
  }

  private static void flag(JsonOut out, Key.Flag key, boolean value, boolean initial) {
    if (value != initial) out.flag(key.name(), value);
  }

  private static void word(JsonOut out, Key.Word key, String value) {
    if (!value.equals(key.initial())) out.text(key.name(), value);
  }

  private static void sides(JsonOut out, Key.Words key, List<Side> sides) {
    List<String> words = sides.stream().map(Side::word).toList();
    if (!words.equals(key.initial())) out.texts(key.name(), words);
  }

  private static void vector(JsonOut out, Key.Vector key, Vec3 v) {
    out.vector(key.name(), v.x(), v.y(), v.z());
  }
}
