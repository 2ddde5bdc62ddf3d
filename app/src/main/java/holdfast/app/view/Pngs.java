package holdfast.app.view;

import holdfast.model.io.SceneFiles;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** Pictures as PNG files. */
public final class Pngs {
  private Pngs() {}

  /** Writes all of it, or leaves what was there. */
  public static void save(Path file, BufferedImage image) throws IOException {
    SceneFiles.saveBytes(file, bytes(image));
  }

  static byte[] bytes(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    if (!ImageIO.write(image, "png", bytes)) throw new IOException("no writer for PNG");
    return bytes.toByteArray();
  }
}
