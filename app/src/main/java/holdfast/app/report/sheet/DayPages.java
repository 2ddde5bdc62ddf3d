package holdfast.app.report.sheet;

import holdfast.app.report.FigureText;
import holdfast.app.report.OwnFigures;
import holdfast.app.report.sheet.Canvas.Face;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.light.LightReport;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The numbered steps of the days around the build with a caution beside each, then what the check found. */
final class DayPages {
  private final Canvas c;
  private final SheetContent content;
  private final Figures f;

  DayPages(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.content = content;
    this.f = f;
  }

  void draw() {
    Flow flow = new Flow(c, () -> Frame.newPage(c, "The days around it", content.scene().name()));
    flow.space(3);
    for (DaySteps.Step step : DaySteps.of(content, f)) step(flow, step);
    String heading = content.check().isPresent() ? "What the check found, and cautions" : "Cautions";
    Flow.fill(c, heading, content.scene().name(), last -> {
      content.check().ifPresent(k -> findings(last, k));
      cautions(last);
    });
  }

  private void step(Flow flow, DaySteps.Step step) {
    double left = flow.frame().width() * 0.62;
    double right = flow.frame().width() - left - 5;
    List<String> text = c.wrap(step.text(), left - 12, Flow.TEXT, Face.REGULAR);
    List<String> caution = step.caution().isEmpty() ? List.of() : c.wrap(step.caution(), right - 12, 3.5, Face.REGULAR);
    double height = Math.max(7 + text.size() * Flow.LINE, caution.isEmpty() ? 0 : caution.size() * 4.6 + 4) + 3.5;
    double y = flow.take(height);
    double top = y + height;
    double x = flow.frame().x();
    c.pen(Ink.BLACK, 0.4);
    c.rectangle(x, top - 6, 5, 5);
    c.brush(Ink.BLACK);
    c.text(step.number() + "  " + step.title(), x + 9, top - 5.2, 4.6, Face.BOLD);
    double at = top - 11;
    for (String l : text) {
      c.text(l, x + 9, at, Flow.TEXT, Face.REGULAR);
      at -= Flow.LINE;
    }
    if (caution.isEmpty()) return;
    double box = caution.size() * 4.6 + 3.4;
    Flow.box(c, x + left + 5, top - box - 0.8, right, box);
    c.brush(Ink.BLACK);
    at = top - 5.4;
    for (String l : caution) {
      c.text(l, x + left + 14, at, 3.5, Face.REGULAR);
      at -= 4.6;
    }
  }

  private void cautions(Flow flow) {
    flow.space(2);
    flow.cautions(general(content, f));
  }

  private void findings(Flow flow, CheckReport check) {
    flow.space(2);
    flow.paragraph(f.units().prose(check.headline()));
    flow.space(2);
    List<List<String>> rows = new ArrayList<>();
    for (Finding k : check.findings()) {
      if (k.severity() == Severity.NOTE) continue;
      rows.add(List.of(k.severity().word().toUpperCase(Locale.ROOT), k.title(), FigureText.sentence(k, f.units()),
          f.units().prose(k.remedy())));
    }
    List<OwnFigures.Own> own = OwnFigures.of(content.scene().settings());
    if (!own.isEmpty()) {
      flow.paragraph("Figures that this scene sets itself, and on which the verdict rests: "
          + own.stream().map(o -> o.words(f.units())).collect(Collectors.joining("; ")) + ".");
      flow.space(2);
    }
    if (rows.isEmpty()) flow.paragraph("Nothing that fails or warns.");
    else {
      flow.table(List.of(Flow.Column.left("", 20), Flow.Column.left("What", 44), Flow.Column.left("Finding", 110),
          Flow.Column.left("What to do", 90)), rows);
    }
    flow.heading("Cautions", 60);
  }

  /** What holds for every build. */
  static List<String> general(SheetContent content, Figures f) {
    List<String> out = new ArrayList<>();
    out.add("This sheet plans and screens a layout from what its scene says. It certifies nothing. The makers of tank, stand, "
        + "cement and"
        + " equipment, local codes and licensed trades go before it.");
    out.add("Loads on the bottom pane and its support are for the tank's maker to confirm. Glass can fail suddenly, "
        + "from a scratch, a grain or a knock. Never lean on a filled tank, and know where the "
        + "water would go.");
    boolean rock = !content.rocks().isEmpty();
    if (rock) {
      out.add("Lifting: close to the body, two people over " + f.kgAtMost(content.scene().settings().get(Setting.LIFT_ONE_KG))
          + ", no twisting. A drained module weighs more than a dry one and far more than under water.");
    }
    boolean toFix = content.check().stream().flatMap(k -> k.findings().stream()).anyMatch(k -> k.code() == Code.NEEDS_BOND
        && k.severity() == Severity.FAIL);
    if (!content.joints().isEmpty() || toFix) {
      out.add("Cement is caustic: gloves, goggles, mask. Bonds in the field are weaker and more uneven than any figure here: "
          + "tug at every"
          + " joint before you trust it.");
    }
    out.add("Electricity and salt water: residual-current protection, drip loops, everything unplugged before hands go in. A "
        + "licensed electrician for anything fixed.");
    if (!content.light().rocks().isEmpty()) out.add("Light: " + LightReport.LIMITS);
    if (rock) {
      out.add("The rock here is simplified to convex pieces and touches where the drawing says. Real stone rocks on three high "
          + "spots: try every piece by hand.");
    }
    return out;
  }
}
