package holdfast.app.report.sheet;

import holdfast.app.report.sheet.Canvas.Face;
import holdfast.engine.build.BuildOrder;
import holdfast.engine.build.BuildOrder.Stage;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import java.util.ArrayList;
import java.util.List;

/** The order of building as small pictures, one a stage. */
final class StagePages {
  private static final int DOWN = 2;
  private static final double CAPTION_MM = 33;
  private static final double GAP_MM = 4;

  private final Canvas c;
  private final SheetContent content;
  private final Figures f;
  private final Drawing.View view = Drawing.View.above(-25, 30);

  StagePages(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.content = content;
    this.f = f;
  }

  void draw() {
    List<Stage> stages = content.plan().order().stages();
    // Five across where that saves a page, else four: larger pictures.
    int across = (stages.size() + 9) / 10 < (stages.size() + 7) / 8 ? 5 : 4;
    Frame frame = null;
    for (int i = 0; i < stages.size(); i++) {
      int cell = i % (across * DOWN);
      if (cell == 0) {
        frame = Frame.newPage(c, "Order of building", content.scene().name());
        intro(frame);
      }
      double top = frame.top() - 8;
      double w = (frame.width() - (across - 1) * GAP_MM) / across;
      double h = (top - frame.y() - (DOWN - 1) * GAP_MM) / DOWN;
      double x = frame.x() + cell % across * (w + GAP_MM);
      double y = top - (cell / across + 1) * h - cell / across * GAP_MM;
      stage(i, x, y, w, h);
    }
  }

  private void intro(Frame frame) {
    BuildOrder.Order order = content.plan().order();
    String words = !order.complete()
        ? "No order was found in which everything stands, even with joints set: see the stages marked below."
        : order.unaided() ? "Every stage stands by itself, dry, with fresh joints bearing nothing."
        : order.least() ? "No order stands by itself at every stage; this one asks for the least help."
        : "This order needs help where marked; the search for a better one was cut short.";
    c.brush(Ink.BLACK);
    c.text(words + " Judged before the sand is in. The new rock is tinted and drawn thick.", frame.x(), frame.top() - 4.5,
        3.6, Face.REGULAR);
  }

  private void stage(int number, double x, double y, double w, double h) {
    Stage stage = content.stage(number);
    boolean trouble = !stage.stands();
    c.pen(trouble ? Ink.CAUTION : Ink.PALE, trouble ? 0.7 : 0.25);
    c.rectangle(x, y, w, h);
    picture(number, x + 1.5, y + CAPTION_MM, w - 3, h - CAPTION_MM - 1.5);
    c.brush(Ink.BLACK);
    c.text(String.valueOf(number + 1), x + 2.5, y + h - 7, 6, Face.BOLD);

    SheetContent.RockLine r = content.rockLine(stage.rock());
    double at = y + CAPTION_MM - 4.5;
    for (String line : c.wrap(r.name(), w - 22, 3.8, Face.BOLD).subList(0, 1)) c.text(line, x + 2.5, at, 3.8, Face.BOLD);
    c.brush(Ink.GREY);
    c.textRight("at " + Figures.clock(content.plan().batches().minutes().get(number)), x + w - 2.5, at, 3.2, Face.REGULAR);
    at -= 4.6;
    List<String> lines = new ArrayList<>();
    List<Boolean> heavy = new ArrayList<>();
    add(lines, heavy, w, "Cells " + r.fromCell() + " to " + r.toCell() + ", underside at " + f.mm(r.underMm()) + ".", false);
    if (!stage.joints().isEmpty()) add(lines, heavy, w, joints(stage), false);
    add(lines, heavy, w, DaySteps.help(stage, content.plan().batches().waits().get(number)), trouble);
    for (int i = 0; i < lines.size() && i < 7; i++) {
      c.brush(heavy.get(i) ? Ink.CAUTION : Ink.BLACK);
      c.text(lines.get(i), x + 2.5, at, 3.1, heavy.get(i) ? Face.BOLD : Face.REGULAR);
      at -= 4.0;
    }
  }

  private void add(List<String> lines, List<Boolean> heavy, double w, String text, boolean bold) {
    for (String l : c.wrap(text, w - 5, 3.1, bold ? Face.BOLD : Face.REGULAR)) {
      lines.add(l);
      heavy.add(bold);
    }
  }

  private String joints(Stage stage) {
    List<String> parts = new ArrayList<>();
    for (SheetContent.JointLine j : content.joints()) {
      if (!stage.joints().contains(j.index())) continue;
      parts.add(j.number() + " (" + (j.spec().bond() == JointSpec.Bond.ROD ? "rod" : f.ml(j.spec().amountMl()) + " "
          + j.spec().bond().word())
          + (j.batch() > 0 ? ", batch " + j.batch() : "") + ")");
    }
    return (parts.size() == 1 ? "Joint " : "Joints ") + String.join(", ", parts) + ".";
  }

  private void picture(int number, double x, double y, double w, double h) {
    List<List<double[]>> whole = new ArrayList<>();
    Drawing all = new Drawing(view, content.hulls());
    for (int r = 0; r < content.hulls().size(); r++) whole.addAll(all.shadows(r));
    double[] box = Flat.box(whole);
    double margin = 0.015;
    double ratio = Math.max((box[2] - box[0] + 2 * margin) * 1e3 / w, (box[3] - box[1] + 2 * margin) * 1e3 / h);
    Scaled s = new Scaled(ratio,
        x + w / 2 - (box[0] + box[2]) / 2 * 1e3 / ratio, y + h / 2 - (box[1] + box[3]) / 2 * 1e3 / ratio);

    List<Integer> placed = new ArrayList<>();
    for (int i = 0; i <= number; i++) placed.add(content.stage(i).rock());
    List<List<Hull>> hulls = placed.stream().map(content.hulls()::get).toList();
    Drawing drawing = new Drawing(view, hulls);
    c.clipped(x, y, w, h, () -> {
      floor(s);
      List<Drawing.Stroke> strokes = RockArt.draw(
          c, s, drawing, i -> i == number ? Ink.NEW : RockArt.fillOf(content.rockLine(placed.get(i)).kind()), true, false);
      c.pen(Ink.BLACK, 0.75);
      for (Drawing.Stroke k : strokes) {
        if (k.rock() == number && k.kind() == Drawing.Kind.OUTLINE) c.line(s.x(k.x1()), s.y(k.y1()), s.x(k.x2()), s.y(k.y2()));
      }
    });
  }

  /** The floor panel with every fifth line of its cells. */
  private void floor(Scaled s) {
    Floor floor = content.scene().floor();
    Floor.Extent e = floor.extentIn(content.scene().tank());
    double x0 = e.xMm() * 1e-3;
    double y0 = e.yMm() * 1e-3;
    double x1 = x0 + e.lengthMm() * 1e-3;
    double y1 = y0 + e.widthMm() * 1e-3;
    double z = floor.topMm() * 1e-3;
    double step = 5 * floor.cellMm() * 1e-3;
    c.pen(Ink.FAINT, 0.15);
    for (double x = x0; x <= x1; x += step) line(s, new Vec3(x, y0, z), new Vec3(x, y1, z));
    for (double y = y0; y <= y1; y += step) line(s, new Vec3(x0, y, z), new Vec3(x1, y, z));
    c.pen(Ink.PALE, 0.3);
    line(s, new Vec3(x0, y0, z), new Vec3(x1, y0, z));
    line(s, new Vec3(x1, y0, z), new Vec3(x1, y1, z));
    line(s, new Vec3(x1, y1, z), new Vec3(x0, y1, z));
    line(s, new Vec3(x0, y1, z), new Vec3(x0, y0, z));
  }

  private void line(Scaled s, Vec3 p, Vec3 q) {
    double[] a = view.flat(p);
    double[] b = view.flat(q);
    c.line(s.x(a[0]), s.y(a[1]), s.x(b[0]), s.y(b[1]));
  }
}
