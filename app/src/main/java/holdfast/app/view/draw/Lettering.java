package holdfast.app.view.draw;

import static org.lwjgl.opengl.GL33.*;
import static org.lwjgl.stb.STBTruetype.*;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import org.lwjgl.stb.STBTTPackContext;
import org.lwjgl.stb.STBTTPackedchar;
import org.lwjgl.system.MemoryUtil;

/** Letters on the graphics side: one texture with every size and weight that pictures use. */
public final class Lettering implements AutoCloseable {
  private static final int SIDE = 1024;
  private static final int[][] RANGES = {{32, 126}, {160, 255}, {0x2010, 0x2026}, {0x2212, 0x2212}, {0x2264, 0x2265}};

  /** The styles of text: size in pixels at scale 1, and weight. */
  public enum Style {
    TICK(12, false), LABEL(14, false), STRONG(14, true), TITLE(20, true), FIGURE(16, true);

    private final float size;
    private final boolean bold;

    Style(float size, boolean bold) {
      this.size = size;
      this.bold = bold;
    }
  }

  /** One letter: its corners about the pen, its place in the texture, and how far the pen moves on; pixels. */
  public record Glyph(float x0, float y0, float x1, float y1, float u0, float v0, float u1, float v1, float advance) {}

  private final Map<Style, Map<Integer, Glyph>> glyphs = new LinkedHashMap<>();
  private final int texture;
  private final float scale;

  public Lettering(float scale) {
    this.scale = scale;
    ByteBuffer pixels = MemoryUtil.memCalloc(SIDE * SIDE);
    ByteBuffer regular = file("Roboto-Regular.ttf");
    ByteBuffer medium = file("Roboto-Medium.ttf");
    try (STBTTPackContext pack = STBTTPackContext.malloc()) {
      stbtt_PackBegin(pack, pixels, SIDE, SIDE, 0, 1, MemoryUtil.NULL);
      stbtt_PackSetOversampling(pack, 2, 1);
      for (Style style : Style.values()) {
        Map<Integer, Glyph> byCode = new LinkedHashMap<>();
        for (int[] range : RANGES) packRange(pack, style.bold ? medium : regular, style.size * scale, range, byCode);
        glyphs.put(style, byCode);
      }
      stbtt_PackEnd(pack);
      texture = glGenTextures();
      glBindTexture(GL_TEXTURE_2D, texture);
      glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
      glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, SIDE, SIDE, 0, GL_RED, GL_UNSIGNED_BYTE, pixels);
      glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
      glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    } finally {
      MemoryUtil.memFree(pixels);
      MemoryUtil.memFree(regular);
      MemoryUtil.memFree(medium);
    }
  }

  private static void packRange(STBTTPackContext pack, ByteBuffer font, float size, int[] range, Map<Integer, Glyph> out) {
    int count = range[1] - range[0] + 1;
    try (STBTTPackedchar.Buffer packed = STBTTPackedchar.malloc(count)) {
      stbtt_PackFontRange(pack, font, 0, size, range[0], packed);
      for (int i = 0; i < count; i++) {
        STBTTPackedchar c = packed.get(i);
        out.put(range[0] + i, new Glyph(c.xoff(), c.yoff(), c.xoff2(), c.yoff2(),
            c.x0() / (float) SIDE, c.y0() / (float) SIDE, c.x1() / (float) SIDE, c.y1() / (float) SIDE, c.xadvance()));
      }
    }
  }

  /** One of the letter files, in memory of the graphics library's kind; the caller frees it. */
  static ByteBuffer file(String name) {
    try (InputStream in = Lettering.class.getResourceAsStream("/com/formdev/flatlaf/fonts/roboto/" + name)) {
      if (in == null) throw new IllegalStateException("letters missing: " + name);
      byte[] bytes = in.readAllBytes();
      return MemoryUtil.memAlloc(bytes.length).put(bytes).flip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Glyph glyph(Style style, int code) {
    Map<Integer, Glyph> byCode = glyphs.get(style);
    Glyph g = byCode.get(code);
    return g != null ? g : byCode.get((int) '?');
  }

  /** Width of a line of text in pixels. */
  public float width(String text, Style style) {
    return (float) text.codePoints().mapToDouble(c -> glyph(style, c).advance()).sum();
  }

  /** Height of capital letters, pixels. */
  public float capHeight(Style style) {
    return style.size * scale * 0.58f;
  }

  public float scale() {
    return scale;
  }

  void bind() {
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, texture);
  }

  @Override
  public void close() {
    glDeleteTextures(texture);
  }
}
