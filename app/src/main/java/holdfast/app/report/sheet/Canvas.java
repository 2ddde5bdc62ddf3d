package holdfast.app.report.sheet;

import holdfast.model.scene.UsMeasure;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;

/**
 * A document that is drawn page by page in millimetres, x to the right and y up from the lower left corner of the page.
 * The same drawing gives the same bytes: no date, and a fixed document number.
 */
final class Canvas implements AutoCloseable {
  /** What a sheet is said to be written by. */
  static final String PROGRAM = "holdfast";

  /** A space that no line is broken at. */
  private static final String TIED = "\u00a0";
  private static final Pattern FIGURE_AND_UNIT =
      Pattern.compile("(?<=\\d) (?=(?:%|mm|cm²|kg|lbf?|L|gal|g|oz|N|h|min|in|psi|ml|days?)(?![\\w/])|\\d+/\\d+ in\\b)");

  private static final double POINTS_PER_MM = 72 / UsMeasure.INCH_MM;
  private static final String FONTS = "/com/formdev/flatlaf/fonts/roboto/";

  /** Weights of letter. */
  enum Face { REGULAR, BOLD }

  private final PDDocument document = new PDDocument();
  private final PDType0Font regular;
  private final PDType0Font bold;
  private final Map<Integer, Boolean> drawable = new HashMap<>();
  private final double widthMm;
  private final double heightMm;
  private final List<PDPage> pages = new ArrayList<>();
  private PDPageContentStream out;
  private PaperNames names = PaperNames.AS_THEY_ARE;

  Canvas(double widthMm, double heightMm, String title) {
    this.widthMm = widthMm;
    this.heightMm = heightMm;
    regular = font("Roboto-Regular.ttf");
    bold = font("Roboto-Bold.ttf");
    PDDocumentInformation info = new PDDocumentInformation();
    info.setTitle(title);
    info.setCreator(PROGRAM);
    document.setDocumentInformation(info);
    document.setDocumentId(0L);
    document.getDocumentCatalog().setLanguage("en");
  }

  private PDType0Font font(String file) {
    try (InputStream in = Canvas.class.getResourceAsStream(FONTS + file)) {
      if (in == null) throw new IllegalStateException("the font " + file + " is missing from the program");
      return PDType0Font.load(document, in, true);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes names from now on as they stand on paper. */
  void call(PaperNames as) {
    names = as;
  }

  /** A document without pages, like this one to write on. */
  Canvas blank() {
    Canvas like = new Canvas(widthMm, heightMm, "");
    like.call(names);
    return like;
  }

  double widthMm() {
    return widthMm;
  }

  double heightMm() {
    return heightMm;
  }

  int pages() {
    return pages.size();
  }

  /** Starts a new page. */
  void page() {
    io(() -> {
      if (out != null) out.close();
      PDPage page = new PDPage(new PDRectangle(pt(widthMm), pt(heightMm)));
      document.addPage(page);
      pages.add(page);
      out = new PDPageContentStream(document, page);
      out.setLineJoinStyle(1);
      out.setLineCapStyle(1);
    });
  }

  /** Goes back to a page to add to it; numbers from 0. */
  void reopen(int number) {
    io(() -> {
      if (out != null) out.close();
      out = new PDPageContentStream(document, pages.get(number), PDPageContentStream.AppendMode.APPEND, true, true);
    });
  }

  /** The finished file. */
  byte[] bytes() {
    ByteArrayOutputStream to = new ByteArrayOutputStream();
    io(() -> {
      if (out != null) out.close();
      out = null;
      document.getDocument().getTrailer().removeItem(COSName.ID);
      document.save(to);
    });
    return to.toByteArray();
  }

  @Override
  public void close() {
    io(() -> {
      if (out != null) out.close();
      document.close();
    });
  }

  // -- state ----------------------------------------------------------------------------------------------------------

  /** Runs a drawing inside a clipping rectangle. */
  void clipped(double x, double y, double width, double height, Runnable drawing) {
    io(() -> {
      out.saveGraphicsState();
      out.addRect(pt(x), pt(y), pt(width), pt(height));
      out.clip();
    });
    drawing.run();
    io(() -> out.restoreGraphicsState());
  }

  /** Sets the pen for lines: its colour, width in millimetres, and dashes (none: a whole line). */
  void pen(Ink ink, double width, double... dashes) {
    io(() -> {
      out.setStrokingColor(ink.red(), ink.green(), ink.blue());
      out.setLineWidth(pt(width));
      float[] d = new float[dashes.length];
      for (int i = 0; i < d.length; i++) d[i] = pt(dashes[i]);
      out.setLineDashPattern(d, 0);
    });
  }

  /** Sets the colour of areas and letters. */
  void brush(Ink ink) {
    io(() -> out.setNonStrokingColor(ink.red(), ink.green(), ink.blue()));
  }

  // -- shapes ---------------------------------------------------------------------------------------------------------

  void line(double x1, double y1, double x2, double y2) {
    io(() -> {
      out.moveTo(pt(x1), pt(y1));
      out.lineTo(pt(x2), pt(y2));
      out.stroke();
    });
  }

  void rectangle(double x, double y, double width, double height) {
    io(() -> {
      out.addRect(pt(x), pt(y), pt(width), pt(height));
      out.stroke();
    });
  }

  void fillRectangle(double x, double y, double width, double height) {
    io(() -> {
      out.addRect(pt(x), pt(y), pt(width), pt(height));
      out.fill();
    });
  }

  void polygon(List<double[]> points) {
    if (points.size() < 2) return;
    io(() -> {
      path(points);
      out.stroke();
    });
  }

  void fillPolygon(List<double[]> points) {
    if (points.size() < 3) return;
    io(() -> {
      path(points);
      out.fill();
    });
  }

  private void path(List<double[]> points) throws IOException {
    out.moveTo(pt(points.get(0)[0]), pt(points.get(0)[1]));
    for (double[] p : points.subList(1, points.size())) out.lineTo(pt(p[0]), pt(p[1]));
    out.closePath();
  }

  void circle(double x, double y, double radius, boolean filled, boolean drawn) {
    double k = 0.5522847498 * radius;
    io(() -> {
      out.moveTo(pt(x + radius), pt(y));
      out.curveTo(pt(x + radius), pt(y + k), pt(x + k), pt(y + radius), pt(x), pt(y + radius));
      out.curveTo(pt(x - k), pt(y + radius), pt(x - radius), pt(y + k), pt(x - radius), pt(y));
      out.curveTo(pt(x - radius), pt(y - k), pt(x - k), pt(y - radius), pt(x), pt(y - radius));
      out.curveTo(pt(x + k), pt(y - radius), pt(x + radius), pt(y - k), pt(x + radius), pt(y));
      out.closePath();
      if (filled && drawn) out.fillAndStroke();
      else if (filled) out.fill();
      else out.stroke();
    });
  }

  // -- text -----------------------------------------------------------------------------------------------------------

  /** Writes one line, its baseline starting at a point; the size is the height of the letters' body in millimetres. */
  void text(String line, double x, double y, double size, Face face) {
    turnedText(line, x, y, size, face, 0);
  }

  /** Writes one line over a drawing: the letters stand in a thin rim of paper. */
  void haloText(String line, double x, double y, double size, Face face) {
    io(() -> {
      out.saveGraphicsState();
      out.setStrokingColor(Ink.PAPER.red(), Ink.PAPER.green(), Ink.PAPER.blue());
      out.setLineWidth(pt(1.1));
      out.setLineDashPattern(new float[0], 0);
      out.setRenderingMode(RenderingMode.STROKE);
    });
    text(line, x, y, size, face);
    io(() -> {
      out.setRenderingMode(RenderingMode.FILL);
      out.restoreGraphicsState();
    });
    text(line, x, y, size, face);
  }

  void textCentred(String line, double x, double y, double size, Face face) {
    text(line, x - width(line, size, face) / 2, y, size, face);
  }

  void textRight(String line, double x, double y, double size, Face face) {
    text(line, x - width(line, size, face), y, size, face);
  }

  /** Writes one line turned counter-clockwise by an angle in degrees. */
  void turnedText(String line, double x, double y, double size, Face face, double degrees) {
    String drawn = drawable(line);
    if (drawn.isBlank()) return;
    double a = Math.toRadians(degrees);
    io(() -> {
      out.beginText();
      out.setFont(face == Face.BOLD ? bold : regular, pt(size));
      out.setTextMatrix(new Matrix(
          (float) Math.cos(a), (float) Math.sin(a), (float) -Math.sin(a), (float) Math.cos(a), pt(x), pt(y)));
      out.showText(drawn);
      out.endText();
    });
  }

  /** Width of a line in millimetres. */
  double width(String line, double size, Face face) {
    try {
      return (face == Face.BOLD ? bold : regular).getStringWidth(drawable(line)) / 1000 * size;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Breaks a text into lines no wider than a width, at spaces where there are any; a figure keeps its unit beside it. */
  List<String> wrap(String text, double width, double size, Face face) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : FIGURE_AND_UNIT.matcher(names.written(text).strip()).replaceAll(TIED).split("\\s+")) {
      if (line.length() > 0 && width(line + " " + word, size, face) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      if (line.length() > 0) line.append(' ');
      line.append(word);
      while (line.length() > 1 && width(line.toString(), size, face) > width) {
        int cut = line.length() - 1;
        while (cut > 1 && width(line.substring(0, cut), size, face) > width) cut = line.offsetByCodePoints(cut, -1);
        lines.add(line.substring(0, cut));
        line.delete(0, cut);
      }
    }
    if (line.length() > 0 || lines.isEmpty()) lines.add(line.toString());
    lines.replaceAll(l -> l.replace(TIED, " "));
    return lines;
  }

  /** Whether both weights have a letter. */
  boolean draws(int codePoint) {
    return drawable.computeIfAbsent(codePoint, this::hasGlyph);
  }

  /** The text with names as they stand on paper, and whatever else the font cannot draw replaced by a question mark. */
  private String drawable(String text) {
    StringBuilder b = new StringBuilder();
    names.written(text).codePoints().forEach(c -> b.appendCodePoint(draws(c) ? c : '?'));
    return b.toString();
  }

  private boolean hasGlyph(int codePoint) {
    if (Character.isISOControl(codePoint)) return false;
    try {
      regular.encode(Character.toString(codePoint));
      bold.encode(Character.toString(codePoint));
      return true;
    } catch (IOException | IllegalArgumentException e) {
      return false;
    }
  }

  private static float pt(double mm) {
    return (float) (mm * POINTS_PER_MM);
  }

  /** Something that writes to memory: it does not fail but by a fault of ours. */
  @FunctionalInterface
  private interface Writing {
    void run() throws IOException;
  }

  private static void io(Writing writing) {
    try {
      writing.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
