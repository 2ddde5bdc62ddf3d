package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BumpCommandTest {
  /** A slab with a tall chunk on it, flush on the floor grid. Invented. */
  private static final String SCENE = """
      {
        "format": "holdfast-scene/1",
        "tank": { "length_mm": 600, "width_mm": 400, "height_mm": 400, "side_glass_mm": 8, "bottom_glass_mm": 8 },
        "water": { "level_mm": 375 },
        "rocks": [
          { "name": "slab", "kind": "dry", "form": { "points_mm": [
              [-80,-60,0],[80,-60,0],[80,60,0],[-80,60,0],[-80,-60,60],[80,-60,60],[80,60,60],[-80,60,60]] },
            "mass": { "weighed_kg": 2 } },
          { "name": "tall chunk", "kind": "dry", "form": { "points_mm": [
              [-30,-60,0],[30,-60,0],[30,60,0],[-30,60,0],[-30,-60,160],[30,-60,160],[30,60,160],[-30,60,160]] },
            "mass": { "weighed_kg": 2 } }
        ],
        "placements": [
          { "rock": "slab", "at_mm": [300, 200, 10] },
          { "rock": "tall chunk", "at_mm": [300, 200, 70] }
        ]
      }
      """;

  private static String scene(Path folder) throws IOException {
    return Files.writeString(folder.resolve("heap.json"), SCENE).toString();
  }

  @Test
  void aSmallBlowLeavesItStandingAndALargeOneToppleIt(@TempDir Path folder) throws IOException {
    String scene = scene(folder);
    Run small = Run.holdfast("bump", scene, "--rock", "tall chunk", "--toward", "right", "--impulse", "0.05");
    assertThat(small.err()).isEmpty();
    assertThat(small.exit()).isZero();
    assertThat(small.out()).startsWith("Nothing ");
    Run large = Run.holdfast("bump", scene, "--rock", "tall chunk", "--toward", "right", "--impulse", "1.5");
    assertThat(large.exit()).isEqualTo(1);
    assertThat(large.out()).startsWith("tall chunk falls")
        .contains("tall chunk is struck with 1.50 N s toward the right, at 0.9 of its height (tank filled).")
        .contains("not a verdict");
  }

  @Test
  void takingOutTheSlabLetsTheChunkFall(@TempDir Path folder) throws IOException {
    Run run = Run.holdfast("bump", scene(folder), "--remove", "slab", "--format", "json");
    assertThat(run.exit()).isEqualTo(1);
    assertThat(run.out()).contains("\"format\": \"holdfast-bump/1\"").contains("\"removed\": true").contains("\"outcome\": \"fell\"");
  }

  @Test
  void theSameBumpGivesTheSameBytesAndItsFramesTheSamePoses(@TempDir Path folder) throws IOException {
    String scene = scene(folder);
    Path frames = folder.resolve("frames.json");
    String[] args = {"bump", scene, "--rock", "tall chunk", "--toward", "20", "--fish", "400 g", "--speed", "3",
        "--frames", frames.toString(), "--format", "json"};
    Run one = Run.holdfast(args);
    String first = Files.readString(frames);
    Run two = Run.holdfast(args);
    assertThat(two.out()).isEqualTo(one.out());
    assertThat(Files.readString(frames)).isEqualTo(first).contains("\"format\": \"holdfast-frames/1\"").contains("\"time_s\": 0");
    // Sixty a second, each rock's own origin and turn as its placement has them; the slab starts where it is placed.
    JsonNode root = new ObjectMapper().readTree(first);
    assertThat(root.get("rocks")).extracting(JsonNode::asText).containsExactly("slab", "tall chunk");
    JsonNode all = root.get("frames");
    assertThat(all.get(1).get("time_s").asDouble()).isCloseTo(1 / 60.0, within(1 / 480.0));
    JsonNode slab = all.get(0).get("at_mm_and_turn").get(0);
    assertThat(slab).hasSize(7);
    double[] placed = {300, 200, 10, 1, 0, 0, 0};
    for (int i = 0; i < 7; i++) assertThat(slab.get(i).asDouble()).isCloseTo(placed[i], within(0.2));
  }

  @Test
  void drawsTheSection(@TempDir Path folder) throws IOException {
    Path png = folder.resolve("fall.png");
    Run run = Run.holdfast("bump", scene(folder), "--rock", "tall chunk", "--toward", "left", "--least", "--section", png.toString());
    assertThat(run.exit()).isEqualTo(1);
    assertThat(run.out()).contains("Least blow that makes something fall here: ").contains("Wrote " + png + ": ");
    BufferedImage strip = ImageIO.read(png.toFile());
    assertThat(strip.getWidth()).isGreaterThan(800);
  }

  @Test
  void diggingUnderAFootOnSandIsPlayedWithItsFrames(@TempDir Path folder) throws IOException {
    String onSand = SCENE.replace("\"water\":", "\"floor\": { \"kind\": \"bare\" }, \"sand\": { \"depth_mm\": 10 }, \"water\":");
    String scene = Files.writeString(folder.resolve("sandy.json"), onSand).toString();
    Path frames = folder.resolve("fall.json");
    Run run = Run.holdfast("bump", scene, "--undermine", "slab", "--frames", frames.toString());
    assertThat(run.err()).isEmpty();
    // 10 mm of sand under both: each goes down by as much; a fifth of the slab's 60 mm would be a fall (derived).
    assertThat(run.exit()).isZero();
    assertThat(run.out()).startsWith("Nothing falls; slab and tall chunk shift by up to 10.")
        .contains("The sand is dug from under slab (tank filled).").contains("Wrote " + frames + ": ");
    assertThat(Files.readString(frames)).contains("\"rocks\": [\"slab\", \"tall chunk\"]");
    Run json = Run.holdfast("bump", scene, "--undermine", "slab", "--foot", "1", "--format", "json");
    assertThat(json.out()).contains("\"undermined\": true, \"foot\": 1, \"feet\": 1");
  }

  @Test
  void tellsWhatCannotBeDug(@TempDir Path folder) throws IOException {
    String scene = scene(folder);
    Run floor = Run.holdfast("bump", scene, "--undermine", "slab");
    assertThat(floor.exit()).isEqualTo(2);
    assertThat(floor.err()).isEqualTo("holdfast: no foot of 'slab' stands on sand: there is nothing to dig from under it.\n"
        + "  It bears on the floor itself or on other rocks.\n");
    assertThat(Run.holdfast("bump", scene, "--undermine", "slab", "--remove", "slab").err())
        .contains("given were --remove and --undermine");
    assertThat(Run.holdfast("bump", scene, "--undermine", "slab", "--toward", "left").exit()).isEqualTo(2);
    assertThat(Run.holdfast("bump", scene, "--remove", "slab", "--foot", "1").err()).isEqualTo("holdfast: --foot goes with --undermine.\n");
  }

  /** An option that would do nothing is refused, not passed over in silence. */
  @Test
  void anOptionThatWouldDoNothingIsTold(@TempDir Path folder) throws IOException {
    String scene = scene(folder);
    String[] blow = {"bump", scene, "--rock", "slab", "--toward", "left", "--impulse", "0.1"};
    assertThat(Run.holdfast(with(blow, "--speed", "2")).err()).isEqualTo("holdfast: --speed goes with --fish or --arm.\n");
    assertThat(Run.holdfast(with(blow, "--stroke", "20")).err()).isEqualTo("holdfast: --stroke goes with --arm.\n");
    assertThat(Run.holdfast("bump", scene, "--remove", "slab", "--height", "0.5").err())
        .isEqualTo("holdfast: --height goes with a blow or an arm, not with --remove.\n");
    assertThat(Run.holdfast(with(blow, "--foot", "1")).exit()).isEqualTo(2);
  }

  private static String[] with(String[] line, String... more) {
    return Stream.of(line, more).flatMap(Stream::of).toArray(String[]::new);
  }

  @Test
  void aNumberOutOfItsRangeIsToldAsItWasTyped(@TempDir Path folder) throws IOException {
    String[] line = {"bump", scene(folder), "--rock", "slab", "--toward", "left"};
    assertThat(Run.holdfast(with(line, "--impulse", "-0.5")).err())
        .isEqualTo("holdfast: --impulse must be from 0.000001 to 1000 N s, was -0.5 N s.\n");
    assertThat(Run.holdfast(with(line, "--impulse", "1e9")).err())
        .isEqualTo("holdfast: --impulse must be from 0.000001 to 1000 N s, was 1000000000 N s.\n");
    assertThat(Run.holdfast(with(line, "--impulse", "NaN")).err())
        .isEqualTo("holdfast: --impulse must be from 0.000001 to 1000 N s, was no number.\n");
    assertThat(Run.holdfast(with(line, "--fish", "300", "--speed", "2")).err())
        .isEqualTo("holdfast: --fish must be from 0.0001 to 50 kg, was 300 kg.\n");
  }

  @Test
  void tellsWhatIsMissingOrWrong(@TempDir Path folder) throws IOException {
    String scene = scene(folder);
    assertThat(Run.holdfast("bump", scene, "--rock", "slab", "--toward", "left").err())
        .startsWith("holdfast: say what happens: one of --impulse, --fish, --arm, --least, --remove or --undermine.");
    assertThat(Run.holdfast("bump", scene, "--rock", "slob", "--toward", "left", "--impulse", "1").err())
        .isEqualTo("holdfast: there is no placed rock 'slob'.\n  Did you mean 'slab'?\n");
    assertThat(Run.holdfast("bump", scene, "--rock", "slab", "--toward", "up", "--impulse", "1").err())
        .isEqualTo("holdfast: --toward must be front, back, left, right or degrees from -360 to 360, was 'up'.\n");
    assertThat(Run.holdfast("bump", scene, "--toward", "left", "--impulse", "1").exit()).isEqualTo(2);
    assertThat(Run.holdfast("bump", scene, "--rock", "slab", "--toward", "left", "--impulse", "-1").exit()).isEqualTo(2);
    assertThat(Run.holdfast("bump", scene, "--rock", "slab", "--toward", "left", "--fish", "1 kg").exit()).isEqualTo(2);
  }
}
