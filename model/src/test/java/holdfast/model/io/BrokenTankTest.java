package holdfast.model.io;

import static holdfast.model.io.BrokenScene.spoilt;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Tanks, water, sand, floors, devices and lamps that cannot be. */
class BrokenTankTest {
  static Stream<BrokenScene> cases() {
    return Stream.of(
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
                + "mm wide")
    );
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void saysWhatIsWrong(BrokenScene broken) {
    broken.saysItsLines();
  }
}
