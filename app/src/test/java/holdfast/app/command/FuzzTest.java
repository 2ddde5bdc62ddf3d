package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that were damaged at random, through the command as a user runs it: it ends with 0, 1 or 2 and a message, never
 * with a stack trace. A failure names the seed that makes its file again.
 */
class FuzzTest {
  private static final int FEW = 200;

  /** Damaged files of the long test, a quarter of them scenes, which take longest; -Dfuzz.files=N for another number. */
  private static final int MANY = Integer.getInteger("fuzz.files", 100_000);

  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?([eE][-+]?\\d+)?");
  private static final List<String> ODD = List.of("0", "-1", "1e308", "-1e308", "1e-308", "1e999", "NaN", "null", "true", "\"\"",
      "[]", "{}", "1e-9", "1e6", "0.1", "2", "\"block\"", "123456789012345678901234567890", "-0.0");

  private static final String SCENE = """
      {"format": "holdfast-scene/1", "name": "two blocks",
       "tank": {"length_mm": 600, "width_mm": 300, "height_mm": 400, "side_glass_mm": 6, "bottom_glass_mm": 8},
       "floor": {"kind": "bare"}, "water": {"level_mm": 360},
       "rocks": [
        {"name": "lower", "kind": "dry", "form": {"look": "box", "length_mm": 120, "width_mm": 100, "height_mm": 50},
         "mass": {"bulk_kg_per_l": 1.8}},
        {"name": "upper", "kind": "live", "form": {"look": "slab", "length_mm": 100, "width_mm": 90, "height_mm": 40, "seed": 3},
         "mass": {"weighed_kg": 0.5, "state": "dry"}}],
       "placements": [{"rock": "lower", "at_mm": [300, 150, 0]},
        {"rock": "upper", "at_mm": [310, 150, 50], "turn": [1, 0, 0, 0]}],
       "settings": {"push.tier_n": 1, "push.directions": 4}}
      """;
  private static final String BLOCKS = """
      {"format": "loose-blocks/1", "friction": 0.6, "load": {"kind": "fraction_of_weight", "direction": [1, 0, 0]},
       "blocks": [
        {"id": "base", "fixed": true, "density_kg_m3": 1000, "vertices_m":
         [[-1,-1,-0.2],[1,-1,-0.2],[1,1,-0.2],[-1,1,-0.2],[-1,-1,0],[1,-1,0],[1,1,0],[-1,1,0]]},
        {"id": "block", "fixed": false, "density_kg_m3": 1000, "vertices_m":
         [[-0.1,-0.1,0],[0.1,-0.1,0],[0.1,0.1,0],[-0.1,0.1,0],[-0.1,-0.1,0.3],[0.1,-0.1,0.3],[0.1,0.1,0.3],[-0.1,0.1,0.3]]}]}
      """;

  @TempDir
  private Path folder;

  private static String damaged(String text, Random r) {
    String s = text;
    for (int times = 1 + r.nextInt(3); times > 0 && !s.isEmpty(); times--) {
      int at = r.nextInt(s.length());
      int to = Math.min(s.length(), at + 1 + r.nextInt(12));
      switch (r.nextInt(8)) {
        case 0 -> s = s.substring(0, at) + s.substring(to);
        case 1 -> s = s.substring(0, at) + (char) (r.nextInt(95) + 32) + s.substring(at);
        case 2 -> s = s.substring(0, to) + s.substring(at);
        case 3 -> s = s.substring(0, at);
        case 4 -> s = s.substring(0, at) + (char) r.nextInt(0xD800) + s.substring(at + 1);
        default -> s = number(s, r);
      }
    }
    return s;
  }

  /** Another number in the place of one, or something that is none. */
  private static String number(String s, Random r) {
    List<int[]> places = new ArrayList<>();
    Matcher m = NUMBER.matcher(s);
    while (m.find()) places.add(new int[] {m.start(), m.end()});
    if (places.isEmpty()) return s;
    int[] p = places.get(r.nextInt(places.size()));
    double was = Double.parseDouble(s.substring(p[0], p[1]));
    String now = r.nextBoolean() ? ODD.get(r.nextInt(ODD.size())) : String.valueOf(was * (0.5 + r.nextDouble()));
    return s.substring(0, p[0]) + now + s.substring(p[1]);
  }

  /** Runs damaged copies on all cores; how many were judged, that is, read without complaint. */
  private long through(String command, String text, long from, int count) {
    return LongStream.range(from, from + count).parallel().filter(seed -> judged(command, text, seed)).count();
  }

  private boolean judged(String command, String text, long seed) {
    Path file = folder.resolve(command + "-" + seed + ".json");
    try {
      Files.write(file, damaged(text, new Random(seed)).getBytes(StandardCharsets.UTF_8));
      Run run = command.equals("check") ? Run.holdfast(command, file.toString(), "--quiet", "--threads", "1")
          : Run.holdfast(command, file.toString());
      Files.delete(file);
      assertThat(run.exit()).as("%s of damaged file %d: %s", command, seed, run.err()).isBetween(0, 2);
      assertThat(run.err() + run.out()).as("%s of damaged file %d", command, seed).doesNotContain("\tat ").doesNotContain("Exception");
      if (run.exit() != 2) return true;
      assertThat(run.err()).as("%s of damaged file %d", command, seed).isNotBlank();
      return false;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void theFilesAreRightBeforeTheyAreDamaged() throws IOException {
    Path scene = Files.writeString(folder.resolve("scene.json"), SCENE);
    assertThat(Run.holdfast("check", scene.toString(), "--quiet").err()).isEmpty();
    Path blocks = Files.writeString(folder.resolve("blocks.json"), BLOCKS);
    assertThat(Run.holdfast("solve", blocks.toString()).exit()).isZero();
  }

  @Test
  void damagedScenesEndInAMessage() {
    assertThat(through("check", SCENE, 1, FEW)).isPositive();
  }

  @Test
  void damagedBlocksEndInAMessage() {
    assertThat(through("solve", BLOCKS, 1, FEW)).isPositive();
  }

  @Test
  @Tag("slow")
  void manyDamagedFilesEndInAMessage() {
    assertThat(through("check", SCENE, 1000, MANY / 4)).isPositive();
    assertThat(through("solve", BLOCKS, 1000, MANY - MANY / 4)).isPositive();
  }
}
