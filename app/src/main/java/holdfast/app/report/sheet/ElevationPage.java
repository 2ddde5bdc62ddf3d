package holdfast.app.report.sheet;

import holdfast.app.report.Units;
import holdfast.app.report.sheet.Canvas.Face;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.List;

/** The heap from the front and from one side, with true outlines, water, sand and heights. */
final class ElevationPage {
  private static final double RULER_MM = 12;
  private static final double CAPTION_MM = 8;

  /** How many times smaller than alone a picture may become by sharing its page. */
  private static final double MOST_SHRUNK = 1.5;

  private final Canvas c;
  private final SheetContent content;
  private final Figures f;
  private final Scene scene;

  ElevationPage(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.content = content;
    this.f = f;
    this.scene = content.scene();
  }

  void draw() {
    Frame frame = Frame.newPage(c, "Elevations", scene.name());
    Tank t = scene.tank();
    double l = t.lengthMm() * 1e-3;
    double w = t.widthMm() * 1e-3;
    double h = t.heightMm() * 1e-3;
    double gap = 10;
    double beside = Scaled.ratioFor(l + w, h, frame.width() - 2 * RULER_MM - gap, frame.height() - CAPTION_MM - 4);
    double[] over = over(l, w, h, frame);
    boolean leftSide = t.viewedFrom().contains(Side.LEFT) && !t.viewedFrom().contains(Side.RIGHT);
    Drawing.View side = leftSide ? Drawing.View.LEFT : Drawing.View.RIGHT;
    String sideWords = leftSide ? "From the left" : "From the right";
    double larger = Math.max(over[0], over[1]);
    boolean sideBySide = beside < larger || beside == larger && over[0] == over[1];
    double frontAlone = alone(l, h, frame);
    double sideAlone = alone(w, h, frame);
    if ((sideBySide ? beside : over[0]) > MOST_SHRUNK * frontAlone || (sideBySide ? beside : over[1]) > MOST_SHRUNK * sideAlone) {
      elevation(Drawing.View.FRONT, "From the front", l, middle(l, h, frontAlone, frame), frame);
      Frame second = Frame.newPage(c, "Elevations", scene.name());
      elevation(side, sideWords, w, middle(w, h, sideAlone, second), second);
    } else if (sideBySide) {
      double y = frame.y() + CAPTION_MM + Math.max(0, (frame.height() - CAPTION_MM - h * 1e3 / beside) / 2);
      elevation(Drawing.View.FRONT, "From the front", l, new Scaled(beside, frame.x() + RULER_MM, y), null);
      elevation(side, sideWords, w, new Scaled(beside, frame.x() + 2 * RULER_MM + gap + l * 1e3 / beside, y), null);
    } else {
      double lower = frame.y() + CAPTION_MM;
      double upper = lower + h * 1e3 / over[1] + CAPTION_MM + 6;
      elevation(Drawing.View.FRONT, "From the front", l, new Scaled(over[0], frame.x() + RULER_MM, upper), null);
      elevation(side, sideWords, w, new Scaled(over[1], frame.x() + RULER_MM, lower), null);
    }
  }

  private static double alone(double w, double h, Frame frame) {
    return Scaled.ratioFor(w, h, frame.width() - RULER_MM, frame.height() - CAPTION_MM - 4);
  }

  /** Where a picture of its own page goes. */
  private static Scaled middle(double w, double h, double ratio, Frame frame) {
    double room = frame.width() - RULER_MM - w * 1e3 / ratio;
    double spare = frame.height() - CAPTION_MM - 4 - h * 1e3 / ratio;
    return new Scaled(ratio, frame.x() + RULER_MM + room / 2, frame.y() + CAPTION_MM + spare / 2);
  }

  /** Scales of front and side one over the other: the smaller picture as large as can be, then the front. */
  private static double[] over(double l, double w, double h, Frame frame) {
    double wide = frame.width() - RULER_MM;
    double high = frame.height() - 2 * CAPTION_MM - 8;
    double both = Scaled.ratioFor(Math.max(l, w), 2 * h, wide, high);
    double[] best = {both, both};
    for (double front = Scaled.ratioFor(l, h, wide, high); front < both; front = Scaled.next(front)) {
      double side = Scaled.ratioFor(w, h, wide, high - h * 1e3 / front);
      if (Math.max(front, side) <= both && side < best[1] + 1e-9) {
        best = new double[] {front, side};
        break;
      }
    }
    return best;
  }

  /** One elevation; {@code s} puts the left end of the pane's foot; names may stand outside the tank on a page of its own. */
  private void elevation(Drawing.View view, String words, double widthM, Scaled s, Frame own) {
    Tank t = scene.tank();
    double h = t.heightMm() * 1e-3;
    double x0 = s.x(0);
    // A view from the left or the back counts from the far end: shift it so that the picture starts at nought.
    double shift = view == Drawing.View.LEFT ? widthM : 0;
    Scaled at = new Scaled(s.ratio(), s.x(shift), s.y());

    double sand = scene.sand().depthMm() * 1e-3;
    if (sand > 0) {
      c.brush(Ink.FAINT);
      c.fillRectangle(x0, s.y(0), s.length(widthM), s.length(sand));
    }
    double floor = scene.floor().topMm() * 1e-3;
    if (floor > 0) {
      c.brush(Ink.PALE);
      c.fillRectangle(x0, s.y(0), s.length(widthM), s.length(floor));
    }
    for (Scene.Device d : scene.devices()) device(d, view, at);

    Drawing drawing = new Drawing(view, content.hulls());
    List<Drawing.Stroke> strokes =
        RockArt.draw(c, at, drawing, r -> RockArt.fillOf(content.rockLine(r).kind()), false, true);

    c.pen(Ink.BLACK, 0.4);
    c.rectangle(x0, s.y(0), s.length(widthM), s.length(h));
    double level = scene.water().levelMm() * 1e-3;
    c.pen(Ink.WATER, 0.4);
    c.line(x0, s.y(level), s.x(widthM), s.y(level));
    c.brush(Ink.WATER);
    haloRight("water " + f.mm(level * 1e3), s.x(widthM) - 1.5, s.y(level) - 3.2);
    double limit = level * scene.settings().get(Setting.HEIGHT_SHARE);
    c.pen(Ink.GREY, 0.25, 4, 2);
    c.line(x0, s.y(limit), s.x(widthM), s.y(limit));
    c.brush(Ink.GREY);
    haloRight("height limit " + f.mmAtLeast(limit * 1e3), s.x(widthM) - 1.5, s.y(limit) + 1);
    if (sand > 0) {
      c.pen(Ink.SAND, 0.35, 1.5, 1);
      c.line(x0, s.y(sand), s.x(widthM), s.y(sand));
    }
    ruler(x0, s, h);

    Labels labels = own == null ? new Labels(c, x0 + 0.5, s.y(0), s.x(widthM) - 0.5, s.y(h))
        : new Labels(c, own.x(), s.y(0), own.right(), s.y(h));
    labels.keepFree(x0 - RULER_MM, s.y(0), RULER_MM, s.length(h));
    labels.avoid(strokes, at);
    labels.keepFree(s.x(widthM) - 24, s.y(level) - 4, 24, 4);
    labels.keepFree(s.x(widthM) - 30, s.y(limit), 30, 4);
    labels.marks(content.joints().stream().map(j -> String.valueOf(j.number())).toList(),
        content.joints().stream().map(j -> view.flat(j.at())).map(p -> new double[] {at.x(p[0]), at.y(p[1])}).toList());
    for (int r = 0; r < content.hulls().size(); r++) {
      RockArt.Spot p = RockArt.seenMiddle(drawing, r, content.hulls().size());
      if (p.depthM() > 0) labels.name(content.plan().rocks().get(r), "", at.x(p.x()), at.y(p.y()));
    }
    c.brush(Ink.BLACK);
    c.text(words, x0, s.y(0) - 6, 3.8, Face.BOLD);
    c.brush(Ink.GREY);
    c.text("scale " + s.words(), x0 + c.width(words, 3.8, Face.BOLD) + 3, s.y(0) - 6, 3.2, Face.REGULAR);
  }

  private void haloRight(String words, double x, double y) {
    c.haloText(words, x - c.width(words, 2.8, Face.REGULAR), y, 2.8, Face.REGULAR);
  }

  private void device(Scene.Device d, Drawing.View view, Scaled at) {
    Vec3 low = d.atMm().times(1e-3);
    Vec3 high = low.plus(d.sizeMm().times(1e-3));
    double[] a = view.flat(low);
    double[] b = view.flat(high);
    double x = Math.min(a[0], b[0]);
    c.pen(Ink.PALE, 0.25, 2, 1);
    c.rectangle(at.x(x), at.y(low.z()), at.length(Math.abs(b[0] - a[0])), at.length(high.z() - low.z()));
    c.brush(Ink.GREY);
    // Clear of the words at the waterline.
    double level = at.y(scene.water().levelMm() * 1e-3);
    c.text(d.name(), at.x(x) + 1, Math.min(at.y(high.z()) - 3.5, level - 7.5), 2.6, Face.REGULAR);
  }

  /** Heights over the inner bottom, along the left edge. */
  private void ruler(double x, Scaled s, double h) {
    boolean metric = f.units() == Units.METRIC;
    double step = metric ? 0.05 : 0.0508;
    c.pen(Ink.GREY, 0.2);
    c.brush(Ink.GREY);
    for (int i = 0; i * step <= h + 1e-9; i++) {
      boolean whole = i % 2 == 0;
      c.line(x - (whole ? 2.5 : 1.5), s.y(i * step), x, s.y(i * step));
      if (whole) c.textRight(metric ? String.valueOf(i * 50) : String.valueOf(i * 2), x - 3, s.y(i * step) - 0.9, 2.6,
          Face.REGULAR);
    }
  }
}
