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
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.math.RoundingMode;

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
  private final Units units;
  private final double s;
  private final Typeface regular = Typeface.regular();
  private final Typeface medium = Typeface.medium();
  private final int width;
  private final int height;
  private final PaneScale scale;

  private PanePicture(Scene scene, PaneReport coarse, int width, int height, Units units) {
    this.scene = scene;
    this.report = BottomPane.judge(scene, coarse.load(), MAP_POINTS);
    this.units = units;
    this.width = width;
    this.height = height;
    this.s = Math.max(0.6, Math.min(height / REFERENCE_HEIGHT, width / (1.5 * REFERENCE_HEIGHT)));
    this.scale = PaneScale.to(Quantity.STRESS.in(units, report.governing().totalNmm2()));
  }

  /** Draws the governing case of a report on a scene's pane. */
  public static BufferedImage draw(Scene scene, PaneReport report, int width, int height, Units units) {
    return new PanePicture(scene, report, width, height, units).draw();
  }

  private BufferedImage draw() {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(Palette.PANEL.awt());
    g.fillRect(0, 0, width, height);
    title(g);
    Rectangle2D room = new Rectangle2D.Double(76 * s, 112 * s, width - 226 * s, height - 228 * s);
    new PanePlan(scene, report, units, scale, room, s).draw(image, g);
    bar(g);
    foot(g);
    g.dispose();
    return image;
  }

  private void title(Graphics2D g) {
    CaseStress c = report.governing();
    double limit = c.designNmm2() / report.strength().loadFactor();
    ink(g, Palette.INK);
    line(g, medium, scene.name() + ": stress in the bottom pane", 40 * s, 21 * s);
    ink(g, Palette.INK_SOFT);
    String glass = units.brief(Quantity.LENGTH, scene.tank().bottomGlassMm())
        + (scene.tank().temperedBottom() ? " toughened" : "") + " glass";
    String governing = "Greatest surface stress of the governing case: " + c.load().word() + ", carried on " + c.bed();
    line(g, regular, governing + "; " + glass, 64 * s, 14.5 * s);
    line(g, regular, stress(c.totalNmm2(), RoundingMode.CEILING) + " (water and sand alone "
        + units.number(Quantity.STRESS, c.waterNmm2(), RoundingMode.CEILING) + ", rocks alone "
        + units.number(Quantity.STRESS, c.rocksNmm2(), RoundingMode.CEILING) + ") against "
        + stress(limit, RoundingMode.FLOOR) + " by the design strength (" + percent(c.utilisation())
        + "); the trade's rule allows "
        + stress(report.strength().tradeLimitNmm2(), RoundingMode.FLOOR), 85 * s, 14.5 * s);
  }

  /** One line of text from the left margin, smaller where it would not fit. */
  private void line(Graphics2D g, Typeface face, String text, double y, double size) {
    double room = width - 56 * s;
    double fits = Math.min(size, size * room / face.width(text, size));
    face.draw(g, text, 28 * s, y, fits);
  }

  private static String percent(double share) {
    return Units.fixed(100 * share, 0, RoundingMode.CEILING) + " %";
  }

  private String stress(double nmm2, RoundingMode mode) {
    return units.text(Quantity.STRESS, nmm2, mode);
  }

  /** The colour bar, its figures and unit; the limit where it lies within. */
  private void bar(Graphics2D g) {
    double x = width - 112 * s;
    double w = 22 * s;
    double y0 = 150 * s;
    double y1 = height - 130 * s;
    for (double y = y0; y < y1; y++) {
      g.setColor(Palette.scale((y1 - y) / (y1 - y0)).awt());
      g.fill(new Rectangle2D.Double(x, y, w, 1.5));
    }
    ink(g, Palette.INK_SOFT);
    g.setStroke(new BasicStroke((float) s));
    g.draw(new Rectangle2D.Double(x, y0, w, y1 - y0));
    double size = 12.5 * s;
    for (int k = 0; k * scale.step() <= scale.top() + 1e-9; k++) {
      double y = y1 - (y1 - y0) * k * scale.step() / scale.top();
      g.draw(new Line2D.Double(x + w, y, x + w + 5 * s, y));
      regular.draw(g, Scale.number(k * scale.step(), scale.places()), x + w + 9 * s, y + 0.5 * Typeface.capHeight(size), size);
    }
    medium.draw(g, units.sign(Quantity.STRESS), x, y0 - 12 * s, 13.5 * s);
    double limit = Quantity.STRESS.in(units, report.governing().designNmm2() / report.strength().loadFactor());
    if (limit < scale.top()) {
      double y = y1 - (y1 - y0) * limit / scale.top();
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
    String bare = report.feet().stream().anyMatch(FootBearing::bare)
        ? " On bare glass all of a foot's force is put on one spot." : "";
    String key = "Feet outlined, with the most force each may carry in any case." + bare
        + " Lines of equal stress at the scale's marks.";
    line(g, regular, floor + key, height - 42 * s, 12.5 * s);
    line(g, regular, "A screen of the layout, not a proof of the glass: the tank's maker decides what the bottom may carry.",
        height - 22 * s, 12.5 * s);
  }

  static void ink(Graphics2D g, Colour colour) {
    g.setColor(colour.awt());
  }
}
