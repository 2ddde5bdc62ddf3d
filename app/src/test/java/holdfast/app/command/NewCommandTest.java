package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.io.SceneReader;
import holdfast.model.io.SceneWriter;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NewCommandTest {
  @TempDir
  Path dir;

  @Test
  void writesASceneThatIsReadBack() {
    Path file = dir.resolve("tank.json");
    Run r = Run.holdfast("new", "--size", "90x45x45 cm", "-o", file.toString());
    assertThat(r.exit()).isZero();
    assertThat(r.out()).contains("884 × 434 × 442 mm inside", "water at 417 mm (160.0 L without rock and sand)", "holdfast check");
    assertThat(r.err()).contains("the glass was not measured: 8 mm is assumed", "--bottom-glass");
    Scene s = Inputs.scene(file);
    assertThat(s.tank().lengthMm()).isEqualTo(884);
    assertThat(s.tank().sideGlassMm()).isEqualTo(8);
    assertThat(s.water().levelMm()).isEqualTo(417);
    assertThat(s.rocks()).isEmpty();
  }

  @Test
  void withoutAFileTheSceneItselfGoesToStandardOutput() {
    Run r = Run.holdfast("new", "--size", "36 x 18 x 16 in", "--side-glass", "10", "--bottom-glass", "1.2 cm",
        "--viewed-from", "right,front", "--support", "edges", "--name", "by the window");
    assertThat(r.exit()).isZero();
    assertThat(r.err()).isEmpty();
    Scene s = SceneReader.read(r.out(), "out").match(x -> x, refused -> {
      throw new AssertionError(refused.rendered());
    });
    // 36 in = 914.4 mm less two panes of 10; 18 in = 457.2; 16 in = 406.4 less 12
    assertThat(s.tank().lengthMm()).isEqualTo(894.4);
    assertThat(s.tank().widthMm()).isEqualTo(437.2);
    assertThat(s.tank().heightMm()).isEqualTo(394.4);
    assertThat(s.tank().viewedFrom()).containsExactly(Side.FRONT, Side.RIGHT);
    assertThat(s.name()).isEqualTo("by the window");
    assertThat(SceneWriter.write(s)).isEqualTo(r.out());
  }

  @Test
  void theSizeMayStandByItself() {
    String named = Run.holdfast("new", "--size", "90x45x45 cm").out();
    assertThat(Run.holdfast("new", "90x45x45", "cm").out()).isEqualTo(named);
    assertThat(Run.holdfast("new", "90x45x45 cm").out()).isEqualTo(named).contains("holdfast-scene/1");
  }

  /** What is assumed for want of a measure is what the check calls usual: 8 mm above a foot of height (builders' table). */
  @Test
  void assumedGlassIsNeverThinnerThanTheCheckCallsUsual() {
    for (String size : List.of("60x30x35 cm", "80x40x50 cm", "120x45x50 cm")) {
      Path file = dir.resolve(size.replace(' ', '-') + ".json");
      assertThat(Run.holdfast("new", size, "-o", file.toString()).exit()).isZero();
      assertThat(Run.holdfast("check", file.toString()).out()).contains("bottom pane").doesNotContain("thinner than");
    }
    assertThat(Inputs.scene(dir.resolve("60x30x35-cm.json")).tank().bottomGlassMm()).isEqualTo(8);
  }

  @Test
  void neverWritesOverAFileUnasked() throws Exception {
    Path file = dir.resolve("tank.json");
    Files.writeString(file, "mine");
    Run r = Run.holdfast("new", "--size", "90x45x45 cm", "-o", file.toString());
    assertThat(r).isEqualTo(new Run(2, "", "holdfast: " + file + " is already there.\n  Name another file, or add --replace to write over it.\n"));
    assertThat(file).hasContent("mine");
    assertThat(Run.holdfast("new", "--size", "90x45x45 cm", "-o", file.toString(), "--replace", "-q").out()).isEmpty();
    assertThat(Files.readString(file)).contains("holdfast-scene/1");
  }

  @Test
  void aFolderThatIsNotThere() {
    Run r = Run.holdfast("new", "--size", "90x45x45 cm", "-o", dir.resolve("no/tank.json").toString());
    assertThat(r).isEqualTo(new Run(2, "", "holdfast: " + dir.resolve("no") + ": there is no such folder to write to.\n"));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
    "90x45x45      | --size: '90x45x45' says no unit.",
    "90x45 cm      | --size: '90x45 cm' is not a size.",
    "big           | --size: 'big' is not a size.",
    "90x45x45 ft   | --size: the unit 'ft' is not known.",
    "-90x45x45 cm  | --size: '-90x45x45 cm' is not a size.",
    "0x45x45 cm    | --size, inside length must be from 50 to 10000 mm, was -16 mm.",
    "90x45x450 cm  | --size, inside height must be from 50 to 3000 mm, was 4488 mm."
  })
  void wrongSizes(String size, String message) {
    Run r = Run.holdfast("new", "--size=" + size);
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.out()).isEmpty();
    assertThat(r.err()).startsWith("holdfast: " + message + "\n");
  }

  @Test
  void otherWrongWords() {
    assertThat(Run.holdfast("new").err()).startsWith("holdfast: the size of the tank is missing.\n");
    assertThat(Run.holdfast("new", "60x40x45").err()).startsWith("holdfast: --size: '60x40x45' says no unit.\n")
        .contains("\"60x40x45 cm\"");
    assertThat(Run.holdfast("new", "600x400x450").err()).contains("\"600x400x450 mm\"");
    assertThat(Run.holdfast("new", "60x40x45", "cm", "--size", "1x1x1 m").err()).startsWith("holdfast: two sizes:");
    assertThat(Run.holdfast("new", "--size", "90x45x45 cm", "--support", "legs").err())
        .isEqualTo("holdfast: --support must be edges, full or unknown, was 'legs'.\n");
    assertThat(Run.holdfast("new", "--size", "90x45x45 cm", "--viewed-from", "top").err())
        .isEqualTo("holdfast: --viewed-from must be front, right, back or left, was 'top'.\n");
    assertThat(Run.holdfast("new", "--size", "90x45x45 cm", "--side-glass", "thick").err())
        .startsWith("holdfast: --side-glass: 'thick' is not a length.\n");
  }

  /** A foot and a half is 457.2 mm, 24 1/2 in are 622.3, 3/8 in 9.525 (1 in = 25.4 mm, NIST SP 811). */
  @Test
  void inchesAreTakenAsTapesHaveThem() {
    for (String size : List.of("24 1/2x18x16 in", "24-1/2 in x 18 in x 16 in", "24.5\" x 18\" x 16\"")) {
      Run r = Run.holdfast("new", "--size", size, "--inside", "--side-glass", "3/8 in", "--bottom-glass", "3/8\"");
      assertThat(r.err()).as(size).isEmpty();
      assertThat(r.out()).contains("\"length_mm\": 622.3,", "\"width_mm\": 457.2,", "\"height_mm\": 406.4,",
          "\"side_glass_mm\": 9.525,", "\"bottom_glass_mm\": 9.525\n");
    }
    assertThat(Run.holdfast("new", "24\"x18x16").err()).startsWith("holdfast: --size: '24\"x18x16' says no unit at its end.\n")
        .contains("\"24\"x18x16 in\"");
    assertThat(Run.holdfast("new", "1/0x18x16 in").exit()).isEqualTo(2);
  }

  /** Else a file is written that no command reads. */
  @Test
  void aTitleThatASceneTakes() {
    for (String title : List.of("", "  ", " mine", "x".repeat(201), "a\u0007b")) {
      Run r = Run.holdfast("new", "60x30x35cm", "--name", title);
      assertThat(r.exit()).as(title).isEqualTo(2);
      assertThat(r.out()).isEmpty();
      assertThat(r.err()).startsWith("holdfast: --name must be 1 to 200 characters on one line, without spaces at its ends, was '");
    }
    Run r = Run.holdfast("new", "60x30x35cm", "--name", "珊瑚 über dem Kamin");
    assertThat(SceneReader.read(r.out(), "out").match(Scene::name, refused -> refused.rendered())).isEqualTo("珊瑚 über dem Kamin");
  }

  @Test
  void insideMeansInside() {
    Run r = Run.holdfast("new", "--size", "884x434x440 mm", "--inside", "--side-glass", "8", "--bottom-glass", "10");
    assertThat(r.err()).isEmpty();
    assertThat(r.out()).contains("\"length_mm\": 884", "\"width_mm\": 434", "\"height_mm\": 440");
  }

  @Test
  void commonSizes() {
    Run r = Run.holdfast("new", "--sizes");
    assertThat(r.exit()).isZero();
    assertThat(r.out()).contains("60x30x35 cm", "36x18x16 in", "Measure yours.");
    assertThat(r.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    assertThat(Run.holdfast("new", "--sizes", "--format=json").out()).startsWith("{\n  \"format\": \"holdfast-sizes/1\"");
    // Framed tanks in inches stand on their edges.
    assertThat(Run.holdfast("new", "--size", "36x18x16 in").out()).contains("\"support\": \"edges\"");
  }
}
