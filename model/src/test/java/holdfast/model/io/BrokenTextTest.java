package holdfast.model.io;

import static holdfast.model.io.BrokenScene.spoilt;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is no JSON, or has wrong keys or values of a wrong type: told by the reader of the text and the walk over it. */
class BrokenTextTest {
  static Stream<BrokenScene> cases() {
    return Stream.of(
        new BrokenScene("no JSON at all", "hello",
            ":1: $: found no valid JSON at column 1; must be JSON: unrecognized token 'hello': was expecting "
                + "(JSON String, Number, Array, Object or token 'null', 'true' or 'false')"),
        new BrokenScene("empty", "",
            ": $: found an empty file; must hold a JSON object"),
        new BrokenScene("blank", " \n\t\n",
            ": $: found an empty file; must hold a JSON object"),
        new BrokenScene("a list", "[1, 2]",
            ":1: $: found [1, 2]; must be an object, a scene"),
        new BrokenScene("a number", "12",
            ":1: $: found 12; must be an object, a scene"),
        spoilt("missing comma", "\"format\": \"holdfast-scene/1\",",
            "\"format\": \"holdfast-scene/1\"",
            ":3: $.format: found no valid JSON at column 3; must be JSON: unexpected character ('\"'): was "
                + "expecting comma to separate Object entries"),
        spoilt("trailing comma", "\"settings\": { \"push.tier_n\": 20 }",
            "\"settings\": { \"push.tier_n\": 20, }",
            ":23: $.settings['push.tier_n']: found no valid JSON at column 36; must be JSON: unexpected "
                + "character ('}'): an entry was expected, and JSON has no comma after the last one"),
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
                + "where it is")
    );
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void saysWhatIsWrong(BrokenScene broken) {
    broken.saysItsLines();
  }
}
