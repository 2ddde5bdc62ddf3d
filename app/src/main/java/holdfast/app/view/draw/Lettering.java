package holdfast.app.view.draw;

import static org.lwjgl.opengl.GL33.*;
import static org.lwjgl.stb.STBTruetype.*;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import org.lwjgl.stb.STBTTFontinfo;
import org.lwjgl.stb.STBTTPackContext;
import org.lwjgl.stb.STBTTPackedchar;
import org.lwjgl.system.MemoryUtil;

/** Letters on the graphics side: one texture with every size and weight that pictures use. */
public final class Lettering implements AutoCloseable {
  /**
   * Pixels of the texture's side: the least that is tried, doubled until all letters fit, and the most. Warning: graphics that
   * are older than OpenGL 3.3 asks for may have less than the most.
   */
  private static final int LEAST_SIDE = 1024;

  private static final int MOST_SIDE = 8192;

  /** What the typeface has of the alphabets that names are written in: Latin with its extensions A, Greek, Cyrillic. */
  private static final int[][] RANGES = {{32, 126}, {160, 255}, {0x2010, 0x2026}, {0x2212, 0x2212}, {0x2264, 0x2265},
    {0x100, 0x17F}, {0x386, 0x3CE}, {0x400, 0x45F}};

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

  /** Letters at a scale: on a picture of 8000 pixels they are ten times as large as on one of 800. */
  public Lettering(float scale) {
    this.scale = scale;
    ByteBuffer regular = file("Roboto-Regular.ttf");
    ByteBuffer medium = file("Roboto-Medium.ttf");
    ByteBuffer pixels = null;
    int side = LEAST_SIDE / 2;
    try {
      boolean all = false;
      while (!all && side < MOST_SIDE) {
        side *= 2;
        MemoryUtil.memFree(pixels);
        pixels = MemoryUtil.memCalloc(side * side);
        glyphs.clear();
        all = pack(pixels, side, regular, medium);
      }
      texture = glGenTextures();
      glBindTexture(GL_TEXTURE_2D, texture);
      glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
      glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, side, side, 0, GL_RED, GL_UNSIGNED_BYTE, pixels);
      glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
      glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    } finally {
      MemoryUtil.memFree(pixels);
      MemoryUtil.memFree(regular);
      MemoryUtil.memFree(medium);
    }
  }

  /** Lays every letter of every style into the texture, and says whether all of them fit. */
  private boolean pack(ByteBuffer pixels, int side, ByteBuffer regular, ByteBuffer medium) {
    boolean all = true;
    try (STBTTPackContext pack = STBTTPackContext.malloc()) {
      stbtt_PackBegin(pack, pixels, side, side, 0, 1, MemoryUtil.NULL);
      stbtt_PackSetOversampling(pack, 2, 1);
      for (Style style : Style.values()) {
        Map<Integer, Glyph> byCode = new LinkedHashMap<>();
        ByteBuffer font = style.bold ? medium : regular;
        try (STBTTFontinfo known = STBTTFontinfo.malloc()) {
          stbtt_InitFont(known, font);
          for (int[] range : RANGES) all &= packRange(pack, side, font, known, style.size * scale, range, byCode);
        }
        glyphs.put(style, byCode);
      }
      stbtt_PackEnd(pack);
    }
    return all;
  }

  /** Letters that the typeface lacks are left out, so that they are told from those it has. */
  private static boolean packRange(
      STBTTPackContext pack, int side, ByteBuffer font, STBTTFontinfo known, float size, int[] range, Map<Integer, Glyph> out) {
    int count = range[1] - range[0] + 1;
    try (STBTTPackedchar.Buffer packed = STBTTPackedchar.malloc(count)) {
      boolean all = stbtt_PackFontRange(pack, font, 0, size, range[0], packed);
      for (int i = 0; i < count; i++) {
        if (stbtt_FindGlyphIndex(known, range[0] + i) == 0) continue;
        STBTTPackedchar c = packed.get(i);
        out.put(range[0] + i, new Glyph(c.xoff(), c.yoff(), c.xoff2(), c.yoff2(),
            c.x0() / (float) side, c.y0() / (float) side, c.x1() / (float) side, c.y1() / (float) side, c.xadvance()));
      }
      return all;
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

  /** A letter, or the question mark for one that there is not. */
  public Glyph letter(Style style, int code) {
    Map<Integer, Glyph> byCode = glyphs.get(style);
    Glyph g = byCode.get(code);
    return g != null ? g : byCode.get((int) '?');
  }

  /** Whether there is such a letter; for one that there is not, a question mark is drawn. */
  public boolean draws(int code) {
    return glyphs.get(Style.LABEL).containsKey(code);
  }

  /** Width of a line of text in pixels. */
  public float width(String text, Style style) {
    return (float) text.codePoints().mapToDouble(c -> letter(style, c).advance()).sum();
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
