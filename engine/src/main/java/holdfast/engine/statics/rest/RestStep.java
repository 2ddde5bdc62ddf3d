package holdfast.engine.statics.rest;

import holdfast.engine.statics.solver.BlockLu;
import holdfast.engine.statics.solver.BlockPattern;
import java.util.Arrays;

/**
 * One implicit step of a {@link CompliantHeap}: the small movement {@code d} after which
 *
 * <pre>
 *   load - r M d + (forces of the springs after d) = 0,
 *   |shear and twist of a bearing| &lt;= mu * (its push after d)
 * </pre>
 *
 * with r the inertia of the step. Friction is limited by the push at the end of the same step, so sliding never lifts, and
 * the equations are those of Coulomb, not of a minimum: their derivative is not symmetric. Newton's method finds the
 * root, with the derivative of the branch that each corner (pushes, open) and each bearing (holds, slips) is on, and steps
 * halved while they do not bring the residual down. For a large r there is one root and it is found; for a small one
 * neither is certain, and the answer then is that no step was found.
 *
 * @see <a href="https://doi.org/10.1007/3-540-31761-9">Wriggers 2006, Computational Contact Mechanics</a>, for the return
 *     to the friction limit and its derivative
 * @see <a href="https://doi.org/10.1016/0045-7825(91)90022-X">Alart and Curnier 1991</a>, for Newton's method on frictional
 *     contact
 */
final class RestStep {
  private static final int COLUMN = CompliantHeap.COLUMN;

  private final CompliantHeap soft;
  private final double aim;
  private final BlockLu factor;
  private final LinkBlocks blocks;

  /** The movement, six a body. */
  final double[] step;
  /** Forces after the step: pushes at the corners; shears and twist, three a link; bonded springs. */
  final double[] push;
  final double[] slip;
  final double[] spring;

  private final double[] trial;
  /** Friction limits: of the pushes after the step, or held. */
  private final double[] limit;
  private boolean limitsHeld;
  private double energy;
  private final double[] heldLimit;
  private final double[] lagged;
  private final double[] residual;
  private final double[] direction;
  private final double[] attempt;
  private final double[] stretch = new double[6];
  private final double[] scratch = new double[COLUMN];
  private final double[] pressing = new double[COLUMN];
  /** Number of linear solves so far, a measure of the work. */
  int solves;

  /**
   * @param aim relative to the mean weight; residual at which a step is found
   */
  RestStep(CompliantHeap soft, double aim) {
    this.soft = soft;
    this.aim = aim;
    factor = new BlockLu(soft.pattern);
    blocks = new LinkBlocks(soft);
    step = new double[6 * soft.bodies];
    residual = new double[6 * soft.bodies];
    direction = new double[6 * soft.bodies];
    attempt = new double[6 * soft.bodies];
    lagged = new double[6 * soft.bodies];
    heldLimit = new double[soft.links];
    push = new double[soft.cornerStart[soft.links]];
    slip = new double[3 * soft.links];
    trial = new double[3 * soft.links];
    limit = new double[soft.links];
    spring = new double[soft.springStart[soft.links]];
  }

  /** The push of a bearing after the step. */
  double total(int link) {
    double sum = 0;
    for (int c = soft.cornerStart[link]; c < soft.cornerStart[link + 1]; c++) sum += push[c];
    return sum;
  }

  /**
   * Finds the step from {@code from} under {@code load}. It is first looked for from {@code carry} times the last step, as
   * bodies that accelerate evenly would go on, then from no movement.
   *
   * @param held shears and twists before the step, three a link, about the centres now set
   * @return whether a root was found
   */
  boolean find(RestState from, double[] held, double[] load, double inertia, double carry) {
    if (carry > 0) {
      for (int i = 0; i < step.length; i++) step[i] *= carry;
      if (newton(from, held, load, inertia)) return true;
    }
    Arrays.fill(step, 0);
    if (newton(from, held, load, inertia)) return true;
    return fromHeldLimits(from, held, load, inertia);
  }

  /** Looks for a step from no movement, and gives up early: for a guess that is cheap when it is right. */
  boolean leap(RestState from, double[] held, double[] load, double inertia) {
    Arrays.fill(step, 0);
    return newton(from, held, load, inertia, Tolerances.REST_LEAP);
  }

  /** Puts the derivative at {@code from} for the case that every contact that pushes holds into {@code to}. */
  void holding(RestState from, double[] held, double inertia, BlockLu to) {
    Arrays.fill(step, 0);
    evaluate(step, from, held, new double[step.length], inertia);
    assemble(to, true, inertia);
  }

  /**
   * Where Newton's method loses its way between the branches, the limits are held at what they were: what is then left is
   * the minimum of a convex energy, which is found for certain and is a better place to begin from.
   */
  private boolean fromHeldLimits(RestState from, double[] held, double[] load, double inertia) {
    System.arraycopy(from.limit, 0, heldLimit, 0, limit.length);
    Arrays.fill(step, 0);
    for (int round = 0; round < Tolerances.REST_LAGGED; round++) {
      limitsHeld = true;
      System.arraycopy(heldLimit, 0, limit, 0, limit.length);
      boolean found = newton(from, held, load, inertia);
      limitsHeld = false;
      if (!found) return false;
      for (int i = 0; i < soft.links; i++) heldLimit[i] = (heldLimit[i] + soft.friction[i] * total(i)) / 2;
      System.arraycopy(step, 0, lagged, 0, step.length);
      if (newton(from, held, load, inertia)) return true;
      System.arraycopy(lagged, 0, step, 0, step.length);
    }
    return false;
  }

  private boolean newton(RestState from, double[] held, double[] load, double inertia) {
    return newton(from, held, load, inertia, Tolerances.REST_NEWTON);
  }

  private boolean newton(RestState from, double[] held, double[] load, double inertia, int most) {
    double size = 1;
    for (double f : load) size = Math.max(size, Math.abs(f));
    double near = aim * size;
    evaluate(step, from, held, load, inertia);
    double was = norm(residual);
    for (int newton = 0; newton < most; newton++) {
      if (max(residual) <= Math.max(near, Tolerances.MOVING_RESIDUAL * acceleration(inertia))) return true;
      double energyWas = energy;
      assemble(factor, false, inertia);
      solves++;
      if (!factor.factor()) return false;
      factor.solve(residual, direction);
      double slope = 0;
      for (int i = 0; i < direction.length; i++) slope += residual[i] * direction[i];
      double share = 1;
      boolean better = false;
      for (int halving = 0; halving < (limitsHeld ? 30 : Tolerances.REST_HALVINGS) && !better; halving++) {
        for (int i = 0; i < step.length; i++) attempt[i] = step[i] + share * direction[i];
        evaluate(attempt, from, held, load, inertia);
        double now = norm(residual);
        // Close to the end the energy no longer tells; the residual does. Begun on a kink, a first step may go uphill.
        better = limitsHeld
            ? energy <= energyWas - 1e-4 * share * slope || now < 0.5 * was
            : now <= (1 - 1e-4 * share) * was || newton == 0;
        share /= 2;
      }
      if (!better) {
        evaluate(step, from, held, load, inertia);
        return max(residual) <= 1e3 * near;
      }
      System.arraycopy(attempt, 0, step, 0, step.length);
      was = norm(residual);
    }
    return max(residual) <= 1e3 * near;
  }

  /** The largest acceleration in the step, in g: of what goes on moving no more is asked than that this is right. */
  double acceleration(double inertia) {
    double worst = 0;
    for (int i = 0; i < soft.bodies; i++) {
      for (int k = 6 * i; k < 6 * i + 3; k++) {
        worst = Math.max(worst, Math.abs(step[k]));
        worst = Math.max(worst, Math.abs(step[k + 3]) * soft.arm[i]);
      }
    }
    return worst * inertia;
  }

  private static double norm(double[] v) {
    double sum = 0;
    for (double x : v) sum += x * x;
    return Math.sqrt(sum);
  }

  private static double max(double[] v) {
    double m = 0;
    for (double x : v) m = Math.max(m, Math.abs(x));
    return m;
  }

  /** Forces, residual and, where the limits are held, energy after the movement {@code d}. */
  private void evaluate(double[] d, RestState from, double[] held, double[] load, double inertia) {
    double e = 0;
    for (int i = 0; i < residual.length; i++) {
      double pull = inertia * soft.mass[i] * d[i];
      residual[i] = load[i] - pull;
      e += 0.5 * pull * d[i] - load[i] * d[i];
    }
    for (int i = 0; i < soft.links; i++) {
      double t = soft.shearStiffness[i];
      double total = 0;
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) {
        double g = from.gap[c] + soft.along(soft.cornerColumn, COLUMN * c, i, d);
        double n = g < 0 ? -soft.cornerStiffness[c] * g : 0;
        push[c] = n;
        total += n;
        if (n > 0) {
          e -= 0.5 * n * g;
          soft.addTo(residual, soft.cornerColumn, COLUMN * c, i, n);
        }
      }
      if (!limitsHeld) limit[i] = soft.friction[i] * total;
      if (limit[i] > 0) {
        double size = 0;
        for (int k = 3 * i; k < 3 * i + 3; k++) {
          trial[k] = held[k] - t * soft.along(soft.slipColumn, COLUMN * k, i, d);
          size += trial[k] * trial[k];
        }
        size = Math.sqrt(size);
        double f = size > limit[i] ? limit[i] / size : 1;
        e += f < 1 ? (limit[i] * size - 0.5 * limit[i] * limit[i]) / t : 0.5 * size * size / t;
        for (int k = 3 * i; k < 3 * i + 3; k++) {
          slip[k] = f * trial[k];
          soft.addTo(residual, soft.slipColumn, COLUMN * k, i, slip[k]);
        }
      } else {
        Arrays.fill(trial, 3 * i, 3 * i + 3, 0);
        Arrays.fill(slip, 3 * i, 3 * i + 3, 0);
      }
      int from0 = soft.springStart[i];
      int n = soft.springStart[i + 1] - from0;
      for (int r = 0; r < n; r++) {
        stretch[r] = from.stretch[from0 + r] + soft.along(soft.springColumn, COLUMN * (from0 + r), i, d);
      }
      for (int r = 0; r < n; r++) {
        double f = 0;
        for (int c = 0; c < n; c++) f -= soft.springStiffness[i][r * n + c] * stretch[c];
        spring[from0 + r] = f;
        e -= 0.5 * f * stretch[r];
        soft.addTo(residual, soft.springColumn, COLUMN * (from0 + r), i, f);
      }
    }
    energy = e;
  }

  /** The derivative of what {@link #evaluate} takes away from the load, at the movement it was last called with. */
  private void assemble(BlockLu factor, boolean allHold, double inertia) {
    factor.clear();
    for (int i = 0; i < soft.bodies; i++) {
      int at = soft.pattern.blockOf(i, i) * BlockPattern.BB;
      double[] diagonal = factor.holding(i, i);
      for (int r = 0; r < 6; r++) diagonal[at + 7 * r] += inertia * soft.mass[6 * i + r];
    }
    for (int i = 0; i < soft.links; i++) {
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) {
        if (!(push[c] > 0)) continue;
        blocks.add(factor, i, soft.cornerColumn, COLUMN * c, soft.cornerColumn, COLUMN * c, soft.cornerStiffness[c]);
      }
      if (limit[i] > 0) assembleFriction(factor, allHold, i);
      int from = soft.springStart[i];
      int n = soft.springStart[i + 1] - from;
      for (int r = 0; r < n; r++) {
        for (int c = 0; c < n; c++) {
          double v = soft.springStiffness[i][r * n + c];
          if (v != 0) blocks.add(factor, i, soft.springColumn, COLUMN * (from + r), soft.springColumn, COLUMN * (from + c), v);
        }
      }
    }
  }

  /**
   * Holding, the three springs; slipping along the unit vector q of shears and twist, with S their columns, n the pushes'
   * and L the limit: {@code t L/|trial| (S S' - S q q' S') + mu S q (sum of k n)'}.
   */
  private void assembleFriction(BlockLu factor, boolean allHold, int i) {
    double t = soft.shearStiffness[i];
    int k0 = 3 * i;
    double size = Math.sqrt(trial[k0] * trial[k0] + trial[k0 + 1] * trial[k0 + 1] + trial[k0 + 2] * trial[k0 + 2]);
    boolean slips = !allHold && size > limit[i];
    double f = slips ? t * limit[i] / size : t;
    for (int k = k0; k < k0 + 3; k++) blocks.add(factor, i, soft.slipColumn, COLUMN * k, soft.slipColumn, COLUMN * k, f);
    if (!slips) return;
    for (int r = 0; r < COLUMN; r++) {
      double v = 0;
      for (int k = k0; k < k0 + 3; k++) v += trial[k] / size * soft.slipColumn[COLUMN * k + r];
      scratch[r] = v;
      double n = 0;
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) {
        if (push[c] > 0) n += soft.cornerStiffness[c] * soft.cornerColumn[COLUMN * c + r];
      }
      pressing[r] = (limitsHeld ? 0 : soft.friction[i] * n) - f * v;
    }
    blocks.add(factor, i, scratch, 0, pressing, 0, 1);
  }
}
