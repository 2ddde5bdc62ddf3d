package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.engine.motion.SectionResult;
import holdfast.model.scene.UsMeasure;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A fall in a section as a strip of pictures, drawn without OpenGL and without a display: the same scale in each, the
 * start in dashes, the struck rock in another tone and with a heavier line.
 */
public final class FallPicture {
  private static final int PANELS = 6;
  private static final int COLUMNS = 3;
  private static final int PANEL = 430;
  private static final int GAP = 14;
  private static final int MARGIN = 28;
  private static final int LINE = 20;
  /** Height of small letters, pixels. */
  private static final int SMALL = 14;

  /** Metres shown beyond the farthest that a rock gets. */
  private static final double ROOM_M = 0.03;

  private final SectionResult.Played played;
  private final String struck;
  private final double atAlongM;
  private final double atUpM;
  private final String title;
  private final Units units;
  private final Rectangle2D world;
  private final double scale;
  private final Typeface plain = Typeface.regular();

  private FallPicture(
      SectionResult.Played played, String struck, double atAlongM, double atUpM, String title, Units units) {
    this.played = played;
    this.struck = struck;
    this.atAlongM = atAlongM;
    this.atUpM = atUpM;
    this.title = title;
    this.units = units;
    this.world = world(played);
    this.scale = PANEL / world.getWidth();
  }

  /**
   * Draws it.
   *
   * @param atAlongM where the blow struck, along the section
   * @param atUpM and how high
   * @param title a line above the pictures
   * @param units of the ruler
   */
  public static BufferedImage draw(
      SectionResult.Played played, String struck, double atAlongM, double atUpM, String title, Units units) {
    return new FallPicture(played, struck, atAlongM, atUpM, title, units).draw();
  }

  private BufferedImage draw() {
    int height = (int) Math.ceil(world.getHeight() * scale);
    int rows = (PANELS + COLUMNS - 1) / COLUMNS;
    List<String> foot = foot();
    int width = 2 * MARGIN + COLUMNS * PANEL + (COLUMNS - 1) * GAP;
    int top = MARGIN + 2 * LINE;
    int total = top + rows * (height + LINE + GAP) + foot.size() * LINE + MARGIN;
    BufferedImage image = new BufferedImage(width, total, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(Palette.PANEL.awt());
    g.fillRect(0, 0, width, total);
    g.setColor(Palette.INK.awt());
    Typeface.medium().draw(g, title, MARGIN, MARGIN + 14, 18);
    List<SectionResult.Frame> frames = chosen();
    for (int i = 0; i < frames.size(); i++) {
      int x = MARGIN + i % COLUMNS * (PANEL + GAP);
      int y = top + i / COLUMNS * (height + LINE + GAP);
      panel((Graphics2D) g.create(x, y, PANEL, height), frames.get(i), i == 0, height);
      g.setColor(Palette.RULE.awt());
      g.drawRect(x, y, PANEL - 1, height - 1);
      g.setColor(Palette.INK_SOFT.awt());
      plain.draw(g, String.format(Locale.ROOT, "%.2f s", frames.get(i).timeS()), x, y + height + 16, SMALL);
    }
    g.setColor(Palette.INK_SOFT.awt());
    int y = top + rows * (height + LINE + GAP) + 12;
    for (String line : foot) {
      plain.draw(g, line, MARGIN, y, SMALL);
      y += LINE;
    }
    g.dispose();
    return image;
  }

  private List<String> foot() {
    List<String> lines = new ArrayList<>();
    if (!played.representative()) {
      StringBuilder line = new StringBuilder("Not representative of the heap: ");
      for (int i = 0; i < played.doubts().size(); i++) {
        String part = played.doubts().get(i) + (i + 1 < played.doubts().size() ? "; " : ".");
        if (line.length() + part.length() > 170) {
          lines.add(line.toString());
          line = new StringBuilder("    ");
        }
        line.append(part);
      }
      lines.add(line.toString());
    }
    lines.add("A picture of what could happen in this plane, not a verdict. Rocks are cut open; dashes show where they were.");
    return lines;
  }

  /** The first frame, the last, and between them those that divide the motion into equal times. */
  private List<SectionResult.Frame> chosen() {
    List<SectionResult.Frame> frames = played.frames();
    SectionResult.Frame last = frames.get(frames.size() - 1);
    double still = last.timeS();
    for (int i = frames.size() - 1; i >= 0 && far(frames.get(i), last) < 2e-3; i--) still = frames.get(i).timeS();
    List<SectionResult.Frame> chosen = new ArrayList<>();
    for (int k = 0; k < PANELS - 1; k++) {
      double t = still * k / (PANELS - 2);
      SectionResult.Frame best = frames.get(0);
      for (SectionResult.Frame f : frames) if (Math.abs(f.timeS() - t) < Math.abs(best.timeS() - t)) best = f;
      chosen.add(best);
    }
    chosen.add(last);
    return chosen;
  }

  private static double far(SectionResult.Frame a, SectionResult.Frame b) {
    double far = 0;
    for (int i = 0; i < a.moves().size(); i++) {
      SectionResult.Move p = a.moves().get(i);
      SectionResult.Move q = b.moves().get(i);
      far = Math.max(far, Math.hypot(p.shiftAlong() - q.shiftAlong(), p.shiftUp() - q.shiftUp())
          + 0.1 * Math.abs(p.turnRad() - q.turnRad()));
    }
    return far;
  }

  private void panel(Graphics2D g, SectionResult.Frame frame, boolean first, int height) {
    g.setColor(Palette.SKY.awt());
    g.fillRect(0, 0, PANEL, height);
    int rock = 0;
    for (SectionResult.Piece piece : played.pieces()) {
      if (!piece.moves()) {
        boolean pane = piece.name().endsWith("pane");
        for (List<double[]> p : piece.polygons()) {
          fill(g, shape(p, null, height), pane ? Palette.BOTTOM : Palette.LOUVRE, Palette.GLASS_EDGE, 1);
        }
        continue;
      }
      SectionResult.Move move = frame.moves().get(rock++);
      if (!first) {
        g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {4, 4}, 0));
        g.setColor(Palette.INK_FAINT.awt());
        for (List<double[]> p : piece.polygons()) g.draw(shape(p, null, height));
      }
      boolean hit = piece.name().equals(struck);
      // The outline first, so that lobes of one rock run together.
      g.setStroke(new BasicStroke(hit ? 5 : 3, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      g.setColor(Palette.INK.awt());
      for (List<double[]> p : piece.polygons()) g.draw(shape(p, move, height));
      g.setColor((hit ? Palette.ACCENT_SOFT : Palette.CUT).awt());
      for (List<double[]> p : piece.polygons()) g.fill(shape(p, move, height));
    }
    if (first) {
      arrow(g, height);
      ruler(g, height);
    }
    g.dispose();
  }

  private static void fill(Graphics2D g, Shape s, Colour fill, Colour line, float width) {
    g.setColor(fill.awt());
    g.fill(s);
    g.setStroke(new BasicStroke(width));
    g.setColor(line.awt());
    g.draw(s);
  }

  private void arrow(Graphics2D g, int height) {
    double x = px(atAlongM);
    double y = py(atUpM, height);
    g.setColor(Palette.FORCE.awt());
    g.setStroke(new BasicStroke(3, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
    g.draw(new Line2D.Double(x - 60, y, x - 12, y));
    Path2D head = new Path2D.Double();
    head.moveTo(x, y);
    head.lineTo(x - 14, y - 7);
    head.lineTo(x - 14, y + 7);
    head.closePath();
    g.fill(head);
  }

  private void ruler(Graphics2D g, int height) {
    double mm = rulerMm(units);
    double length = mm * 1e-3 * scale;
    g.setColor(Palette.INK_SOFT.awt());
    g.setStroke(new BasicStroke(1.5f));
    g.draw(new Line2D.Double(12, 14, 12 + length, 14));
    g.draw(new Line2D.Double(12, 10, 12, 18));
    g.draw(new Line2D.Double(12 + length, 10, 12 + length, 18));
    plain.draw(g, Scale.length(mm, units), 18 + length, 19, SMALL);
  }

  /** About a hand's breadth, a round length in either system. */
  static double rulerMm(Units units) {
    return units == Units.US ? 4 * UsMeasure.INCH_MM : 100;
  }

  private Shape shape(List<double[]> polygon, SectionResult.Move move, int height) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < polygon.size(); i++) {
      double[] p = move == null ? polygon.get(i) : move.apply(polygon.get(i));
      if (i == 0) {
        path.moveTo(px(p[0]), py(p[1], height));
      } else {
        path.lineTo(px(p[0]), py(p[1], height));
      }
    }
    path.closePath();
    return path;
  }

  private double px(double along) {
    return (along - world.getX()) * scale;
  }

  private double py(double up, int height) {
    return height - (up - world.getY()) * scale;
  }

  /** What any rock covers at any time, some room, and a little of the floor. */
  private static Rectangle2D world(SectionResult.Played played) {
    Rectangle2D box = null;
    for (SectionResult.Frame f : played.frames()) {
      int rock = 0;
      for (SectionResult.Piece piece : played.pieces()) {
        if (!piece.moves()) continue;
        SectionResult.Move move = f.moves().get(rock++);
        for (List<double[]> polygon : piece.polygons()) {
          for (double[] p : polygon) {
            double[] q = move.apply(p);
            if (box == null) box = new Rectangle2D.Double(q[0], q[1], 0, 0);
            box.add(q[0], q[1]);
          }
        }
      }
    }
    if (box == null) box = new Rectangle2D.Double(0, 0, 0.1, 0.1);
    double low = Math.min(box.getMinY(), 0) - 0.012;
    double high = box.getMaxY() + ROOM_M;
    double left = box.getMinX() - ROOM_M;
    double right = box.getMaxX() + ROOM_M;
    // Neither a slit nor a tower.
    double least = (high - low) * 0.75;
    if (right - left < least) {
      double middle = (left + right) / 2;
      left = middle - least / 2;
      right = middle + least / 2;
    }
    return new Rectangle2D.Double(left, low, right - left, high - low);
  }
}
