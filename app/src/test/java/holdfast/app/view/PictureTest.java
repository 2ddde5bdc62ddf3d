package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Camera;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Pictures of the worked example against kept ones that were looked at. Drivers differ in rounding: tiles of 16 pixels are
 * compared by their mean colour. {@code -Dholdfast.keepPictures=true} writes them anew, to be looked at before they are
 * committed.
 */
class PictureTest {
  private static final int TILE = 16;
  private static final double MOST_OF_A_TILE = 26;
  private static final double MOST_ON_AVERAGE = 3;

  private static BufferedImage draw(Camera.View view) {
    Graphics.context();
    try (PictureMaker maker = new PictureMaker()) {
      var scene = ScenesSheet.exampleScene().orElseThrow();
      SceneStones stones = new SceneStones(name -> ScanFiles.load(Path.of(""), name));
      return maker.picture(stones.tableau(scene), new PictureMaker.Wish(view, 480, 320, Units.METRIC, view == Camera.View.TOP));
    }
  }

  @ParameterizedTest
  @EnumSource(Camera.View.class)
  void looksAsItWasKept(Camera.View view) throws IOException {
    BufferedImage now = draw(view);
    String name = "kept/" + view.word() + ".png";
    if (Boolean.getBoolean("holdfast.keepPictures")) {
      Path to = Path.of("src/test/resources/holdfast/app/view/" + name);
      Files.createDirectories(to.getParent());
      ImageIO.write(now, "png", to.toFile());
    }
    try (InputStream in = PictureTest.class.getResourceAsStream(name)) {
      assertThat(in).as("kept picture " + name).isNotNull();
      BufferedImage kept = ImageIO.read(in);
      double sum = 0;
      double most = 0;
      int tiles = 0;
      for (int y = 0; y + TILE <= kept.getHeight(); y += TILE) {
        for (int x = 0; x + TILE <= kept.getWidth(); x += TILE) {
          double d = difference(kept, now, x, y);
          sum += d;
          most = Math.max(most, d);
          tiles++;
        }
      }
      assertThat(most).as("the tile that differs most, of 255").isLessThan(MOST_OF_A_TILE);
      assertThat(sum / tiles).as("difference on average, of 255").isLessThan(MOST_ON_AVERAGE);
    }
  }

  private static double difference(BufferedImage a, BufferedImage b, int x0, int y0) {
    double worst = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      double s = 0;
      for (int y = y0; y < y0 + TILE; y++) {
        for (int x = x0; x < x0 + TILE; x++) s += (a.getRGB(x, y) >> shift & 255) - (b.getRGB(x, y) >> shift & 255);
      }
      worst = Math.max(worst, Math.abs(s) / (TILE * TILE));
    }
    return worst;
  }

  @Test
  void drawsTheSameTwice() {
    BufferedImage a = draw(Camera.View.CORNER);
    BufferedImage b = draw(Camera.View.CORNER);
    assertThat(b.getRGB(0, 0, 480, 320, null, 0, 480)).isEqualTo(a.getRGB(0, 0, 480, 320, null, 0, 480));
  }

  @Test
  void differentViewsDiffer() {
    // A comparison that cannot fail is none: two views must not pass for each other.
    BufferedImage a = draw(Camera.View.FRONT);
    BufferedImage b = draw(Camera.View.TOP);
    double most = 0;
    for (int y = 0; y + TILE <= 320; y += TILE) for (int x = 0; x + TILE <= 480; x += TILE) most = Math.max(most, difference(a, b, x, y));
    assertThat(most).isGreaterThan(MOST_OF_A_TILE);
  }
}
