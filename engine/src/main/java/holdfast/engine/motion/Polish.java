package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Closes what a single-precision engine leaves open: hovers and overlaps of micrometres, down to rounding.
 *
 * <p>Problem solved, again and again until nothing moves: over small motions {@code x} of the rigid groups (a shift, and
 * a turn times the group's reach), minimise weight lost + {@code x'Mx / 2 trust} + stiffness times the squared sliding
 * at loaded features, subject to no feature passing its neighbour's plane (linearised; {@link LobeGap}). Sliding is held
 * so stiffly that a loaded contact does not creep (a hundredth of a nanometre a step) as long as its drag stays within
 * friction times the feature's force of the round before, and let go in proportion otherwise (the fixed point of
 * non-associative limit analysis). The motion found is made at most {@link Tolerances#POLISH_STEP_M} long, turned into
 * exact rotations, and the next round starts from there; the second-order error shrinks with the steps.
 *
 * <p>Limits: it decides nothing about stability. A group that no contact holds simply sinks by the trust length a step
 * until something does.
 */
final class Polish {
  /** The program's unit of length, metres; it makes gaps and motions of order one. */
  private static final double UNIT_M = 1e-4;

  /** Stiffness against sliding, weights per unit: 1e-11 m under the mean weight. */
  private static final double STICK = 1e7;

  /** Contact compliance, units per weight: 1e-13 m. */
  private static final double COMPLIANCE = 1e-9;

  /** The polish is no judge of friction: it holds a little more than the scene says, so that what rests does not creep. */
  private static final double FRICTION_SPARE = 1.25;

  private static final int MOST_ROUNDS = 120;
  private static final int FRICTION_ROUNDS = 6;

  private final Cluster cluster;
  private final Grip grip;

  /** Friction between two bodies; {@code b = -1 - i} is the fixed solid number i. */
  @FunctionalInterface
  interface Grip {
    double between(int a, int b);
  }

  /** What the polish did. */
  record Done(boolean converged, int rounds, double lastStepM) {}

  Polish(Cluster cluster, Grip grip) {
    this.cluster = cluster;
    this.grip = grip;
  }

  Done run() {
    double moved = Double.POSITIVE_INFINITY;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      moved = step();
      if (moved <= Tolerances.POLISH_DONE_M) return new Done(true, round + 1, moved);
    }
    return new Done(false, MOST_ROUNDS, moved);
  }

  /** One place where two groups face each other, as rows over their motions. */
  private record Row(int a, int b, double[] pushA, double[] pushB, double[][] slideA, double[][] slideB, double gap, double mu) {}

  private double step() {
    int n = cluster.groups;
    if (n == 0) return 0;
    double mean = Arrays.stream(cluster.massKg).sum() / n;
    Vec3[] centres = cluster.centres();
    List<Row> rows = rows(centres);
    double[] stick = new double[rows.size()];
    Arrays.fill(stick, STICK);
    double[] x = new double[n * TwistProgram.DIM];
    for (int round = 0; round < FRICTION_ROUNDS; round++) {
      TwistProgram program = new TwistProgram(n, COMPLIANCE);
      for (int g = 0; g < n; g++) {
        double w = cluster.massKg[g] / mean;
        program.pull(g, 2, -w);
        // Half the square of the reach over-states a stone's inertia, so that turning costs what shifting does.
        for (int k = 0; k < TwistProgram.DIM; k++) program.weigh(g, k, w * UNIT_M / Tolerances.POLISH_STEP_M * (k < 3 ? 1 : 0.4));
      }
      for (int r = 0; r < rows.size(); r++) {
        Row row = rows.get(r);
        program.keepApart(row.a, row.pushA, row.b, row.pushB, row.gap);
        for (int t = 0; t < 2; t++) program.spring(row.a, row.slideA[t], row.b, row.slideB[t], stick[r]);
      }
      TwistProgram.Answer answer = program.solve();
      x = answer.x();
      boolean same = true;
      for (int r = 0; r < rows.size(); r++) {
        double slide = Math.hypot(along(rows.get(r), 0, x), along(rows.get(r), 1, x));
        double bound = FRICTION_SPARE * rows.get(r).mu * answer.forces()[r];
        double next = slide * STICK <= bound ? STICK : bound / slide;
        if (Math.abs(next - stick[r]) > 0.02 * stick[r] && Math.max(next, stick[r]) * slide > 1e-4) same = false;
        stick[r] = next;
      }
      if (same) break;
    }
    return apply(x, centres);
  }

  private static double along(Row row, int t, double[] x) {
    double sum = 0;
    if (row.a >= 0) for (int k = 0; k < TwistProgram.DIM; k++) sum += row.slideA[t][k] * x[row.a * TwistProgram.DIM + k];
    if (row.b >= 0) for (int k = 0; k < TwistProgram.DIM; k++) sum += row.slideB[t][k] * x[row.b * TwistProgram.DIM + k];
    return sum;
  }

  private double apply(double[] x, Vec3[] centres) {
    double far = 0;
    for (int g = 0; g < cluster.groups; g++) far = Math.max(far, length(x, g));
    double share = Math.min(1, Tolerances.POLISH_STEP_M / Math.max(far, 1e-300));
    for (int g = 0; g < cluster.groups; g++) {
      int i = g * TwistProgram.DIM;
      Vec3 shift = new Vec3(x[i], x[i + 1], x[i + 2]).times(UNIT_M * share);
      Vec3 turn = new Vec3(x[i + 3], x[i + 4], x[i + 5]).times(UNIT_M * share / cluster.reachM[g]);
      cluster.move(g, centres[g], shift, turn);
    }
    return far * share;
  }

  /** The farthest that a point of the group moves, metres. */
  private static double length(double[] x, int g) {
    int i = g * TwistProgram.DIM;
    return UNIT_M * (new Vec3(x[i], x[i + 1], x[i + 2]).norm() + new Vec3(x[i + 3], x[i + 4], x[i + 5]).norm());
  }

  private List<Row> rows(Vec3[] centres) {
    List<Row> rows = new ArrayList<>();
    for (Cluster.Facing f : cluster.facings(Tolerances.NEAR_M)) {
      int a = cluster.group[f.a()];
      int b = f.b() < 0 ? -1 : cluster.group[f.b()];
      double mu = grip.between(f.a(), f.b());
      for (LobeGap.Feature p : f.gap().features()) {
        Vec3 t = p.normal().anyPerpendicular();
        Vec3 u = p.normal().cross(t);
        rows.add(new Row(a, b,
            row(a, centres, p.at(), p.normal()), row(b, centres, p.at(), p.normal().negated()),
            new double[][] {row(a, centres, p.at(), t), row(a, centres, p.at(), u)},
            new double[][] {row(b, centres, p.at(), t.negated()), row(b, centres, p.at(), u.negated())},
            p.gapM() / UNIT_M, mu));
      }
    }
    return rows;
  }

  private double[] row(int g, Vec3[] centres, Vec3 at, Vec3 along) {
    return g < 0 ? null : row(centres[g], cluster.reachM[g], at, along);
  }

  /** How fast a point of a group moves along a direction, per shift and per turn times reach. */
  static double[] row(Vec3 centre, double reachM, Vec3 at, Vec3 along) {
    Vec3 arm = at.minus(centre).cross(along).times(1 / reachM);
    return new double[] {along.x(), along.y(), along.z(), arm.x(), arm.y(), arm.z()};
  }
}
