package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;

/** The bottom pane as a plate: its outline, what carries it, and how thick it is against what is usual. */
record PlateMarks(Scene scene, Finding finding, Units units) {
  /** Signs of a support along the longer edge; their height and the breadth of a triangle by their distance. */
  private static final int SIGNS = 8;
  private static final double SIGN_HEIGHT = 0.42;
  private static final double PROP_BREADTH = 0.38;
  /** Strokes of a spring. */
  private static final int STROKES = 4;
  /** Pixels that stand for a millimetre where two thicknesses are held against each other. */
  private static final double PX_PER_MM = 4;

  /** An edge of the plate's underside: its ends, and the direction away from the plate. */
  private record Edge(Vec3 a, Vec3 b, Vec3 out) {
    Vec3 at(double share) {
      return a.plusTimes(share, b.minus(a));
    }
  }

  private Edge[] edges() {
    Vec3 lo = corner(false, false, true);
    Vec3 hi = corner(true, true, true);
    return new Edge[] {
        new Edge(lo, new Vec3(hi.x(), lo.y(), lo.z()), Vec3.Y.negated()), new Edge(new Vec3(lo.x(), hi.y(), lo.z()), hi, Vec3.Y),
        new Edge(lo, new Vec3(lo.x(), hi.y(), lo.z()), Vec3.X.negated()), new Edge(new Vec3(hi.x(), lo.y(), lo.z()), hi, Vec3.X)};
  }

  private Vec3 corner(boolean right, boolean back, boolean under) {
    Tank t = scene.tank();
    return new Vec3(right ? t.lengthMm() + t.sideGlassMm() : -t.sideGlassMm(), back ? t.widthMm() + t.sideGlassMm()
        : -t.sideGlassMm(), under ? -t.bottomGlassMm() : 0).times(1e-3);
  }

  private boolean onEdges(Edge e) {
    // Where it is not known, both are drawn: edges along the length, foam across.
    return switch (scene.tank().bottomSupport()) {
      case EDGES -> true;
      case FULL -> false;
      case UNKNOWN -> e.out.y() != 0;
    };
  }

  void plate(Marks marks) {
    for (int i = 0; i < 8; i++) {
      Vec3 a = corner((i & 1) != 0, (i & 2) != 0, (i & 4) != 0);
      for (int bit = 1; bit <= 4; bit *= 2) {
        if ((i & bit) == 0) marks.line(a, corner((i + bit & 1) != 0, (i + bit & 2) != 0, (i + bit & 4) != 0), 2.6, Palette.INK);
      }
    }
    double step = step();
    for (Edge e : edges()) {
      Vec3 along = e.b.minus(e.a).unit();
      Vec3 down = Vec3.Z.times(-SIGN_HEIGHT * step);
      int n = (int) Math.max(2, Math.round(e.b.minus(e.a).norm() / step));
      for (int i = 0; i < n; i++) {
        Vec3 at = e.at((i + 0.5) / n);
        if (onEdges(e)) prop(marks, at, along.times(PROP_BREADTH * step / 2), down);
        else spring(marks, at, along.times(step / 2), down);
      }
    }
  }

  /** Metres between two signs of a support. */
  private double step() {
    Tank t = scene.tank();
    return (Math.max(t.lengthMm(), t.widthMm()) + 2 * t.sideGlassMm()) / SIGNS / 1e3;
  }

  /** The mechanics' sign of a support that lets a plate turn: a triangle that meets it with its tip. */
  private static void prop(Marks marks, Vec3 tip, Vec3 half, Vec3 down) {
    Vec3 a = tip.plus(down).minus(half);
    Vec3 b = tip.plus(down).plus(half);
    marks.veil().triangle(tip, a, b, half.cross(down).unit(), Palette.WARN.solid(0.55));
    marks.line(tip, a, 2, Palette.INK).line(a, b, 2, Palette.INK).line(b, tip, 2, Palette.INK);
  }

  /** The mechanics' sign of a bed that gives: a zigzag from side to side on its way down to the deck. */
  private static void spring(Marks marks, Vec3 top, Vec3 half, Vec3 down) {
    Vec3 from = top;
    for (int i = 1; i <= STROKES; i++) {
      double side = i == STROKES ? 0 : i % 2 == 0 ? 0.45 : -0.45;
      Vec3 to = top.plusTimes(i / (double) STROKES, down).plusTimes(side, half);
      marks.line(from, to, 1.4, Palette.INK);
      from = to;
    }
    Vec3 foot = top.plus(down);
    marks.line(foot.minus(half), foot.plus(half), 2.4, Palette.WARN);
  }

  void words(Brush brush, Projector eye) {
    if (finding.code() == Code.PANE_THICKNESS) thickness(brush, eye);
    else for (Edge e : edges()) if (faces(e, eye)) support(brush, eye, e);
  }

  private static boolean faces(Edge e, Projector eye) {
    return e.out.dot(eye.camera().flat() ? eye.camera().forward().negated() : eye.camera().eye().minus(e.at(0.5))) > 1e-3;
  }

  private void support(Brush brush, Projector eye, Edge e) {
    Vec3 foot = e.at(0.5).plusTimes(-1.2 * SIGN_HEIGHT * step(), Vec3.Z);
    Projector.Spot p = eye.spot(foot);
    Projector.Spot q = eye.spot(foot.plusTimes(step(), e.out));
    if (!p.inFront() || !q.inFront()) return;
    Tank t = scene.tank();
    String ask = t.bottomSupport() == Tank.BottomSupport.UNKNOWN ? "?" : "";
    String words = onEdges(e) ? "carried on its edges" + ask : "carried by foam all over" + ask;
    brush.tagBehind(p.x(), p.y(), q.x() - p.x(), q.y() - p.y(), t.drilledBottom() ? words + ", drilled" : words, Style.STRONG);
  }

  /** Two sections of glass beside each other, to the same scale and much enlarged: what it is, and in dashes what is usual. */
  private void thickness(Brush brush, Projector eye) {
    if (finding.figure().isEmpty() || finding.limit().isEmpty()) return;
    Edge nearest = null;
    for (Edge e : edges()) if (faces(e, eye) && (nearest == null || e.out.y() != 0)) nearest = e;
    if (nearest == null) nearest = edges()[0];
    Projector.Spot p = eye.spot(nearest.at(0.5));
    if (!p.inFront()) return;
    double s = brush.scale();
    double px = PX_PER_MM * s;
    double is = finding.figure().getAsDouble() * px;
    double usual = finding.limit().getAsDouble() * px;
    String here = Scale.length(finding.figure().getAsDouble(), units);
    String common = "usual " + Scale.length(finding.limit().getAsDouble(), units);
    double w = Math.max(brush.letters().width(here, Style.STRONG), brush.letters().width(common, Style.STRONG)) + 10 * s;
    double top = p.y() + 34 * s;
    brush.line(p.x(), p.y(), p.x(), top, 1.6, Palette.INK);
    brush.card(p.x() - w - 14 * s, top, p.x() + w + 14 * s, top + usual + 44 * s, 6, Palette.PANEL.solid(0.94));
    double base = top + usual + 12 * s;
    brush.box(p.x() - w - 2 * s, base - is, p.x() - 8 * s, base, Palette.GLASS_EDGE);
    double[][] frame = {{p.x() + 8 * s, base - usual}, {p.x() + w + 2 * s, base - usual}, {p.x() + w + 2 * s, base},
        {p.x() + 8 * s, base}};
    for (int i = 0; i < 4; i++) {
      brush.dashes(frame[i][0], frame[i][1], frame[(i + 1) % 4][0], frame[(i + 1) % 4][1], 2, 4, Palette.INK);
    }
    double text = base + 20 * s;
    brush.text(p.x() - w / 2 - 5 * s, text, here, Style.STRONG, 0.5, Palette.INK);
    brush.text(p.x() + w / 2 + 5 * s, text, common, Style.STRONG, 0.5, Palette.INK);
  }
}
