package holdfast.model.io;

import holdfast.model.scene.Floor;
import holdfast.model.scene.Grade;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Every key of {@code holdfast-scene/1} with its type, range, unit, default and meaning, in the order in which a file is
 * written. Ranges are there to catch slips of the hand (a length in centimetres, a lost decimal point), not to forbid.
 */
final class SceneKeys {
  static final String FORMAT_NAME = "holdfast-scene/1";
  /** The water's level below the rim where the file gives none, millimetres. */
  static final double WATER_BELOW_RIM_MM = 25;
  /** Widest thing there is in a file, millimetres. */
  private static final double FAR = 10_000;

  private SceneKeys() {}

  // -- parts of a rock ----------------------------------------------------------------------------------------------
  static final Key.Word LOOK = word("look", Rock.Look.values(), Rock.Look::word, "",
      "the kind of stone to generate from measured lengths");
  static final Key.Num ROCK_LENGTH = needed("length_mm", 5, 3000, "mm", "the rock's measured length");
  static final Key.Num ROCK_WIDTH = needed("width_mm", 5, 3000, "mm", "the rock's measured width");
  static final Key.Num ROCK_HEIGHT = needed("height_mm", 5, 3000, "mm", "the rock's measured height");
  static final Key.Num SEED = new Key.Num("seed", false, 0, 2147483647, "", OptionalDouble.of(1), true,
      "the same seed gives the same stone", Optional.empty());
  static final Key.Cloud POINTS = new Key.Cloud("points_mm", false, 3000, "mm",
      "points whose convex hull is the rock, in its own frame");
  static final Key.Cloud LOBES = new Key.Cloud("lobes_mm", true, 3000, "mm",
      "lists of points; the convex hull of each is a lobe of the rock");
  static final Key.Text MESH_FILE = new Key.Text("mesh_file", false, 500, "a scanned mesh, named from the scene file's folder");
  static final Key.Num MESH_UNIT = optional("unit_mm", 1e-3, 1e4, "mm", 1, "the length of one unit of the mesh", null);
  static final Keys FORM = Keys.of("a form", LOOK, ROCK_LENGTH, ROCK_WIDTH, ROCK_HEIGHT, SEED, POINTS, LOBES, MESH_FILE,
      MESH_UNIT);

  static final Key.Num WEIGHED = needed("weighed_kg", 0.001, 500, "kg", "what the scale showed");
  static final Key.Word WEIGHING = word("state", Rock.Weighing.values(), Rock.Weighing::word, "dry", "how the rock was weighed");
  static final Key.Num HELD_WATER = open("held_water_kg", 0, 200, "kg", "water held by the damp rock, deducted");
  static final Key.Num BULK = needed("bulk_kg_per_l", 0.1, 4, "kg/L", "mass of dry stone per litre of the rock's hull");
  static final Keys MASS = Keys.of("a mass", WEIGHED, WEIGHING, HELD_WATER, BULK);

  static final Key.Text ROCK_NAME = new Key.Text("name", true, 80, "words, different for every rock");
  static final Key.Word ROCK_KIND = word("kind", Rock.Kind.values(), Rock.Kind::word, "", "where the stone comes from");
  static final Key.Part ROCK_FORM = new Key.Part("form", true, FORM,
      "measured lengths with a look, or points_mm, or lobes_mm, or mesh_file");
  static final Key.Part ROCK_MASS = new Key.Part("mass", true, MASS, "weighed_kg, or bulk_kg_per_l");
  static final Key.Num SEALED = optional("sealed_volume_ml", 0, 100_000, "ml", 0,
      "closed voids or foam that water does not enter", null);
  static final Key.Flag SLIMY = new Key.Flag("slimy", "true for live rock, else false",
      "the surface is overgrown, friction falls");
  static final Key.Flag REMOVABLE = new Key.Flag("removable", "false", "stays loose, to be taken out later");
  static final Key.Num PRICE = open("price_per_kg", 0, 1e6, "money/kg", "your price; absent: that of its kind in the settings");
  static final Keys ROCK = Keys.of("a rock", ROCK_NAME, ROCK_KIND, ROCK_FORM, ROCK_MASS, SEALED, SLIMY, REMOVABLE, PRICE);

  // -- tank ---------------------------------------------------------------------------------------------------------
  static final Key.Num TANK_LENGTH = needed("length_mm", 50, FAR, "mm", "inner length, left to right");
  static final Key.Num TANK_WIDTH = needed("width_mm", 50, FAR, "mm", "inner width, front to back");
  static final Key.Num TANK_HEIGHT = needed("height_mm", 50, 3000, "mm", "inner height, bottom to rim");
  static final Key.Num SIDE_GLASS = needed("side_glass_mm", 2, 100, "mm", "thickness of the side panes");
  static final Key.Num BOTTOM_GLASS = needed("bottom_glass_mm", 2, 100, "mm", "thickness of the bottom pane");
  static final Key.Word SUPPORT = word("support", Tank.BottomSupport.values(), Tank.BottomSupport::word, "unknown",
      "what the bottom pane rests on; unknown: the worse of both");
  static final Key.Flag TEMPERED = new Key.Flag("tempered_bottom", "false", "the bottom pane is thermally toughened");
  static final Key.Flag DRILLED = new Key.Flag("drilled_bottom", "false", "the bottom pane has holes");
  static final Key.Vector FLAT_AT = new Key.Vector("at_mm", true, 2, 0, FAR, "mm", "its front-left corner: x, y");
  static final Key.Num FLAT_LENGTH = needed("length_mm", 10, FAR, "mm", "left to right");
  static final Key.Num FLAT_WIDTH = needed("width_mm", 10, FAR, "mm", "front to back");
  static final Key.Parts OPENINGS = new Key.Parts("openings", false, 20, Keys.of("an opening", FLAT_AT, FLAT_LENGTH, FLAT_WIDTH),
      "the openings between rim and braces; none: the whole rim");
  static final Key.Words VIEWED = words("viewed_from", List.of("front"), "the sides people look through");
  static final Key.Words TOUCHED = words("may_touch", List.of(), "the panes that rock may lean against");
  static final Keys TANK = Keys.of("the tank", TANK_LENGTH, TANK_WIDTH, TANK_HEIGHT, SIDE_GLASS, BOTTOM_GLASS, SUPPORT, TEMPERED,
      DRILLED, OPENINGS, VIEWED, TOUCHED);

  // -- floor, sand, water -------------------------------------------------------------------------------------------
  static final Key.Word FLOOR_KIND = word("kind", Floor.Kind.values(), Floor.Kind::word, Floor.DEFAULT.kind().word(),
      "what lies on the bottom pane under the rock");
  static final Key.Num CELL = optional("cell_mm", 2, 200, "mm", Floor.DEFAULT.cellMm(),
      "pitch of the louvre cells and of the layout's grid",
      new Key.Source(Grade.PUBLISHED, "half-inch louvre panel"));
  static final Key.Num WALL = optional("wall_mm", 0.1, 50, "mm", Floor.DEFAULT.wallMm(), "thickness of a louvre wall; grid only",
      new Key.Source(Grade.MEMORY, "1 to 2 mm"));
  static final Key.Num FLOOR_THICKNESS = optional("thickness_mm", 0.5, 100, "mm", Floor.DEFAULT.thicknessMm(),
      "height of the grid or sheet",
      new Key.Source(Grade.PUBLISHED, "louvre panel about 3/8 inch thick"));
  static final Key.Num MARGIN = optional("margin_mm", 0, 1000, "mm", Floor.DEFAULT.marginMm(),
      "distance kept from the panes where no extent is given",
      new Key.Source(Grade.COMMON_PRACTICE, "cut 10 to 20 mm short of the panes"));
  static final Key.Part EXTENT = new Key.Part("extent", false, Keys.of("an extent", FLAT_AT, FLAT_LENGTH, FLAT_WIDTH),
      "the rectangle that is covered; absent: the whole bottom less the margin");
  static final Keys FLOOR = Keys.of("the floor", FLOOR_KIND, CELL, WALL, FLOOR_THICKNESS, MARGIN, EXTENT);

  static final Key.Num SAND_DEPTH = optional("depth_mm", 0, 500, "mm", Scene.Sand.DEFAULT.depthMm(), "depth of the sand",
      new Key.Source(Grade.COMMON_PRACTICE, "none unless given; 25 to 50 mm is usual"));
  static final Key.Num SAND_BULK = optional("bulk_kg_per_l", 0.5, 3, "kg/L", Scene.Sand.DEFAULT.bulkKgPerL(),
      "bulk density of the dry sand",
      new Key.Source(Grade.PUBLISHED, "1.52 to 1.68 measured; 1.2 to 1.7 by grade from memory"));
  static final Keys SAND = Keys.of("the sand", SAND_DEPTH, SAND_BULK);

  static final Key.Num LEVEL = open("level_mm", 10, 3000, "mm",
      "height of the full tank's water above the inner bottom; absent: 25 mm below the rim");
  static final Key.Num SALINITY = optional("salinity", 0, 42, "", 35, "practical salinity",
      new Key.Source(Grade.PUBLISHED, "35 g/L, sea water"));
  static final Key.Num TEMPERATURE = optional("temperature_c", 0, 40, "degrees C", 25, "temperature of the water",
      new Key.Source(Grade.COMMON_PRACTICE, "a tropical tank"));
  static final Keys WATER = Keys.of("the water", LEVEL, SALINITY, TEMPERATURE);

  // -- devices and lamps --------------------------------------------------------------------------------------------
  static final Key.Text THING_NAME = new Key.Text("name", true, 80, "words, different for each");
  static final Key.Vector BOX_AT = new Key.Vector("at_mm", true, 3, 0, FAR, "mm", "its front-left-bottom corner: x, y, z");
  static final Key.Vector BOX_SIZE = new Key.Vector("size_mm", true, 3, 1, FAR, "mm", "its length, width and height");
  static final Key.Num CLEAR = optional("clear_mm", 0, 1000, "mm", 75, "distance that rock keeps from it",
      new Key.Source(Grade.MEMORY, "75 to 100 mm clear of an overflow"));
  static final Keys DEVICE = Keys.of("a device", THING_NAME, BOX_AT, BOX_SIZE, CLEAR);
  static final Key.Vector LAMP_AT = new Key.Vector("at_mm", true, 3, -FAR, FAR, "mm", "its centre: x, y, z");
  static final Key.Num LAMP_LENGTH = needed("length_mm", 1, FAR, "mm", "left to right");
  static final Key.Num LAMP_WIDTH = needed("width_mm", 1, FAR, "mm", "front to back");
  static final Key.Num SHARE = optional("share", 0.001, 1000, "", 1, "its part of all the light, relative to the other lamps",
      null);
  static final Keys LAMP = Keys.of("a lamp", THING_NAME, LAMP_AT, LAMP_LENGTH, LAMP_WIDTH, SHARE);

  // -- placements and joints ----------------------------------------------------------------------------------------
  static final Key.Text PLACED_ROCK = new Key.Text("rock", true, 80, "the name of the rock that lies there");
  static final Key.Vector PLACED_AT = new Key.Vector("at_mm", true, 3, -FAR, FAR, "mm",
      "where the rock's own origin goes: x right, y back, z up from the front-left corner of the inner bottom");
  static final Key.Vector TURN = new Key.Vector("turn", false, 4, -1000, 1000, "", "a unit quaternion w, x, y, z");
  static final Key.Vector TURN_DEG = new Key.Vector("turn_deg", false, 3, -360, 360, "degrees",
      "turns about the fixed axes z, y, x; the one about x comes first");
  static final Key.Flag LOCKED = new Key.Flag("locked", "false", "settling and searching leave it where it is");
  static final Keys PLACEMENT = Keys.of("a placement", PLACED_ROCK, PLACED_AT, TURN, TURN_DEG, LOCKED);
  static final Key.Pair BETWEEN = new Key.Pair("between", "the names of two rocks");
  static final Key.Word BOND = word("bond", JointSpec.Bond.values(), JointSpec.Bond::word, "", "what fixes the joint");
  static final Key.Num AMOUNT = needed("amount_ml", 0.1, 5000, "ml", "volume of mortar, putty or gel");
  static final Key.Num ROD_DIAMETER = needed("rod_diameter_mm", 1, 60, "mm", "the rod's diameter");
  static final Key.Num ROD_DEPTH = needed("rod_depth_mm", 5, 500, "mm", "how deep the rod goes into each of the two rocks");
  static final Key.Flag ROD_GLUED = new Key.Flag("rod_glued", "false",
      "the rod is glued in, so that it also holds against pulling out");
  static final Key.Word MADE_IN = word("made_in", JointSpec.MadeIn.values(), JointSpec.MadeIn::word, "bench",
      "where the joint is made: rocks joined on the bench go into the tank as one piece");
  static final Keys JOINT = Keys.of("a joint", BETWEEN, BOND, AMOUNT, ROD_DIAMETER, ROD_DEPTH, ROD_GLUED, MADE_IN);

  // -- the whole ----------------------------------------------------------------------------------------------------
  static final Key.Format FORMAT = new Key.Format("format", FORMAT_NAME, "names this format");
  static final Key.Text SCENE_NAME = new Key.Text("name", false, 200, "a title for people");
  static final Key.Part SCENE_TANK = new Key.Part("tank", true, TANK, "the glass box, inner lengths");
  static final Key.Part SCENE_FLOOR = new Key.Part("floor", false, FLOOR, "what lies on the bottom pane");
  static final Key.Part SCENE_SAND = new Key.Part("sand", false, SAND, "sand on the bottom");
  static final Key.Part SCENE_WATER = new Key.Part("water", false, WATER, "the water of the full tank");
  static final Key.Parts DEVICES = new Key.Parts("devices", false, 100, DEVICE,
      "boxes that rock stays clear of: overflow, pumps");
  static final Key.Parts LAMPS = new Key.Parts("lamps", false, 100, LAMP, "flat lamps above the water");
  static final Key.Parts ROCKS = new Key.Parts("rocks", true, 1000, ROCK, "the stones there are, placed or not");
  static final Key.Parts PLACEMENTS = new Key.Parts("placements", true, 1000, PLACEMENT, "where the rocks lie");
  static final Key.Parts JOINTS = new Key.Parts("joints", false, 5000, JOINT, "what fixes rocks to each other");
  static final Keys SETTINGS = new Keys("the settings", Stream.of(Setting.values()).<Key>map(SceneKeys::setting).toList());
  static final Key.Part SCENE_SETTINGS = new Key.Part("settings", false, SETTINGS, "figures that differ from the defaults");
  static final Keys SCENE = Keys.of("a scene", FORMAT, SCENE_NAME, SCENE_TANK, SCENE_FLOOR, SCENE_SAND, SCENE_WATER, DEVICES,
      LAMPS, ROCKS, PLACEMENTS, JOINTS, SCENE_SETTINGS);

  /** A setting as a key of the file. */
  static Key.Num setting(Setting s) {
    return new Key.Num(s.key(), false, s.least(), s.most(), s.unit(), OptionalDouble.of(s.initial()), s.whole(), s.about(),
        Optional.of(new Key.Source(s.grade(), s.about())));
  }

  private static Key.Num needed(String name, double least, double most, String unit, String about) {
    return new Key.Num(name, true, least, most, unit, OptionalDouble.empty(), false, about, Optional.empty());
  }

  private static Key.Num optional(String name, double least, double most, String unit, double initial, String about,
      Key.Source source) {
    return new Key.Num(name, false, least, most, unit, OptionalDouble.of(initial), false, about, Optional.ofNullable(source));
  }

  private static Key.Num open(String name, double least, double most, String unit, String about) {
    return new Key.Num(name, false, least, most, unit, OptionalDouble.empty(), false, about, Optional.empty());
  }

  private static <E> Key.Word word(String name, E[] values, Function<E, String> spelled, String initial, String about) {
    return new Key.Word(name, Stream.of(values).map(spelled).toList(), initial, about);
  }

  private static Key.Words words(String name, List<String> initial, String about) {
    List<String> sides = new ArrayList<>();
    for (Side s : Side.values()) sides.add(s.word());
    return new Key.Words(name, sides, initial, about);
  }
}
