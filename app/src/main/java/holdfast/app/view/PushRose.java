package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.app.view.draw.Stone;
import holdfast.engine.check.CheckReport;
import holdfast.engine.statics.heap.Movement;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.List;

/** The push rose: how hard a push a stone bears from each side. */
final class PushRose {
  /** A rose of fewer directions encloses nothing. */
  static final int LEAST_PETALS = 3;
  /** Metres: a petal of no force, and what twice the tier adds to it. */
  private static final double LEAST_M = 0.02;
  private static final double REACH_M = 0.17;

  private PushRose() {}

  /**
   * The push margins of a stone round the compass, level about its middle; the ring is the chosen tier.
   *
   * @param weakest the least of them
   * @param sides all of them; none while they are being worked out
   */
  static void draw(
      Brush brush, Projector eye, Stone s, CheckReport.PushLine weakest, List<CheckReport.PushLine> sides, Scene scene,
      Units units) {
    double tier = scene.settings().get(Setting.PUSH_TIER_N);
    Vec3 middle = new Vec3(s.centreInTank().x(), s.centreInTank().y(), (s.low().z() + s.high().z()) / 2);
    double perN = REACH_M / (2 * tier);
    if (sides.size() >= LEAST_PETALS) petals(brush, eye, middle, perN, tier, sides);
    ring(brush, eye, middle, LEAST_M + perN * tier, Palette.INK_SOFT.solid(0.7));
    Vec3 dir = Vec3.heading(weakest.degrees());
    double r = LEAST_M + perN * Math.min(2 * tier, weakest.marginN());
    Projector.Spot tip = eye.spot(middle.plusTimes(-r, dir));
    Projector.Spot tail = eye.spot(middle.plusTimes(-r - 0.07, dir));
    if (!tip.inFront() || !tail.inFront()) return;
    Colour colour = weakest.marginN() < tier && !weakest.unlimited() ? Palette.FAIL : Palette.FINE;
    brush.arrow(tail.x(), tail.y(), tip.x(), tip.y(), 3, colour);
    String words = (weakest.unlimited() ? "over " : "") + Scale.force(weakest.marginN(), units)
        + (weakest.movement() == Movement.NONE ? "" : " " + weakest.movement().word());
    brush.tagBehind(tail.x(), tail.y(), tail.x() - tip.x(), tail.y() - tip.y(), words, Style.STRONG);
  }

  private static void petals(
      Brush brush, Projector eye, Vec3 middle, double perN, double tier, List<CheckReport.PushLine> sides) {
    int n = sides.size();
    double[][] at = new double[n][];
    for (int i = 0; i < n; i++) {
      CheckReport.PushLine p = sides.get(i);
      double r = LEAST_M + perN * Math.min(2 * tier, p.unlimited() ? 2 * tier : p.marginN());
      // A push toward the right comes from the left: the petal lies on the side where the hand is.
      Projector.Spot q = eye.spot(middle.plusTimes(-r, Vec3.heading(p.degrees())));
      if (!q.inFront()) return;
      at[i] = new double[] {q.x(), q.y()};
    }
    Projector.Spot c = eye.spot(middle);
    for (int i = 0; i < n; i++) {
      // Each direction has the sector half way to its neighbours.
      double[] before = middle(at[(i + n - 1) % n], at[i]);
      double[] after = middle(at[i], at[(i + 1) % n]);
      boolean weak = sides.get(i).marginN() < tier && !sides.get(i).unlimited();
      Colour fill = weak ? Palette.FAIL : Palette.FINE;
      for (double[] b : new double[][] {before, after}) {
        brush.triangle(c.x(), c.y(), at[i][0], at[i][1], b[0], b[1], fill.solid(0.16));
        brush.line(at[i][0], at[i][1], b[0], b[1], 2, fill.solid(0.9));
      }
    }
  }

  private static double[] middle(double[] a, double[] b) {
    return new double[] {(a[0] + b[0]) / 2, (a[1] + b[1]) / 2};
  }

  private static void ring(Brush brush, Projector eye, Vec3 middle, double r, Colour c) {
    for (int i = 0; i < 72; i += 2) {
      Projector.Spot a = eye.spot(middle.plusTimes(r, Vec3.heading(5 * i)));
      Projector.Spot b = eye.spot(middle.plusTimes(r, Vec3.heading(5 * (i + 1))));
      if (a.inFront() && b.inFront()) brush.line(a.x(), a.y(), b.x(), b.y(), 1.2, c);
    }
  }
}
