package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.geom.Quat;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A text in canonical layout comes back byte for byte, and any other text as the canonical text of the same scene. */
class RoundTripTest {
  /** Every key of the format at least once, laid out as the writer lays it out. */
  static final String FULL = """
      {
        "format": "holdfast-scene/1",
        "name": "corner with an arch",
        "tank": {
          "length_mm": 1190,
          "width_mm": 440.5,
          "height_mm": 480,
          "side_glass_mm": 10,
          "bottom_glass_mm": 12,
          "support": "full",
          "tempered_bottom": true,
          "drilled_bottom": true,
          "openings": [
            { "at_mm": [60, 60], "length_mm": 500, "width_mm": 320 },
            { "at_mm": [630, 60], "length_mm": 500, "width_mm": 320 }
          ],
          "viewed_from": ["front", "right", "back"],
          "may_touch": ["left"]
        },
        "floor": {
          "cell_mm": 15,
          "wall_mm": 2,
          "thickness_mm": 12,
          "margin_mm": 20,
          "extent": { "at_mm": [20, 20], "length_mm": 1000, "width_mm": 400 }
        },
        "sand": { "depth_mm": 30, "bulk_kg_per_l": 1.6 },
        "water": { "level_mm": 455, "salinity": 34.5, "temperature_c": 25.5 },
        "devices": [
          { "name": "overflow", "at_mm": [1000, 300, 0], "size_mm": [190, 140, 480], "clear_mm": 100 }
        ],
        "lamps": [
          { "name": "main lamp", "at_mm": [500, 220, 700], "length_mm": 600, "width_mm": 200, "share": 0.6 },
          { "name": "side lamp", "at_mm": [900, 220, 700], "length_mm": 200, "width_mm": 200, "share": 0.4 }
        ],
        "rocks": [
          {
            "name": "broad foot",
            "kind": "dry",
            "form": { "look": "slab", "length_mm": 300, "width_mm": 200, "height_mm": 120, "seed": 7 },
            "mass": { "weighed_kg": 5.6 },
            "sealed_volume_ml": 20,
            "slimy": true,
            "removable": true,
            "price_per_kg": 7.25
          },
          {
            "name": "grüner \\"Turm\\"",
            "kind": "live",
            "form": { "points_mm": [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100.25]] },
            "mass": { "weighed_kg": 0.2, "state": "damp", "held_water_kg": 0.03 },
            "slimy": false
          },
          {
            "name": "hook",
            "kind": "cast",
            "form": {
              "lobes_mm": [
                [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100]],
                [[0, 0, 50], [100, 0, 50], [0, 100, 50], [0, 0, 150], [10, 10, 150], [20, 10, 150]]
              ]
            },
            "mass": { "bulk_kg_per_l": 1.5 }
          },
          {
            "name": "scanned one",
            "kind": "dry",
            "form": { "mesh_file": "scans/one.obj", "unit_mm": 1000 },
            "mass": { "weighed_kg": 1.25, "state": "underwater" }
          }
        ],
        "placements": [
          { "rock": "broad foot", "at_mm": [300, 220, 12], "locked": true },
          { "rock": "grüner \\"Turm\\"", "at_mm": [300, 220, 140], "turn": [0.6, 0, 0, 0.8] }
        ],
        "joints": [
          { "between": ["broad foot", "grüner \\"Turm\\""], "bond": "mortar", "amount_ml": 40 },
          {
            "between": ["hook", "broad foot"],
            "bond": "rod",
            "rod_diameter_mm": 8,
            "rod_depth_mm": 30,
            "rod_glued": true,
            "made_in": "tank"
          },
          { "between": ["hook", "scanned one"], "bond": "none" }
        ],
        "settings": { "push.tier_n": 50, "push.directions": 24, "glass.foam_soft_n_m3": 6000000 }
      }
      """;

  @Test
  void canonicalTextComesBackByteForByte() {
    assertThat(SceneWriter.write(scene(FULL))).isEqualTo(FULL);
  }

  @Test
  void everyPartIsRead() {
    Scene s = scene(FULL);
    assertThat(s.tank().widthMm()).isEqualTo(440.5);
    assertThat(s.floor().wallMm()).isEqualTo(2);
    assertThat(s.water().levelMm()).isEqualTo(455);
    assertThat(s.devices()).hasSize(1);
    assertThat(s.lamps()).hasSize(2);
    assertThat(s.rocks().get(2).form()).isInstanceOfSatisfying(Rock.Lobes.class, l -> assertThat(l.lobesMm()).hasSize(2));
    assertThat(s.placement("grüner \"Turm\"").orElseThrow().turn()).isEqualTo(new Quat(0.6, 0, 0, 0.8));
    assertThat(s.joint("broad foot", "hook").orElseThrow().rodDepthMm()).isEqualTo(30);
    assertThat(s.joint("broad foot", "hook").orElseThrow().madeIn()).isEqualTo(JointSpec.MadeIn.TANK);
    assertThat(s.joints().get(0).madeIn()).isEqualTo(JointSpec.MadeIn.BENCH);
    assertThat(s.settings().get(Setting.PUSH_TIER_N)).isEqualTo(50);
    assertThat(s.settings().get(Setting.SHAKE_G)).isEqualTo(Setting.SHAKE_G.initial());
  }

  @Test
  void whatEqualsItsDefaultIsLeftOut() {
    String wordy = """
        {"settings": {}, "joints": [], 
         "placements": [{"locked": false, "turn": [1, 0, 0, 0], "at_mm": [1e2, 100.0, 10], "rock": "foot"}],
         "rocks": [{"kind": "live", "slimy": true, "removable": false, "sealed_volume_ml": 0, "name": "foot",
           "mass": {"state": "dry", "weighed_kg": 1.50},
           "form": {"seed": 1, "look": "block", "length_mm": 100, "width_mm": 90, "height_mm": 80}}],
         "floor": {"kind": "grid", "cell_mm": 12.7}, "sand": {"depth_mm": 0}, "water": {"salinity": 35},
         "tank": {"length_mm": 290, "width_mm": 290, "height_mm": 300, "side_glass_mm": 5, "bottom_glass_mm": 6,
           "support": "unknown", "openings": [], "viewed_from": ["front"], "may_touch": []},
         "format": "holdfast-scene/1"}
        """;
    assertThat(SceneWriter.write(scene(wordy))).isEqualTo("""
        {
          "format": "holdfast-scene/1",
          "tank": { "length_mm": 290, "width_mm": 290, "height_mm": 300, "side_glass_mm": 5, "bottom_glass_mm": 6 },
          "water": { "level_mm": 275 },
          "rocks": [
            {
              "name": "foot",
              "kind": "live",
              "form": { "look": "block", "length_mm": 100, "width_mm": 90, "height_mm": 80 },
              "mass": { "weighed_kg": 1.5 }
            }
          ],
          "placements": [
            { "rock": "foot", "at_mm": [100, 100, 10] }
          ]
        }
        """);
  }

  @Test
  void turnsInDegreesBecomeQuaternions() {
    Scene s = scene(FULL.replace("\"turn\": [0.6, 0, 0, 0.8]", "\"turn_deg\": [90, 0, 0]"));
    // A quarter turn about z: cos 45 degrees and sin 45 degrees (exact).
    Quat q = s.placements().get(1).turn();
    assertThat(q.w()).isCloseTo(Math.sqrt(0.5), org.assertj.core.data.Offset.offset(1e-15));
    assertThat(q.z()).isCloseTo(Math.sqrt(0.5), org.assertj.core.data.Offset.offset(1e-15));
    assertThat(scene(SceneWriter.write(s))).isEqualTo(s);
  }

  @Test
  void savingReplacesTheFileAndLeavesNothingBeside(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("a scene.json");
    Files.writeString(file, "old");
    SceneFiles.save(file, scene(FULL));
    assertThat(Files.readString(file)).isEqualTo(FULL);
    try (var left = Files.list(folder)) {
      assertThat(left.toList()).isEqualTo(List.of(file));
    }
  }

  static Scene scene(String json) {
    return SceneReader.read(json, "scene.json").match(s -> s, r -> {
      throw new AssertionError(r.rendered());
    });
  }
}
