package holdfast.app.view;

import holdfast.app.report.FigureText;
import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.pane.PaneReport;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** What the drawings on the scene mean: a card in its top left corner with a line for each of them that is on show. */
final class MapKeys {
  private static final double LINE = 19;
  private static final double WIDTH = 232;
  private static final double PAD = 12;

  /** A line of the card: a sample of the drawing and words. */
  private sealed interface Row {
    record Title(String words) implements Row {}

    record Sample(Kind kind, Colour colour, String words) implements Row {}

    record Plain(String words) implements Row {}

    record Ramp(String low, String high) implements Row {}

    /** A stretch of a line from 0 to 1 that is as it should be, and a mark on the line. */
    record Span(double from, double to, double at) implements Row {}
  }

  /** How a sample is drawn. */
  private enum Kind {
    FIELD, HATCHED, DISC, OPEN_DISC, LINE_WITH_DISCS, LINE_WITH_SQUARES, COLUMN, DASHES, PETAL, SQUARE, LINE, OUTLINE,
    CENTRE_OF_MASS, ARROW, CELLS, PROP, SPRING
  }

  private final Brush brush;
  private final Units units;
  private final List<Row> rows = new ArrayList<>();

  MapKeys(Brush brush, Units units) {
    this.brush = brush;
    this.units = units;
  }

  /** The stress in the bottom pane; the scale ends where the glass's design strength would be used up. */
  void pane(PaneReport report) {
    PaneReport.CaseStress c = report.governing();
    rows.add(new Row.Title("Stress in the bottom pane"));
    rows.add(new Row.Ramp("0", stress(limit(report))));
    rows.add(new Row.Plain("most: " + stress(c.totalNmm2()) + ", " + percent(c.utilisation()) + " of what it may bear"));
  }

  /** The stress at which the design strength is used up, N/mm2. */
  static double limit(PaneReport report) {
    return report.governing().designNmm2() / report.strength().loadFactor();
  }

  private String stress(double nmm2) {
    return units.text(Quantity.STRESS, nmm2, RoundingMode.HALF_EVEN);
  }

  private static String percent(double share) {
    return Scale.number(Math.ceil(100 * share - 1e-9), 0) + " %";
  }

  void reach(Scene scene) {
    double thick = scene.settings().get(Setting.GAP_CLEANER_MM);
    rows.add(new Row.Title("Where a cleaner " + Scale.length(thick, units) + " thick gets"));
    rows.add(new Row.Sample(Kind.FIELD, Palette.FINE.solid(0.3), "wipes"));
    rows.add(new Row.Sample(Kind.FIELD, Palette.WARN.solid(0.55), "fits, but is cut off"));
    rows.add(new Row.Sample(Kind.HATCHED, Palette.FAIL.solid(0.55), "does not fit"));
  }

  void feet() {
    rows.add(new Row.Title("Force of each foot"));
    rows.add(new Row.Sample(Kind.COLUMN, Palette.FORCE, "column: the most, collar: the least"));
  }

  void gaps(boolean ofOneRock) {
    rows.add(new Row.Title("Gaps"));
    rows.add(new Row.Sample(Kind.LINE_WITH_DISCS, Palette.GAP, "wide enough"));
    rows.add(new Row.Sample(Kind.LINE_WITH_SQUARES, Palette.FAIL, "too narrow"));
    if (!ofOneRock) rows.add(new Row.Plain("Choose a rock to see all of its gaps."));
  }

  void joints() {
    rows.add(new Row.Title("Joints"));
    rows.add(new Row.Sample(Kind.DISC, Palette.JOINT, "fixed"));
    rows.add(new Row.Sample(Kind.OPEN_DISC, Palette.JOINT, "not fixed"));
    rows.add(new Row.Sample(Kind.SQUARE, Palette.FAIL, "to be fixed"));
  }

  void light(int lamps) {
    rows.add(new Row.Title(lamps == 0 ? "No lamp is given" : "Lamp light that other rock lets by"));
    if (lamps == 0) return;
    rows.add(new Row.Sample(Kind.DISC, Palette.LAMP, "lit"));
    rows.add(new Row.Sample(Kind.DISC, Palette.INK_SOFT, "shaded"));
  }

  void rose(Scene scene, boolean late) {
    rows.add(new Row.Title("Push rose: what it holds from each side"));
    if (late) rows.add(new Row.Plain("Being worked out; its weakest side is known."));
    String tier = units.brief(Quantity.FORCE, scene.settings().get(Setting.PUSH_TIER_N));
    rows.add(new Row.Sample(Kind.DASHES, Palette.INK_SOFT, tier + " to be borne"));
    rows.add(new Row.Sample(Kind.PETAL, Palette.FINE, "holds"));
    rows.add(new Row.Sample(Kind.PETAL, Palette.FAIL, "does not"));
  }

  void lift(Severity severity) {
    rows.add(new Row.Title("Lifted as one piece"));
    rows.add(new Row.Sample(Kind.OUTLINE, severity == Severity.FAIL ? Palette.FAIL : Palette.WARN, "the piece"));
    rows.add(new Row.Sample(Kind.CENTRE_OF_MASS, Palette.INK, "its centre of mass: lift over it"));
  }

  void opening(Scene scene) {
    rows.add(new Row.Title("The way through the opening"));
    rows.add(new Row.Sample(Kind.LINE, Palette.GAP, "the opening, less "
        + Scale.length(scene.settings().get(Setting.OPENING_CLEAR_MM), units) + " for fingers all round"));
    rows.add(new Row.Sample(Kind.FIELD, Palette.FINE.solid(0.4), "the piece as it fits best, from above"));
    rows.add(new Row.Sample(Kind.HATCHED, Palette.FAIL.solid(0.55), "what is too large"));
  }

  void floats() {
    rows.add(new Row.Title("Floats"));
    rows.add(new Row.Sample(Kind.ARROW, Palette.FAIL, "lifted by more than it weighs"));
  }

  void hollow(Scene scene) {
    rows.add(new Row.Title("Dead water"));
    rows.add(new Row.Sample(Kind.CELLS, Palette.FORCE.solid(0.5), "where a ball is caught"));
    rows.add(new Row.Sample(Kind.OPEN_DISC, Palette.INK, "a ball of "
        + Scale.length(scene.settings().get(Setting.DEAD_WATER_MM), units)));
  }

  void plate(Tank.BottomSupport support) {
    rows.add(new Row.Title("The bottom pane"));
    boolean known = support != Tank.BottomSupport.UNKNOWN;
    if (support != Tank.BottomSupport.FULL) rows.add(new Row.Sample(Kind.PROP, Palette.WARN, "carried on its edges"));
    if (support != Tank.BottomSupport.EDGES) {
      rows.add(new Row.Sample(Kind.SPRING, Palette.INK, known ? "carried by foam all over" : "or by foam all over"));
    }
    if (!known) rows.add(new Row.Plain("Which of them is not known."));
  }

  /** How much rock there is for the water, against what is usual. */
  void amount(Scene scene, Finding f) {
    if (f.figure().isEmpty()) return;
    double low = scene.settings().get(Setting.ROCK_LOW_KG_PER_L);
    double high = scene.settings().get(Setting.ROCK_HIGH_KG_PER_L);
    double is = f.figure().getAsDouble();
    double full = 1.25 * Math.max(high, is);
    rows.add(new Row.Title("Rock for the size of the tank"));
    rows.add(new Row.Span(low / full, high / full, is / full));
    List<String> density = FigureText.range(is, low, high, units);
    rows.add(new Row.Plain(density.get(0) + "; usual is " + density.get(1) + " to " + density.get(2)));
  }

  /** Draws the card with its top left corner at this place. */
  void draw(double x0, double y0) {
    if (rows.isEmpty()) return;
    double s = brush.scale();
    double widest = WIDTH * s;
    double high = PAD;
    boolean first = true;
    for (Row r : rows) {
      if (r instanceof Row.Title t) {
        if (!first) high += 6;
        widest = Math.max(widest, brush.letters().width(t.words, Style.STRONG) + 2 * PAD * s);
      }
      if (r instanceof Row.Plain p) widest = Math.max(widest, brush.letters().width(p.words, Style.TICK) + 2 * PAD * s);
      if (r instanceof Row.Sample p) widest = Math.max(widest, brush.letters().width(p.words, Style.TICK) + (2 * PAD + 34) * s);
      high += r instanceof Row.Ramp ? LINE + 10 : LINE;
      first = false;
    }
    high += PAD - 6;
    brush.card(x0, y0, x0 + widest, y0 + high * s, 7, Palette.PANEL.solid(0.93));
    double y = y0 + PAD * s;
    first = true;
    for (Row r : rows) {
      if (r instanceof Row.Title && !first) y += 6 * s;
      first = false;
      row(r, x0 + PAD * s, y, widest - 2 * PAD * s);
      y += (r instanceof Row.Ramp ? LINE + 10 : LINE) * s;
    }
  }

  private void row(Row r, double x, double y, double w) {
    double s = brush.scale();
    double base = y + 11 * s;
    if (r instanceof Row.Title t) brush.text(x, base, t.words, Style.STRONG, 0, Palette.INK);
    if (r instanceof Row.Plain p) brush.text(x, base, p.words, Style.TICK, 0, Palette.INK_SOFT);
    if (r instanceof Row.Ramp ramp) {
      int steps = 48;
      for (int i = 0; i < steps; i++) {
        brush.box(x + w * i / steps, y, x + w * (i + 1) / steps, y + 10 * s, Palette.scale((i + 0.5) / steps));
      }
      brush.text(x, y + 23 * s, ramp.low, Style.TICK, 0, Palette.INK_SOFT);
      brush.text(x + w, y + 23 * s, ramp.high, Style.TICK, 1, Palette.INK_SOFT);
    }
    if (r instanceof Row.Span span) {
      brush.box(x, y + 5 * s, x + w, y + 8 * s, Palette.RULE);
      brush.box(x + w * span.from, y + 2 * s, x + w * span.to, y + 11 * s, Palette.FINE.solid(0.75));
      double at = x + w * span.at;
      brush.triangle(at - 6 * s, y - 3 * s, at + 6 * s, y - 3 * s, at, y + 6 * s, Palette.INK)
          .line(at, y + 4 * s, at, y + 14 * s, 2, Palette.INK);
    }
    if (r instanceof Row.Sample p) {
      sample(p.kind, x, y + 7 * s, p.colour);
      brush.text(x + 34 * s, base, p.words, Style.TICK, 0, Palette.INK);
    }
  }

  /** A sample about 22 wide, its middle at height {@code y}. */
  private void sample(Kind kind, double x, double y, Colour c) {
    double s = brush.scale();
    double mid = x + 11 * s;
    switch (kind) {
      case FIELD -> brush.box(x, y - 6 * s, x + 22 * s, y + 6 * s, c);
      case HATCHED -> {
        brush.box(x, y - 6 * s, x + 22 * s, y + 6 * s, c);
        for (int i = 0; i < 3; i++) brush.line(x + (1 + 7 * i) * s, y + 6 * s, x + (8 + 7 * i) * s, y - 6 * s, 1.4, Palette.FAIL);
      }
      case DISC -> brush.disc(mid, y, 6.5, c);
      case OPEN_DISC -> brush.disc(mid, y, 6.5, Palette.PANEL).ring(mid, y, 6, 2, c);
      case LINE_WITH_DISCS -> brush.line(x, y, x + 22 * s, y, 2.4, c).disc(x + 3 * s, y, 3.5, c).disc(x + 19 * s, y, 3.5, c);
      case LINE_WITH_SQUARES -> brush.line(x, y, x + 22 * s, y, 2.4, c)
          .box(x, y - 3.5 * s, x + 7 * s, y + 3.5 * s, c).box(x + 15 * s, y - 3.5 * s, x + 22 * s, y + 3.5 * s, c);
      case COLUMN -> brush.box(mid - 3 * s, y - 7 * s, mid + 3 * s, y + 7 * s, c)
          .box(mid - 5 * s, y + 2 * s, mid + 5 * s, y + 7 * s, c.toward(Palette.PANEL, 0.35));
      case DASHES -> brush.dashes(x, y, x + 22 * s, y, 2, 4, c);
      case PETAL -> brush.triangle(x, y, x + 22 * s, y - 6 * s, x + 22 * s, y + 6 * s, c.solid(0.25))
          .line(x + 22 * s, y - 6 * s, x + 22 * s, y + 6 * s, 2, c);
      case SQUARE -> brush.box(mid - 6 * s, y - 6 * s, mid + 6 * s, y + 6 * s, c);
      case LINE -> brush.line(x, y, x + 22 * s, y, 2.6, c);
      case OUTLINE -> brush.line(x, y + 6 * s, x + 5 * s, y - 6 * s, 2.6, c)
          .line(x + 5 * s, y - 6 * s, x + 20 * s, y - 4 * s, 2.6, c)
          .line(x + 20 * s, y - 4 * s, x + 22 * s, y + 6 * s, 2.6, c).line(x + 22 * s, y + 6 * s, x, y + 6 * s, 2.6, c);
      case CENTRE_OF_MASS -> PieceMarks.centreOfMass(brush, mid, y, 6.5);
      case ARROW -> brush.arrow(mid, y + 7 * s, mid, y - 7 * s, 3, c);
      case CELLS -> {
        for (int i = 0; i < 6; i++) {
          double left = x + (2 + 7 * (i % 3)) * s;
          double top = y + (i < 3 ? -6 : 1) * s;
          brush.box(left, top, left + 5.5 * s, top + 5.5 * s, c);
        }
      }
      case PROP -> brush.triangle(mid, y - 6 * s, mid - 7 * s, y + 6 * s, mid + 7 * s, y + 6 * s, c.solid(0.55))
          .line(mid, y - 6 * s, mid - 7 * s, y + 6 * s, 1.6, Palette.INK)
          .line(mid, y - 6 * s, mid + 7 * s, y + 6 * s, 1.6, Palette.INK)
          .line(mid - 7 * s, y + 6 * s, mid + 7 * s, y + 6 * s, 1.6, Palette.INK);
      case SPRING -> {
        for (int i = 0; i < 4; i++) {
          double side = (i % 2 == 0 ? 5 : -5) * s;
          brush.line(mid - side, y + (3.5 * i - 7) * s, mid + side, y + (3.5 * i - 3.5) * s, 1.6, c);
        }
      }
    }
  }
}
