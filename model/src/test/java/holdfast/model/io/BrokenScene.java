package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.scene.Scene;
import java.util.Arrays;
import java.util.List;

/**
 * A file that is wrong, with the exact lines that a person gets to read.
 *
 * @param name of the case
 * @param text of the file
 * @param lines without the file's name
 */
record BrokenScene(String name, String text, List<String> lines) {
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

  BrokenScene(String name, String text, String... lines) {
    this(name, text, List.of(lines));
  }

  /** The good scene with a piece of its text replaced. */
  static BrokenScene spoilt(String name, String from, String to, String... lines) {
    if (!GOOD.contains(from)) throw new IllegalArgumentException("no '" + from + "' in the good text");
    return new BrokenScene(name, GOOD.replace(from, to), lines);
  }

  void saysItsLines() {
    String expected = String.join("\n", lines.stream().map(l -> "small.json" + l).toList()) + "\n";
    assertThat(rendered(text)).isEqualTo(expected);
  }

  static String rendered(String text) {
    return SceneReader.read(text, "small.json").match((Scene s) -> "read\n", ReadResult.Refused::rendered);
  }

  @Override
  public String toString() {
    return name;
  }
}
