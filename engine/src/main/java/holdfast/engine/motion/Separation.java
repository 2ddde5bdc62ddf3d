package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import java.util.Arrays;
import java.util.List;

/**
 * Parts overlapping stones, and brings bonded stones that hover together, by the least motion.
 *
 * <p>Problem solved, again and again: the smallest motion (heavy stones move less, up and down comes cheaper than
 * sideways, turning dearest) after which no pair overlaps, linearised; at most {@link #STEP_M} of an overlap is undone
 * in one step. Bonded pairs are drawn together along their gap.
 */
final class Separation {
  private static final double UNIT_M = 1e-3;

  /** Metres of overlap undone in one step. */
  private static final double STEP_M = 3e-3;

  /** Metres of overlap that count as none. */
  private static final double DONE_M = 1e-7;

  private static final double COMPLIANCE = 1e-8;
  private static final double SIDEWAYS = 1.5;
  private static final double TURNING = 4;
  private static final int MOST_ROUNDS = 200;

  private final Cluster cluster;
  private final List<int[]> drawn;
  private final double drawnWithinM;

  /**
   * @param drawn pairs of body numbers that are bonded and are to touch
   * @param drawnWithinM the farthest that such a pair is drawn together
   */
  Separation(Cluster cluster, List<int[]> drawn, double drawnWithinM) {
    this.cluster = cluster;
    this.drawn = drawn;
    this.drawnWithinM = drawnWithinM;
  }

  /** Whether nothing overlaps in the end. */
  boolean run() {
    for (int round = 0; round < MOST_ROUNDS; round++) {
      List<Cluster.Facing> facings = cluster.facings(Math.max(drawnWithinM, Tolerances.NEAR_M));
      boolean overlap = facings.stream().anyMatch(f -> f.gap().gapM() < -DONE_M);
      boolean apart = false;
      for (int[] pair : drawn) {
        Cluster.Facing f = nearest(facings, pair[0], pair[1]);
        apart |= f != null && f.gap().gapM() > DONE_M;
      }
      if (!overlap && !apart) return true;
      if (!step(facings)) return !overlap;
    }
    return cluster.facings(0).stream().noneMatch(f -> f.gap().gapM() < -Tolerances.REST_M);
  }

  private static Cluster.Facing nearest(List<Cluster.Facing> facings, int a, int b) {
    Cluster.Facing best = null;
    for (Cluster.Facing f : facings) {
      boolean same = f.a() == a && f.b() == b || f.a() == b && f.b() == a;
      if (same && (best == null || f.gap().gapM() < best.gap().gapM())) best = f;
    }
    return best;
  }

  /** One step; false when it moved nothing. */
  private boolean step(List<Cluster.Facing> facings) {
    int n = cluster.groups;
    if (n == 0) return false;
    double mean = Arrays.stream(cluster.massKg).sum() / n;
    Vec3[] centres = cluster.centres();
    TwistProgram program = new TwistProgram(n, COMPLIANCE);
    for (int g = 0; g < n; g++) {
      double w = cluster.massKg[g] / mean;
      for (int k = 0; k < TwistProgram.DIM; k++) program.weigh(g, k, w * (k == 2 ? 1 : k < 2 ? SIDEWAYS : TURNING));
    }
    for (Cluster.Facing f : facings) {
      int a = cluster.group[f.a()];
      int b = f.b() < 0 ? -1 : cluster.group[f.b()];
      for (LobeGap.Feature p : f.gap().features()) {
        program.keepApart(a, row(a, centres, p.at(), p.normal()), b, row(b, centres, p.at(), p.normal().negated()),
            Math.max(p.gapM(), -STEP_M) / UNIT_M);
      }
    }
    for (int[] pair : drawn) {
      Cluster.Facing f = nearest(facings, pair[0], pair[1]);
      if (f == null || f.gap().gapM() <= DONE_M) continue;
      draw(program, f, centres);
    }
    TwistProgram.Answer answer = program.solve();
    double far = 0;
    double[] x = answer.x();
    for (double v : x) far = Math.max(far, Math.abs(v));
    if (far * UNIT_M < 1e-9) return false;
    double share = Math.min(1, 3 * STEP_M / (far * UNIT_M));
    for (int g = 0; g < n; g++) {
      int i = g * TwistProgram.DIM;
      cluster.move(g, centres[g], new Vec3(x[i], x[i + 1], x[i + 2]).times(UNIT_M * share),
          new Vec3(x[i + 3], x[i + 4], x[i + 5]).times(UNIT_M * share / cluster.reachM[g]));
    }
    return true;
  }

  /** A spring as strong as a step is long pulls the pair's gap shut; the rows keep it from closing past zero. */
  private void draw(TwistProgram program, Cluster.Facing f, Vec3[] centres) {
    int a = cluster.group[f.a()];
    int b = f.b() < 0 ? -1 : cluster.group[f.b()];
    LobeGap.Feature least = f.gap().features().get(0);
    for (LobeGap.Feature p : f.gap().features()) if (p.gapM() < least.gapM()) least = p;
    double pull = 10 * Math.min(f.gap().gapM(), STEP_M) / UNIT_M;
    double[] ra = row(a, centres, least.at(), least.normal());
    double[] rb = row(b, centres, least.at(), least.normal().negated());
    for (int k = 0; k < 3; k++) {
      if (a >= 0) program.pull(a, k, -pull * ra[k]);
      if (b >= 0) program.pull(b, k, -pull * rb[k]);
    }
  }

  private double[] row(int g, Vec3[] centres, Vec3 at, Vec3 along) {
    return g < 0 ? null : Polish.row(centres[g], cluster.reachM[g], at, along);
  }
}
