package holdfast.app.view;

import holdfast.app.report.JointNumbers;
import holdfast.app.report.JointNumbers.Pair;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The numbers of joints on the picture: each at its joint, or beside it with a line to it where it would hide another. Where
 * they are drawn is where they are pressed.
 */
final class JointBadges {
  /** Pixels at scale 1: half of what a badge takes, with the square of one that is to be fixed. */
  private static final double HALF_PX = 16;

  /** How far beside its joint a badge may go, in quarters of a badge; beyond that it stays where it is and hides another. */
  private static final int STEPS = 12;

  private JointBadges() {}

  /**
   * One of them.
   *
   * @param number of the joint
   * @param x pixels; the middle of the number
   * @param y pixels from above
   * @param joint where the joint itself is seen
   */
  record Badge(Survey.Touch touch, int number, double x, double y, Projector.Spot joint) {
    boolean beside() {
      return Math.hypot(x - joint.x(), y - joint.y()) > 1;
    }
  }

  /** Those in front of the eye, in the order of the joints. */
  static List<Badge> of(Projector eye, List<Survey.Touch> joints, JointNumbers numbers, double scale) {
    List<Badge> out = new ArrayList<>();
    for (Survey.Touch t : joints) {
      Optional<Integer> number = numbers.number(t.a(), t.b());
      Projector.Spot at = eye.spot(t.middle());
      if (number.isPresent() && at.inFront()) out.add(clear(t, number.get(), at, 2 * HALF_PX * scale, out));
    }
    return out;
  }

  /** The nearest place straight up, down or across from the joint where it hides none of those that are there. */
  private static Badge clear(Survey.Touch t, int number, Projector.Spot at, double wide, List<Badge> taken) {
    for (int step = 0; step <= STEPS; step++) {
      double off = step * wide / 4;
      for (double[] way : new double[][] {{0, -1}, {0, 1}, {-1, 0}, {1, 0}}) {
        double x = at.x() + off * way[0];
        double y = at.y() + off * way[1];
        if (taken.stream().noneMatch(b -> Math.abs(b.x - x) < wide && Math.abs(b.y - y) < wide)) {
          return new Badge(t, number, x, y, at);
        }
      }
    }
    return new Badge(t, number, at.x(), at.y(), at);
  }

  /** Filled when fixed, open when not, on a square in the colour of failing when one is to be fixed. */
  static void draw(Brush brush, List<Badge> badges, JointNumbers numbers, List<Pair> wanted, Optional<Pair> open) {
    for (Badge b : badges) {
      if (!b.beside()) continue;
      brush.line(b.joint.x(), b.joint.y(), b.x, b.y, 2, Palette.JOINT).disc(b.joint.x(), b.joint.y(), 3, Palette.JOINT);
    }
    for (Badge b : badges) {
      boolean fixed = b.number <= numbers.fixed();
      boolean on = open.filter(q -> q.is(b.touch.a(), b.touch.b())).isPresent();
      double r = on ? 13 : 10.5;
      if (wanted.stream().anyMatch(q -> q.is(b.touch.a(), b.touch.b()))) {
        double h = (r + 5) * brush.scale();
        brush.card(b.x - h, b.y - h, b.x + h, b.y + h, 4, Palette.FAIL);
      }
      brush.disc(b.x, b.y, r, fixed ? Palette.JOINT : Palette.PANEL.solid(0.95));
      brush.ring(b.x, b.y, r, on ? 3 : 2, on ? Palette.INK : Palette.JOINT);
      double base = b.y + brush.letters().capHeight(Style.STRONG) / 2 + 0.5;
      brush.text(b.x, base, Integer.toString(b.number), Style.STRONG, 0.5, fixed ? Palette.PANEL : Palette.INK);
    }
  }
}
