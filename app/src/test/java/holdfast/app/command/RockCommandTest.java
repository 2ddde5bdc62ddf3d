package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RockCommandTest {
  @TempDir
  Path dir;

  /**
   * A box of 100 x 100 x 200 mm at 2 kg/L: 2 L and 4 kg, exact. Under water of 1023.343 kg/m3 (EOS-80 at salinity 35 and
   * 25 degrees, published) with flooded pores and 2780 kg/m3 mineral: 9.81 x 4 x (1 - 1023.343 / 2780) = 24.7955 N, derived.
   */
  @Test
  void aBoxOfKnownWeight() throws Exception {
    Run r = Run.holdfast("rock", "--size", "100x100x200 mm", "--look", "box", "--density", "2", "--format", "json");
    assertThat(r.exit()).isZero();
    JsonNode n = new ObjectMapper().readTree(r.out());
    assertThat(n.path("hull_volume_l").asDouble()).isCloseTo(2, within(1e-6));
    assertThat(n.path("dry_kg").asDouble()).isCloseTo(4, within(1e-6));
    assertThat(n.path("submerged_n").asDouble()).isCloseTo(24.7955, within(1e-3));
    assertThat(n.path("faces").asInt()).isEqualTo(6);
    assertThat(n.path("rock").path("form").path("look").asText()).isEqualTo("box");
  }

  @Test
  void forPeople() {
    Run r = Run.holdfast("rock", "--size", "10x10x20 cm", "--look", "box", "--mass", "4 kg", "--name", "post", "--kind", "cast");
    assertThat(r).isEqualTo(new Run(0, """
        post, cast
          dry stone            4.00 kg
          volume of its hull   2.00 L
          bulk density         2.00 kg/L
          weight under water   24.8 N
          weight just drained  44.9 N   its pores hold 0.57 kg of water
          shape                1 convex piece, 6 faces

        In the list of rocks of a scene:

        {
          "name": "post",
          "kind": "cast",
          "form": { "look": "box", "length_mm": 100, "width_mm": 100, "height_mm": 200 },
          "mass": { "weighed_kg": 4 }
        }
        """, ""));
    assertThat(Run.holdfast("rock", "--size", "10x10x20 cm", "--look", "box", "--mass", "1400 g").out())
        .contains("\"weighed_kg\": 1.4 }");
    // 8 lb 4 oz are 8.25 lb of 0.45359237 kg (exact).
    assertThat(Run.holdfast("rock", "--size", "10x10x20 cm", "--look", "box", "--mass", "8 lb 4 oz").out())
        .contains("\"weighed_kg\": 3.742137053 }");
    // 4 kg = 8.8185 lb, 2 L = 0.52834 US gal, 24.7955 N = 5.5742 lbf (NIST SP 811)
    assertThat(Run.holdfast("rock", "--size", "10x10x20 cm", "--look", "box", "--mass", "4 kg", "--units", "us").out())
        .contains("8.82 lb", "0.53 gal", "5.57 lbf");
  }

  @Test
  void aRockWithMuchFoamFloats() {
    assertThat(Run.holdfast("rock", "--size", "20x20x20 cm", "--look", "box", "--mass", "4 kg", "--sealed", "4000").out())
        .contains("it floats");
  }

  @Test
  void aScan() throws Exception {
    Path mesh = dir.resolve("tetra.obj");
    // The right tetrahedron of 50, 40, 30 mm: volume 50 x 40 x 30 / 6 = 10 000 mm3, exact.
    Files.writeString(mesh, "v 0 0 0\nv 50 0 0\nv 0 40 0\nv 0 0 30\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n");
    Run r = Run.holdfast("rock", "--mesh", mesh.toString(), "--density", "1.5", "--format=json");
    assertThat(r.exit()).isZero();
    assertThat(new ObjectMapper().readTree(r.out()).path("hull_volume_l").asDouble()).isCloseTo(0.01, within(1e-9));
  }

  @Test
  void whatIsWrongIsSaid() throws Exception {
    Path mesh = dir.resolve("scan.xyz");
    Files.writeString(mesh, "1 2 3");
    wrong("the rock's shape is missing.");
    wrong("--size also needs a --look, the kind of stone to make.", "--size", "1x1x1 cm");
    wrong("--look must be block, slab, round, shelf, branch, arch, spike or box, was 'slap'.\n  Did you mean slab?",
        "--size", "1x1x1 cm", "--look", "slap");
    wrong("the rock's mass is missing.", "--size", "10x10x10 cm", "--look", "box");
    wrong("--mass must be from 0.001 to 500 kg, was 900 kg.", "--size", "10x10x10 cm", "--look", "box", "--mass", "900");
    wrong("--mass: 'heavy' is not a mass.", "--size", "10x10x10 cm", "--look", "box", "--mass", "heavy");
    wrong("--density must be from 0.1 to 4 kg/L, was 1200 kg/L.", "--size", "10x10x10 cm", "--look", "box", "--density", "1200");
    wrong("a rock has a --mass or a --density, not both.",
        "--size", "10x10x10 cm", "--look", "box", "--density", "1.2", "--mass", "1 kg");
    wrong("invalid value for option '--density': 'much' is not a number.",
        "--size", "10x10x10 cm", "--look", "box", "--density", "much");
    wrong("such a rock cannot be: 4.000 kg of dry stone in a shape of 1.000 L is 4.00 kg/L, denser than the mineral itself",
        "--size", "10x10x10 cm", "--look", "box", "--mass", "4 kg");
    wrong(dir.resolve("none.obj") + ": there is no such file.", "--mesh", dir.resolve("none.obj").toString(), "--mass", "1");
    // A cube of 5 inches that is read as one of 5 mm.
    Path cube = dir.resolve("cube.obj");
    Files.writeString(cube, """
        v 0 0 0
        v 5 0 0
        v 5 5 0
        v 0 5 0
        v 0 0 5
        v 5 0 5
        v 5 5 5
        v 0 5 5
        f 1 4 3 2
        f 5 6 7 8
        f 1 2 6 5
        f 2 3 7 6
        f 3 4 8 7
        f 4 1 5 8
        """);
    assertThat(Run.holdfast("rock", "--mesh", cube.toString(), "--mass", "4 kg").err())
        .contains("\n  The scan's figures were taken for mm; if they are not, say --mesh-unit.");
    wrong("such a rock cannot be: mesh '" + mesh + "'", "--mesh", mesh.toString(), "--mass", "1");
  }

  private static void wrong(String message, String... options) {
    String[] args = new String[options.length + 1];
    args[0] = "rock";
    System.arraycopy(options, 0, args, 1, options.length);
    Run r = Run.holdfast(args);
    assertThat(r.exit()).as(message).isEqualTo(2);
    assertThat(r.out()).isEmpty();
    assertThat(r.err()).startsWith("holdfast: " + message).doesNotContain("Exception", "\tat ");
  }
}
