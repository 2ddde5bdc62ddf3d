package holdfast.app.view.draw;

import static org.lwjgl.opengl.GL11.*;

import holdfast.app.view.gl.Floats;
import holdfast.app.view.gl.Mesh;
import holdfast.app.view.gl.Program;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Draws on the finished picture, in pixels from its top left: lines, shapes and lettering, in the order they come.
 * Lengths are multiplied by the scale of the lettering, places are not.
 */
public final class Brush implements AutoCloseable {
  private static final float SOLID = -1;
  /** Pixels between a tag and the edge of the picture. */
  private static final double EDGE = 3;
  private final Program program = new Program("brush");
  private final Mesh mesh = new Mesh(2, 2, 4);
  private final Floats data = new Floats();
  private final Lettering letters;
  private UnaryOperator<String> called = UnaryOperator.identity();
  private int wide;
  private int high;

  public Brush(Lettering letters) {
    this.letters = letters;
  }

  public Lettering letters() {
    return letters;
  }

  public float scale() {
    return letters.scale();
  }

  /** From here on texts are written so: for names whose letters there are not. */
  public void call(UnaryOperator<String> as) {
    called = as;
  }

  /** A text as it is written. */
  public String called(String text) {
    return called.apply(text);
  }

  private void corner(double x, double y, float u, float v, Colour c) {
    data.add((float) x, (float) y, u, v, c.r(), c.g(), c.b(), c.a());
  }

  public Brush triangle(double x0, double y0, double x1, double y1, double x2, double y2, Colour c) {
    corner(x0, y0, SOLID, 0, c);
    corner(x1, y1, SOLID, 0, c);
    corner(x2, y2, SOLID, 0, c);
    return this;
  }

  public Brush box(double x0, double y0, double x1, double y1, Colour c) {
    return triangle(x0, y0, x1, y0, x1, y1, c).triangle(x0, y0, x1, y1, x0, y1, c);
  }

  /** A box with rounded corners. */
  public Brush card(double x0, double y0, double x1, double y1, double radius, Colour c) {
    double r = Math.min(radius * scale(), Math.min(x1 - x0, y1 - y0) / 2);
    box(x0 + r, y0, x1 - r, y1, c).box(x0, y0 + r, x0 + r, y1 - r, c).box(x1 - r, y0 + r, x1, y1 - r, c);
    wedge(x0 + r, y0 + r, r, 180, c);
    wedge(x1 - r, y0 + r, r, 270, c);
    wedge(x1 - r, y1 - r, r, 0, c);
    wedge(x0 + r, y1 - r, r, 90, c);
    return this;
  }

  private void wedge(double x, double y, double r, double fromDeg, Colour c) {
    int steps = 8;
    for (int i = 0; i < steps; i++) {
      double a = Math.toRadians(fromDeg + 90.0 * i / steps);
      double b = Math.toRadians(fromDeg + 90.0 * (i + 1) / steps);
      triangle(x, y, x + r * Math.cos(a), y + r * Math.sin(a), x + r * Math.cos(b), y + r * Math.sin(b), c);
    }
  }

  public Brush disc(double x, double y, double radius, Colour c) {
    for (int q = 0; q < 4; q++) wedge(x, y, radius * scale(), 90 * q, c);
    return this;
  }

  public Brush ring(double x, double y, double radius, double width, Colour c) {
    int steps = 40;
    double r = radius * scale();
    for (int i = 0; i < steps; i++) {
      double a = 2 * Math.PI * i / steps;
      double b = 2 * Math.PI * (i + 1) / steps;
      line(x + r * Math.cos(a), y + r * Math.sin(a), x + r * Math.cos(b), y + r * Math.sin(b), width, c);
    }
    return this;
  }

  public Brush line(double x0, double y0, double x1, double y1, double width, Colour c) {
    double dx = x1 - x0;
    double dy = y1 - y0;
    double n = Math.hypot(dx, dy);
    if (n < 1e-9) return this;
    double hx = -dy / n * width * scale() / 2;
    double hy = dx / n * width * scale() / 2;
    return triangle(x0 + hx, y0 + hy, x1 + hx, y1 + hy, x1 - hx, y1 - hy, c)
        .triangle(x0 + hx, y0 + hy, x1 - hx, y1 - hy, x0 - hx, y0 - hy, c);
  }

  public Brush dashes(double x0, double y0, double x1, double y1, double width, double dash, Colour c) {
    double n = Math.hypot(x1 - x0, y1 - y0);
    double step = dash * scale();
    for (double t = 0; t < n; t += 2 * step) {
      double u = Math.min(n, t + step);
      line(x0 + (x1 - x0) * t / n, y0 + (y1 - y0) * t / n, x0 + (x1 - x0) * u / n, y0 + (y1 - y0) * u / n, width, c);
    }
    return this;
  }

  /** A line with a filled head at its end. */
  public Brush arrow(double x0, double y0, double x1, double y1, double width, Colour c) {
    double n = Math.hypot(x1 - x0, y1 - y0);
    if (n < 1e-6) return this;
    double ux = (x1 - x0) / n;
    double uy = (y1 - y0) / n;
    double head = Math.min(n, (5 + 2.2 * width) * scale());
    double half = head * 0.42;
    double bx = x1 - ux * head;
    double by = y1 - uy * head;
    line(x0, y0, bx, by, width, c);
    return triangle(x1, y1, bx - uy * half, by + ux * half, bx + uy * half, by - ux * half, c);
  }

  /** A filled convex outline given as x, y pairs. */
  public Brush fan(List<double[]> outline, Colour c) {
    for (int i = 1; i + 1 < outline.size(); i++) {
      double[] a = outline.get(0);
      double[] b = outline.get(i);
      double[] d = outline.get(i + 1);
      triangle(a[0], a[1], b[0], b[1], d[0], d[1], c);
    }
    return this;
  }

  /** Text with its baseline at {@code y}; {@code align} 0 starts at {@code x}, 0.5 is centred on it, 1 ends there. */
  public Brush text(double x, double y, String words, Lettering.Style style, double align, Colour c) {
    String text = called(words);
    double pen = Math.round(x - align * letters.width(text, style));
    double base = Math.round(y);
    for (int code : text.codePoints().toArray()) {
      Lettering.Glyph g = letters.letter(style, code);
      corner(pen + g.x0(), base + g.y0(), g.u0(), g.v0(), c);
      corner(pen + g.x1(), base + g.y0(), g.u1(), g.v0(), c);
      corner(pen + g.x1(), base + g.y1(), g.u1(), g.v1(), c);
      corner(pen + g.x0(), base + g.y0(), g.u0(), g.v0(), c);
      corner(pen + g.x1(), base + g.y1(), g.u1(), g.v1(), c);
      corner(pen + g.x0(), base + g.y1(), g.u0(), g.v1(), c);
      pen += g.advance();
    }
    return this;
  }

  /** Tags are kept within a picture of this size; without it they lie where they are put. */
  public void within(int width, int height) {
    wide = width;
    high = height;
  }

  /** Text on a small card centred on a place, or as near to it as is in the picture; readable on anything. */
  public Brush tag(double atX, double atY, String words, Lettering.Style style, Colour ink, Colour paper) {
    String text = called(words);
    double w = letters.width(text, style) / 2 + 6 * scale();
    double h = letters.capHeight(style) / 2 + 5 * scale();
    double x = kept(atX, w, wide);
    double y = kept(atY, h, high);
    card(x - w, y - h, x + w, y + h, 4, paper);
    return text(x, y + letters.capHeight(style) / 2 + 0.5 * scale(), text, style, 0.5, ink);
  }

  /** A tag just behind the tail of an arrow, which it does not cover; {@code dx} and {@code dy} lead away from its tip. */
  public Brush tagBehind(double x, double y, double dx, double dy, String words, Lettering.Style style) {
    String text = called(words);
    double n = Math.max(1e-6, Math.hypot(dx, dy));
    double w = letters.width(text, style) / 2 + 8 * scale();
    double h = letters.capHeight(style) / 2 + 7 * scale();
    double away = Math.min(w / Math.max(1e-6, Math.abs(dx / n)), h / Math.max(1e-6, Math.abs(dy / n)));
    return tag(x + away * dx / n, y + away * dy / n, text, style, Palette.INK, Palette.PANEL.solid(0.92));
  }

  private static double kept(double at, double half, int size) {
    // What lies quite outside stays there: its place is not in the picture.
    if (size <= 0 || at < 0 || at > size) return at;
    return Math.max(half + EDGE, Math.min(size - half - EDGE, at));
  }

  /** Puts everything since the last call on a picture of this size. */
  public void paint(int width, int height) {
    if (data.size() == 0) return;
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_CULL_FACE);
    glEnable(GL_BLEND);
    glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
    letters.bind();
    program.use().set("size", (float) width, (float) height).set("letters", 0);
    mesh.fill(data).draw();
    data.clear();
  }

  @Override
  public void close() {
    program.close();
    mesh.close();
  }
}
