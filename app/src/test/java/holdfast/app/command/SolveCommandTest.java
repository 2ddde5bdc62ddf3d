package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SolveCommandTest {
  @TempDir
  Path dir;

  /** A block of 0.2 x 0.2 x 0.4 m on a fixed one, friction 0.6, pulled sideways by a share of its weight. */
  private Path post(double shiftM, String load) throws IOException {
    Path file = dir.resolve("post.json");
    Files.writeString(file, """
        { "format": "loose-blocks/1", "name": "post", "friction": 0.6, "blocks": [
          { "id": "base", "fixed": true, "density_kg_m3": 2000, "vertices_m": %s },
          { "id": "post", "density_kg_m3": 2000, "vertices_m": %s } ]%s }
        """.formatted(box(-0.5, -0.5, -0.1, 0.5, 0.5, 0), box(shiftM, 0, 0, shiftM + 0.2, 0.2, 0.4), load));
    return file;
  }

  private static String box(double x0, double y0, double z0, double x1, double y1, double z1) {
    StringBuilder b = new StringBuilder("[");
    for (double x : new double[] {x0, x1}) {
      for (double y : new double[] {y0, y1}) {
        for (double z : new double[] {z0, z1}) b.append(b.length() > 1 ? "," : "").append("[" + x + "," + y + "," + z + "]");
      }
    }
    return b.append("]").toString();
  }

  /** It tips about its edge at lambda = b / h = 0.5, below sliding at 0.6; derived, moments about the edge. */
  @Test
  void tipsAtHalfItsWeight() throws Exception {
    Run r = Run.holdfast("solve", post(0, ", \"load\": { \"kind\": \"fraction_of_weight\", \"direction\": [1, 0, 0] }").toString());
    assertThat(r.err()).isEmpty();
    assertThat(r.exit()).isZero();
    JsonNode n = new ObjectMapper().readTree(r.out());
    assertThat(n.path("equilibrium").asBoolean()).isTrue();
    assertThat(n.path("stays").asBoolean()).isTrue();
    assertThat(n.path("load_factor").path("associative").asDouble()).isCloseTo(0.5, within(1e-6));
    assertThat(n.path("load_factor").path("non_associative").asDouble()).isCloseTo(0.5, within(5e-4)).isLessThanOrEqualTo(0.5);
  }

  /** Its centre of mass hangs 50 mm past the edge of the base: no forces balance it; derived. */
  @Test
  void fallsOverTheEdge() throws Exception {
    Path file = post(0.45, "");
    Run r = Run.holdfast("solve", file.toString());
    assertThat(r.exit()).isEqualTo(1);
    assertThat(r.out()).isEqualTo("""
        {
          "format": "holdfast-solve/1",
          "name": "post",
          "equilibrium": false,
          "stays": false
        }
        """);
    assertThat(Run.holdfast("solve", file.toString(), "--format", "text").out()).isEqualTo("""
        post
          equilibrium                     no
          stays                           no
        """);
  }

  @Test
  void wrongFiles() throws Exception {
    Path none = dir.resolve("none.json");
    assertThat(Run.holdfast("solve", none.toString()))
        .isEqualTo(new Run(2, "", "holdfast: " + none + ": there is no such file.\n"));
    assertThat(Run.holdfast("solve").err()).startsWith("holdfast: solve needs BLOCKS.\n");
    Path bad = dir.resolve("bad.json");
    Files.writeString(bad, "{ \"format\": \"loose-blocks/1\", \"friction\": -1, \"blocks\": [] }");
    Run r = Run.holdfast("solve", bad.toString());
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.out()).isEmpty();
    assertThat(r.err()).startsWith("holdfast: " + bad + " has").contains("$.friction", "-1").doesNotContain("Exception");
  }
}
