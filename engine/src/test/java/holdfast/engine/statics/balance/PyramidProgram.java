package holdfast.engine.statics.balance;

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
 * The bound of a push as a linear program, solved by a general library: at every corner a pyramid instead of the cone. Its
 * edges lie on the cone, or its faces touch it, so that the factor is below or above what cones allow (derived).
 */
final class PyramidProgram {
  private static final double LENGTH_M = 0.05;

  private PyramidProgram() {}

  /** The largest factor up to {@code cap} with pyramids of so many facets inside the cones or round them. */
  static double margin(Heap heap, List<Wrench> dead, List<Wrench> live, double cap, int facets, boolean round) {
    double scaleN = ForceBalance.typicalN(dead);
    List<double[]> columns = new ArrayList<>();
    List<Link> of = new ArrayList<>();
    for (Link l : heap.links()) {
      double mu = ((Link.Bearing) l).friction() / (round ? Math.cos(Math.PI / facets) : 1);
      Vec3 u = l.normal().anyPerpendicular();
      Vec3 v = l.normal().cross(u);
      for (Vec3 corner : l.polygon()) {
        for (int k = 0; k < (mu > 0 ? facets : 1); k++) {
          double angle = 2 * Math.PI * k / facets;
          Vec3 edge = l.normal().plusTimes(mu * Math.cos(angle), u).plusTimes(mu * Math.sin(angle), v);
          double[] c = new double[12];
          put(c, 0, Wrench.of(edge, corner, heap.bodies().get(l.a()).centre()));
          if (l.b() >= 0) put(c, 6, Wrench.of(edge.negated(), corner, heap.bodies().get(l.b()).centre()));
          columns.add(c);
          of.add(l);
        }
      }
    }
    int n = columns.size() + 2;
    int last = 6 * heap.bodies().size();
    R064Store a = R064Store.FACTORY.make(last + 1, n);
    R064Store rhs = R064Store.FACTORY.make(last + 1, 1);
    for (int j = 0; j < columns.size(); j++) {
      for (int i = 0; i < 6; i++) {
        set(a, 6 * of.get(j).a() + i, j, columns.get(j)[i]);
        if (of.get(j).b() >= 0) set(a, 6 * of.get(j).b() + i, j, columns.get(j)[6 + i]);
      }
    }
    double[] six = new double[6];
    for (int i = 0; i < heap.bodies().size(); i++) {
      put(six, 0, live.get(i));
      for (int k = 0; k < 6; k++) set(a, 6 * i + k, n - 2, six[k]);
      put(six, 0, dead.get(i));
      for (int k = 0; k < 6; k++) rhs.set(6 * i + k, 0, -six[k] / scaleN);
    }
    a.set(last, n - 2, 1);
    a.set(last, n - 1, 1);
    rhs.set(last, 0, cap / scaleN);
    double[] cost = new double[n];
    cost[n - 2] = -1;
    Optimisation.Result result = LinearSolver.newBuilder(cost).lower(0.0).equalities(a, rhs).build().solve();
    return result.getState().isOptimal() ? result.doubleValue(n - 2) * scaleN : Double.NaN;
  }

  private static void set(R064Store a, int row, int column, double value) {
    if (value != 0) a.set(row, column, value);
  }

  private static void put(double[] c, int from, Wrench w) {
    double[] six = {w.force().x(), w.force().y(), w.force().z(),
        w.moment().x() / LENGTH_M, w.moment().y() / LENGTH_M, w.moment().z() / LENGTH_M};
    System.arraycopy(six, 0, c, from, 6);
  }
}
