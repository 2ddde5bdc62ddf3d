package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.List;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Variable;

/**
 * Runs a found way through again, densely, with nothing of the search: poses by interpolated quaternions, and extents by
 * linear programs over the faces of the lobes (ojAlgo) instead of clipped edges.
 */
final class Replay {
  private final List<Hull> hulls;
  private final Gate gate;
  private final Vec3 origin;
  private final Vec3 centre;

  Replay(List<Hull> hulls, Gate gate) {
    this.hulls = hulls;
    this.gate = gate;
    this.origin = hulls.get(0).corners().get(0);
    this.centre = GateBody.of(hulls).centre();
  }

  /** Asserts that the way leads from above the rim to upright under the opening, and that it has the room it tells. */
  void check(TurnPath path, int samples) {
    GatePose first = path.poses().get(0);
    GatePose last = path.poses().get(path.poses().size() - 1);
    assertThat(bound(first.turn(), first.heightM(), Vec3.Z.negated(), -10, 10)).as("starts above").isLessThan(0);
    assertThat(bound(last.turn(), last.heightM(), Vec3.Z, -10, 10)).as("ends below").isLessThanOrEqualTo(-gate.thicknessM());
    assertThat(last.turn().angleRad()).as("ends upright").isLessThan(1e-9);
    assertThat(path.roomM()).isNotNegative();
    for (int leg = 0; leg < path.pivots().size(); leg++) {
      GatePose a = path.poses().get(leg);
      GatePose b = path.poses().get(leg + 1);
      Vec3 arm = path.pivots().get(leg).minus(centre);
      double ha = a.heightM() + a.turn().rotate(arm).z();
      double hb = b.heightM() + b.turn().rotate(arm).z();
      for (int k = 0; k <= samples; k++) {
        double t = (double) k / samples;
        Quat q = slerp(a.turn(), b.turn(), t);
        double height = ha + t * (hb - ha) - q.rotate(arm).z();
        assertThat(room(q, height)).as("leg %d of %d at %.3f", leg + 1, path.pivots().size(), t)
            .isGreaterThanOrEqualTo(path.roomM() - 1e-6);
      }
    }
  }

  private double room(Quat q, double height) {
    double deepest = -bound(q, height, Vec3.Z.negated(), -10, 10);
    assertThat(deepest).as("above the floor").isGreaterThanOrEqualTo(-gate.depthM() - 1e-6);
    Gate.Rectangle o = gate.opening();
    Gate.Rectangle r = gate.room();
    return Math.min(
        stretch(q, height, Vec3.X, o.x0(), o.x1(), r.x0(), r.x1()), stretch(q, height, Vec3.Y, o.y0(), o.y1(), r.y0(), r.y1()));
  }

  private double stretch(Quat q, double height, Vec3 along, double o0, double o1, double r0, double r1) {
    double thick = gate.thicknessM();
    double from = Math.max(
        o0 + bound(q, height, along.negated(), -thick, 0), r0 + bound(q, height, along.negated(), -10, -thick));
    double to = Math.min(o1 - bound(q, height, along, -thick, 0), r1 - bound(q, height, along, -10, -thick));
    return from == Double.NEGATIVE_INFINITY ? Double.POSITIVE_INFINITY : to - from;
  }

  /** The farthest that what lies between two heights reaches along a direction, from the body's centre; of the heights itself. */
  private double bound(Quat q, double height, Vec3 direction, double from, double to) {
    double best = Double.NEGATIVE_INFINITY;
    for (Hull h : hulls) {
      double low = -reach(h, q, Vec3.Z.negated()) + height;
      double high = reach(h, q, Vec3.Z) + height;
      if (high <= from || low >= to) continue;
      double offset = direction.z() * height;
      // Wholly between them its farthest corner is the answer.
      best = Math.max(best, offset
          + (low >= from && high <= to ? reach(h, q, direction) : clipped(h, q, direction, from - height, to - height)));
    }
    return best;
  }

  private double reach(Hull h, Quat q, Vec3 direction) {
    return h.reach(q.conjugate().rotate(direction)) - q.rotate(origin.plus(centre)).dot(direction);
  }

  private double clipped(Hull h, Quat q, Vec3 direction, double from, double to) {
    ExpressionsBasedModel m = new ExpressionsBasedModel();
    double[] w = {direction.x(), direction.y(), direction.z()};
    Variable[] v = new Variable[3];
    for (int i = 0; i < 3; i++) v[i] = m.addVariable("v" + i).lower(-5).upper(5).weight(w[i]);
    v[2].lower(from).upper(to);
    for (Hull.Face f : h.faces()) {
      Vec3 n = q.rotate(f.normal());
      double[] k = {n.x(), n.y(), n.z()};
      Expression e = m.addExpression("f" + f.offset() + f.normal()).upper(f.offset() - f.normal().dot(origin.plus(centre)));
      for (int i = 0; i < 3; i++) e.set(v[i], k[i]);
    }
    return m.maximise().getValue();
  }

  private static Quat slerp(Quat a, Quat b, double t) {
    double dot = a.w() * b.w() + a.x() * b.x() + a.y() * b.y() + a.z() * b.z();
    double sign = dot < 0 ? -1 : 1;
    double angle = Math.acos(Math.min(1, Math.abs(dot)));
    double p = angle < 1e-9 ? 1 - t : Math.sin((1 - t) * angle) / Math.sin(angle);
    double r = sign * (angle < 1e-9 ? t : Math.sin(t * angle) / Math.sin(angle));
    return new Quat(p * a.w() + r * b.w(), p * a.x() + r * b.x(), p * a.y() + r * b.y(), p * a.z() + r * b.z()).unit();
  }
}
