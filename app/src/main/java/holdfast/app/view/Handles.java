package holdfast.app.view;

import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Stone;
import holdfast.model.geom.Vec3;
import java.util.Optional;

/** The three rings by which the chosen stone is turned, and the arrow by which it is lifted. */
final class Handles {
  private static final int STEPS = 64;
  private static final double GRAB_PX = 8;
  /** A ring seen nearly edge on cannot be grasped, and is left out. */
  private static final double LEAST_OPEN = 0.16;
  private static final double ARROW_PX = 46;

  /** What can be grasped. */
  enum Grip {
    SPIN(Vec3.Z), TILT_X(Vec3.X), TILT_Y(Vec3.Y), LIFT(Vec3.Z);

    private final Vec3 axis;

    Grip(Vec3 axis) {
      this.axis = axis;
    }

    Vec3 axis() {
      return axis;
    }
  }

  private Handles() {}

  static double radius(Stone s) {
    Vec3 size = s.high().minus(s.low());
    return 0.56 * Math.max(size.x(), Math.max(size.y(), size.z())) + 0.02;
  }

  /** Middle of the rings. */
  static Vec3 middle(Stone s) {
    return s.centreInTank();
  }

  private static boolean open(Grip g, Camera c) {
    return Math.abs(g.axis.dot(c.forward())) > LEAST_OPEN;
  }

  private static Vec3 point(Stone s, Grip g, double degrees) {
    Vec3 u = g.axis.anyPerpendicular();
    Vec3 v = g.axis.cross(u);
    double a = Math.toRadians(degrees);
    return middle(s).plusTimes(radius(s) * Math.cos(a), u).plusTimes(radius(s) * Math.sin(a), v);
  }

  /** The angle about a ring's axis at which a line of sight meets its plane, degrees. */
  static Optional<Double> angle(Stone s, Grip g, Camera.Ray ray) {
    double speed = ray.along().dot(g.axis);
    if (Math.abs(speed) < 1e-3) return Optional.empty();
    double t = middle(s).minus(ray.from()).dot(g.axis) / speed;
    Vec3 arm = ray.at(t).minus(middle(s));
    Vec3 u = g.axis.anyPerpendicular();
    return Optional.of(Math.toDegrees(Math.atan2(arm.dot(g.axis.cross(u)), arm.dot(u))));
  }

  /** The handle under the pointer. */
  static Optional<Grip> at(Stone s, Projector eye, double x, double y, double scale) {
    double best = GRAB_PX * scale;
    Grip found = null;
    Projector.Spot[] arrow = arrow(s, eye, scale);
    if (arrow != null && away(arrow[0], arrow[1], x, y) < best) return Optional.of(Grip.LIFT);
    for (Grip g : new Grip[] {Grip.SPIN, Grip.TILT_X, Grip.TILT_Y}) {
      if (!open(g, eye.camera())) continue;
      Projector.Spot last = eye.spot(point(s, g, 0));
      for (int i = 1; i <= STEPS; i++) {
        Projector.Spot next = eye.spot(point(s, g, 360.0 * i / STEPS));
        if (last.inFront() && next.inFront() && away(last, next, x, y) < best) {
          best = away(last, next, x, y);
          found = g;
        }
        last = next;
      }
    }
    return Optional.ofNullable(found);
  }

  private static double away(Projector.Spot a, Projector.Spot b, double x, double y) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double n = dx * dx + dy * dy;
    double t = n < 1e-9 ? 0 : Math.max(0, Math.min(1, ((x - a.x()) * dx + (y - a.y()) * dy) / n));
    return Math.hypot(x - a.x() - t * dx, y - a.y() - t * dy);
  }

  /** Foot and tip of the lifting arrow; null where up points at the eye. */
  private static Projector.Spot[] arrow(Stone s, Projector eye, double scale) {
    if (eye.camera().pitchDeg() > 75) return null;
    Vec3 top = new Vec3(middle(s).x(), middle(s).y(), s.high().z() + 0.012);
    Projector.Spot foot = eye.spot(top);
    if (!foot.inFront()) return null;
    return new Projector.Spot[] {foot, new Projector.Spot(foot.x(), foot.y() - ARROW_PX * scale, true)};
  }

  static void draw(Brush brush, Projector eye, Stone s, Optional<Grip> lit) {
    for (Grip g : new Grip[] {Grip.TILT_X, Grip.TILT_Y, Grip.SPIN}) {
      if (!open(g, eye.camera())) continue;
      boolean on = lit.filter(g::equals).isPresent();
      Colour c = on ? Palette.CHOSEN : g == Grip.SPIN ? Palette.CHOSEN.solid(0.65) : Palette.INK_SOFT.solid(0.45);
      Projector.Spot last = eye.spot(point(s, g, 0));
      for (int i = 1; i <= STEPS; i++) {
        Projector.Spot next = eye.spot(point(s, g, 360.0 * i / STEPS));
        if (last.inFront() && next.inFront()) brush.line(last.x(), last.y(), next.x(), next.y(), on ? 3 : 1.6, c);
        last = next;
      }
    }
    Projector.Spot[] arrow = arrow(s, eye, brush.scale());
    if (arrow == null) return;
    boolean on = lit.filter(Grip.LIFT::equals).isPresent();
    brush.arrow(arrow[0].x(), arrow[0].y(), arrow[1].x(), arrow[1].y(), on ? 3.4 : 2.2,
        on ? Palette.CHOSEN : Palette.CHOSEN.solid(0.7));
  }
}
