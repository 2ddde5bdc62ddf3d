package holdfast.model.io;

import static holdfast.model.io.BrokenScene.spoilt;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rocks whose name, form or mass cannot be. */
class BrokenRocksTest {
  static Stream<BrokenScene> cases() {
    return Stream.of(
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
            ":16: $.rocks[1].sealed_volume_ml: found 2000; must be less than the box round the rock, 1000 ml")
    );
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void saysWhatIsWrong(BrokenScene broken) {
    broken.saysItsLines();
  }
}
