package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {
  @TempDir
  Path dir;

  /** One broad box on bare glass in the middle of a tank, or tilted up on its edge far off balance. */
  private Path scene(String name, String placement, String tail) throws IOException {
    Path file = dir.resolve(name);
    Files.writeString(file, """
        {
          "format": "holdfast-scene/1",
          "name": "one slab",
          "tank": { "length_mm": 600, "width_mm": 400, "height_mm": 400, "side_glass_mm": 8, "bottom_glass_mm": 10 },
          "rocks": [ { "name": "slab", "kind": "dry",
            "form": { "look": "box", "length_mm": 200, "width_mm": 160, "height_mm": 50 }, "mass": { "weighed_kg": 2.4 } } ],
          "placements": [ { "rock": "slab", %s } ],
          "settings": { "push.tier_n": 5 }%s
        }
        """.formatted(placement, tail));
    return file;
  }

  private static final String FLAT = "\"at_mm\": [300, 200, 10]";

  @Test
  void theVerdictTheExitCodeAndTheFindingsAgree() throws Exception {
    Path file = scene("flat.json", FLAT, "");
    Run text = Run.holdfast("check", file.toString());
    Run json = Run.holdfast("check", file.toString(), "--format", "json");
    assertThat(text.err()).isEmpty();
    var root = new ObjectMapper().readTree(json.out());
    boolean fails = root.path("counts").path("fail").asInt() > 0;
    assertThat(text.exit()).isEqualTo(json.exit()).isEqualTo(fails ? 1 : 0);
    assertThat(text.out()).startsWith(fails ? "■ FAILS" : "● PASSES").contains("slab", "Cautions");
    assertThat(text.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    Run quiet = Run.holdfast("check", file.toString(), "--quiet");
    assertThat(text.out()).startsWith(quiet.out().strip());
  }

  /** Only JSON has every side; what text tells of the weakest is what JSON tells, rounded down. */
  @Test
  void theWeakestPushIsTheSameInTextAndJson() throws Exception {
    Path file = scene("flat.json", FLAT, "");
    String row = Run.holdfast("check", file.toString()).out().lines().filter(l -> l.matches(" +slab +dry .*")).findFirst().orElseThrow();
    var rock = new ObjectMapper().readTree(Run.holdfast("check", file.toString(), "--format", "json").out()).path("rocks").get(0);
    var weakest = rock.path("weakest_push");
    double newtons = weakest.path("margin_n").asDouble();
    assertThat(weakest.path("unlimited").asBoolean()).as("there is a figure to compare").isFalse();
    assertThat(row.split(" +")).contains(String.format(Locale.ROOT, "%.1f", Math.floor(newtons * 10) / 10),
        weakest.path("movement").asText(), weakest.path("state").asText());
    assertThat(rock.path("push_rose")).hasSize(16).contains(weakest)
        .allSatisfy(p -> assertThat(p.path("margin_n").asDouble()).isGreaterThanOrEqualTo(newtons));
  }

  /** An empty tank neither passes nor fails: there is nothing to judge, and nothing that fails ends with 0. */
  @Test
  void anEmptyTankDoesNotPass() throws Exception {
    Path file = dir.resolve("empty.json");
    assertThat(Run.holdfast("new", "60x30x35 cm", "-o", file.toString()).exit()).isZero();
    Run text = Run.holdfast("check", file.toString());
    assertThat(text.exit()).isZero();
    assertThat(text.out()).startsWith("○ NOTHING TO JUDGE  No rock is placed yet. Give each rock").doesNotContain("PASSES");
    Run json = Run.holdfast("check", file.toString(), "--format", "json");
    assertThat(new ObjectMapper().readTree(json.out()).path("verdict").asText()).isEqualTo("nothing to judge");
  }

  @Test
  void theSameBytesOnEveryRunAndNumberOfThreads() throws Exception {
    String file = scene("flat.json", FLAT, "").toString();
    Run once = Run.holdfast("check", file, "--format=json", "--threads=1");
    assertThat(Run.holdfast("check", file, "--format=json", "--threads=2")).isEqualTo(once);
  }

  @Test
  void aSlipInTheNameOfTheFile() throws Exception {
    Path file = scene("flat.json", FLAT, "");
    Path slip = dir.resolve("flta.json");
    assertThat(Run.holdfast("check", slip.toString())).isEqualTo(
        new Run(2, "", "holdfast: " + slip + ": there is no such file.\n  Did you mean " + file + "?\n"));
    assertThat(Run.holdfast("check", dir.resolve("flat").toString()).err()).contains("Did you mean " + file + "?");
    assertThat(Run.holdfast("check", dir.toString()).err())
        .isEqualTo("holdfast: " + dir + " is a folder; a file is wanted.\n  In it: flat.json\n");
  }

  @Test
  void everythingWrongWithAFileAtOnce() throws Exception {
    Path file = scene("bad.json", "\"at_mm\": [300, 200], \"tilt\": 3", ", \"colour\": \"pink\"");
    Run r = Run.holdfast("check", file.toString());
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.out()).isEmpty();
    assertThat(r.err()).startsWith("holdfast: " + file + " has 3 things wrong in it:\n")
        .contains("$.placements[0].at_mm", "$.placements[0].tilt", "$.colour").doesNotContain("Exception", "\tat ");
  }

  @Test
  void aRockThatCannotBe() throws Exception {
    Path file = scene("heavy.json", FLAT, "");
    // Too much even for the box round it, which the reader sees; too much for the stone cut from the box, which is seen later.
    Files.writeString(file, Files.readString(file).replace("2.4", "24"));
    Run box = Run.holdfast("check", file.toString());
    assertThat(box.exit()).isEqualTo(2);
    assertThat(box.err()).contains("$.rocks[0].mass.weighed_kg: found 24");
    Files.writeString(file, Files.readString(file).replace("\"box\"", "\"slab\"").replace("24 }", "4.3 }"));
    Run stone = Run.holdfast("check", file.toString());
    assertThat(stone.exit()).isEqualTo(2);
    assertThat(stone.out()).isEmpty();
    assertThat(stone.err()).startsWith("holdfast: " + file + " has a rock that cannot be:\n")
        .contains("$.rocks[0]: 'slab': 4.300 kg of dry stone", "denser than the mineral itself");
  }

  @Test
  void wrongOptions() throws Exception {
    String file = scene("flat.json", FLAT, "").toString();
    assertThat(Run.holdfast("check").err()).startsWith("holdfast: check needs SCENE.\n");
    assertThat(Run.holdfast("check", file, "--threads", "0").err()).isEqualTo("holdfast: --threads must be from 1 to 256, was 0.\n");
    assertThat(Run.holdfast("check", file, "--vary", "-3").err())
        .isEqualTo("holdfast: --vary must be from 0 to 100000, was -3.\n");
    assertThat(Run.holdfast("check", file, file).exit()).isEqualTo(2);
    assertThat(Run.holdfast("check", file, "--thread", "2").err()).contains("Did you mean --threads?");
  }
}
