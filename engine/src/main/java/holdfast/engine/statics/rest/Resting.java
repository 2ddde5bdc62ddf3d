package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.BondUse;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Forces.LinkForce;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Patch;
import holdfast.engine.statics.heap.Scale;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.solver.BlockLu;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Whether a heap <em>stays</em>: balance alone may rest on squeeze that nothing creates, or on lifting as it slides. Here
 * the contacts give a little and carry nothing at first; weight is put on, and the heap is followed in implicit time steps
 * without momentum that grow as it calms down (pseudo-transient continuation). In every step friction is limited by the
 * push of that same step ({@link RestStep}), so sliding never lifts. What still accelerates when the steps have become very
 * long falls; what has calmed down stays.
 *
 * <p>Limits: openings and slips are taken as small, the compliance is the same at every patch; a heap whose fate hangs on
 * how stiff one contact is against another is not told apart here ({@link StiffnessCheck} asks again). Twist is about the
 * centre of pressure of the step before, on the arm that goes with the shear then ({@link TwistArm}), and rest is believed
 * only when neither moves any more. Where no ending is reached the answer is {@code Undecided}. Not for use by several
 * threads at once.
 *
 * @see <a href="https://doi.org/10.1137/S0036142996304796">Kelley and Keyes 1998, Convergence analysis of pseudo-transient
 *     continuation</a>
 * @see <a href="https://doi.org/10.1016/j.cad.2022.103216">Kao et al. 2022, Coupled rigid-block analysis</a>, for why balance
 *     is not enough
 */
public final class Resting {
  private final Heap heap;
  private final CompliantHeap soft;
  private final Scale scale;
  private final double forceN;
  private final double lengthM;
  private final Calm calm;
  private final RestStep step;
  private final double[] held;
  private final double[] gathered = new double[3];
  private final TwistArm[] twistArms;

  /**
   * How calm is calm enough.
   *
   * @param residual relative to the mean weight, at which a time step is found
   * @param accelerationG at which it is at rest
   * @param centre relative to the mean weight; moments that centres of pressure may still shift
   */
  enum Calm {
    /** Rest whose forces are used. */
    REST(Tolerances.REST_RESIDUAL, Tolerances.REST_ACCELERATION, Tolerances.REST_CENTRE),
    /** It is seen that it does not fall; its forces are rough. */
    NO_FALL(Tolerances.NO_FALL_RESIDUAL, Tolerances.NO_FALL_ACCELERATION, Tolerances.NO_FALL_CENTRE);

    private final double residual;
    private final double accelerationG;
    private final double centre;

    Calm(double residual, double accelerationG, double centre) {
      this.residual = residual;
      this.accelerationG = accelerationG;
      this.centre = centre;
    }
  }

  /** Prepares {@code heap} for loads whose mean weight a body is about {@code typicalN}. */
  public Resting(Heap heap, double typicalN) {
    this(heap, typicalN, Stiffness.EVEN, Calm.REST);
  }

  Resting(Heap heap, double typicalN, Stiffness stiffness, Calm calm) {
    this.heap = heap;
    this.calm = calm;
    scale = Scale.of(heap, typicalN);
    forceN = scale.forceN();
    lengthM = scale.lengthM();
    soft = new CompliantHeap(heap, scale, stiffness);
    step = new RestStep(soft, calm.residual);
    held = new double[3 * soft.links];
    twistArms = new TwistArm[soft.links];
  }

  /** Does it stay under {@code loads}, put on a heap that carries nothing? */
  public Rest under(List<Wrench> loads) {
    return follow(soft.unloaded(), loads, Tolerances.REST_FIRST_INERTIA);
  }

  /** What the heap at rest as {@code at} under {@code loads} bears, seen quickly; empty where it is not stiff enough to tell. */
  public Optional<Superposition> superposition(RestState at, List<Wrench> loads) {
    hold(at);
    BlockLu stiffness = new BlockLu(soft.pattern);
    step.holding(at, held, Tolerances.SUPERPOSED_INERTIA, stiffness);
    return KnownResponses.of(soft, stiffness)
        .map(known -> new Superposition(heap, known, at, scale.six(loads)));
  }

  /** Does it stay when the loads become {@code loads}, after it came to rest as {@code before}? */
  public Rest then(RestState before, List<Wrench> loads) {
    return follow(before.copy(), loads, Tolerances.REST_LEAST_INERTIA);
  }

  /** Number of linear solves so far, a measure of the work; none is begun for a thread that is interrupted. */
  public int solves() {
    return step.solves;
  }

  private Rest follow(RestState state, List<Wrench> loads, double firstInertia) {
    double[] load = scale.six(loads);
    double inertia = firstInertia;
    double before = Double.POSITIVE_INFINITY;
    int persistent = 0;
    int failures = 0;
    double carriedFrom = 0;
    boolean nudged = false;
    for (int time = 0; time < Tolerances.REST_STEPS; time++) {
      Parallel.stopIfInterrupted();
      hold(state);
      if (time == 0 && firstInertia < Tolerances.REST_NEXT_INERTIA) {
        // All at once: most loads are borne without anything letting go.
        if (!step.leap(state, held, load, inertia)) {
          inertia = Tolerances.REST_NEXT_INERTIA;
          continue;
        }
      } else if (!step.find(state, held, load, inertia, carriedFrom / inertia)) {
        if (++failures > Tolerances.REST_FAILURES) return new Rest.Undecided("the contacts did not settle");
        inertia *= Tolerances.REST_SLOW_DOWN;
        before = Double.POSITIVE_INFINITY;
        carriedFrom = 0;
        continue;
      }
      double acceleration = step.acceleration(inertia);
      double moved = advance(state);
      if (acceleration <= calm.accelerationG && moved <= calm.centre) {
        if (nudged || !state.slips()) return atRest(state);
        if (!nudge(state, load)) return new Rest.Undecided("what slipped could not be nudged");
        nudged = true;
        inertia = Tolerances.REST_NEXT_INERTIA;
        before = Double.POSITIVE_INFINITY;
        carriedFrom = 0;
        continue;
      }
      boolean calmer = acceleration < 0.7 * before;
      boolean plain = acceleration >= Tolerances.FALL_PLAINLY && acceleration >= Tolerances.FALL_FAR * inertia;
      boolean slow = inertia <= 1e3 * Tolerances.REST_LEAST_INERTIA && acceleration >= Tolerances.FALL_ACCELERATION;
      if ((plain || slow) && !calmer) {
        if (++persistent >= Tolerances.FALL_STEPS) return new Rest.Moves(Mechanism.of(heap, step.step, lengthM), acceleration);
      } else {
        persistent = 0;
      }
      before = acceleration;
      carriedFrom = calmer ? 0 : inertia;
      inertia = Math.max(Tolerances.REST_LEAST_INERTIA, inertia * Tolerances.REST_SPEED_UP);
    }
    return new Rest.Undecided("neither rest nor a fall was reached");
  }

  /** Sets the centres of pressure of a state, and what is held about them, for the next step. */
  private void hold(RestState state) {
    for (int i = 0; i < soft.links; i++) {
      if (!soft.bearing[i]) continue;
      double arm = state.centre[3 * i + 2];
      soft.centre(i, state.centre[3 * i], state.centre[3 * i + 1], arm);
      held[3 * i] = state.held[3 * i];
      held[3 * i + 1] = state.held[3 * i + 1];
      held[3 * i + 2] = arm > 0 ? state.held[3 * i + 2] / arm : 0;
    }
  }

  /**
   * Moves what has slipped a little further, by lowering friction for a moment: rest that hangs by how it came about is no
   * rest. Returns whether a step was found at all.
   */
  private boolean nudge(RestState state, double[] load) {
    soft.frictionShare(Tolerances.NUDGE_FRICTION);
    double inertia = Tolerances.NUDGE_INERTIA;
    int found = 0;
    for (int k = 0; k < Tolerances.NUDGE_STEPS + Tolerances.REST_FAILURES && found < Tolerances.NUDGE_STEPS; k++) {
      hold(state);
      if (step.find(state, held, load, inertia, 0)) {
        advance(state);
        found++;
      } else {
        inertia *= Tolerances.REST_SLOW_DOWN;
      }
    }
    soft.frictionShare(1);
    return found > 0;
  }

  /** Moves the state on by the step found; returns how far, as moment over the heap's length, centres of pressure moved. */
  private double advance(RestState state) {
    soft.advance(state, step.step);
    double moved = 0;
    for (int i = 0; i < soft.links; i++) {
      if (!soft.bearing[i]) continue;
      double v1 = step.slip[3 * i];
      double v2 = step.slip[3 * i + 1];
      double moment = step.slip[3 * i + 2] * state.centre[3 * i + 2];
      double u = state.centre[3 * i];
      double v = state.centre[3 * i + 1];
      double arm = state.centre[3 * i + 2];
      pressure(i, state.centre);
      double carried = (u - state.centre[3 * i]) * v2 - (v - state.centre[3 * i + 1]) * v1;
      double limit = soft.friction[i] * step.total(i);
      askew(i, state.centre, v1, v2, moment + carried, limit);
      double longer = arm > 0 ? (state.centre[3 * i + 2] - arm) / arm : 0;
      moved = Math.max(moved, (Math.abs(carried) + Math.abs(longer * moment)) / lengthM);
      state.held[3 * i] = v1;
      state.held[3 * i + 1] = v2;
      state.held[3 * i + 2] = moment + carried;
      state.limit[i] = limit;
    }
    return moved;
  }

  /** Shortens the arm of a twist where pushes cannot give it together with the shear. */
  private void askew(int i, double[] centre, double v1, double v2, double moment, double limit) {
    double arm = centre[3 * i + 2];
    if (!(limit > 0) || !(arm > 0)) return;
    double s1 = v1 / limit;
    double s2 = v2 / limit;
    double seen = TwistArm.glance(soft.patches[i].u, soft.patches[i].v, step.push, soft.cornerStart[i], s1, s2);
    double twist = moment / limit;
    if (arm <= seen || twist * twist <= seen * seen * (1 - s1 * s1 - s2 * s2)) return;
    if (twistArms[i] == null) twistArms[i] = new TwistArm(soft.patches[i]);
    centre[3 * i + 2] = twistArms[i].beside(centre[3 * i], centre[3 * i + 1], s1, s2, moment, arm, 0);
  }

  /** Centre of the pushes now, and the arm of a twist alone: the patch's mean distance, or what the pushes give if less. */
  private void pressure(int i, double[] centre) {
    if (!(step.total(i) > 0)) return;
    soft.patches[i].gather(step.push, soft.cornerStart[i], gathered);
    double mean = soft.patches[i].meanDistance(gathered[0], gathered[1]);
    centre[3 * i] = gathered[0];
    centre[3 * i + 1] = gathered[1];
    centre[3 * i + 2] = gathered[2] < Tolerances.NO_ARM * mean ? 0 : Math.min(mean, gathered[2]);
  }

  private Rest atRest(RestState state) {
    List<LinkForce> out = new ArrayList<>(soft.links);
    for (int i = 0; i < soft.links; i++) {
      Link link = heap.links().get(i);
      Patch patch = soft.patches[i];
      if (link instanceof Link.Bearing b) {
        double slack = Tolerances.REST_CONE * (1 + state.limit[i]);
        double[] q = Arrays.copyOfRange(step.slip, 3 * i, 3 * i + 3);
        if (Math.sqrt(q[0] * q[0] + q[1] * q[1] + q[2] * q[2]) > state.limit[i] + slack) {
          return new Rest.Undecided("friction did not settle at " + heap.bodies().get(b.a()).name());
        }
        List<Double> pushes = new ArrayList<>();
        for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) pushes.add(step.push[c] * forceN);
        Vec3 at = patch.centroid.plusTimes(state.centre[3 * i], patch.first).plusTimes(state.centre[3 * i + 1], patch.second);
        Vec3 shear = patch.first.times(q[0] * forceN).plusTimes(q[1] * forceN, patch.second);
        out.add(new LinkForce(step.total(i) * forceN, shear, at,
            patch.normal.times(q[2] * forceN * state.centre[3 * i + 2]), pushes));
      } else {
        LinkForce f = bonded(i, link, patch);
        double use = BondUse.of(link, patch, f);
        if (use > 1 + Tolerances.REST_CONE) return new Rest.Breaks(i, use);
        out.add(f);
      }
    }
    return new Rest.Stays(new Forces(out), state);
  }

  private LinkForce bonded(int i, Link link, Patch patch) {
    int at = soft.springStart[i];
    double[] f = new double[soft.springStart[i + 1] - at];
    for (int k = 0; k < f.length; k++) f[k] = step.spring[at + k] * forceN;
    return link instanceof Link.Bond b ? BondUse.bondForce(b, patch, f, lengthM) : BondUse.rodForce((Link.Rod) link, f, lengthM);
  }
}
