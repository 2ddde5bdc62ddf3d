package holdfast.model.scene;

import static holdfast.model.scene.Grade.COMMON_PRACTICE;
import static holdfast.model.scene.Grade.DERIVED;
import static holdfast.model.scene.Grade.MEMORY;
import static holdfast.model.scene.Grade.PUBLISHED;

/**
 * Every figure that a user may edit: key in the file, default, unit, the range that makes sense, how the default is
 * known, and from where. The table is what {@code holdfast defaults} prints and what the schema and reader check against.
 */
public enum Setting {
  // -- pushes -------------------------------------------------------------------------------------------------------
  PUSH_TIER_N("push.tier_n", 20, "N", 0.1, 500, COMMON_PRACTICE,
      "force every rock must bear from any side: 5 N small fish, 20 N urchin or large fish, 50 N a hand"),
  PUSH_HEIGHT("push.height", 0.9, "of rock height", 0.05, 1, COMMON_PRACTICE, "height at which a push acts"),
  PUSH_OFFSET("push.offset", 0.8, "of half-width", 0, 1, COMMON_PRACTICE,
      "distance of the two outer push lines from the centre line"),
  PUSH_DIRECTIONS("push.directions", 16, "directions", 4, 72, COMMON_PRACTICE, "directions round the compass"),
  PUSH_LOOSE_N("push.loose_n", 1, "N", 0, 50, COMMON_PRACTICE, "a rock that moves under less is loose"),
  SHAKE_G("push.shake_g", 0.1, "g", 0, 1, MEMORY, "sideways acceleration the heap must bear"),
  SLIDE_TEST_MM("push.slide_test_mm", 20, "mm", 1, 100, COMMON_PRACTICE, "a slid rock is tried again this far on"),
  GROWTH_KG("push.growth_kg", 0.5, "kg submerged", 0, 20, MEMORY, "weight that grows on each living rock"),

  // -- contacts -----------------------------------------------------------------------------------------------------
  CONTACT_INSET_MM("contact.inset_mm", 5, "mm", 0, 30, COMMON_PRACTICE,
      "real stone bears on high spots: supports are drawn in by this"),

  // -- friction -----------------------------------------------------------------------------------------------------
  FRICTION_ROCK_ROCK("friction.rock_rock", 0.60, "", 0, 2, PUBLISHED,
      "rock on rock: wet limestone 31 degrees, Cafaro et al. 2022 citing Barton 1973"),
  FRICTION_SLIMY("friction.slimy", 0.35, "", 0, 2, MEMORY, "overgrown rock on anything"),
  FRICTION_ROCK_GLASS("friction.rock_glass", 0.35, "", 0, 2, MEMORY, "rock on glass"),
  FRICTION_ROCK_GRID("friction.rock_grid", 0.35, "", 0, 2, MEMORY, "rock on louvre grid or sheet"),
  FRICTION_GRID_GLASS("friction.grid_glass", 0.35, "", 0, 2, MEMORY, "louvre grid or sheet on glass"),
  FRICTION_ROCK_SAND("friction.rock_sand", 0.45, "", 0, 2, MEMORY, "rock bedded in sand"),

  // -- weights ------------------------------------------------------------------------------------------------------
  MINERAL_DENSITY("weight.mineral_kg_m3", 2780, "kg/m3", 1500, 4000, PUBLISHED,
      "solid part of coral skeleton, 2.78 to 2.87 kg/L; the low end"),
  DAMP_SHARE("weight.damp_share", 0.15, "of mass", 0, 0.6, MEMORY, "water held by a damp rock"),

  // -- gaps ---------------------------------------------------------------------------------------------------------
  GAP_VIEWED_MM("gap.viewed_mm", 50, "mm", 0, 500, COMMON_PRACTICE, "rock to a pane people look through"),
  GAP_OTHER_MM("gap.other_mm", 40, "mm", 0, 500, COMMON_PRACTICE, "rock to any other pane"),
  GAP_CLEANER_MM("gap.cleaner_mm", 35, "mm", 0, 200, MEMORY,
      "thickness of the cleaner that must pass, with 10 mm to spare: small 35 mm, medium 60 mm, large 85 mm"),
  CLEANER_LENGTH_MM("gap.cleaner_length_mm", 90, "mm", 10, 400, COMMON_PRACTICE, "length of the cleaner along the pane"),
  CLEANER_HEIGHT_MM("gap.cleaner_height_mm", 60, "mm", 10, 400, COMMON_PRACTICE, "height of the cleaner along the pane"),
  GROWING_ROOM_MM("gap.growing_room_mm", 50, "mm", 0, 300, COMMON_PRACTICE, "free water above living rock"),
  HEIGHT_SHARE("gap.height_share", 2.0 / 3.0, "of water depth", 0.1, 1, COMMON_PRACTICE,
      "tallest rockwork against the depth of water"),
  REACH_MM("gap.reach_mm", 600, "mm", 100, 1500, COMMON_PRACTICE, "how far an arm reaches from the rim"),
  DEAD_WATER_MM("gap.dead_water_mm", 20, "mm", 5, 200, COMMON_PRACTICE,
      "water joined to the rest only by openings smaller than this is stagnant"),

  // -- bonds --------------------------------------------------------------------------------------------------------
  BOND_MORTAR_N_MM2("bond.mortar_n_mm2", 0.1, "N/mm2", 0.001, 5, MEMORY, "mortar, design strength: 0.3 N/mm2 with a factor of 3"),
  BOND_PUTTY_N_MM2("bond.putty_n_mm2", 0.1, "N/mm2", 0.001, 5, MEMORY,
      "putty, design strength in the field, far below the laboratory's"),
  BOND_GEL_N_MM2("bond.gel_n_mm2", 0.05, "N/mm2", 0.001, 5, MEMORY, "gel, design strength; no moment is counted"),
  BOND_REACH_MM("bond.reach_mm", 10, "mm", 1, 50, COMMON_PRACTICE,
      "paste bridges surfaces up to this distance, and lies this thick"),
  ROCK_STRENGTH_N_MM2("bond.rock_n_mm2", 1.0, "N/mm2", 0.1, 100, PUBLISHED,
      "crushing strength of bored coral rock, 1 to 2.5 (Li et al. 2022); the low end"),
  ROD_STRENGTH_N_MM2("bond.rod_n_mm2", 40, "N/mm2", 1, 500, COMMON_PRACTICE,
      "design bending stress of a fibreglass or acrylic rod"),

  // -- glass --------------------------------------------------------------------------------------------------------
  GLASS_YOUNG_N_MM2("glass.young_n_mm2", 70000, "N/mm2", 10000, 200000, PUBLISHED, "stiffness of glass, EN 572-1"),
  GLASS_POISSON("glass.poisson", 0.20, "", 0, 0.49, PUBLISHED, "Poisson's ratio of glass, EN 572-1"),
  GLASS_DENSITY("glass.density_kg_m3", 2500, "kg/m3", 1000, 5000, PUBLISHED, "density of glass, EN 572-1"),
  GLASS_STRENGTH_N_MM2("glass.strength_n_mm2", 45, "N/mm2", 5, 200, PUBLISHED, "characteristic bending strength, EN 572-1"),
  GLASS_EDGE_FACTOR("glass.edge_factor", 0.9, "", 0.5, 1, PUBLISHED,
      "edges of the pane, k_e: 1.0 polished, 0.9 seamed, 0.8 as cut"),
  GLASS_SURFACE_FACTOR("glass.surface_factor", 1.0, "", 0.3, 1, PUBLISHED,
      "surface of the pane, k_sp: 1.0 for float glass as made"),
  GLASS_LOAD_FACTOR("glass.load_factor", 1.35, "", 1, 3, PUBLISHED, "load factor on the standard's route"),
  GLASS_TRADE_ALLOWABLE_N_MM2("glass.trade_allowable_n_mm2", 5.05, "N/mm2", 0.5, 100, COMMON_PRACTICE,
      "allowed by the trade: 19.2 N/mm2 with a safety factor of 3.8"),
  FOAM_SOFT_N_M3("glass.foam_soft_n_m3", 5e6, "N/m3", 1e4, 1e10, MEMORY, "foam under the tank, soft end"),
  FOAM_STIFF_N_M3("glass.foam_stiff_n_m3", 5e7, "N/m3", 1e4, 1e10, MEMORY, "foam under the tank, stiff end"),
  SPOT_MM("glass.spot_mm", 10, "mm", 1, 100, COMMON_PRACTICE, "on bare glass a foot may bear on one spot of this width"),
  DROP_MM("glass.drop_mm", 50, "mm", 0, 500, COMMON_PRACTICE, "height from which a rock is let slip"),
  POINT_RADIUS_MM("glass.point_radius_mm", 10, "mm", 1, 200, COMMON_PRACTICE, "radius of a stone's point on bare glass"),
  FOOT_PRESSURE_N_MM2("glass.foot_pressure_n_mm2", 1.0, "N/mm2", 0.01, 50, COMMON_PRACTICE,
      "pressure under a foot above which it counts as a point load"),

  // -- handling -----------------------------------------------------------------------------------------------------
  LIFT_ONE_KG("handling.lift_one_kg", 16, "kg", 1, 50, MEMORY, "most one person lifts with arms out"),
  LIFT_TWO_KG("handling.lift_two_kg", 32, "kg", 2, 100, MEMORY, "most two people lift"),
  CEMENT_WORKING_MIN("handling.cement_working_min", 15, "min", 1, 240, MEMORY, "time in which a batch must be used"),
  CEMENT_JOINT_MIN("handling.cement_joint_min", 2, "min", 0.2, 30, MEMORY, "time for one joint"),
  CEMENT_BATCH_G("handling.cement_batch_g", 250, "g", 20, 5000, COMMON_PRACTICE, "most powder in one batch"),
  CEMENT_WASTE("handling.cement_waste", 0.3, "of powder", 0, 2, COMMON_PRACTICE, "what is mixed and not used"),
  CEMENT_G_PER_ML("handling.cement_g_per_ml", 1.6, "g/ml mixed", 0.5, 3, DERIVED, "powder in a millilitre of mixed cement"),
  CEMENT_WATER_G_PER_ML("handling.cement_water_g_per_ml", 0.38, "g/ml mixed", 0.05, 1, DERIVED,
      "water in a millilitre of mixed cement"),
  CEMENT_HANDLING_H("handling.cement_handling_h", 1, "h", 0.05, 168, MEMORY, "until a joint bears its own weight"),
  CEMENT_CURE_DAYS("handling.cement_cure_days", 7, "d", 0.1, 60, COMMON_PRACTICE, "until a joint is counted at full strength"),

  BRACE_MM("handling.brace_mm", 30, "mm", 1, 200, MEMORY,
      "how far down from the rim an opening is as narrow: a brace or a trim; at least the side panes' thickness is taken"),
  OPENING_CLEAR_MM("handling.opening_clear_mm", 10, "mm", 0, 200, COMMON_PRACTICE,
      "room for fingers on each side of a module in an opening"),
  PLACE_MIN("handling.place_min", 5, "min", 0.1, 120, COMMON_PRACTICE, "time to set one rock and try it by hand"),
  MIX_MIN("handling.mix_min", 3, "min", 0, 60, COMMON_PRACTICE, "time to mix one batch of cement"),
  PUTTY_CURE_H("handling.putty_cure_h", 24, "h", 0.05, 168, PUBLISHED,
      "industrial epoxy putty, until it can be worked on (data sheet)"),

  // -- light --------------------------------------------------------------------------------------------------------
  LIGHT_ATTENUATION_1_M("light.attenuation_1_m", 0.15, "1/m", 0, 5, PUBLISHED,
      "clear sea water with 1 mg/m3 of chlorophyll, K(PAR) of Morel et al. 2007, Remote Sens. Environ. 111:69,"
          + " as copied in public code"),
  LIGHT_LEAST_SHARE("light.least_share", 0.5, "of light", 0, 1, COMMON_PRACTICE,
      "living rock that gets less of the light than this, for the rocks above it, is shaded"),

  // -- uncertainty --------------------------------------------------------------------------------------------------
  VARY_FRICTION("vary.friction", 0.20, "of value", 0, 0.9, MEMORY, "half range of friction"),
  VARY_DENSITY("vary.density", 0.15, "of value", 0, 0.9, COMMON_PRACTICE, "half range of mass"),
  VARY_CENTRE("vary.centre", 0.03, "of size", 0, 0.3, COMMON_PRACTICE, "half range of the centre of mass"),
  VARY_CONTACT_MM("vary.contact_mm", 3, "mm", 0, 30, COMMON_PRACTICE, "half range of contact points along their patch"),
  VARY_NORMAL_DEG("vary.normal_deg", 3, "deg", 0, 30, COMMON_PRACTICE, "half range of contact normals"),

  // -- supply -------------------------------------------------------------------------------------------------------
  PRICE_DRY("price.dry_per_kg", 0, "money/kg", 0, 1e6, COMMON_PRACTICE, "dry rock, your own price"),
  PRICE_LIVE("price.live_per_kg", 0, "money/kg", 0, 1e6, COMMON_PRACTICE, "living rock, your own price"),
  PRICE_CAST("price.cast_per_kg", 0, "money/kg", 0, 1e6, COMMON_PRACTICE, "cast rock, your own price"),
  PRICE_STARTER("price.starter_per_l", 0, "money/L", 0, 1e6, COMMON_PRACTICE, "bottled bacteria, per litre of tank water"),
  ROCK_LOW_KG_PER_L("supply.rock_low_kg_per_l", 0.06, "kg/L", 0, 1, COMMON_PRACTICE, "little rock, open layout"),
  ROCK_HIGH_KG_PER_L("supply.rock_high_kg_per_l", 0.24, "kg/L", 0, 1, COMMON_PRACTICE, "much rock, classic layout"),
  SALT_G_PER_L("supply.salt_g_per_l", 38, "g/L", 20, 60, MEMORY, "dry mix bought per litre at a salinity of 35"),
  PANEL_LENGTH_MM("supply.panel_length_mm", 600, "mm", 50, 5000, COMMON_PRACTICE, "stock panel of louvre grid, longer side"),
  PANEL_WIDTH_MM("supply.panel_width_mm", 600, "mm", 50, 5000, COMMON_PRACTICE, "stock panel of louvre grid, shorter side"),
  SAW_MM("supply.saw_mm", 2, "mm", 0, 10, COMMON_PRACTICE, "width lost to a cut"),
  SAND_GRAIN_KG_PER_L("supply.sand_grain_kg_per_l", 2.8, "kg/L", 1, 5, DERIVED,
      "solid density of carbonate sand: 0.36 L displaced per kg"),
  FLOOR_KG_PER_L("supply.floor_kg_per_l", 1.05, "kg/L", 0.5, 3, MEMORY,
      "solid density of the floor's plastic: polystyrene; acrylic 1.19"),
  FLOOR_LOAD_KG_M2("supply.floor_load_kg_m2", 195, "kg/m2", 50, 2000, COMMON_PRACTICE,
      "load for which floors of dwellings are often designed, 40 lb/ft2; local code and span decide");

  private final String key;
  private final double initial;
  private final String unit;
  private final double least;
  private final double most;
  private final Grade grade;
  private final String about;

  Setting(String key, double initial, String unit, double least, double most, Grade grade, String about) {
    this.key = key;
    this.initial = initial;
    this.unit = unit;
    this.least = least;
    this.most = most;
    this.grade = grade;
    this.about = about;
  }

  /** Its place in the file: group, a dot, name. */
  public String key() {
    return key;
  }

  /** The default. */
  public double initial() {
    return initial;
  }

  public String unit() {
    return unit;
  }

  public double least() {
    return least;
  }

  public double most() {
    return most;
  }

  public Grade grade() {
    return grade;
  }

  /** What it is, and where the default comes from. */
  public String about() {
    return about;
  }

  /** A count: only integers make sense. */
  public boolean whole() {
    return this == PUSH_DIRECTIONS;
  }

  public boolean admits(double value) {
    return value >= least && value <= most && (!whole() || value == Math.rint(value));
  }
}
