package holdfast.app.report.sheet;

import holdfast.app.report.OwnFigures;
import holdfast.app.report.sheet.Canvas.Face;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Severity;
import holdfast.engine.supply.Supply;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.GridCells;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Page one: the plan on the cells of the floor, the verdict and the figures of the tank. */
final class PlanPage {
  private static final double SIDE_MM = 74;
  private static final double UNDER_MM = 54;
  private static final double RULER_MM = 9;

  private final Canvas c;
  private final SheetContent content;
  private final Figures f;
  private final Scene scene;

  PlanPage(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.content = content;
    this.f = f;
    this.scene = content.scene();
  }

  void draw() {
    Frame frame = Frame.newPage(c, scene.name().isBlank() ? "Build sheet" : scene.name(), "Build sheet: plan");
    Tank t = scene.tank();
    double glass = t.sideGlassMm() * 1e-3;
    double length = t.lengthMm() * 1e-3;
    double width = t.widthMm() * 1e-3;
    // The words stand beside the plan, or under it where that lets the plan be larger.
    double narrow = frame.width() - SIDE_MM - 6 - 2 * RULER_MM;
    double beside = Scaled.ratioFor(length + 2 * glass, width + 2 * glass, narrow, frame.height() - 2 * RULER_MM);
    double wide = frame.width() - 2 * RULER_MM;
    double low = frame.height() - UNDER_MM - 2 * RULER_MM;
    double over = Scaled.ratioFor(length + 2 * glass, width + 2 * glass, wide, low);
    boolean under = over < beside;
    double ratio = under ? over : beside;
    Frame room = under
        ? new Frame(frame.x(), frame.y() + UNDER_MM, frame.width(), frame.height() - UNDER_MM)
        : new Frame(frame.x(), frame.y(), frame.width() - SIDE_MM - 6, frame.height());
    Scaled s = new Scaled(ratio,
        room.x() + (room.width() - length * 1e3 / ratio) / 2, room.y() + (room.height() - width * 1e3 / ratio) / 2);
    tank(s, glass);
    cells(s);
    devices(s);
    Drawing drawing = new Drawing(Drawing.View.PLAN, content.hulls());
    List<Drawing.Stroke> strokes =
        RockArt.draw(c, s, drawing, r -> RockArt.fillOf(content.rockLine(r).kind()), false, true);
    List<RockArt.Spot> spots = new ArrayList<>();
    for (int r = 0; r < content.hulls().size(); r++) spots.add(RockArt.seenMiddle(drawing, r, content.hulls().size()));
    arrows(s, spots);
    List<double[]> gaps = gaps(s);
    labels(s, strokes, spots, gaps);
    if (under) {
      double third = (frame.width() - 16) / 3;
      double top = frame.y() + UNDER_MM - 4;
      verdict(frame.x(), top, third);
      facts(frame.x() + third + 8, top + 2, third, s);
      legend(frame.x() + 2 * third + 20, top - 4);
    } else {
      double x = frame.right() - SIDE_MM;
      double y = verdict(x, frame.top() - 2, SIDE_MM);
      y = facts(x, y - 4, SIDE_MM, s);
      legend(x, Math.min(y - 4, frame.y() + 46));
    }
  }

  private void tank(Scaled s, double glass) {
    Tank t = scene.tank();
    double l = t.lengthMm() * 1e-3;
    double w = t.widthMm() * 1e-3;
    c.brush(Ink.FAINT);
    c.fillRectangle(s.x(-glass), s.y(-glass), s.length(l + 2 * glass), s.length(w + 2 * glass));
    c.brush(Ink.PAPER);
    c.fillRectangle(s.x(0), s.y(0), s.length(l), s.length(w));
    c.pen(Ink.BLACK, 0.3);
    c.rectangle(s.x(-glass), s.y(-glass), s.length(l + 2 * glass), s.length(w + 2 * glass));
    c.rectangle(s.x(0), s.y(0), s.length(l), s.length(w));
    c.pen(Ink.GREY, 0.25, 3, 1.5);
    for (Tank.Opening o : t.openings()) {
      c.rectangle(s.x(o.xMm() * 1e-3), s.y(o.yMm() * 1e-3), s.length(o.lengthMm() * 1e-3), s.length(o.widthMm() * 1e-3));
    }
    c.brush(Ink.BLACK);
    for (Side side : Side.values()) {
      String words = side.word() + (t.viewedFrom().contains(side) ? ", viewed" : "");
      double out = glass + RULER_MM * s.ratio() * 0.74e-3;
      switch (side) {
        case FRONT -> c.textCentred(words.toUpperCase(Locale.ROOT), s.x(l / 2), s.y(-out) - 2, 3.4, Face.BOLD);
        case BACK -> c.textCentred(words, s.x(l / 2), s.y(w + out) - 0.5, 3.2, Face.REGULAR);
        case LEFT -> turned(words, s.x(-out), s.y(w / 2));
        case RIGHT -> turned(words, s.x(l + out) + 2.5, s.y(w / 2));
      }
    }
  }

  private void turned(String words, double x, double y) {
    c.turnedText(words, x, y - c.width(words, 3.2, Face.REGULAR) / 2, 3.2, Face.REGULAR, 90);
  }

  /** Cell walls, every fifth darker and numbered along the front and the left. */
  private void cells(Scaled s) {
    GridCells g = GridCells.of(scene);
    Floor.Extent e = scene.floor().extentIn(scene.tank());
    double x1 = e.xMm() + e.lengthMm();
    double y1 = e.yMm() + e.widthMm();
    boolean every = g.cellMm() / s.ratio() > 1.1;
    for (int i = 0; i <= g.columns(); i++) {
      double x = Math.min(x1, e.xMm() + i * g.cellMm());
      boolean fifth = i % 5 == 0;
      if (!fifth && !every) continue;
      c.pen(fifth ? Ink.PALE : Ink.FAINT, fifth ? 0.2 : 0.12);
      c.line(s.x(x * 1e-3), s.y(e.yMm() * 1e-3), s.x(x * 1e-3), s.y(y1 * 1e-3));
    }
    for (int j = 0; j <= g.rows(); j++) {
      double y = Math.min(y1, e.yMm() + j * g.cellMm());
      boolean fifth = j % 5 == 0;
      if (!fifth && !every) continue;
      c.pen(fifth ? Ink.PALE : Ink.FAINT, fifth ? 0.2 : 0.12);
      c.line(s.x(e.xMm() * 1e-3), s.y(y * 1e-3), s.x(x1 * 1e-3), s.y(y * 1e-3));
    }
    c.pen(Ink.GREY, 0.25);
    c.rectangle(s.x(e.xMm() * 1e-3), s.y(e.yMm() * 1e-3), s.length(e.lengthMm() * 1e-3), s.length(e.widthMm() * 1e-3));
    c.brush(Ink.GREY);
    double glass = scene.tank().sideGlassMm() * 1e-3;
    int step = g.cellMm() * 5 / s.ratio() > 7 ? 5 : 10;
    for (int i = step; i <= g.columns(); i += step) {
      double x = e.xMm() + (i - 0.5) * g.cellMm();
      c.textCentred(String.valueOf(i), s.x(x * 1e-3), s.y(-glass) - 3.2, 2.6, Face.REGULAR);
    }
    for (int j = step; j <= g.rows(); j += step) {
      double y = e.yMm() + (j - 0.5) * g.cellMm();
      c.textRight(String.valueOf(j), s.x(-glass) - 0.8, s.y(y * 1e-3) - 0.9, 2.6, Face.REGULAR);
    }
  }

  private void devices(Scaled s) {
    for (Scene.Device d : scene.devices()) {
      double x = s.x(d.atMm().x() * 1e-3);
      double y = s.y(d.atMm().y() * 1e-3);
      double w = s.length(d.sizeMm().x() * 1e-3);
      double h = s.length(d.sizeMm().y() * 1e-3);
      c.brush(Ink.FAINT);
      c.fillRectangle(x, y, w, h);
      c.pen(Ink.PALE, 0.15);
      c.clipped(x, y, w, h, () -> {
        for (double k = -h; k < w; k += 2) c.line(x + k, y, x + k + h, y + h);
      });
      c.pen(Ink.GREY, 0.3);
      c.rectangle(x, y, w, h);
    }
  }

  /** The chalk arrow on top of each rock: it points to the front. */
  private void arrows(Scaled s, List<RockArt.Spot> spots) {
    c.pen(Ink.BLACK, 0.35);
    for (RockArt.Spot at : spots) {
      if (at.depthM() == 0) continue;
      double x = s.x(at.x());
      double y = s.y(at.y()) + 1;
      c.line(x, y, x, y - 4);
      c.line(x, y - 4, x - 1, y - 2.6);
      c.line(x, y - 4, x + 1, y - 2.6);
    }
  }

  /** The least gap to each pane as a dimension; returns the places of their figures, least and greatest x and y. */
  private List<double[]> gaps(Scaled s) {
    List<double[]> taken = new ArrayList<>();
    for (Side side : Side.values()) {
      Vec3 out = side.outward();
      Vec3 nearest = null;
      for (List<Hull> lobes : content.hulls()) {
        for (Hull h : lobes) {
          for (Vec3 p : h.corners()) if (nearest == null || p.dot(out) > nearest.dot(out)) nearest = p;
        }
      }
      if (nearest == null) continue;
      double pane = side == Side.RIGHT ? scene.tank().lengthMm() * 1e-3 : side == Side.BACK ? scene.tank().widthMm() * 1e-3 : 0;
      double gap = pane - nearest.dot(out);
      if (gap <= 0) continue;
      boolean upright = out.x() == 0;
      double x = s.x(nearest.x());
      double y = s.y(nearest.y());
      double ex = x + out.x() * s.length(gap);
      double ey = y + out.y() * s.length(gap);
      c.pen(Ink.WATER, 0.3);
      c.line(x, y, ex, ey);
      double tx = upright ? 1.2 : 0;
      double ty = upright ? 0 : 1.2;
      c.line(x - tx, y - ty, x + tx, y + ty);
      c.line(ex - tx, ey - ty, ex + tx, ey + ty);
      String words = f.mmAtLeast(gap * 1e3);
      double w = c.width(words, 2.9, Face.BOLD);
      double wx = upright ? (x + ex) / 2 + 1
          : Math.max(s.x(0) + 0.8, Math.min(s.x(scene.tank().lengthMm() * 1e-3) - 0.8 - w, (x + ex) / 2 - w / 2));
      double wy = upright ? (y + ey) / 2 - 1 : y + 1;
      c.brush(Ink.WATER);
      c.haloText(words, wx, wy, 2.9, Face.BOLD);
      taken.add(new double[] {wx, wy - 0.5, wx + w, wy + 2.7});
    }
    return taken;
  }

  private void labels(Scaled s, List<Drawing.Stroke> strokes, List<RockArt.Spot> spots, List<double[]> gaps) {
    Labels labels = new Labels(
        c, s.x(0), s.y(0), s.x(scene.tank().lengthMm() * 1e-3), s.y(scene.tank().widthMm() * 1e-3));
    for (double[] g : gaps) labels.keepFree(g[0], g[1], g[2] - g[0], g[3] - g[1]);
    labels.avoid(strokes, s);
    for (RockArt.Spot at : spots) if (at.depthM() > 0) labels.keepFree(s.x(at.x()) - 1, s.y(at.y()) - 3, 2, 4);
    labels.marks(content.joints().stream().map(j -> String.valueOf(j.number())).toList(),
        content.joints().stream().map(j -> new double[] {s.x(j.at().x()), s.y(j.at().y())}).toList());
    for (int r = 0; r < spots.size(); r++) {
      labels.name(content.plan().rocks().get(r), "top " + f.mm(content.rockLine(r).topMm()), s.x(spots.get(r).x()),
          s.y(spots.get(r).y()));
    }
    for (Scene.Device d : scene.devices()) {
      labels.name(d.name(), "", s.x((d.atMm().x() + d.sizeMm().x() / 2) * 1e-3), s.y((d.atMm().y() + d.sizeMm().y() / 2) * 1e-3));
    }
  }

  // -- the words beside the plan -------------------------------------------------------------------------------------

  private double verdict(double x, double top, double width) {
    String word;
    String line;
    Ink ink;
    if (content.check().isEmpty()) {
      word = "NOT CHECKED";
      line = "No verdict was worked out for this sheet. Check the layout before you build it.";
      ink = Ink.CAUTION;
    } else {
      CheckReport check = content.check().get();
      word = check.verdict().word().toUpperCase(Locale.ROOT);
      long fails = check.findings().stream().filter(k -> k.severity() == Severity.FAIL).count();
      long warns = check.findings().stream().filter(k -> k.severity() == Severity.WARN).count();
      line = f.units().prose(check.headline()) + " " + fails + (fails == 1 ? " finding fails, " : " findings fail, ") + warns
          + (warns == 1 ? " warns." : " warn.") + (check.fails() ? " Do not build it as drawn." : "") + own();
      ink = check.verdict() == CheckReport.Verdict.PASSES ? Ink.FINE : Ink.CAUTION;
    }
    List<String> lines = c.wrap(line, width - 6, 3.2, Face.REGULAR);
    double height = 10 + 4.2 * lines.size();
    c.pen(ink, 0.8);
    c.rectangle(x, top - height, width, height);
    c.brush(ink);
    c.text(word, x + 3, top - 6.5, 5, Face.BOLD);
    c.brush(Ink.BLACK);
    double y = top - 11.5;
    for (String l : lines) {
      c.text(l, x + 3, y, 3.2, Face.REGULAR);
      y -= 4.2;
    }
    return top - height;
  }

  /** A verdict rests on the figures that a scene sets itself: page 1 says that it does, a later one which. */
  private String own() {
    List<OwnFigures.Own> own = OwnFigures.of(scene.settings());
    return own.isEmpty() ? "" : " Rests on " + OwnFigures.count(own) + ": see what the check found.";
  }

  private double facts(double x, double top, double w, Scaled s) {
    Tank t = scene.tank();
    Supply supply = content.supply();
    double y = top - 3;
    y = fact(x, y, w, "Scale of the plan", s.words());
    y = fact(x, y, w, "Inside", f.size(t.lengthMm(), t.widthMm(), t.heightMm()));
    y = fact(x, y, w, "Glass: sides, bottom", f.length(t.sideGlassMm()) + ", " + f.mm(t.bottomGlassMm()));
    y = fact(x, y, w, "Waterline", f.mm(scene.water().levelMm()));
    y = fact(x, y, w, "Sand", scene.sand().depthMm() > 0 ? f.mm(scene.sand().depthMm()) + " deep" : "none");
    int rocks = content.rocks().size();
    OptionalDouble tallest = content.rocks().stream().mapToDouble(SheetContent.RockLine::topMm).max();
    if (tallest.isPresent()) y = fact(x, y, w, "Tallest rock", f.mm(tallest.getAsDouble()));
    y = fact(x, y, w, "Rock, dry", rocks == 0 ? "none yet" : f.kg(supply.amount().dryKg()) + " in " + rocks);
    y = fact(x, y, w, "Joints fixed", String.valueOf(content.joints().size()));
    y = fact(x, y, w, "Water, net", f.litres(supply.volumes().waterM3() * 1e3));
    return fact(x, y, w, "Filled weight", f.kg(supply.weights().filledKg()));
  }

  private double fact(double x, double y, double w, String what, String figure) {
    c.brush(Ink.GREY);
    c.text(what, x, y, 3.3, Face.REGULAR);
    c.brush(Ink.BLACK);
    c.textRight(figure, x + w, y, 3.5, Face.BOLD);
    c.pen(Ink.FAINT, 0.2);
    c.line(x, y - 1.3, x + w, y - 1.3);
    return y - 5.0;
  }

  private void legend(double x, double top) {
    if (content.rocks().isEmpty()) {
      legendText(x - 10, top, "Cells count column-row from the front-left.");
      return;
    }
    double y = top;
    boolean living = content.rocks().stream().anyMatch(r -> r.kind() == Rock.Kind.LIVE);
    y = swatch(x, y, Ink.STONE, "dry or cast rock");
    if (living) y = swatch(x, y, Ink.LIVING, "living rock");
    c.pen(Ink.GREY, 0.22, 1.2, 0.9);
    c.line(x, y + 1, x + 7, y + 1);
    y = legendText(x, y, "outline hidden under other rock");
    c.pen(Ink.BLACK, 0.35);
    c.brush(Ink.PAPER);
    if (!content.joints().isEmpty()) {
      c.circle(x + 3.5, y + 1, 2.2, true, true);
      c.brush(Ink.BLACK);
      c.textCentred("1", x + 3.5, y - 0.1, 3, Face.BOLD);
      y = legendText(x, y, "joint, numbered as in the schedule");
    }
    c.pen(Ink.BLACK, 0.35);
    c.line(x + 3.5, y + 3, x + 3.5, y - 1);
    c.line(x + 3.5, y - 1, x + 2.5, y + 0.4);
    c.line(x + 3.5, y - 1, x + 4.5, y + 0.4);
    y = legendText(x, y, "chalk arrow on the rock: to the front");
    c.pen(Ink.WATER, 0.3);
    c.line(x, y + 1, x + 7, y + 1);
    c.line(x, y - 0.2, x, y + 2.2);
    c.line(x + 7, y - 0.2, x + 7, y + 2.2);
    y = legendText(x, y, "least gap to the pane");
    legendText(x - 10, y, "Cells count column-row from the front-left.");
  }

  private double swatch(double x, double y, Ink ink, String words) {
    c.brush(ink);
    c.fillRectangle(x, y - 0.8, 7, 3.6);
    c.pen(Ink.BLACK, 0.3);
    c.rectangle(x, y - 0.8, 7, 3.6);
    return legendText(x, y, words);
  }

  private double legendText(double x, double y, String words) {
    c.brush(Ink.BLACK);
    c.text(words, x + 10, y, 3.1, Face.REGULAR);
    return y - 5.6;
  }
}
