package holdfast.app.report.sheet;

import holdfast.app.report.sheet.Canvas.Face;
import holdfast.engine.build.Batches;
import holdfast.engine.build.BuildOrder;
import holdfast.engine.build.BuildOrder.Stage;
import holdfast.engine.build.BuildPlan;
import holdfast.engine.build.Modules.Module;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The order of building, and that of carrying in, as small pictures, one a stage. */
final class StagePages {
  private static final int DOWN = 2;
  private static final double LEAST_CAPTION_MM = 33;
  private static final double LINE_MM = 4.0;
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

  /** One order: rocks one by one, or pieces. */
  private record Phase(String heading, BuildOrder.Order order, Batches batches, boolean pieces) {
    List<Stage> stages() {
      return order.stages();
    }
  }

  void draw() {
    BuildPlan plan = content.plan();
    draw(new Phase(content.madeOfPieces() ? "Order of building on the bench" : "Order of building", plan.order(), plan.batches(),
        false));
    plan.carry().ifPresent(k -> draw(new Phase("Order of carrying in", k.order(), k.batches(), true)));
  }

  private void draw(Phase phase) {
    List<Stage> stages = phase.stages();
    // Five across where that saves a page, else four: larger pictures.
    int across = stages.size() <= 3 ? 3 : (stages.size() + 9) / 10 < (stages.size() + 7) / 8 ? 5 : 4;
    // What fits in one row gets the height that its width can use.
    int down = stages.size() <= across ? 1 : DOWN;
    double cell0 = (Frame.of(c).width() - (across - 1) * GAP_MM) / across;
    int most = IntStream.range(0, stages.size()).map(i -> lines(phase, i, cell0).size()).max().orElse(0);
    double caption = Math.max(LEAST_CAPTION_MM, 9.5 + most * LINE_MM);
    Frame frame = null;
    double top = 0;
    for (int i = 0; i < stages.size(); i++) {
      int cell = i % (across * down);
      if (cell == 0) {
        frame = Frame.newPage(c, phase.heading, content.scene().name());
        top = intro(frame, phase) - 3;
      }
      double w = (frame.width() - (across - 1) * GAP_MM) / across;
      double h = Math.min((top - frame.y() - (down - 1) * GAP_MM) / down, w + caption);
      double x = frame.x() + cell % across * (w + GAP_MM);
      double y = top - (cell / across + 1) * h - cell / across * GAP_MM;
      stage(phase, i, caption, x, y, w, h);
    }
  }

  /** Says what the order is worth; returns the height under the text. */
  private double intro(Frame frame, Phase phase) {
    BuildOrder.Order order = phase.order;
    String words = !order.complete()
        ? "No order was found in which everything stands, even with joints set: see the stages marked below."
        : order.unaided() ? "Every stage stands by itself, " + (tankOrder(phase)
            && content.plan().wetFrom() < phase.stages().size() ? "dry or, where it comes after filling, in water" : "dry")
            + ", with fresh joints bearing nothing."
        : order.least() ? "No order stands by itself at every stage; this one asks for the least help."
        : "This order needs help where marked; the search for a better one was cut short.";
    boolean sandFirst = content.plan().sandBefore() >= 0;
    String more = phase.pieces ? " Joints of the bench have set."
        : content.madeOfPieces() ? " On the floor panel over the full-size footprint, outside the tank or in it: this is also the"
            + " order of the dry fit." : "";
    String sand = sandFirst ? " Judged without sand until it is laid." : " Judged before the sand is in.";
    String locked = phase.pieces ? content.plan().carry().orElseThrow().locked().stream()
        .map(k -> " Pieces " + (k.get(0) + 1) + " and " + (k.get(1) + 1) + " rest on each other and cannot be lowered one after"
            + " the other: make one of their joints in the tank.").reduce("", String::concat) : "";
    double y = frame.top() - 4.5;
    c.brush(Ink.BLACK);
    for (String line : c.wrap(words + more + sand + " What is new is tinted and drawn thick." + locked, frame.width(), 3.6,
        Face.REGULAR)) {
      c.text(line, frame.x(), y, 3.6, Face.REGULAR);
      y -= 4.8;
    }
    return y + 4.8;
  }

  /** A line of a stage's text. */
  private record Line(String text, boolean heavy) {}

  private void stage(Phase phase, int number, double caption, double x, double y, double w, double h) {
    Stage stage = phase.stages().get(number);
    boolean trouble = !stage.stands();
    c.pen(trouble ? Ink.CAUTION : Ink.PALE, trouble ? 0.7 : 0.25);
    c.rectangle(x, y, w, h);
    picture(phase, number, x + 1.5, y + caption, w - 3, h - caption - 1.5);
    c.brush(Ink.BLACK);
    c.text(String.valueOf(number + 1), x + 2.5, y + h - 7, 6, Face.BOLD);

    double at = y + caption - 4.5;
    c.text(c.wrap(name(phase, stage), w - 22, 3.8, Face.BOLD).get(0), x + 2.5, at, 3.8, Face.BOLD);
    c.brush(Ink.GREY);
    boolean wet = tankOrder(phase) && number >= content.plan().wetFrom();
    c.textRight(wet ? "after filling" : "at " + Figures.clock(phase.batches.minutes().get(number)), x + w - 2.5, at, 3.2,
        Face.REGULAR);
    at -= 4.6;
    for (Line line : lines(phase, number, w)) {
      c.brush(line.heavy ? Ink.CAUTION : Ink.BLACK);
      c.text(line.text, x + 2.5, at, 3.1, line.heavy ? Face.BOLD : Face.REGULAR);
      at -= LINE_MM;
    }
  }

  private List<Line> lines(Phase phase, int number, double w) {
    Stage stage = phase.stages().get(number);
    List<Line> lines = new ArrayList<>();
    if (tankOrder(phase) && number == content.plan().sandBefore()) {
      add(lines, w, "Lay the sand first: it stands on it.", true);
    } else if (sandBed(phase, stage)) {
      add(lines, w, "Stands on sand: bed it on a tray of it here.", true);
    }
    add(lines, w, where(phase, stage), false);
    if (!stage.joints().isEmpty()) add(lines, w, joints(stage), false);
    add(lines, w, DaySteps.help(stage, phase.batches.waits().get(number), phase.pieces ? "piece" : "rock"), !stage.stands());
    if (phase.pieces) {
      String hold = DemandTable.holding(content, stage.rock());
      if (DemandTable.careful(content, stage.rock())) {
        add(lines, w, Character.toUpperCase(hold.charAt(0)) + hold.substring(1), false);
      }
    }
    return lines;
  }

  private boolean tankOrder(Phase phase) {
    return phase.pieces || !content.madeOfPieces();
  }

  private boolean sandBed(Phase phase, Stage stage) {
    return !tankOrder(phase) && content.plan().onSand().contains(stage.rock());
  }

  private String name(Phase phase, Stage stage) {
    if (!phase.pieces) return content.plan().rocks().get(stage.rock());
    List<String> rocks = content.plan().modules().get(stage.rock()).rocks();
    return rocks.get(0) + (rocks.size() == 1 ? "" : " and " + (rocks.size() - 1) + " more");
  }

  private String where(Phase phase, Stage stage) {
    if (!phase.pieces) {
      SheetContent.RockLine r = content.rockLine(stage.rock());
      return "Cells " + r.fromCell() + " to " + r.toCell() + ", underside at " + f.mm(r.underMm()) + ".";
    }
    Module m = content.plan().modules().get(stage.rock());
    List<Integer> rocks = content.plan().rocksOf(stage.rock());
    SheetContent.RockLine low = rocks.stream().map(content::rockLine)
        .min(Comparator.comparingDouble(SheetContent.RockLine::underMm)).orElseThrow();
    return (m.rocks().size() > 1 ? String.join(" + ", m.rocks()) + ". " + low.name() + " in cells " : "Cells ")
        + low.fromCell() + " to " + low.toCell() + "; "
        + f.kg(m.drainedKg()) + " wet, " + m.lift().words() + ".";
  }

  private void add(List<Line> lines, double w, String text, boolean bold) {
    for (String l : c.wrap(text, w - 5, 3.1, bold ? Face.BOLD : Face.REGULAR)) lines.add(new Line(l, bold));
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

  private void picture(Phase phase, int number, double x, double y, double w, double h) {
    List<List<double[]>> whole = new ArrayList<>();
    Drawing all = new Drawing(view, content.hulls());
    for (int r = 0; r < content.hulls().size(); r++) whole.addAll(all.shadows(r));
    double[] box = Flat.box(whole);
    double margin = 0.015;
    double ratio = Math.max((box[2] - box[0] + 2 * margin) * 1e3 / w, (box[3] - box[1] + 2 * margin) * 1e3 / h);
    Scaled s = new Scaled(ratio,
        x + w / 2 - (box[0] + box[2]) / 2 * 1e3 / ratio, y + h / 2 - (box[1] + box[3]) / 2 * 1e3 / ratio);

    List<Integer> placed = new ArrayList<>();
    for (int i = 0; i < number; i++) placed.addAll(rocks(phase, i));
    int before = placed.size();
    placed.addAll(rocks(phase, number));
    List<List<Hull>> hulls = placed.stream().map(content.hulls()::get).toList();
    Drawing drawing = new Drawing(view, hulls);
    c.clipped(x, y, w, h, () -> {
      floor(s);
      List<Drawing.Stroke> strokes = RockArt.draw(
          c, s, drawing, i -> i >= before ? Ink.NEW : RockArt.fillOf(content.rockLine(placed.get(i)).kind()), true, false);
      c.pen(Ink.BLACK, 0.75);
      for (Drawing.Stroke k : strokes) {
        if (k.rock() >= before && k.kind() == Drawing.Kind.OUTLINE) c.line(s.x(k.x1()), s.y(k.y1()), s.x(k.x2()), s.y(k.y2()));
      }
    });
  }

  private List<Integer> rocks(Phase phase, int number) {
    int unit = phase.stages().get(number).rock();
    return phase.pieces ? content.plan().rocksOf(unit) : List.of(unit);
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
