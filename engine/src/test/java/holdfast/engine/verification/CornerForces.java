package holdfast.engine.verification;

import holdfast.engine.motion.ContactEngine.Foot;
import holdfast.engine.motion.MotionBody;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.List;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Variable;

/**
 * Whether any forces at the corners of the contacts, each within a pyramid round its friction cone, carry a heap: a linear
 * program solved by a general library, no part of the statics. However the pressure lies on a face, the same push and
 * friction can be had from its corners: a force at a point of the face is shared out among them as the point is. So where
 * this finds none, no pressure and no friction whatever hold the heap, and it falls (derived). Forces that it finds show
 * that a balance exists and no more.
 */
final class CornerForces {
  private static final int PYRAMID_EDGES = 48;
  private static final double LENGTH_M = 0.1;
  private static final double G = 9.81;

  private CornerForces() {}

  /**
   * The least share of the heap's weight that must be added, as force on any stone or as moment over 0.1 m, so that the
   * corners carry the rest; 0 when they carry it all.
   */
  static double missing(List<MotionBody> bodies, List<Foot> corners, double friction) {
    return missing(bodies, corners, friction,
        bodies.stream().map(b -> new Wrench(new Vec3(0, 0, -b.massKg() * G), Vec3.ZERO)).toList());
  }

  /** The same under any loads, about the centres of mass; shares are of the heap's weight again. */
  static double missing(List<MotionBody> bodies, List<Foot> corners, double friction, List<Wrench> loads) {
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    double weight = G * bodies.stream().mapToDouble(MotionBody::massKg).sum();
    Variable off = model.addVariable("off").lower(0).weight(1);
    Expression[][] rows = new Expression[bodies.size()][6];
    for (int i = 0; i < bodies.size(); i++) {
      Vec3 force = loads.get(i).force();
      Vec3 moment = loads.get(i).moment().times(1 / LENGTH_M);
      double[] on = {force.x(), force.y(), force.z(), moment.x(), moment.y(), moment.z()};
      for (int k = 0; k < 6; k++) {
        rows[i][k] = model.addExpression("row " + i + " " + k).level(-on[k] / weight);
        Variable short1 = model.addVariable("more " + i + " " + k).lower(0);
        Variable short2 = model.addVariable("less " + i + " " + k).lower(0);
        rows[i][k].set(short1, 1).set(short2, -1);
        Expression most = model.addExpression("most " + i + " " + k).upper(0);
        most.set(short1, 1).set(short2, 1).set(off, -1);
      }
    }
    double round = friction / Math.cos(Math.PI / PYRAMID_EDGES);
    for (int c = 0; c < corners.size(); c++) {
      Foot f = corners.get(c);
      Vec3 x = f.normal().anyPerpendicular();
      Vec3 y = f.normal().cross(x);
      for (int k = 0; k < PYRAMID_EDGES; k++) {
        double turn = 2 * Math.PI * k / PYRAMID_EDGES;
        Vec3 along = f.normal().plusTimes(round * Math.cos(turn), x).plusTimes(round * Math.sin(turn), y);
        Variable v = model.addVariable("force " + c + " " + k).lower(0);
        put(rows, bodies, f.upper(), f.at(), along, v);
        put(rows, bodies, f.lower(), f.at(), along.negated(), v);
      }
    }
    return model.minimise().getValue();
  }

  private static void put(Expression[][] rows, List<MotionBody> bodies, int body, Vec3 at, Vec3 force, Variable v) {
    if (body == bodies.size()) return;
    Vec3 m = at.minus(bodies.get(body).centreInWorld()).times(1 / LENGTH_M).cross(force);
    double[] six = {force.x(), force.y(), force.z(), m.x(), m.y(), m.z()};
    for (int k = 0; k < 6; k++) rows[body][k].set(v, six[k]);
  }
}
