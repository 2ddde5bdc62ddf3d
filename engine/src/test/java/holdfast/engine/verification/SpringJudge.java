package holdfast.engine.verification;

import holdfast.engine.motion.ContactEngine.Foot;
import holdfast.engine.motion.MotionBody;
import holdfast.model.geom.Mat3;
import holdfast.model.geom.Vec3;
import java.util.Arrays;
import java.util.List;

/**
 * A second judge of motion, plain arithmetic with nothing of the statics or the engine: stones as rigid bodies on springs
 * and dampers at the corners of their contacts, in explicit time steps of some microseconds. A spring pushes and never
 * pulls; across it another spring holds until it would pass friction times the push, and then slips. Weight is put on within
 * two tenths of a second, as stones are set down.
 *
 * <p>Limits: movements are taken as small against the stones, so it tells whether a heap starts to move and not where it
 * ends; friction acts corner by corner, which resists twist more than a whole face does.
 *
 * @see <a href="https://doi.org/10.1680/geot.1979.29.1.47">Cundall and Strack 1979, A discrete numerical model for granular
 *     assemblies</a>, for the springs with slip
 */
final class SpringJudge {
  private static final double G = 9.81;
  private static final double RAMP_S = 0.2;
  private static final double PLAYED_S = 0.8;
  /** The last part of the play, in which what stays only trembles. */
  private static final double STILL_S = 0.2;
  /** Metres: what trembles moves less than this then; a thousandth of g from rest, let alone from before, moves it 200 micrometres. */
  private static final double STILL_M = 1e-4;
  /** Of critical, for one corner against the lightest stone. */
  private static final double DAMPING = 0.2;
  /** Across over along the normal; between 2/3 and 1 for like bodies (Mindlin 1949). */
  private static final double ACROSS = 0.8;

  private final List<MotionBody> bodies;
  private final List<Foot> corners;
  private final double friction;
  private final double stiffness;
  private final double damping;
  private final double stepS;
  private final double[][] at;
  private final double[][] speed;
  private final double[][] force;
  private final double[][] inverse;
  /** Where the springs across begin, per corner: the slipped part of the movement. */
  private final double[][] slipped;

  /** @param sinkM how far the heap's whole weight would press one corner in, metres; less is stiffer */
  SpringJudge(List<MotionBody> bodies, List<Foot> corners, double friction, double sinkM) {
    this.bodies = bodies;
    this.corners = corners;
    this.friction = friction;
    int n = bodies.size();
    double mass = bodies.stream().mapToDouble(MotionBody::massKg).sum();
    double lightest = bodies.stream().mapToDouble(MotionBody::massKg).min().orElseThrow();
    stiffness = mass * G / sinkM;
    damping = DAMPING * 2 * Math.sqrt(stiffness * lightest);
    at = new double[n + 1][6];
    speed = new double[n + 1][6];
    force = new double[n + 1][6];
    slipped = new double[corners.size()][3];
    inverse = new double[n][];
    double fastest = 0;
    for (int i = 0; i < n; i++) {
      inverse[i] = inverse(bodies.get(i).inertia());
      double sum = 0;
      double least = Double.POSITIVE_INFINITY;
      for (int k = 0; k < 3; k++) least = Math.min(least, 1 / Math.max(inverse[i][4 * k], Double.MIN_NORMAL));
      for (Foot f : corners) {
        if (f.upper() != i && f.lower() != i) continue;
        double arm = f.at().distanceTo(bodies.get(i).centreInWorld());
        sum += stiffness * (1 / bodies.get(i).massKg() + arm * arm / least);
      }
      fastest = Math.max(fastest, sum);
    }
    // Well under two over the highest frequency, for bodies on both ends of a spring and dampers beside it.
    stepS = 0.2 / Math.sqrt(2 * fastest);
  }

  /** Rows of the inverse of a symmetric matrix. */
  private static double[] inverse(Mat3 m) {
    Vec3 a = m.times(Vec3.X);
    Vec3 b = m.times(Vec3.Y);
    Vec3 c = m.times(Vec3.Z);
    double det = a.dot(b.cross(c));
    Vec3 p = b.cross(c).times(1 / det);
    Vec3 q = c.cross(a).times(1 / det);
    Vec3 r = a.cross(b).times(1 / det);
    return new double[] {p.x(), p.y(), p.z(), q.x(), q.y(), q.z(), r.x(), r.y(), r.z()};
  }

  /** Whether nothing gets away in the end. */
  boolean stays() {
    double[][] before = null;
    long steps = Math.round(PLAYED_S / stepS);
    for (long s = 0; s < steps; s++) {
      double t = s * stepS;
      if (before == null && t > PLAYED_S - STILL_S) before = centres();
      step(Math.min(1, t / RAMP_S) * G);
    }
    double[][] after = centres();
    double far = 0;
    for (int i = 0; i < bodies.size(); i++) for (int k = 0; k < 3; k++) far = Math.max(far, Math.abs(after[i][k] - before[i][k]));
    return far < STILL_M;
  }

  private double[][] centres() {
    double[][] out = new double[bodies.size()][];
    for (int i = 0; i < out.length; i++) out[i] = at[i].clone();
    return out;
  }

  private void step(double gravity) {
    for (int i = 0; i < bodies.size(); i++) {
      Arrays.fill(force[i], 0);
      force[i][2] = -bodies.get(i).massKg() * gravity;
    }
    for (int c = 0; c < corners.size(); c++) corner(c);
    for (int i = 0; i < bodies.size(); i++) {
      double[] f = force[i];
      double[] v = speed[i];
      double[] w = inverse[i];
      for (int k = 0; k < 3; k++) {
        v[k] += stepS * f[k] / bodies.get(i).massKg();
        v[3 + k] += stepS * (w[3 * k] * f[3] + w[3 * k + 1] * f[4] + w[3 * k + 2] * f[5]);
      }
      for (int k = 0; k < 6; k++) at[i][k] += stepS * v[k];
    }
  }

  private Vec3 moved(double[] of, int body, Vec3 where) {
    if (body == bodies.size()) return Vec3.ZERO;
    Vec3 arm = where.minus(bodies.get(body).centreInWorld());
    return new Vec3(of[0], of[1], of[2]).plus(new Vec3(of[3], of[4], of[5]).cross(arm));
  }

  private void corner(int c) {
    Foot f = corners.get(c);
    Vec3 n = f.normal();
    Vec3 r = moved(at[f.upper()], f.upper(), f.at()).minus(moved(at[f.lower()], f.lower(), f.at()));
    Vec3 v = moved(speed[f.upper()], f.upper(), f.at()).minus(moved(speed[f.lower()], f.lower(), f.at()));
    double gap = r.dot(n);
    double push = Math.max(0, gap < 0 ? -stiffness * gap - damping * v.dot(n) : 0);
    Vec3 across = r.plusTimes(-gap, n);
    Vec3 from = new Vec3(slipped[c][0], slipped[c][1], slipped[c][2]);
    Vec3 spring = across.minus(from).times(-ACROSS * stiffness);
    Vec3 shear = spring.plusTimes(-damping, v.plusTimes(-v.dot(n), n));
    double limit = friction * push;
    if (shear.norm() > limit) {
      shear = shear.norm() > 0 ? shear.times(limit / shear.norm()) : Vec3.ZERO;
      // The spring keeps no more than friction lets it.
      Vec3 kept = spring.norm() > limit ? spring.times(limit / spring.norm()) : spring;
      Vec3 begins = across.plusTimes(1 / (ACROSS * stiffness), kept);
      slipped[c][0] = begins.x();
      slipped[c][1] = begins.y();
      slipped[c][2] = begins.z();
    }
    Vec3 on = n.times(push).plus(shear);
    add(f.upper(), f.at(), on, 1);
    add(f.lower(), f.at(), on, -1);
  }

  private void add(int body, Vec3 where, Vec3 on, double sign) {
    if (body == bodies.size()) return;
    Vec3 m = where.minus(bodies.get(body).centreInWorld()).cross(on);
    double[] to = force[body];
    to[0] += sign * on.x();
    to[1] += sign * on.y();
    to[2] += sign * on.z();
    to[3] += sign * m.x();
    to[4] += sign * m.y();
    to[5] += sign * m.z();
  }
}
