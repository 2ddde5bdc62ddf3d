package holdfast.app.report.sheet;

import holdfast.app.report.Words;
import holdfast.app.report.sheet.Canvas.Face;
import holdfast.engine.build.Turning.Step;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;

/** A page for each piece that passes the opening only by turning part way through: its poses on the way in, drawn and told. */
final class TurningPages {
  private static final int ACROSS = 4;
  private static final int DOWN = 2;
  private static final double GAP_MM = 4;
  private static final double CAPTION_MM = 20;
  private static final double LINE_MM = 4.0;

  /** Degrees; less is not worth a word. */
  private static final double TOLD = 3;

  private final Canvas c;
  private final SheetContent content;
  private final Figures f;
  private final Scene scene;
  private final Drawing.View view = Drawing.View.above(-25, 25);

  TurningPages(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.content = content;
    this.f = f;
    this.scene = content.scene();
  }

  void draw() {
    for (SheetContent.Turned t : content.turning()) piece(t);
  }

  private void piece(SheetContent.Turned turned) {
    List<Step> steps = turned.way().steps();
    Frame frame = null;
    double top = 0;
    for (int i = 0; i < steps.size(); i++) {
      int cell = i % (ACROSS * DOWN);
      if (cell == 0) {
        frame = Frame.newPage(c, "Turning a piece through the opening", scene.name());
        top = intro(frame, turned) - 3;
      }
      double w = (frame.width() - (ACROSS - 1) * GAP_MM) / ACROSS;
      double h = (top - frame.y() - (DOWN - 1) * GAP_MM) / DOWN;
      double x = frame.x() + cell % ACROSS * (w + GAP_MM);
      double y = top - (cell / ACROSS + 1) * h - cell / ACROSS * GAP_MM;
      c.pen(Ink.PALE, 0.25);
      c.rectangle(x, y, w, h);
      picture(turned, steps.get(i), x + 1.5, y + CAPTION_MM, w - 3, h - CAPTION_MM - 1.5);
      c.brush(Ink.BLACK);
      c.text(String.valueOf(i + 1), x + 2.5, y + h - 7, 6, Face.BOLD);
      double at = y + CAPTION_MM - 4.5;
      for (String line : c.wrap(words(steps.get(i), i == steps.size() - 1), w - 5, 3.1, Face.REGULAR)) {
        c.text(line, x + 2.5, at, 3.1, Face.REGULAR);
        at -= LINE_MM;
      }
    }
  }

  private double intro(Frame frame, SheetContent.Turned turned) {
    int openings = scene.tank().openings().size();
    String words = String.join(" + ", content.plan().modules().get(turned.module()).rocks())
        + (openings > 1 ? ", opening " + (turned.way().opening() + 1) : "")
        + ": from pose to pose turn and lower it evenly; to take it out go backwards. "
        + f.mmAtLeast(turned.way().path().roomM() * 1e3) + " to spare at least, beyond "
        + f.mm(scene.settings().get(Setting.OPENING_CLEAR_MM)) + " on each side. Worked out for the shapes as entered and a tank"
        + " that is empty but for its devices, without sand: try it dry, before anything else is in. Its joints were"
        + " judged for lifting upright, so have every rock of it held while it is tilted.";
    double y = frame.top() - 4.5;
    c.brush(Ink.BLACK);
    for (String line : c.wrap(words, frame.width(), 3.6, Face.REGULAR)) {
      c.text(line, frame.x(), y, 3.6, Face.REGULAR);
      y -= 4.8;
    }
    return y + 4.8;
  }

  private String words(Step s, boolean last) {
    String height = s.lowestM() > 0 ? "Lowest point " + f.mm(s.lowestM() * 1e3) + " above the rim. "
        : "Lowest point " + f.mm(-s.lowestM() * 1e3) + " below the rim. ";
    if (last) return height + "Upright as built and all of it under the opening: let it down to its place.";
    double turn = Math.toDegrees(s.turnRad());
    double tilt = Math.toDegrees(s.tiltRad());
    String turned = Math.abs(turn) < TOLD ? "Not turned, "
        : "Turned " + Math.round(Math.abs(turn)) + "° " + (turn > 0 ? "counter-clockwise" : "clockwise") + " from above, then ";
    return height + turned + (tilt < TOLD ? "upright." : "its top tilted " + Math.round(tilt) + "° toward the "
        + Words.toward(s.towardDegrees()) + ".");
  }

  private void picture(SheetContent.Turned turned, Step step, double x, double y, double w, double h) {
    List<double[]> all = new ArrayList<>();
    Vec3 rim = new Vec3(0, 0, scene.tank().heightMm() * 1e-3);
    Tank.Opening o = turned.opening(scene);
    List<Vec3> opening = rectangle(o.xMm(), o.yMm(), o.lengthMm(), o.widthMm(), rim.z());
    // As much of the tank as is near the opening, and every pose, at one scale.
    for (Vec3 p : opening) all.add(view.flat(p));
    for (Vec3 p : rectangle(o.xMm(), o.yMm(), o.lengthMm(), o.widthMm(), 0)) all.add(view.flat(p));
    for (Step s : turned.way().steps()) {
      for (List<Hull> lobes : posed(turned, s)) for (Hull k : lobes) for (Vec3 p : k.corners()) all.add(view.flat(p));
    }
    double[] box = Flat.box(List.of(all));
    double margin = 0.015;
    double ratio = Math.max((box[2] - box[0] + 2 * margin) * 1e3 / w, (box[3] - box[1] + 2 * margin) * 1e3 / h);
    Scaled s = new Scaled(ratio,
        x + w / 2 - (box[0] + box[2]) / 2 * 1e3 / ratio, y + h / 2 - (box[1] + box[3]) / 2 * 1e3 / ratio);
    Tank t = scene.tank();
    List<Vec3> top = rectangle(0, 0, t.lengthMm(), t.widthMm(), rim.z());
    List<Vec3> bottom = rectangle(0, 0, t.lengthMm(), t.widthMm(), 0);
    c.clipped(x, y, w, h, () -> {
      c.pen(Ink.PALE, 0.25);
      loop(s, top);
      loop(s, bottom);
      for (int i = 0; i < 4; i++) line(s, top.get(i), bottom.get(i));
      c.pen(Ink.WATER, 0.5);
      loop(s, opening);
      List<List<Hull>> hulls = posed(turned, step);
      List<Integer> rocks = content.plan().rocksOf(turned.module());
      RockArt.draw(c, s, new Drawing(view, hulls), i -> RockArt.fillOf(content.rockLine(rocks.get(i)).kind()), true, false);
      c.pen(Ink.WATER, 0.3, 1.2, 0.9);
      loop(s, opening);
    });
  }

  private List<List<Hull>> posed(SheetContent.Turned turned, Step step) {
    return content.plan().rocksOf(turned.module()).stream()
        .map(r -> content.hulls().get(r).stream().map(h -> h.moved(step.pose())).toList()).toList();
  }

  private static List<Vec3> rectangle(double xMm, double yMm, double lengthMm, double widthMm, double zM) {
    return List.of(new Vec3(xMm * 1e-3, yMm * 1e-3, zM), new Vec3((xMm + lengthMm) * 1e-3, yMm * 1e-3, zM),
        new Vec3((xMm + lengthMm) * 1e-3, (yMm + widthMm) * 1e-3, zM), new Vec3(xMm * 1e-3, (yMm + widthMm) * 1e-3, zM));
  }

  private void loop(Scaled s, List<Vec3> points) {
    for (int i = 0; i < points.size(); i++) line(s, points.get(i), points.get((i + 1) % points.size()));
  }

  private void line(Scaled s, Vec3 p, Vec3 q) {
    double[] a = view.flat(p);
    double[] b = view.flat(q);
    c.line(s.x(a[0]), s.y(a[1]), s.x(b[0]), s.y(b[1]));
  }
}
