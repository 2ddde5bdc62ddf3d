package holdfast.app.view;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * Lettering of flat pictures: outlines of the typeface's glyphs, filled as shapes. No font service of the machine is asked, so
 * pictures need none and are the same to the byte everywhere.
 */
final class Typeface {
  private static final String FOLDER = "/com/formdev/flatlaf/fonts/roboto/";

  private final TrueTypeFont font;
  private final CmapLookup glyphs;
  private final double unitsPerEm;

  private Typeface(TrueTypeFont font) throws IOException {
    this.font = font;
    this.glyphs = font.getUnicodeCmapLookup();
    this.unitsPerEm = font.getUnitsPerEm();
  }

  static Typeface regular() {
    return load("Roboto-Regular.ttf");
  }

  static Typeface medium() {
    return load("Roboto-Medium.ttf");
  }

  private static Typeface load(String file) {
    try (InputStream in = Typeface.class.getResourceAsStream(FOLDER + file)) {
      if (in == null) throw new IllegalStateException("typeface " + file + " is not on the class path");
      return new Typeface(new TTFParser().parse(new RandomAccessReadBuffer(in)));
    } catch (IOException e) {
      throw new UncheckedIOException("typeface " + file + " cannot be read", e);
    }
  }

  /** Width of a line of text in pixels. */
  double width(String text, double size) {
    return text.codePoints().mapToDouble(c -> advance(glyphs.getGlyphId(c))).sum() * size / unitsPerEm;
  }

  /** Height of a capital letter in pixels. */
  static double capHeight(double size) {
    return 0.711 * size;
  }

  /** Draws a line of text in the graphics' colour, its left end and baseline at (x, y). */
  void draw(Graphics2D g, String text, double x, double y, double size) {
    double scale = size / unitsPerEm;
    double at = x;
    for (int c : text.codePoints().toArray()) {
      int glyph = glyphs.getGlyphId(c);
      GeneralPath path = outline(glyph);
      if (path != null) g.fill(path.createTransformedShape(new AffineTransform(scale, 0, 0, -scale, at, y)));
      at += advance(glyph) * scale;
    }
  }

  private double advance(int glyph) {
    try {
      return font.getAdvanceWidth(glyph);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private GeneralPath outline(int glyph) {
    try {
      var data = font.getGlyph().getGlyph(glyph);
      return data == null ? null : data.getPath();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
