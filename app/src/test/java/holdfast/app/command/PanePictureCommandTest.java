package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PanePictureCommandTest {
  /** A box on the floor grid. Invented. */
  private static final String SCENE = """
      {
        "format": "holdfast-scene/1",
        "tank": { "length_mm": 600, "width_mm": 400, "height_mm": 400, "side_glass_mm": 8, "bottom_glass_mm": 8 },
        "water": { "level_mm": 375 },
        "rocks": [
          { "name": "foot", "kind": "dry",
            "form": { "look": "box", "length_mm": 120, "width_mm": 120, "height_mm": 80, "seed": 1 },
            "mass": { "weighed_kg": 2 } }
        ],
        "placements": [ { "rock": "foot", "at_mm": [300, 200, 10] } ]
      }
      """;

  @Test
  void drawsTheBottomPaneWithoutGraphics(@TempDir Path folder) throws IOException {
    Path scene = Files.writeString(folder.resolve("box.json"), SCENE);
    Path out = folder.resolve("pane.png");
    Run run = Run.holdfast("picture", scene.toString(), "--of", "pane", "-o", out.toString(), "--size", "640x480");
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    assertThat(run.out()).isEqualTo("Wrote " + out + ": 640 × 480 pixels, bottom pane.\n");
    BufferedImage image = ImageIO.read(out.toFile());
    assertThat(image.getWidth()).isEqualTo(640);
    assertThat(image.getHeight()).isEqualTo(480);
  }

  @Test
  void saysWhatCanBeDrawn(@TempDir Path folder) throws IOException {
    Path scene = Files.writeString(folder.resolve("box.json"), SCENE);
    Run run = Run.holdfast("picture", scene.toString(), "--of", "sky", "-o", folder.resolve("sky.png").toString());
    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.err()).isEqualTo("holdfast: --of must be tank or pane, was 'sky'.\n");
  }
}
