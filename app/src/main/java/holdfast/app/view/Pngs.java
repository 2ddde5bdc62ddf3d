package holdfast.app.view;

import holdfast.model.io.SceneFiles;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;

/** Pictures as PNG files, each with the name of the program in it. */
public final class Pngs {
  /** A keyword for which the standard has reserved this meaning (PNG, W3C Recommendation, 11.3.3.2). */
  private static final String KEYWORD = "Software";
  private static final String PROGRAM = "holdfast";

  /** The chunk's type and content as they stand in the file; a nought byte ends the keyword. */
  private static final String CHUNK = "tEXt" + KEYWORD + "\0" + PROGRAM;

  /** The chunk comes before the pixels. */
  private static final int BEGINNING = 1024;

  private Pngs() {}

  /** Writes all of it, or leaves what was there. */
  public static void save(Path file, BufferedImage image) throws IOException {
    SceneFiles.saveBytes(file, bytes(image));
  }

  /** Whether the file is a picture that was written here. */
  public static boolean isOurs(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return new String(in.readNBytes(BEGINNING), StandardCharsets.ISO_8859_1).contains(CHUNK);
    } catch (IOException | SecurityException e) {
      return false; // what cannot be read is not known to be ours
    }
  }

  static byte[] bytes(BufferedImage image) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
      IIOMetadata about = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), null);
      IIOMetadataNode entry = new IIOMetadataNode("tEXtEntry");
      entry.setAttribute("keyword", KEYWORD);
      entry.setAttribute("value", PROGRAM);
      IIOMetadataNode texts = new IIOMetadataNode("tEXt");
      texts.appendChild(entry);
      IIOMetadataNode root = new IIOMetadataNode("javax_imageio_png_1.0");
      root.appendChild(texts);
      about.mergeTree(root.getNodeName(), root);
      writer.setOutput(out);
      writer.write(new IIOImage(image, null, about));
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
