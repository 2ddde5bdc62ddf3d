package holdfast.app.view;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.engine.pane.BottomPane;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.pane.PaneReport.CaseStress;
import holdfast.engine.pane.PaneReport.FootBearing;
import holdfast.engine.pane.PaneReport.StressMap;
import holdfast.engine.pane.Point2;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.math.RoundingMode;
import java.util.List;

/**
 * A map of the stress in the bottom pane, seen from above with the front at the foot: colours by size, thin lines of equal
 * stress, the feet with their forces, the floor grid, the place of the greatest stress and a scale with its unit.
 * Plain Java 2D: no OpenGL, no display, no font service.
 */
public final class PanePicture {
  /** Points of the map along the longer side. */
  private static final int MAP_POINTS = 121;
  private static final double REFERENCE_HEIGHT = 800;

  private final Scene scene;
  private final PaneReport report;
  private final StressMap map;
  private final Units units;
  private final double s;
  private final Typeface regular = Typeface.regular();
  private final Typeface medium = Typeface.medium();
  private final int width;
  private final int height;
  private final double top;
  private final double step;
  private Frame frame;

  private PanePicture(Scene scene, PaneReport coarse, int width, int height, Units units) {
    this.scene = scene;
    this.report = BottomPane.judge(scene, coarse.load(), MAP_POINTS);
    this.map = report.map();
    this.units = units;
    this.width = width;
    this.height = height;
    this.s = Math.max(0.6, Math.min(height / REFERENCE_HEIGHT, width / (1.5 * REFERENCE_HEIGHT)));
    double greatest = Math.max(1e-3, Quantity.STRESS.in(units, report.governing().totalNmm2()));
    this.step = niceStep(greatest / 5);
    this.top = step * Math.ceil(greatest / step - 1e-9);
  }

  /** Draws the governing case of a report on a scene's pane. */
  public static BufferedImage draw(Scene scene, PaneReport report, int width, int height, Units units) {
    return new PanePicture(scene, report, width, height, units).draw();
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

  private BufferedImage draw() {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(awt(Palette.PANEL));
    g.fillRect(0, 0, width, height);
    frame = frame();
    title(g);
    stress(image);
    levels(g);
    floor(g);
    outline(g);
    axes(g);
    feet(g);
    Rectangle2D mark = mark(g);
    labels(g, mark);
    bar(g);
    foot(g);
    g.dispose();
    return image;
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

  private Frame frame() {
    double left = 76 * s;
    double right = width - 150 * s;
    double head = 112 * s;
    double low = height - 116 * s;
    double scale = Math.min((right - left) / paneLengthMm(), (low - head) / paneWidthMm());
    double x = left + 0.5 * (right - left - scale * paneLengthMm());
    double y = low - 0.5 * (low - head - scale * paneWidthMm());
    return new Frame(x, y, scale, map.firstXMm(), map.firstYMm());
  }

  private void title(Graphics2D g) {
    CaseStress c = report.governing();
    double limit = c.designNmm2() / report.strength().loadFactor();
    ink(g, Palette.INK);
    medium.draw(g, scene.name() + ": stress in the bottom pane", 28 * s, 40 * s, 21 * s);
    ink(g, Palette.INK_SOFT);
    String glass = units.brief(Quantity.LENGTH, scene.tank().bottomGlassMm())
        + (scene.tank().temperedBottom() ? " toughened" : "") + " glass";
    String governing = "Greatest surface stress of the governing case: " + c.load().word() + ", carried on " + c.bed();
    regular.draw(g, governing + "; " + glass, 28 * s, 64 * s, 14.5 * s);
    regular.draw(g, stress(c.totalNmm2()) + " against " + stress(limit) + " by the design strength (" + percent(c.utilisation())
        + "); the trade's rule allows " + stress(report.strength().tradeLimitNmm2()), 28 * s, 85 * s, 14.5 * s);
  }

  private static String percent(double share) {
    return Units.fixed(100 * share, 0, RoundingMode.CEILING) + " %";
  }

  private String stress(double nmm2) {
    return units.text(Quantity.STRESS, nmm2, RoundingMode.HALF_EVEN);
  }

  /** The map itself, pixel by pixel, between four of its points each. */
  private void stress(BufferedImage image) {
    int x0 = (int) Math.ceil(frame.x(map.firstXMm()));
    int x1 = (int) Math.floor(frame.x(map.firstXMm() + paneLengthMm()));
    int y0 = (int) Math.ceil(frame.y(map.firstYMm() + paneWidthMm()));
    int y1 = (int) Math.floor(frame.y(map.firstYMm()));
    for (int y = y0; y <= y1; y++) {
      for (int x = x0; x <= x1; x++) {
        image.setRGB(x, y, rgb(Palette.scale(shown(x, y) / top)));
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
    for (double level = step; level < top - 1e-9; level += step) {
      g.setColor(level / top > 0.55 ? new Color(255, 255, 255, 120) : new Color(27, 42, 49, 90));
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
    g.setColor(awt(Palette.INK_SOFT));
    g.setStroke(new BasicStroke((float) (1.2 * s), BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10,
        new float[] {(float) (6 * s), (float) (4 * s)}, 0));
    g.draw(whole);
  }

  /** The pane, and within it the inside of the tank. */
  private void outline(Graphics2D g) {
    Tank t = scene.tank();
    ink(g, Palette.INK);
    g.setStroke(new BasicStroke((float) (1.6 * s)));
    g.draw(pane());
    ink(g, Palette.GLASS_EDGE);
    g.setStroke(new BasicStroke((float) (1.0 * s)));
    g.draw(new Rectangle2D.Double(frame.x(0), frame.y(t.widthMm()), t.lengthMm() * frame.pixelsPerMm,
        t.widthMm() * frame.pixelsPerMm));
  }

  private void axes(Graphics2D g) {
    Tank t = scene.tank();
    double mm = units == Units.US ? 25.4 : 1;
    double every = niceStep(t.lengthMm() / mm / 6);
    double size = 12.5 * s;
    ink(g, Palette.INK_SOFT);
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
      ink(g, Palette.INK);
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
      label(g, f.rock() + ", " + Scale.force(f.mostN(), units), shape(f).getBounds2D(), places, false);
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
    ink(g, Palette.FAIL);
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
    ink(g, strong ? Palette.FAIL : Palette.INK);
    face.draw(g, text, plate.getX() + 5 * s, plate.getCenterY() + 0.5 * Typeface.capHeight(size), size);
  }

  /** The colour bar, its figures and unit; the limit where it lies within. */
  private void bar(Graphics2D g) {
    double x = width - 112 * s;
    double w = 22 * s;
    double y0 = 150 * s;
    double y1 = height - 130 * s;
    for (double y = y0; y < y1; y++) {
      g.setColor(awt(Palette.scale((y1 - y) / (y1 - y0))));
      g.fill(new Rectangle2D.Double(x, y, w, 1.5));
    }
    ink(g, Palette.INK_SOFT);
    g.setStroke(new BasicStroke((float) s));
    g.draw(new Rectangle2D.Double(x, y0, w, y1 - y0));
    double size = 12.5 * s;
    int places = step < 0.1 ? 2 : step < 1 ? 1 : 0;
    for (int k = 0; k * step <= top + 1e-9; k++) {
      double y = y1 - (y1 - y0) * k * step / top;
      g.draw(new Line2D.Double(x + w, y, x + w + 5 * s, y));
      regular.draw(g, Scale.number(k * step, places), x + w + 9 * s, y + 0.5 * Typeface.capHeight(size), size);
    }
    medium.draw(g, units.sign(Quantity.STRESS), x, y0 - 12 * s, 13.5 * s);
    double limit = Quantity.STRESS.in(units, report.governing().designNmm2() / report.strength().loadFactor());
    if (limit < top) {
      double y = y1 - (y1 - y0) * limit / top;
      ink(g, Palette.FAIL);
      g.setStroke(new BasicStroke((float) (2.2 * s)));
      g.draw(new Line2D.Double(x - 5 * s, y, x + w + 3 * s, y));
      regular.draw(g, "limit", x - 9 * s - regular.width("limit", size), y + 0.5 * Typeface.capHeight(size), size);
    }
  }

  private void foot(Graphics2D g) {
    ink(g, Palette.INK_SOFT);
    String floor = switch (scene.floor().kind()) {
      case GRID -> "Floor grid dashed round its rim. ";
      case SHEET -> "Sheet dashed round its rim. ";
      case BARE -> "";
    };
    String key = "Feet outlined, with the most force each may carry in any case. Lines of equal stress at the scale's marks.";
    regular.draw(g, floor + key, 28 * s, height - 42 * s, 12.5 * s);
    regular.draw(g, "A screen of the layout, not a proof of the glass: the tank's maker decides what the bottom may carry.",
        28 * s, height - 22 * s, 12.5 * s);
  }

  /** 1, 2 or 5 times a power of ten, not under {@code least}. */
  private static double niceStep(double least) {
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double f : new double[] {1, 2, 5}) if (f * power >= least * (1 - 1e-9)) return f * power;
    return 10 * power;
  }

  private static void ink(Graphics2D g, Colour colour) {
    g.setColor(awt(colour));
  }

  private static Color awt(Colour c) {
    return new Color(c.r(), c.g(), c.b(), c.a());
  }

  private static int rgb(Colour c) {
    return Math.round(c.r() * 255) << 16 | Math.round(c.g() * 255) << 8 | Math.round(c.b() * 255);
  }
}
