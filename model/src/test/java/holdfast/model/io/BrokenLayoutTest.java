package holdfast.model.io;

import static holdfast.model.io.BrokenScene.spoilt;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Placements, joints and settings that cannot be. */
class BrokenLayoutTest {
  static Stream<BrokenScene> cases() {
    return Stream.of(
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
  void saysWhatIsWrong(BrokenScene broken) {
    broken.saysItsLines();
  }
}
