package holdfast.engine.verification;

import holdfast.engine.motion.ContactEngine;
import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * Balance of a heap by forces that are all parallel to gravity, at the corners of the contacts: a linear program with no
 * cones, solved by a general library and checked by putting the forces back. Contacts are cut here from the stones'
 * corners: no part of the statics or of the contact finder. All contacts of these heaps have one and the same normal.
 * Each force then leans against its contact as gravity does, within the friction when that lean is below the friction
 * angle.
 *
 * <p>What it proves. On a level heap the forces have no tangential part. Were there accelerations from rest, let gravity
 * do the power that these forces balance: it is minus the sum of force times opening, so not positive; and the true
 * friction only takes power away. Accelerations need positive power; so there are none: the heap stays (derived). On a
 * tilted heap it shows that forces in balance within the friction exist, not that the heap stays, for friction may be less
 * where a contact is less pressed than in this balance. Heaps balanced only with forces askew to gravity are missed.
 */
final class ParallelForces {
  /** Contacts are shrunk about their middle by this share, so that rounding of the solver is taken up. */
  private static final double SHRINK = 1e-5;

  /** Residual as a share of the heap's mass, and of that times 0.1 m; well under what the shrinking gives. */
  private static final double RESIDUAL = 1e-7;

  /** Metres; corners within this of a stone's highest are its top, and tops within this of an underside touch it. */
  private static final double LEVEL_M = 1e-9;

  private static final double LENGTH_M = 0.1;

  private static final int PYRAMID_EDGES = 48;

  private final RandomHeap made;
  private final Vec3 normal;
  private final List<Patch> patches = new ArrayList<>();
  private final List<MassProperties> masses;
  private final double total;

  ParallelForces(RandomHeap made) {
    this.made = made;
    masses = made.rocks().stream().map(RandomHeap::mass).toList();
    total = masses.stream().mapToDouble(MassProperties::volumeM3).sum();
    normal = upOf(made.floor());
    int n = made.rocks().size();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= n; j++) {
        Hull upper = made.rocks().get(i).get(0);
        Hull lower = j == n ? made.floor() : made.rocks().get(j).get(0);
        if (i == j || Math.abs(lowest(upper) + highest(lower)) > LEVEL_M) continue;
        List<Vec3> both = around(end(upper, normal.negated()));
        List<Vec3> top = around(end(lower, normal));
        for (int k = 0; k < top.size() && !both.isEmpty(); k++) both = cut(both, top.get(k), top.get((k + 1) % top.size()));
        if (both.size() >= 3) patches.add(new Patch(i, j, both));
      }
    }
  }

  /** The same heap bearing on nothing but the points that an engine made. */
  ParallelForces(RandomHeap made, List<ContactEngine.Touch> points) {
    this(made);
    List<Patch> whole = List.copyOf(patches);
    patches.clear();
    for (Patch p : whole) {
      List<Vec3> at = points.stream()
          .filter(t -> t.first() == Math.min(p.upper(), p.lower()) && t.second() == Math.max(p.upper(), p.lower()))
          .map(ContactEngine.Touch::at).toList();
      if (!at.isEmpty()) patches.add(new Patch(p.upper(), p.lower(), at));
    }
  }

  /** The contacts' corners, shrunk about each contact's middle by {@code share}. */
  List<ContactEngine.Foot> corners(double share) {
    List<ContactEngine.Foot> out = new ArrayList<>();
    for (Patch c : patches) {
      Vec3 middle = middle(c);
      for (Vec3 p : c.corners()) {
        out.add(new ContactEngine.Foot(c.upper(), c.lower(), p.plusTimes(share, middle.minus(p)), normal));
      }
    }
    return out;
  }

  private static Vec3 middle(Patch c) {
    Vec3 middle = Vec3.ZERO;
    for (Vec3 p : c.corners()) middle = middle.plusTimes(1.0 / c.corners().size(), p);
    return middle;
  }

  /** Where {@code upper} lies on {@code lower}, the corners in turn. */
  private record Patch(int upper, int lower, List<Vec3> corners) {}

  /** Whether the contacts lie level: the heap was not tilted. */
  boolean level() {
    return normal.x() == 0 && normal.y() == 0;
  }

  /** The floor's top is a square of 2 m by 2 m, 50 mm above its underside: its upward normal, whichever way it is turned. */
  private static Vec3 upOf(Hull floor) {
    Vec3 c = Polyhedra.massProperties(floor).centre();
    // The middle lies half the thickness under the origin, about which heaps are tilted.
    return c.x() == 0 && c.y() == 0 || Math.hypot(c.x(), c.y()) < 1e-12 ? new Vec3(0, 0, 1) : c.negated().unit();
  }

  private double lowest(Hull h) {
    return h.corners().stream().mapToDouble(p -> -p.dot(normal)).max().orElseThrow();
  }

  private double highest(Hull h) {
    return h.corners().stream().mapToDouble(p -> p.dot(normal)).max().orElseThrow();
  }

  private List<Vec3> end(Hull h, Vec3 out) {
    double most = h.corners().stream().mapToDouble(p -> p.dot(out)).max().orElseThrow();
    return h.corners().stream().filter(p -> p.dot(out) > most - LEVEL_M).toList();
  }

  /** Corners of a convex face in turn, anticlockwise about the normal. */
  private List<Vec3> around(List<Vec3> corners) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : corners) sum = sum.plusTimes(1.0 / corners.size(), p);
    Vec3 middle = sum;
    Vec3 x = corners.get(0).minus(middle);
    Vec3 y = normal.cross(x);
    return corners.stream().sorted(Comparator.comparingDouble(
        p -> Math.atan2(p.minus(middle).dot(y), p.minus(middle).dot(x)))).toList();
  }

  /** What of a polygon lies to the left of a line. */
  private List<Vec3> cut(List<Vec3> polygon, Vec3 from, Vec3 to) {
    Vec3 left = normal.cross(to.minus(from));
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < polygon.size(); i++) {
      Vec3 p = polygon.get(i);
      Vec3 q = polygon.get((i + 1) % polygon.size());
      double dp = p.minus(from).dot(left);
      double dq = q.minus(from).dot(left);
      if (dp >= 0) out.add(p);
      if (dp * dq < 0) out.add(p.plusTimes(dp / (dp - dq), q.minus(p)));
    }
    return out;
  }

  boolean balanced() {
    return balanced(new Vec3(0, 0, 1));
  }

  /** The same with gravity leant over: the least lean over 16 sides, degrees, that is still balanced; to a twentieth. */
  double leanDegrees() {
    double least = 45;
    for (int d = 0; d < 16; d++) {
      Vec3 side = Vec3.heading(22.5 * d);
      if (balanced(leant(side, least))) continue;
      double low = 0;
      double high = least;
      while (high - low > 0.05) {
        double mid = (low + high) / 2;
        if (balanced(leant(side, mid))) low = mid;
        else high = mid;
      }
      least = low;
    }
    return least;
  }

  private static Vec3 leant(Vec3 side, double degrees) {
    return new Vec3(0, 0, Math.cos(Math.toRadians(degrees))).plusTimes(Math.sin(Math.toRadians(degrees)), side);
  }

  /** Whether forces along {@code up} at the contacts' corners carry the weights against it. */
  private boolean balanced(Vec3 up) {
    double along = normal.dot(up);
    if (Math.sqrt(Math.max(0, 1 - along * along)) > made.friction() * along) return false;
    return balanced(up, List.of(up));
  }

  /** Whether forces within pyramids of 48 edges, inscribed in the friction cones and at most 0.2 % narrower, carry the weights. */
  boolean balancedWithinFriction() {
    Vec3 x = normal.cross(Math.abs(normal.x()) < 0.9 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).unit();
    Vec3 y = normal.cross(x);
    List<Vec3> edges = new ArrayList<>();
    for (int k = 0; k < PYRAMID_EDGES; k++) {
      double turn = 2 * Math.PI * k / PYRAMID_EDGES;
      edges.add(normal.plusTimes(made.friction() * Math.cos(turn), x).plusTimes(made.friction() * Math.sin(turn), y));
    }
    return balanced(new Vec3(0, 0, 1), edges);
  }

  private boolean balanced(Vec3 up, List<Vec3> along) {
    int n = made.rocks().size();
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    Expression[][] rows = new Expression[n][6];
    for (int i = 0; i < n; i++) {
      double[] lift = six(up.times(masses.get(i).volumeM3() / total), Vec3.ZERO);
      for (int k = 0; k < 6; k++) rows[i][k] = model.addExpression("row " + i + " " + k).level(lift[k]);
    }
    List<double[][]> held = new ArrayList<>();
    for (Patch c : patches) {
      Vec3 middle = middle(c);
      for (Vec3 p : c.corners()) {
        Vec3 at = p.plusTimes(SHRINK, middle.minus(p));
        for (Vec3 force : along) {
          Variable f = model.addVariable("f" + held.size()).lower(0);
          double[][] share = new double[n][6];
          for (int stone : new int[] {c.upper(), c.lower()}) {
            if (stone == n) continue;
            Vec3 on = stone == c.upper() ? force : force.negated();
            share[stone] = six(on, at.minus(masses.get(stone).centre()).times(1 / LENGTH_M).cross(on));
            for (int k = 0; k < 6; k++) rows[stone][k].set(f, share[stone][k]);
          }
          held.add(share);
        }
      }
    }
    var result = model.minimise();
    return result.getState().isFeasible() && checks(held, result, up);
  }

  private static double[] six(Vec3 force, Vec3 moment) {
    return new double[] {force.x(), force.y(), force.z(), moment.x(), moment.y(), moment.z()};
  }

  private boolean checks(List<double[][]> held, Optimisation.Result result, Vec3 up) {
    int n = masses.size();
    double[][] left = new double[n][];
    for (int i = 0; i < n; i++) left[i] = six(up.times(-masses.get(i).volumeM3() / total), Vec3.ZERO);
    for (int v = 0; v < held.size(); v++) {
      double f = result.doubleValue(v);
      if (f < -RESIDUAL) return false;
      for (int i = 0; i < n; i++) for (int k = 0; k < 6; k++) left[i][k] += f * held.get(v)[i][k];
    }
    for (double[] row : left) for (double x : row) if (!(Math.abs(x) < RESIDUAL)) return false;
    return true;
  }
}
