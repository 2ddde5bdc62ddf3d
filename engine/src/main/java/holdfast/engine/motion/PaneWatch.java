package holdfast.engine.motion;

import holdfast.engine.statics.heap.Twist;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Mat3;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * Notices rocks that run into panes. It looks at distances and at the velocity of the step before, so that it needs
 * nothing of the engine.
 */
final class PaneWatch {
  /** Metres: nearer than this is a touch. The engine makes contact within a millimetre. */
  private static final double TOUCH_M = 1e-3;

  /** Metres: a rock must have been this far off before it can hit again. */
  private static final double CLEAR_M = 3e-3;

  /** Metres a second: a slower approach is a rest against the pane and no blow. */
  private static final double LEAST_M_S = 0.01;

  private final PlayJob job;
  private final boolean[][] armed;
  private final List<PlayResult.PaneHit> hits = new ArrayList<>();

  PaneWatch(PlayJob job) {
    this.job = job;
    armed = new boolean[job.bodies().size()][job.panes().size()];
  }

  /** After a step: where the rock is now, and how it moved before the step. */
  void see(int body, Pose pose, Twist before, double timeS) {
    MotionBody b = job.bodies().get(body).body();
    for (int f = 0; f < job.panes().size(); f++) {
      PlayJob.PaneFace face = job.panes().get(f);
      double gap = Double.POSITIVE_INFINITY;
      Vec3 at = Vec3.ZERO;
      for (Hull h : b.lobes()) {
        for (Vec3 c : h.corners()) {
          Vec3 p = pose.apply(c);
          double g = face.inward().dot(p) - face.offset();
          if (g < gap) {
            gap = g;
            at = p;
          }
        }
      }
      if (gap > CLEAR_M) armed[body][f] = true;
      if (gap > TOUCH_M || !armed[body][f]) continue;
      Vec3 centre = pose.apply(b.centre());
      double speed = -face.inward().dot(before.at(at, centre));
      if (speed < LEAST_M_S) continue;
      armed[body][f] = false;
      double felt = 1 / inverseMass(b, pose, at, face.inward());
      hits.add(new PlayResult.PaneHit(
          b.name(), face.side(), timeS, speed, felt * speed * speed / 2, energy(b, pose, before), at));
    }
  }

  List<PlayResult.PaneHit> hits() {
    return hits;
  }

  /** Energy of motion of a body, joules. */
  static double energy(MotionBody b, Pose pose, Twist v) {
    Vec3 spin = pose.turn().conjugate().rotate(v.spin());
    return 0.5 * b.massKg() * v.velocity().dot(v.velocity()) + 0.5 * spin.dot(b.inertia().times(spin));
  }

  /** Velocity along {@code along} that a unit blow along it gives the point {@code at} of a free body, 1/kg. */
  static double inverseMass(MotionBody b, Pose pose, Vec3 at, Vec3 along) {
    Vec3 arm = pose.turn().conjugate().rotate(at.minus(pose.apply(b.centre())).cross(along));
    return 1 / b.massKg() + arm.dot(inverse(b.inertia()).times(arm));
  }

  private static Mat3 inverse(Mat3 m) {
    Vec3 a = new Vec3(m.xx(), m.yx(), m.zx());
    Vec3 b = new Vec3(m.xy(), m.yy(), m.zy());
    Vec3 c = new Vec3(m.xz(), m.yz(), m.zz());
    double det = a.dot(b.cross(c));
    Vec3 r0 = b.cross(c).times(1 / det);
    Vec3 r1 = c.cross(a).times(1 / det);
    Vec3 r2 = a.cross(b).times(1 / det);
    return new Mat3(r0.x(), r0.y(), r0.z(), r1.x(), r1.y(), r1.z(), r2.x(), r2.y(), r2.z());
  }
}
