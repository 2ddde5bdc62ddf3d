package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * Compares pictures with kept ones that were looked at. Drivers differ in rounding, so tiles of 16 pixels are compared by
 * their mean colour. {@code -Dholdfast.keepPictures=true} writes them anew, to be looked at before they are committed.
 */
final class Pictures {
  static final int TILE = 16;
  private static final double MOST_OF_A_TILE = 26;
  private static final double MOST_ON_AVERAGE = 3;

  private Pictures() {}

  static BufferedImage of(int[] pixels, int width, int height) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, width, height, pixels, 0, width);
    return image;
  }

  /** Half the size, each pixel the mean of four. */
  static BufferedImage half(BufferedImage whole) {
    int w = whole.getWidth() / 2;
    int h = whole.getHeight() / 2;
    BufferedImage out = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int rgb = 0;
        for (int shift = 0; shift <= 16; shift += 8) {
          int sum = 0;
          for (int i = 0; i < 4; i++) sum += whole.getRGB(2 * x + (i & 1), 2 * y + (i >> 1)) >> shift & 255;
          rgb |= (sum + 2) / 4 << shift;
        }
        out.setRGB(x, y, rgb);
      }
    }
    return out;
  }

  /** The greatest difference of a tile's mean colour, of 255. */
  static double worst(BufferedImage a, BufferedImage b) {
    double most = 0;
    for (int y = 0; y + TILE <= a.getHeight(); y += TILE) {
      for (int x = 0; x + TILE <= a.getWidth(); x += TILE) most = Math.max(most, tile(a, b, x, y));
    }
    return most;
  }

  static boolean alike(BufferedImage a, BufferedImage b) {
    return worst(a, b) < MOST_OF_A_TILE;
  }

  private static double mean(BufferedImage a, BufferedImage b) {
    double sum = 0;
    int tiles = 0;
    for (int y = 0; y + TILE <= a.getHeight(); y += TILE) {
      for (int x = 0; x + TILE <= a.getWidth(); x += TILE) {
        sum += tile(a, b, x, y);
        tiles++;
      }
    }
    return sum / tiles;
  }

  private static double tile(BufferedImage a, BufferedImage b, int x0, int y0) {
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

  /** Compares with the kept picture of this name; what differs is written to {@code target/pictures} to be looked at. */
  static void looksAsKept(BufferedImage now, String name) throws IOException {
    Path kept = Path.of("src/test/resources/holdfast/app/view/kept/" + name + ".png");
    if (Boolean.getBoolean("holdfast.keepPictures")) {
      Files.createDirectories(kept.getParent());
      ImageIO.write(now, "png", kept.toFile());
      return;
    }
    try (InputStream in = Pictures.class.getResourceAsStream("kept/" + name + ".png")) {
      assertThat(in).as("kept picture " + name).isNotNull();
      BufferedImage before = ImageIO.read(in);
      assertThat(before.getWidth() + "x" + before.getHeight()).isEqualTo(now.getWidth() + "x" + now.getHeight());
      double most = worst(before, now);
      double mean = mean(before, now);
      if (most >= MOST_OF_A_TILE || mean >= MOST_ON_AVERAGE) {
        Path seen = Path.of("target/pictures/" + name + ".png");
        Files.createDirectories(seen.getParent());
        ImageIO.write(now, "png", seen.toFile());
      }
      assertThat(most).as(name + ": the tile that differs most, of 255; see target/pictures").isLessThan(MOST_OF_A_TILE);
      assertThat(mean).as(name + ": difference on average, of 255; see target/pictures").isLessThan(MOST_ON_AVERAGE);
    }
  }
}
