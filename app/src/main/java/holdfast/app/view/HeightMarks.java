package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.app.view.draw.Stone;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;

/** Upright lengths at a rock: how tall it is against what it may be, the free water above it, the height it may slip from. */
record HeightMarks(Brush brush, Projector eye, Scene scene, Units units) {

  /** What the finding measures, if it is about a height. */
  void of(Finding f, Stone s) {
    if (f.figure().isEmpty() || f.limit().isEmpty()) return;
    double figure = f.figure().getAsDouble() / 1e3;
    if (f.code() == Code.TOO_TALL) tall(s, figure, f.limit().getAsDouble() / 1e3);
    if (f.code() == Code.GROWING_ROOM) above(s, figure);
  }

  /** The rock's top over the bottom, and the height it may have as a frame round the tank. */
  private void tall(Stone s, double topM, double limitM) {
    Vec3 c = s.centreInTank();
    double l = scene.tank().lengthMm() / 1e3;
    double w = scene.tank().widthMm() / 1e3;
    Vec3[] frame = {new Vec3(0, 0, limitM), new Vec3(l, 0, limitM), new Vec3(l, w, limitM), new Vec3(0, w, limitM)};
    for (int i = 0; i < 4; i++) dashes(frame[i], frame[(i + 1) % 4]);
    line(new Vec3(c.x(), c.y(), 0), new Vec3(c.x(), c.y(), topM), Scale.length(1e3 * topM, units) + ", at most "
        + Scale.length(1e3 * limitM, units));
  }

  /** Free water above the rock. */
  private void above(Stone s, double roomM) {
    Vec3 top = new Vec3(s.centreInTank().x(), s.centreInTank().y(), s.high().z());
    line(top, top.plusTimes(roomM, Vec3.Z), Scale.room(1e3 * roomM, units));
  }

  /** The height from which a slipped rock is taken to strike the bottom: an arrow down to the floor beneath it. */
  void strike(Stone s) {
    double drop = scene.settings().get(Setting.DROP_MM) / 1e3;
    Vec3 floor = new Vec3(s.centreInTank().x(), s.centreInTank().y(), scene.floor().topMm() / 1e3);
    Projector.Spot from = eye.spot(floor.plusTimes(drop, Vec3.Z));
    Projector.Spot to = eye.spot(floor);
    if (!from.inFront() || !to.inFront()) return;
    brush.arrow(from.x(), from.y(), to.x(), to.y(), 4, Palette.FAIL);
    brush.tagBehind(from.x(), from.y(), 0, -1, "let slip from " + Scale.length(drop * 1e3, units), Style.STRONG);
  }

  private void line(Vec3 a, Vec3 b, String words) {
    Projector.Spot p = eye.spot(a);
    Projector.Spot q = eye.spot(b);
    if (!p.inFront() || !q.inFront()) return;
    double s = 6 * brush.scale();
    brush.line(p.x(), p.y(), q.x(), q.y(), 2.4, Palette.FAIL);
    brush.line(p.x() - s, p.y(), p.x() + s, p.y(), 2.4, Palette.FAIL).line(q.x() - s, q.y(), q.x() + s, q.y(), 2.4, Palette.FAIL);
    brush.tagBehind(q.x(), q.y(), 0, -1, words, Style.STRONG);
  }

  private void dashes(Vec3 a, Vec3 b) {
    Projector.Spot p = eye.spot(a);
    Projector.Spot q = eye.spot(b);
    if (p.inFront() && q.inFront()) brush.dashes(p.x(), p.y(), q.x(), q.y(), 1.6, 6, Palette.FAIL.solid(0.8));
  }
}
