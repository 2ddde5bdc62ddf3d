package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.scene.Scene;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Files that are wrong in one way or several, each with the exact lines that a person gets to read. */
class BrokenScenesTest {
  /** A right scene; every case below spoils a piece of it. Ten lines before the first rock. */
  static final String GOOD = """
      {
        "format": "holdfast-scene/1",
        "name": "small",
        "tank": { "length_mm": 580, "width_mm": 480, "height_mm": 400, "side_glass_mm": 8, "bottom_glass_mm": 10 },
        "floor": { "kind": "grid" },
        "sand": { "depth_mm": 30 },
        "water": { "level_mm": 370 },
        "devices": [ { "name": "overflow", "at_mm": [400, 380, 0], "size_mm": [180, 100, 400] } ],
        "lamps": [ { "name": "lamp", "at_mm": [290, 240, 600], "length_mm": 300, "width_mm": 100 } ],
        "rocks": [
          { "name": "broad foot", "kind": "dry",
            "form": { "look": "slab", "length_mm": 260, "width_mm": 240, "height_mm": 120, "seed": 7 },
            "mass": { "weighed_kg": 5.6, "state": "damp" } },
          { "name": "tall chunk", "kind": "live",
            "form": { "points_mm": [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100]] },
            "mass": { "bulk_kg_per_l": 1.5 } }
        ],
        "placements": [
          { "rock": "broad foot", "at_mm": [150, 200, 10], "turn": [1, 0, 0, 0] },
          { "rock": "tall chunk", "at_mm": [100, 150, 130] }
        ],
        "joints": [ { "between": ["broad foot", "tall chunk"], "bond": "mortar", "amount_ml": 40 } ],
        "settings": { "push.tier_n": 20 }
      }
      """;

  /** A case: its name, what of the good text is replaced by what, and the lines without the file's name. */
  record Case(String name, String text, String... lines) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Case spoilt(String name, String from, String to, String... lines) {
    if (!GOOD.contains(from)) throw new IllegalArgumentException("no '" + from + "' in the good text");
    return new Case(name, GOOD.replace(from, to), lines);
  }

  static Stream<Case> cases() {
    return Stream.of(
        new Case("no JSON at all", "hello",
            ":1: $: found no valid JSON at column 1; must be JSON: unrecognized token 'hello': was expecting "
                + "(JSON String, Number, Array, Object or token 'null', 'true' or 'false')"),
        new Case("empty", "",
            ": $: found an empty file; must hold a JSON object"),
        new Case("blank", " \n\t\n",
            ": $: found an empty file; must hold a JSON object"),
        new Case("a list", "[1, 2]",
            ":1: $: found [1, 2]; must be an object, a scene"),
        new Case("a number", "12",
            ":1: $: found 12; must be an object, a scene"),
        spoilt("missing comma", "\"format\": \"holdfast-scene/1\",",
            "\"format\": \"holdfast-scene/1\"",
            ":3: $.format: found no valid JSON at column 3; must be JSON: unexpected character ('\"'): was "
                + "expecting comma to separate Object entries"),
        spoilt("trailing comma", "\"settings\": { \"push.tier_n\": 20 }",
            "\"settings\": { \"push.tier_n\": 20, }",
            ":23: $.settings['push.tier_n']: found no valid JSON at column 36; must be JSON: unexpected "
                + "character ('}'): was expecting double-quote to start field name"),
        spoilt("a comment", "\"name\": \"small\",",
            "\"name\": \"small\", // mine",
            ":3: $.name: found no valid JSON at column 20; must be JSON: unexpected character ('/'): JSON has no "
                + "comments"),
        spoilt("single quotes", "\"name\": \"small\"",
            "'name': 'small'",
            ":3: $.format: found no valid JSON at column 3; must be JSON: unexpected character ('''): was "
                + "expecting double-quote to start field name"),
        spoilt("cut short", "\"settings\": { \"push.tier_n\": 20 }\n}",
            "\"settings\": { \"push.tier_n\": 20",
            ":24: $.settings['push.tier_n']: found no valid JSON at column 1; must be JSON: unexpected "
                + "end-of-input: expected close marker for Object opened in line 23"),
        spoilt("text after the end", "\"push.tier_n\": 20 }\n}",
            "\"push.tier_n\": 20 }\n}\n{}",
            ":25: $: found more text after the end at column 1; must hold one JSON object and nothing after it"),
        spoilt("leading zero", "\"level_mm\": 370",
            "\"level_mm\": 0370",
            ":7: $.water.level_mm: found no valid JSON at column 27; must be JSON: invalid numeric value: "
                + "Leading zeroes not allowed"),
        spoilt("too deep", "\"name\": \"small\"",
            "\"name\": [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]",
            ":3: $: found more than 32 levels of nesting; must nest no deeper than the format, about seven levels"),
        spoilt("other version", "holdfast-scene/1",
            "holdfast-scene/2",
            ":2: $.format: found \"holdfast-scene/2\"; must be \"holdfast-scene/1\""),
        spoilt("loose blocks", "holdfast-scene/1",
            "loose-blocks/1",
            ":2: $.format: found \"loose-blocks/1\"; must be \"holdfast-scene/1\" (a file of loose blocks is for "
                + "'holdfast solve')"),
        spoilt("no format", "\"format\": \"holdfast-scene/1\",",
            "",
            ":1: $.format: found nothing; must be \"holdfast-scene/1\""),
        spoilt("format of another type", "\"format\": \"holdfast-scene/1\"",
            "\"format\": 1",
            ":2: $.format: found 1; must be \"holdfast-scene/1\""),
        spoilt("key twice", "\"sand\": { \"depth_mm\": 30 }",
            "\"sand\": { \"depth_mm\": 30, \"depth_mm\": 40 }",
            ":6: $.sand.depth_mm: found the key a second time; must be given once"),
        spoilt("mistyped key", "\"side_glass_mm\": 8",
            "\"side_glas_mm\": 8",
            ":4: $.tank.side_glass_mm: found nothing; must be given: thickness of the side panes, from 2 to 100 "
                + "mm",
            ":4: $.tank.side_glas_mm: found a key that is not known in the tank; did you mean side_glass_mm?"),
        spoilt("unknown key", "\"sand\": { \"depth_mm\": 30 }",
            "\"sand\": { \"colour\": \"pink\" }",
            ":6: $.sand.colour: found a key that is not known in the sand; the keys are depth_mm, bulk_kg_per_l"),
        spoilt("unknown part", "\"name\": \"small\"",
            "\"plants\": []",
            ":3: $.plants: found a key that is not known in a scene; the keys are format, name, tank, floor, "
                + "sand, water, devices, lamps, rocks, placements, joints, settings"),
        spoilt("missing key", "\"height_mm\": 400, ",
            "",
            ":4: $.tank.height_mm: found nothing; must be given: inner height, bottom to rim, from 50 to 3000 mm"),
        spoilt("no tank", "\"tank\": {",
            "\"tonk\": {",
            ":1: $.tank: found nothing; must be given: the glass box, inner lengths",
            ":4: $.tonk: found a key that is not known in a scene; did you mean tank?"),
        spoilt("text for a number", "\"length_mm\": 580",
            "\"length_mm\": \"580\"",
            ":4: $.tank.length_mm: found \"580\"; must be a number from 50 to 10000 mm: inner length, left to right"),
        spoilt("null for a number", "\"length_mm\": 580",
            "\"length_mm\": null",
            ":4: $.tank.length_mm: found null; must be a number from 50 to 10000 mm: inner length, left to right"),
        spoilt("list for an object", "\"sand\": { \"depth_mm\": 30 }",
            "\"sand\": [30]",
            ":6: $.sand: found [30]; must be an object, the sand"),
        spoilt("object for a list",
            "\"devices\": [ { \"name\": \"overflow\", \"at_mm\": [400, 380, 0], \"size_mm\": [180, 100, 400] } ]",
            "\"devices\": {}",
            ":8: $.devices: found an object; must be a list of at most 100 objects: boxes that rock stays clear "
                + "of: overflow, pumps"),
        spoilt("text for a flag", "\"rock\": \"tall chunk\", ",
            "\"rock\": \"tall chunk\", \"locked\": \"yes\", ",
            ":20: $.placements[1].locked: found \"yes\"; must be true or false: settling and searching leave it "
                + "where it is"),
        spoilt("negative size", "\"length_mm\": 580",
            "\"length_mm\": -580",
            ":4: $.tank.length_mm: found -580; must be from 50 to 10000 mm: inner length, left to right"),
        spoilt("absurd size", "\"length_mm\": 580",
            "\"length_mm\": 580000",
            ":4: $.tank.length_mm: found 580000; must be from 50 to 10000 mm: inner length, left to right"),
        spoilt("zero size", "\"length_mm\": 260",
            "\"length_mm\": 0",
            ":12: $.rocks[0].form.length_mm: found 0; must be from 5 to 3000 mm: the rock's measured length"),
        spoilt("NaN", "\"level_mm\": 370",
            "\"level_mm\": NaN",
            ":7: $.water.level_mm: found NaN; must be a number from 10 to 3000 mm: height of the full tank's "
                + "water above the inner bottom; absent: 25 mm below the rim"),
        spoilt("infinite", "\"depth_mm\": 30",
            "\"depth_mm\": 1e999",
            ":6: $.sand.depth_mm: found 1e999; must be from 0 to 500 mm: depth of the sand"),
        spoilt("minus infinity word", "\"depth_mm\": 30",
            "\"depth_mm\": -Infinity",
            ":6: $.sand.depth_mm: found -Infinity; must be from 0 to 500 mm: depth of the sand"),
        spoilt("water above the rim", "\"level_mm\": 370",
            "\"level_mm\": 401",
            ":7: $.water.level_mm: found 401; must be at most the tank's height, 400 mm: water ends at the rim"),
        spoilt("sand above the rim", "\"depth_mm\": 30",
            "\"depth_mm\": 420",
            ":6: $.sand.depth_mm: found 420; must be less than the tank's height, 400 mm"),
        spoilt("low tank", "\"height_mm\": 400",
            "\"height_mm\": 50",
            ":7: $.water.level_mm: found 370; must be at most the tank's height, 50 mm: water ends at the rim",
            ":19: $.placements[0].at_mm: found [150, 200, 10]; must put the rock inside the tank: it would reach "
                + "from z = 10 to 130 mm, and the tank from 0 to 50",
            ":20: $.placements[1].at_mm: found [100, 150, 130]; must put the rock inside the tank: it would "
                + "reach from z = 130 to 230 mm, and the tank from 0 to 50"),
        spoilt("opening outside", "\"bottom_glass_mm\": 10",
            "\"bottom_glass_mm\": 10, \"openings\": [ { \"at_mm\": [100, 100], \"length_mm\": 500, \"width_mm\": 200 } ]",
            ":4: $.tank.openings[0]: found an opening that ends at x = 600 mm; must end within the tank's "
                + "length, 580 mm"),
        spoilt("unknown side", "\"bottom_glass_mm\": 10",
            "\"bottom_glass_mm\": 10, \"viewed_from\": [\"frnt\", \"right\", \"right\"]",
            ":4: $.tank.viewed_from[0]: found \"frnt\"; must be front, right, back or left (did you mean front?)",
            ":4: $.tank.viewed_from[2]: found \"right\" a second time; must be named once"),
        spoilt("wall wider than the cell", "\"kind\": \"grid\"",
            "\"cell_mm\": 10, \"wall_mm\": 12",
            ":5: $.floor.wall_mm: found 12; must be less than cell_mm, 10"),
        spoilt("margin too wide", "\"kind\": \"grid\"",
            "\"margin_mm\": 240",
            ":5: $.floor.margin_mm: found 240; must be less than half the tank's 480 mm"),
        spoilt("bare floor with a thickness", "\"kind\": \"grid\"",
            "\"kind\": \"bare\", \"thickness_mm\": 10",
            ":5: $.floor.thickness_mm: found 10; must be left out: a bare bottom has none"),
        spoilt("extent outside", "\"kind\": \"grid\"",
            "\"extent\": { \"at_mm\": [0, 10], \"length_mm\": 580, \"width_mm\": 480 }",
            ":5: $.floor.extent: found an extent that ends at y = 490 mm; must end within the tank's width, 480 "
                + "mm"),
        spoilt("unknown floor", "\"kind\": \"grid\"",
            "\"kind\": \"gird\"",
            ":5: $.floor.kind: found \"gird\"; must be grid, sheet or bare (did you mean grid?): what lies on the "
                + "bottom pane under the rock"),
        spoilt("device outside", "\"size_mm\": [180, 100, 400]",
            "\"size_mm\": [200, 100, 400]",
            ":8: $.devices[0].size_mm: found [200, 100, 400]; must end within the tank, which is 580 mm long and "
                + "480 mm wide; this ends at x = 600, y = 480"),
        spoilt("device above the rim", "[400, 380, 0]",
            "[400, 380, 500]",
            ":8: $.devices[0].at_mm: found [400, 380, 500]; must start below the rim, at 400 mm"),
        spoilt("lamp under water", "[290, 240, 600]",
            "[290, 240, 300]",
            ":9: $.lamps[0].at_mm: found [290, 240, 300]; must hang above the water, at 370 mm"),
        spoilt("lamp beside the tank", "[290, 240, 600]",
            "[290, 900, 600]",
            ":9: $.lamps[0].at_mm: found [290, 900, 600]; must hang over the tank, which is 580 mm long and 480 "
                + "mm wide"),
        spoilt("rock named twice", "\"name\": \"tall chunk\"",
            "\"name\": \"broad foot\"",
            ":14: $.rocks[1].name: found \"broad foot\"; must be different for every rock",
            ":20: $.placements[1].rock: found \"tall chunk\"; must be the name of a rock in $.rocks",
            ":22: $.joints[0].between[1]: found \"tall chunk\"; must be the name of a rock in $.rocks"),
        spoilt("nameless rock", "\"name\": \"tall chunk\"",
            "\"name\": \" \"",
            ":14: $.rocks[1].name: found \" \"; must be text of 1 to 80 characters on one line, without spaces at "
                + "its ends: words, different for every rock",
            ":20: $.placements[1].rock: found \"tall chunk\"; must be the name of a rock in $.rocks",
            ":22: $.joints[0].between[1]: found \"tall chunk\"; must be the name of a rock in $.rocks"),
        spoilt("unknown look", "\"look\": \"slab\"",
            "\"look\": \"slap\"",
            ":12: $.rocks[0].form.look: found \"slap\"; must be block, slab, round, shelf, branch, arch, spike or "
                + "box (did you mean slab?): the kind of stone to generate from measured lengths"),
        spoilt("unknown kind", "\"kind\": \"live\"",
            "\"kind\": \"alive\"",
            ":14: $.rocks[1].kind: found \"alive\"; must be dry, live or cast (did you mean live?): where the "
                + "stone comes from"),
        spoilt("fractional seed", "\"seed\": 7",
            "\"seed\": 7.5",
            ":12: $.rocks[0].form.seed: found 7.5; must be a whole number from 0 to 2147483647: the same seed "
                + "gives the same stone"),
        spoilt("two forms", "\"look\": \"slab\",",
            "\"look\": \"slab\", \"points_mm\": [],",
            ":12: $.rocks[0].form: found look and points_mm; must have exactly one of look (with length_mm, "
                + "width_mm, height_mm), points_mm, lobes_mm, mesh_file"),
        spoilt("no form", "\"form\": { \"points_mm\": [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100]] }",
            "\"form\": {}",
            ":15: $.rocks[1].form: found no form; must have exactly one of look (with length_mm, width_mm, "
                + "height_mm), points_mm, lobes_mm, mesh_file"),
        spoilt("three points", ", [0, 0, 100]] }",
            "] }",
            ":15: $.rocks[1].form.points_mm: found a list of 3; must be a list of 4 to 20000 points [x, y, z] in "
                + "mm"),
        spoilt("flat points", "[0, 0, 100]]",
            "[100, 100, 0]]",
            ":15: $.rocks[1].form.points_mm: found points without a volume (all points lie in one plane); must "
                + "be the corners of a solid"),
        spoilt("point of two numbers", "[0, 0, 100]]",
            "[0, 100]]",
            ":15: $.rocks[1].form.points_mm[3]: found [0, 100]; must be a list of 3 numbers from -3000 to 3000 "
                + "mm: a point x, y, z"),
        spoilt("point with a text", "[0, 0, 100]]",
            "[0, 0, \"100\"]]",
            ":15: $.rocks[1].form.points_mm[3]: found [0, 0, \"100\"]; must be a list of 3 numbers from -3000 to "
                + "3000 mm: a point x, y, z"),
        spoilt("point far away", "[0, 0, 100]]",
            "[0, 0, 1e5]]",
            ":15: $.rocks[1].form.points_mm[3][2]: found 1e5; must be from -3000 to 3000 mm: a point x, y, z"),
        spoilt("no lobes", "\"points_mm\": [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100]]",
            "\"lobes_mm\": []",
            ":15: $.rocks[1].form.lobes_mm: found []; must be a list of 1 to 200 lobes, each a list of points"),
        spoilt("mesh elsewhere", "\"points_mm\": [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100]]",
            "\"mesh_file\": \"/scans/one.obj\"",
            ":15: $.rocks[1].form.mesh_file: found \"/scans/one.obj\"; must be named from the scene file's folder, "
                + "with forward slashes, so that both can be moved"),
        spoilt("mass of nothing", "\"weighed_kg\": 5.6",
            "\"weighed_kg\": 0",
            ":13: $.rocks[0].mass.weighed_kg: found 0; must be from 0.001 to 500 kg: what the scale showed"),
        spoilt("mass of a boulder", "\"weighed_kg\": 5.6",
            "\"weighed_kg\": 5600",
            ":13: $.rocks[0].mass.weighed_kg: found 5600; must be from 0.001 to 500 kg: what the scale showed"),
        spoilt("denser than its mineral", "\"weighed_kg\": 5.6",
            "\"weighed_kg\": 56",
            ":13: $.rocks[0].mass.weighed_kg: found 56; must be less: in a box of 7.49 L that is 6.36 kg/L, more "
                + "than the mineral's 2.78 kg/L; check mass and lengths"),
        spoilt("bulk over the mineral", "\"bulk_kg_per_l\": 1.5",
            "\"bulk_kg_per_l\": 2.9",
            ":16: $.rocks[1].mass.bulk_kg_per_l: found 2.9; must be at most the mineral's density, 2.78 kg/L"),
        spoilt("two masses", "\"bulk_kg_per_l\": 1.5",
            "\"bulk_kg_per_l\": 1.5, \"weighed_kg\": 2",
            ":16: $.rocks[1].mass: found weighed_kg and bulk_kg_per_l; must have exactly one of weighed_kg, "
                + "bulk_kg_per_l"),
        spoilt("held water of a dry rock", "\"state\": \"damp\"",
            "\"state\": \"dry\", \"held_water_kg\": 0.5",
            ":13: $.rocks[0].mass.held_water_kg: found 0.5; must be left out unless state is \"damp\""),
        spoilt("held water over the mass", "\"state\": \"damp\"",
            "\"state\": \"damp\", \"held_water_kg\": 6",
            ":13: $.rocks[0].mass.held_water_kg: found 6; must be less than weighed_kg, 5.6"),
        spoilt("sealed volume over the rock", "\"bulk_kg_per_l\": 1.5 }",
            "\"bulk_kg_per_l\": 1.5 }, \"sealed_volume_ml\": 2000",
            ":16: $.rocks[1].sealed_volume_ml: found 2000; must be less than the box round the rock, 1000 ml"),
        spoilt("unknown rock placed", "{ \"rock\": \"tall chunk\"",
            "{ \"rock\": \"tal chunk\"",
            ":20: $.placements[1].rock: found \"tal chunk\"; must be the name of a rock in $.rocks; did you mean "
                + "\"tall chunk\"?"),
        spoilt("rock placed twice", "{ \"rock\": \"tall chunk\"",
            "{ \"rock\": \"broad foot\"",
            ":20: $.placements[1].rock: found \"broad foot\" a second time; must be placed once"),
        spoilt("rock outside", "[150, 200, 10]",
            "[1500, 200, 10]",
            ":19: $.placements[0].at_mm: found [1500, 200, 10]; must put the rock inside the tank: it would "
                + "reach from x = 1370 to 1630 mm, and the tank from 0 to 580"),
        spoilt("middle under the bottom", "[150, 200, 10]",
            "[150, 200, -61]",
            ":19: $.placements[0].at_mm: found [150, 200, -61]; must put the rock inside the tank: it would "
                + "reach from z = -61 to 59 mm, and the tank from 0 to 400"),
        spoilt("points through a pane", "[100, 150, 130]",
            "[-30, 150, 130]",
            ":20: $.placements[1].at_mm: found [-30, 150, 130]; must put the rock inside the tank: it would "
                + "reach from x = -30 to 70 mm, and the tank from 0 to 580"),
        spoilt("turned out of the tank", "\"at_mm\": [100, 150, 130]",
            "\"at_mm\": [20, 150, 130], \"turn_deg\": [90, 0, 0]",
            ":20: $.placements[1].at_mm: found [20, 150, 130]; must put the rock inside the tank: it would reach "
                + "from x = -80 to 20 mm, and the tank from 0 to 580"),
        spoilt("no unit quaternion", "[1, 0, 0, 0]",
            "[1, 0, 0, 0.5]",
            ":19: $.placements[0].turn: found [1, 0, 0, 0.5]; must have length 1, has 1.11803399; at length 1 it "
                + "is [0.89442719, 0, 0, 0.4472136]"),
        spoilt("zero quaternion", "[1, 0, 0, 0]",
            "[0, 0, 0, 0]",
            ":19: $.placements[0].turn: found [0, 0, 0, 0]; must have length 1, has 0; no turn is [1, 0, 0, 0]"),
        spoilt("two turns", "\"turn\": [1, 0, 0, 0]",
            "\"turn\": [1, 0, 0, 0], \"turn_deg\": [0, 0, 0]",
            ":19: $.placements[0]: found turn and turn_deg; must have only one of the two"),
        spoilt("turn of three", "[1, 0, 0, 0]",
            "[1, 0, 0]",
            ":19: $.placements[0].turn: found [1, 0, 0]; must be a list of 4 numbers: a unit quaternion w, x, y, "
                + "z"),
        spoilt("long quaternion", "[1, 0, 0, 0]",
            "[0, 3, 0, 4]",
            ":19: $.placements[0].turn: found [0, 3, 0, 4]; must have length 1, has 5; at length 1 it is [0, "
                + "0.6, 0, 0.8]"),
        spoilt("turn over a circle", "\"turn\": [1, 0, 0, 0]",
            "\"turn_deg\": [0, 400, 0]",
            ":19: $.placements[0].turn_deg[1]: found 400; must be from -360 to 360 degrees: turns about the "
                + "fixed axes z, y, x; the one about x comes first"),
        spoilt("joint of an unknown rock", "[\"broad foot\", \"tall chunk\"]",
            "[\"broad foot\", \"tall chunks\"]",
            ":22: $.joints[0].between[1]: found \"tall chunks\"; must be the name of a rock in $.rocks; did you "
                + "mean \"tall chunk\"?"),
        spoilt("joint with itself", "[\"broad foot\", \"tall chunk\"]",
            "[\"broad foot\", \"broad foot\"]",
            ":22: $.joints[0].between: found [\"broad foot\", \"broad foot\"]; must name two different rocks"),
        spoilt("joint of three", "[\"broad foot\", \"tall chunk\"]",
            "[\"broad foot\", \"tall chunk\", \"other\"]",
            ":22: $.joints[0].between: found [\"broad foot\", \"tall chunk\", \"other\"]; must be a list of two texts, "
                + "the names of two rocks"),
        spoilt("joint twice", "\"amount_ml\": 40 }",
            "\"amount_ml\": 40 }, { \"between\": [\"tall chunk\", \"broad foot\"], \"bond\": \"none\" }",
            ":22: $.joints[1].between: found \"tall chunk\" and \"broad foot\" a second time; must be one joint for "
                + "each pair"),
        spoilt("joint without its amount", ", \"amount_ml\": 40",
            "",
            ":22: $.joints[0].amount_ml: found nothing; must be given: volume of mortar, putty or gel, from 0.1 "
                + "to 5000 ml"),
        spoilt("joint made in a place of no name", "\"amount_ml\": 40",
            "\"amount_ml\": 40, \"made_in\": \"garden\"",
            ":22: $.joints[0].made_in: found \"garden\"; must be bench or tank: where the joint is made: rocks joined on the "
                + "bench go into the tank as one piece"),
        spoilt("open joint made somewhere", "\"bond\": \"mortar\", \"amount_ml\": 40",
            "\"bond\": \"none\", \"made_in\": \"tank\"",
            ":22: $.joints[0].made_in: found \"tank\"; must be left out beside bond \"none\""),
        spoilt("rod with an amount", "\"bond\": \"mortar\", \"amount_ml\": 40",
            "\"bond\": \"rod\", \"amount_ml\": 40, \"rod_diameter_mm\": 8",
            ":22: $.joints[0].rod_depth_mm: found nothing; must be given: how deep the rod goes into each of the "
                + "two rocks, from 5 to 500 mm",
            ":22: $.joints[0].amount_ml: found 40; must be left out beside bond \"rod\""),
        spoilt("setting out of range", "\"push.tier_n\": 20",
            "\"push.tier_n\": 900",
            ":23: $.settings['push.tier_n']: found 900; must be from 0.1 to 500 N: force every rock must bear "
                + "from any side: 5 N small fish, 20 N urchin or large fish, 50 N a hand"),
        spoilt("unknown setting", "\"push.tier_n\": 20",
            "\"push.teir_n\": 20",
            ":23: $.settings['push.teir_n']: found a key that is not known in the settings; did you mean "
                + "push.tier_n?"),
        spoilt("setting far off", "\"push.tier_n\": 20",
            "\"gravity\": 20",
            ":23: $.settings.gravity: found a key that is not known in the settings; see 'holdfast defaults' for "
                + "the keys"),
        spoilt("half a direction", "\"push.tier_n\": 20",
            "\"push.directions\": 16.5",
            ":23: $.settings['push.directions']: found 16.5; must be a whole number from 4 to 72 directions: "
                + "directions round the compass"),
        spoilt("settings in no order", "\"push.tier_n\": 20",
            "\"handling.lift_one_kg\": 40",
            ":23: $.settings['handling.lift_one_kg']: found 40; must be at most handling.lift_two_kg, 32"),
        spoilt("both ends of an order", "\"push.tier_n\": 20",
            "\"glass.foam_stiff_n_m3\": 1e6",
            ":23: $.settings['glass.foam_stiff_n_m3']: found 1e6; must be at least glass.foam_soft_n_m3, 5000000")
    );
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void saysWhatIsWrong(Case broken) {
    String expected = String.join("\n", Arrays.stream(broken.lines()).map(l -> "small.json" + l).toList()) + "\n";
    assertThat(rendered(broken.text())).isEqualTo(expected);
  }

  @Test
  void severalProblemsComeTogetherInTheOrderOfTheFile() {
    String text = GOOD
        .replace("\"push.tier_n\": 20", "\"push.tier_n\": \"hard\"")
        .replace("\"bond\": \"mortar\"", "\"bond\": \"glue\"")
        .replace("{ \"rock\": \"tall chunk\"", "{ \"rock\": \"tall chimney\"")
        .replace("\"weighed_kg\": 5.6", "\"weighed_kg\": -5.6")
        .replace("\"look\": \"slab\", \"length_mm\": 260", "\"look\": 3, \"length_mm\": 1e999")
        .replace("\"level_mm\": 370", "\"levl_mm\": 370")
        .replace("\"length_mm\": 580, \"width_mm\": 480", "\"width_mm\": 48");
    assertThat(rendered(text)).isEqualTo("""
        small.json:4: $.tank.length_mm: found nothing; must be given: inner length, left to right, from 50 to 10000 mm
        small.json:4: $.tank.width_mm: found 48; must be from 50 to 10000 mm: inner width, front to back
        small.json:7: $.water.levl_mm: found a key that is not known in the water; did you mean level_mm?
        small.json:12: $.rocks[0].form.look: found 3; must be block, slab, round, shelf, branch, arch, spike or box: \
        the kind of stone to generate from measured lengths
        small.json:12: $.rocks[0].form.length_mm: found 1e999; must be from 5 to 3000 mm: the rock's measured length
        small.json:13: $.rocks[0].mass.weighed_kg: found -5.6; must be from 0.001 to 500 kg: what the scale showed
        small.json:20: $.placements[1].rock: found "tall chimney"; must be the name of a rock in $.rocks
        small.json:22: $.joints[0].bond: found "glue"; must be none, mortar, putty, gel or rod: what fixes the joint
        small.json:23: $.settings['push.tier_n']: found "hard"; must be a number from 0.1 to 500 N: \
        force every rock must bear from any side: 5 N small fish, 20 N urchin or large fish, 50 N a hand
        """);
  }

  @Test
  void aFloodOfProblemsIsCutOff() {
    String joints = "{ \"between\": [\"a\", \"b\"], \"bond\": \"none\" }, ".repeat(300);
    String text = GOOD.replace("\"joints\": [ ", "\"joints\": [ " + joints);
    String[] lines = rendered(text).split("\n");
    assertThat(lines).hasSize(Problems.MOST_SHOWN + 1);
    // 300 pairs of unknown names, and all but the first a pair that was there before.
    assertThat(lines[Problems.MOST_SHOWN]).isEqualTo("small.json: $: found " + (2 * 300 + 299 - Problems.MOST_SHOWN)
        + " more problems; mend these first");
  }

  static String rendered(String text) {
    return SceneReader.read(text, "small.json").match((Scene s) -> "read\n", ReadResult.Refused::rendered);
  }
}
