package holdfast.app.view;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.pane.PaneReport.CaseStress;
import holdfast.engine.pane.PaneReport.FootBearing;
import holdfast.engine.pane.PaneReport.StressMap;
import holdfast.engine.pane.Point2;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import holdfast.model.scene.UsMeasure;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.math.RoundingMode;
import java.util.List;

/**
 * The bottom pane in plan, front at the foot: stress in colours with thin lines of equal stress, the floor grid, the feet with
 * their forces, the place of the greatest stress, axes in the tank's own lengths.
 */
final class PanePlan {
  private final Scene scene;
  private final PaneReport report;
  private final StressMap map;
  private final Units units;
  private final PaneScale scale;
  private final double s;
  private final Frame frame;
  private final Typeface regular = Typeface.regular();
  private final Typeface medium = Typeface.medium();

  /**
   * A plan in a room of the picture.
   *
   * @param room pixels that the pane may fill
   * @param s size of letters and lines, 1 in a picture 800 pixels high
   */
  PanePlan(Scene scene, PaneReport report, Units units, PaneScale scale, Rectangle2D room, double s) {
    this.scene = scene;
    this.report = report;
    this.map = report.map();
    this.units = units;
    this.scale = scale;
    this.s = s;
    this.frame = frame(room);
  }

  /** From millimetres of the tank to pixels. */
  private record Frame(double left, double bottom, double pixelsPerMm, double firstXMm, double firstYMm) {
    double x(double mm) {
      return left + (mm - firstXMm) * pixelsPerMm;
    }

    double y(double mm) {
      return bottom - (mm - firstYMm) * pixelsPerMm;
    }
  }

  private Frame frame(Rectangle2D room) {
    double per = Math.min(room.getWidth() / paneLengthMm(), room.getHeight() / paneWidthMm());
    double x = room.getX() + 0.5 * (room.getWidth() - per * paneLengthMm());
    double y = room.getMaxY() - 0.5 * (room.getHeight() - per * paneWidthMm());
    return new Frame(x, y, per, map.firstXMm(), map.firstYMm());
  }

  /** Draws all of it. */
  void draw(BufferedImage image, Graphics2D g) {
    stress(image);
    levels(g);
    floor(g);
    outline(g);
    axes(g);
    feet(g);
    Rectangle2D mark = mark(g);
    labels(g, mark);
  }

  private double paneLengthMm() {
    return map.stepXMm() * (map.columns() - 1);
  }

  private double paneWidthMm() {
    return map.stepYMm() * (map.rows() - 1);
  }

  private Rectangle2D pane() {
    return new Rectangle2D.Double(frame.left, frame.bottom - paneWidthMm() * frame.pixelsPerMm,
        paneLengthMm() * frame.pixelsPerMm, paneWidthMm() * frame.pixelsPerMm);
  }

  /** The map itself, pixel by pixel, between four of its points each. */
  private void stress(BufferedImage image) {
    int x0 = (int) Math.ceil(frame.x(map.firstXMm()));
    int x1 = (int) Math.floor(frame.x(map.firstXMm() + paneLengthMm()));
    int y0 = (int) Math.ceil(frame.y(map.firstYMm() + paneWidthMm()));
    int y1 = (int) Math.floor(frame.y(map.firstYMm()));
    for (int y = y0; y <= y1; y++) {
      for (int x = x0; x <= x1; x++) {
        image.setRGB(x, y, rgb(Palette.scale(shown(x, y) / scale.top())));
      }
    }
  }

  /** Stress at a pixel, in the units shown. */
  private double shown(double px, double py) {
    double c = (px - frame.left) / frame.pixelsPerMm / map.stepXMm();
    double r = (frame.bottom - py) / frame.pixelsPerMm / map.stepYMm();
    int i = Math.max(0, Math.min(map.columns() - 2, (int) c));
    int j = Math.max(0, Math.min(map.rows() - 2, (int) r));
    double u = Math.max(0, Math.min(1, c - i));
    double v = Math.max(0, Math.min(1, r - j));
    double low = (1 - u) * map.stressNmm2(i, j) + u * map.stressNmm2(i + 1, j);
    double high = (1 - u) * map.stressNmm2(i, j + 1) + u * map.stressNmm2(i + 1, j + 1);
    return Quantity.STRESS.in(units, (1 - v) * low + v * high);
  }

  /** Lines of equal stress at the marks of the scale, cell by cell of the map (two triangles each). */
  private void levels(Graphics2D g) {
    g.setStroke(new BasicStroke((float) (0.8 * s)));
    for (double level = scale.step(); level < scale.top() - 1e-9; level += scale.step()) {
      g.setColor(level / scale.top() > 0.55 ? new Color(255, 255, 255, 120) : new Color(27, 42, 49, 90));
      Path2D path = new Path2D.Double();
      for (int j = 0; j + 1 < map.rows(); j++) {
        for (int i = 0; i + 1 < map.columns(); i++) {
          crossing(path, level, i, j, i + 1, j, i + 1, j + 1);
          crossing(path, level, i, j, i + 1, j + 1, i, j + 1);
        }
      }
      g.draw(path);
    }
  }

  private void crossing(Path2D path, double level, int... corners) {
    double[] points = new double[4];
    int found = 0;
    for (int k = 0; k < 3 && found < 4; k++) {
      int a = 2 * k;
      int b = 2 * ((k + 1) % 3);
      double va = Quantity.STRESS.in(units, map.stressNmm2(corners[a], corners[a + 1])) - level;
      double vb = Quantity.STRESS.in(units, map.stressNmm2(corners[b], corners[b + 1])) - level;
      if (va < 0 == vb < 0) continue;
      double t = va / (va - vb);
      points[found++] = nodeX(corners[a] + t * (corners[b] - corners[a]));
      points[found++] = nodeY(corners[a + 1] + t * (corners[b + 1] - corners[a + 1]));
    }
    if (found < 4) return;
    path.moveTo(points[0], points[1]);
    path.lineTo(points[2], points[3]);
  }

  private double nodeX(double column) {
    return frame.x(map.firstXMm() + column * map.stepXMm());
  }

  private double nodeY(double row) {
    return frame.y(map.firstYMm() + row * map.stepYMm());
  }

  private void floor(Graphics2D g) {
    Floor floor = scene.floor();
    if (floor.kind() == Floor.Kind.BARE) return;
    Floor.Extent e = floor.extentIn(scene.tank());
    Shape whole = new Rectangle2D.Double(frame.x(e.xMm()), frame.y(e.yMm() + e.widthMm()),
        e.lengthMm() * frame.pixelsPerMm, e.widthMm() * frame.pixelsPerMm);
    if (floor.kind() == Floor.Kind.GRID && floor.cellMm() * frame.pixelsPerMm >= 4) {
      g.setColor(new Color(255, 255, 255, 70));
      g.setStroke(new BasicStroke((float) Math.max(0.5, Math.min(1.5 * s, floor.wallMm() * frame.pixelsPerMm))));
      for (double x = e.xMm(); x <= e.xMm() + e.lengthMm() + 1e-6; x += floor.cellMm()) {
        g.draw(new Line2D.Double(frame.x(x), frame.y(e.yMm()), frame.x(x), frame.y(e.yMm() + e.widthMm())));
      }
      for (double y = e.yMm(); y <= e.yMm() + e.widthMm() + 1e-6; y += floor.cellMm()) {
        g.draw(new Line2D.Double(frame.x(e.xMm()), frame.y(y), frame.x(e.xMm() + e.lengthMm()), frame.y(y)));
      }
    }
    g.setColor(Palette.INK_SOFT.awt());
    g.setStroke(new BasicStroke((float) (1.2 * s), BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10,
        new float[] {(float) (6 * s), (float) (4 * s)}, 0));
    g.draw(whole);
  }

  /** The pane, and within it the inside of the tank. */
  private void outline(Graphics2D g) {
    Tank t = scene.tank();
    PanePicture.ink(g, Palette.INK);
    g.setStroke(new BasicStroke((float) (1.6 * s)));
    g.draw(pane());
    PanePicture.ink(g, Palette.GLASS_EDGE);
    g.setStroke(new BasicStroke((float) (1.0 * s)));
    g.draw(new Rectangle2D.Double(frame.x(0), frame.y(t.widthMm()), t.lengthMm() * frame.pixelsPerMm,
        t.widthMm() * frame.pixelsPerMm));
  }

  private void axes(Graphics2D g) {
    Tank t = scene.tank();
    double mm = units == Units.US ? UsMeasure.INCH_MM : 1;
    double every = PaneScale.niceStep(t.lengthMm() / mm / 6);
    double size = 12.5 * s;
    PanePicture.ink(g, Palette.INK_SOFT);
    g.setStroke(new BasicStroke((float) s));
    double base = frame.bottom + 2 * s;
    for (double v = 0; v * mm <= t.lengthMm() + 1e-6; v += every) {
      double x = frame.x(v * mm);
      g.draw(new Line2D.Double(x, base, x, base + 5 * s));
      String text = Scale.number(v, every < 1 ? 1 : 0);
      regular.draw(g, text, x - 0.5 * regular.width(text, size), base + 20 * s, size);
    }
    double edge = frame.left - 2 * s;
    for (double v = 0; v * mm <= t.widthMm() + 1e-6; v += every) {
      double y = frame.y(v * mm);
      g.draw(new Line2D.Double(edge - 5 * s, y, edge, y));
      String text = Scale.number(v, every < 1 ? 1 : 0);
      regular.draw(g, text, edge - 9 * s - regular.width(text, size), y + 0.5 * Typeface.capHeight(size), size);
    }
    String front = "front, " + units.sign(Quantity.LENGTH) + " from the inner corner";
    regular.draw(g, front, frame.x(0.5 * t.lengthMm()) - 0.5 * regular.width(front, size), base + 39 * s, size);
  }

  private void feet(Graphics2D g) {
    for (FootBearing f : report.feet()) {
      Shape shape = shape(f);
      g.setColor(new Color(255, 255, 255, 210));
      g.setStroke(new BasicStroke((float) (4 * s), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      g.draw(shape);
      PanePicture.ink(g, Palette.INK);
      g.setStroke(new BasicStroke((float) (1.8 * s), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      g.draw(shape);
    }
  }

  /** The greatest stress, then rocks and the most force on their feet; words keep clear of feet and of each other if they can. */
  private void labels(Graphics2D g, Rectangle2D mark) {
    FreePlaces places = new FreePlaces(pane());
    report.feet().forEach(f -> places.take(shape(f).getBounds2D()));
    places.take(mark);
    label(g, "greatest " + stress(report.governing().totalNmm2()), mark, places, true);
    for (FootBearing f : report.feet()) {
      label(g, f.rock() + ", " + Scale.load(f.mostN(), units), shape(f).getBounds2D(), places, false);
    }
  }

  private Shape shape(FootBearing f) {
    List<Point2> ring = f.outline();
    Path2D path = new Path2D.Double();
    for (int i = 0; i < ring.size(); i++) {
      double x = frame.x(1e3 * ring.get(i).x());
      double y = frame.y(1e3 * ring.get(i).y());
      if (i == 0) path.moveTo(x, y);
      else path.lineTo(x, y);
    }
    if (ring.size() > 2) path.closePath();
    Rectangle2D box = path.getBounds2D();
    double least = 7 * s;
    if (box.getWidth() >= least || box.getHeight() >= least) return path;
    double x = frame.x(f.xMm());
    double y = frame.y(f.yMm());
    return new Ellipse2D.Double(x - 0.5 * least, y - 0.5 * least, least, least);
  }

  /** A cross in a ring where the stress is greatest. */
  private Rectangle2D mark(Graphics2D g) {
    CaseStress c = report.governing();
    double x = frame.x(c.xMm());
    double y = frame.y(c.yMm());
    double r = 9 * s;
    Path2D mark = new Path2D.Double(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
    for (int k = 0; k < 4; k++) {
      double dx = k == 0 ? 1 : k == 1 ? -1 : 0;
      double dy = k == 2 ? 1 : k == 3 ? -1 : 0;
      mark.moveTo(x + 0.45 * r * dx, y + 0.45 * r * dy);
      mark.lineTo(x + 1.7 * r * dx, y + 1.7 * r * dy);
    }
    g.setColor(Color.WHITE);
    g.setStroke(new BasicStroke((float) (4.6 * s)));
    g.draw(mark);
    PanePicture.ink(g, Palette.FAIL);
    g.setStroke(new BasicStroke((float) (2.2 * s)));
    g.draw(mark);
    return mark.getBounds2D();
  }

  /** Text on a light plate beside a box. */
  private void label(Graphics2D g, String text, Rectangle2D by, FreePlaces places, boolean strong) {
    Typeface face = strong ? medium : regular;
    double size = (strong ? 14 : 12.5) * s;
    Rectangle2D plate = places.beside(by, face.width(text, size) + 10 * s, size + 7 * s, 5 * s);
    g.setColor(new Color(250, 251, 250, strong ? 240 : 215));
    g.fill(plate);
    PanePicture.ink(g, strong ? Palette.FAIL : Palette.INK);
    face.draw(g, text, plate.getX() + 5 * s, plate.getCenterY() + 0.5 * Typeface.capHeight(size), size);
  }

  private String stress(double nmm2) {
    return units.text(Quantity.STRESS, nmm2, RoundingMode.CEILING);
  }

  private static int rgb(Colour c) {
    return Math.round(c.r() * 255) << 16 | Math.round(c.g() * 255) << 8 | Math.round(c.b() * 255);
  }
}
