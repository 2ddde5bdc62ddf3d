package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Twist;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The movement with which a heap begins to give way, as the statics found it, drawn out slowly: every rock goes along its
 * own velocity and about its own axis until the fastest point has gone {@link #REACH_M}. It shows which way things go,
 * not how fast, and not what comes after.
 *
 * @param rocks names in the order of the mechanism's twists
 * @param startNanos when showing it began
 * @param words what moves, for the line above
 * @param out a rock that is taken out before the movement begins, and so not drawn
 */
record FirstMovement(List<String> rocks, Mechanism mechanism, long startNanos, String words, Optional<String> out) {
  /** Metres that the fastest point is carried; small enough that turning about a fixed axis is still what happens. */
  static final double REACH_M = 0.04;

  /** Seconds for the way out, the hold at its end, and how often it is shown. */
  private static final double OUT_S = 2.4;
  private static final double HOLD_S = 0.8;
  private static final int TIMES = 3;

  /** Metres of arrow for the fastest centre, the others by the root of their speed; pixels below which none is drawn. */
  private static final double ARROW_M = 0.14;
  private static final double LEAST_ARROW_PX = 22;

  /** Twists slower than this share of the fastest point count as at rest, and get no arrow. */
  static final double STILL = 0.02;

  FirstMovement {
    rocks = List.copyOf(rocks);
    if (rocks.size() != mechanism.twists().size()) {
      throw new IllegalArgumentException(rocks.size() + " rocks for " + mechanism.twists().size() + " twists");
    }
  }

  private double seconds(long now) {
    return (now - startNanos) * 1e-9;
  }

  boolean over(long now) {
    return seconds(now) > TIMES * (OUT_S + HOLD_S);
  }

  /** How far the fastest point has gone, metres: it starts from rest, as a fall does. */
  double goneM(long now) {
    double t = Math.min(1, Math.max(0, seconds(now)) % (OUT_S + HOLD_S) / OUT_S);
    return over(now) ? REACH_M : REACH_M * t * t;
  }

  /** Frames that look alike are equal. */
  int frame(long now) {
    return (int) Math.round(goneM(now) / REACH_M * 240);
  }

  Tableau on(Tableau t, long now) {
    double gone = goneM(now);
    List<Stone> stones = new ArrayList<>();
    for (Stone s : t.stones()) if (!isOut(s)) stones.add(moved(s, gone));
    return t.withStones(stones);
  }

  private boolean isOut(Stone s) {
    return out.filter(s.name()::equals).isPresent();
  }

  private Stone moved(Stone s, double gone) {
    int i = rocks.indexOf(s.name());
    if (i < 0) return s;
    Twist twist = mechanism.twists().get(i);
    Vec3 centre = s.centreInTank();
    Vec3 to = centre.plusTimes(gone, twist.velocity());
    double angle = twist.spin().norm() * gone;
    if (angle == 0) return s.at(new Pose(s.pose().at().plusTimes(gone, twist.velocity()), s.pose().turn()));
    Quat q = Quat.about(twist.spin().unit(), angle);
    return s.at(new Pose(to.plus(q.rotate(s.pose().at().minus(centre))), q.times(s.pose().turn()).unit()));
  }

  /** An arrow at each rock that moves, from where its centre was, and the line above. */
  void draw(Brush brush, Projector eye, Tableau rest, Units units) {
    for (Stone s : rest.stones()) {
      int i = rocks.indexOf(s.name());
      if (i < 0) continue;
      Vec3 v = mechanism.twists().get(i).velocity();
      if (v.norm() < STILL) continue;
      Projector.Spot a = eye.spot(s.centreInTank());
      Projector.Spot b = eye.spot(s.centreInTank().plusTimes(ARROW_M / Math.sqrt(v.norm()), v));
      // What comes straight at the eye would be a head without a shaft.
      boolean seen = a.inFront() && b.inFront() && Math.hypot(b.x() - a.x(), b.y() - a.y()) > LEAST_ARROW_PX * brush.scale();
      if (seen) brush.arrow(a.x(), a.y(), b.x(), b.y(), 4, Palette.FORCE);
    }
    brush.tag(eye.width() / 2.0, 26 * brush.scale(), words + ": how it begins, drawn out to "
        + Scale.length(REACH_M * 1e3, units) + " and slowed", Style.LABEL, Palette.INK, Palette.PANEL.solid(0.92));
  }
}
