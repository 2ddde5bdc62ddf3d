package holdfast.engine.bench;

import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.ojalgo.matrix.store.R064Store;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.linear.LinearSolver;

/**
 * The usual way to ask for a push margin, to compare with: a linear program in which the force at every corner of every
 * contact lies in a pyramid inside the cone of friction.
 *
 * <p>Problem: maximise l such that sum of G f + dead + l live = 0, each f a sum of edges of its pyramid with coefficients of
 * zero or more. The pyramid's edges lie on the cone, so that it is the safe side; with 8 edges it lacks up to 8 % of the
 * friction, with 16 up to 2 % (cos of half the angle between two edges, derived). It is the program of {@code PushBound} but for
 * the pyramids: the same corners, the same friction. The solver is given the standard form straight away: its modelling layer takes longer
 * for the same answers.
 */
final class LinearProgram {
  private final Heap heap;
  private final double scaleN;
  private final List<double[]> columns = new ArrayList<>();
  private final List<Integer> bodyA = new ArrayList<>();
  private final List<Integer> bodyB = new ArrayList<>();

  LinearProgram(Heap heap, int facets, double scaleN) {
    this.heap = heap;
    this.scaleN = scaleN;
    for (Link link : heap.links()) {
      if (!(link instanceof Link.Bearing b)) throw new IllegalArgumentException("only bare contacts can be compared");
      Vec3 u = b.normal().anyPerpendicular();
      Vec3 v = b.normal().cross(u);
      for (Vec3 corner : b.polygon()) {
        for (int k = 0; k < facets; k++) {
          double angle = 2 * Math.PI * k / facets;
          Vec3 edge = b.normal().plusTimes(b.friction() * Math.cos(angle), u).plusTimes(b.friction() * Math.sin(angle), v);
          add(b.a(), b.b(), corner, edge);
        }
      }
    }
  }

  private void add(int a, int b, Vec3 at, Vec3 force) {
    double[] c = new double[12];
    put(c, 0, Wrench.of(force, at, heap.bodies().get(a).centre()));
    if (b != Heap.GROUND) put(c, 6, Wrench.of(force.negated(), at, heap.bodies().get(b).centre()));
    columns.add(c);
    bodyA.add(a);
    bodyB.add(b);
  }

  private static void put(double[] c, int from, Wrench w) {
    c[from] = w.force().x();
    c[from + 1] = w.force().y();
    c[from + 2] = w.force().z();
    c[from + 3] = w.moment().x() / LENGTH_M;
    c[from + 4] = w.moment().y() / LENGTH_M;
    c[from + 5] = w.moment().z() / LENGTH_M;
  }

  /** Moments are divided by a length like those of the rocks, for balance between the equations. */
  private static final double LENGTH_M = 0.05;

  int unknowns() {
    return columns.size() + 2;
  }

  /** The largest factor up to {@code cap}; not a number where the solver does not call its answer optimal. */
  double margin(List<Wrench> dead, List<Wrench> live, double cap) {
    int n = unknowns();
    int factor = n - 2;
    R064Store a = R064Store.FACTORY.make(6 * heap.bodies().size() + 1, n);
    for (int j = 0; j < columns.size(); j++) {
      double[] c = columns.get(j);
      for (int i = 0; i < 6; i++) {
        if (c[i] != 0) a.set(6 * bodyA.get(j) + i, j, c[i]);
        if (bodyB.get(j) != Heap.GROUND && c[6 + i] != 0) a.set(6 * bodyB.get(j) + i, j, c[6 + i]);
      }
    }
    R064Store rhs = R064Store.FACTORY.make(6 * heap.bodies().size() + 1, 1);
    double[] six = new double[6];
    for (int i = 0; i < heap.bodies().size(); i++) {
      put(six, 0, live.get(i));
      for (int k = 0; k < 6; k++) if (six[k] != 0) a.set(6 * i + k, factor, six[k]);
      put(six, 0, dead.get(i));
      for (int k = 0; k < 6; k++) rhs.set(6 * i + k, 0, -six[k] / scaleN);
    }
    int last = 6 * heap.bodies().size();
    a.set(last, factor, 1);
    a.set(last, factor + 1, 1);
    rhs.set(last, 0, cap / scaleN);
    double[] cost = new double[n];
    cost[factor] = -1;
    Optimisation.Result result = LinearSolver.newBuilder(cost).lower(0.0).equalities(a, rhs).build().solve();
    return result.getState().isOptimal() ? result.doubleValue(factor) * scaleN : Double.NaN;
  }
}
