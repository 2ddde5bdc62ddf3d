package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.io.SceneReader;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettleCommandTest {
  /** A box that hovers 20 mm over the floor grid (10 mm high), and one that is 5 mm into it. Invented. */
  private static final String SKETCH = """
      {
        "format": "holdfast-scene/1",
        "tank": { "length_mm": 600, "width_mm": 400, "height_mm": 400, "side_glass_mm": 8, "bottom_glass_mm": 8 },
        "water": { "level_mm": 375 },
        "rocks": [
          { "name": "foot", "kind": "dry",
            "form": { "look": "box", "length_mm": 120, "width_mm": 120, "height_mm": 80, "seed": 1 },
            "mass": { "weighed_kg": 2 } },
          { "name": "cap", "kind": "dry",
            "form": { "look": "box", "length_mm": 80, "width_mm": 80, "height_mm": 40, "seed": 1 },
            "mass": { "weighed_kg": 0.5 } }
        ],
        "placements": [
          { "rock": "foot", "at_mm": [300, 200, 30] },
          { "rock": "cap", "at_mm": [300, 200, 105] }
        ]
      }
      """;

  private static Path sketch(Path folder) throws IOException {
    return Files.writeString(folder.resolve("sketch.json"), SKETCH);
  }

  private static Path atRest(Path folder) throws IOException {
    String text = SKETCH.replace("[300, 200, 30]", "[300, 200, 10]").replace("[300, 200, 105]", "[300, 200, 90]");
    return Files.writeString(folder.resolve("rest.json"), text);
  }

  private static List<Placement> placements(Path file) {
    Scene scene = SceneReader.read(file).match(s -> s, refused -> {
      throw new IllegalStateException(refused.problems().toString());
    });
    return scene.placements();
  }

  @Test
  void writesTheSettledSceneAndTellsWhatMoved(@TempDir Path folder) throws IOException {
    Path out = folder.resolve("settled.json");
    Run run = Run.holdfast("settle", sketch(folder).toString(), "-o", out.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    assertThat(run.out()).startsWith("Both rocks rest on real contacts; the largest move was 20.0 mm (foot).\n")
        .contains("foot").contains("floor grid, cap").endsWith("Wrote " + out + ".\n");
    List<Placement> placed = placements(out);
    double apart = placed.get(1).atMm().z() - placed.get(0).atMm().z();
    double was = placements(folder.resolve("sketch.json")).get(0).atMm().z();
    // Boxes lie flush: 20 mm down, and 80 mm from foot to foot (derived).
    assertThat(placed.get(0).atMm().z()).isCloseTo(was - 20, within(1e-5));
    assertThat(apart).isCloseTo(80, within(1e-5));
  }

  @Test
  void settlingAgainChangesNothing(@TempDir Path folder) throws IOException {
    Path out = folder.resolve("settled.json");
    Path again = folder.resolve("again.json");
    Run.holdfast("settle", sketch(folder).toString(), "-o", out.toString());
    Run run = Run.holdfast("settle", out.toString(), "-o", again.toString());
    assertThat(run.out()).startsWith("Both rocks rest on real contacts; nothing had to move.\n");
    List<Placement> one = placements(out);
    List<Placement> two = placements(again);
    for (int i = 0; i < one.size(); i++) assertThat(two.get(i).atMm().distanceTo(one.get(i).atMm())).isLessThan(1e-5);
  }

  @Test
  void jsonSaysTheSame(@TempDir Path folder) throws IOException {
    Run run = Run.holdfast("settle", sketch(folder).toString(), "--format", "json");
    assertThat(run.exit()).isZero();
    assertThat(run.out()).contains("\"format\": \"holdfast-settle/1\"").contains("\"rests\": true").contains("\"written\": null");
    assertThat(Run.holdfast("settle", folder.resolve("sketch.json").toString(), "--format", "json").out()).isEqualTo(run.out());
  }

  @Test
  void doesNotWriteOverAFileUnasked(@TempDir Path folder) throws IOException {
    Path sketch = sketch(folder);
    Run run = Run.holdfast("settle", sketch.toString(), "-o", sketch.toString());
    assertThat(run.exit()).isEqualTo(2);
    assertThat(Files.readString(sketch)).isEqualTo(SKETCH);
  }

  @Test
  void letsOneRockDownAtASpot(@TempDir Path folder) throws IOException {
    Path out = folder.resolve("next.json");
    Run run = Run.holdfast("settle", atRest(folder).toString(), "--drop", "cap", "--at", "450,200", "-o", out.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    assertThat(run.out()).startsWith("cap comes to lie on floor grid, 0.").contains("; the others stay.").endsWith("Wrote " + out + ".\n");
    Placement cap = placements(out).get(1);
    // On the grid, 10 mm high, with its own origin in the middle of its foot (derived).
    assertThat(cap.atMm().x()).isCloseTo(450, within(0.2));
    assertThat(cap.atMm().z()).isCloseTo(10, within(1e-3));
  }

  /** A box lies steadiest on its broadest face: W b / (2 y), W = 0.5 kg, b 80 mm, y 0.9 of 40 mm (derived). */
  @Test
  void takesTheSteadiestRest(@TempDir Path folder) throws IOException {
    String onEnd = SKETCH.replace("[300, 200, 30]", "[300, 200, 10]").replace("{ \"rock\": \"cap\", \"at_mm\": [300, 200, 105] }",
        "{ \"rock\": \"cap\", \"at_mm\": [450, 200, 60], \"turn\": [0.70710678, 0, 0.70710678, 0] }");
    Path in = Files.writeString(folder.resolve("sketch.json"), onEnd);
    Run run = Run.holdfast("settle", in.toString(), "--drop", "cap", "--at", "450,200", "--steadiest", "--format", "json");
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    double best = Double.parseDouble(run.out().replaceAll("(?s).*?\"tips_at_most_n\": ([0-9.]+).*", "$1"));
    double expected = 0.5 * 9.81 * 80 / (2 * 0.9 * 40);
    assertThat(best).isCloseTo(expected, within(0.01 * expected));
  }

  @Test
  void tellsWhatADropLacks(@TempDir Path folder) throws IOException {
    String scene = sketch(folder).toString();
    assertThat(Run.holdfast("settle", scene, "--steadiest").err()).isEqualTo("holdfast: --steadiest goes with --drop.\n");
    assertThat(Run.holdfast("settle", scene, "--drop", "cap").err()).startsWith("holdfast: --at is missing");
    assertThat(Run.holdfast("settle", scene, "--drop", "cup", "--at", "1,1").err()).contains("Did you mean 'cap'?");
    assertThat(Run.holdfast("settle", scene, "--drop", "cap", "--at", "somewhere").exit()).isEqualTo(2);
    assertThat(Run.holdfast("settle", scene, "--drop", "cap", "--at", "700,10").err())
        .isEqualTo("holdfast: --at must lie in the tank, x from 0 to 600 and y from 0 to 400 mm, was 700,10.\n");
  }
}
