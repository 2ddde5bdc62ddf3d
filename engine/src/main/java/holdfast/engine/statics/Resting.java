package holdfast.engine.statics;

import holdfast.engine.statics.Forces.LinkForce;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Whether a heap <em>stays</em>: balance alone may rest on squeeze that nothing creates, or on lifting as it slides. Here
 * the contacts give a little and carry nothing at first; weight is put on, and the heap is followed in implicit time steps
 * without momentum that grow as it calms down (pseudo-transient continuation). Friction is limited by the push that the
 * contact had in the round before, so sliding never lifts. What still accelerates when the steps have become very long
 * falls; what has calmed down, with friction inside the limits of its own pushes, stays.
 *
 * <p>Limits: openings and slips are taken as small, the compliance is the same at every patch; a heap whose fate hangs on
 * how stiff one contact is against another is not told apart. Where neither ending is reached the answer is
 * {@code Undecided}. Not for use by several threads at once.
 *
 * @see <a href="https://doi.org/10.1137/S0036142996304796">Kelley and Keyes 1998, Convergence analysis of pseudo-transient
 *     continuation</a>
 * @see <a href="https://doi.org/10.1016/j.cad.2022.103216">Kao et al. 2022, Coupled rigid-block analysis</a>, for why balance
 *     is not enough
 */
public final class Resting {
  private final Heap heap;
  private final CompliantHeap soft;
  private final double forceN;
  private final double lengthM;
  /** For every link: share of the change of its friction limit that is taken, and the change that was seen last. */
  private final double[] share;
  private final double[] before;

  /** Prepares {@code heap} for loads whose mean weight a body is about {@code typicalN}. */
  public Resting(Heap heap, double typicalN) {
    this.heap = heap;
    forceN = typicalN > 0 ? typicalN : 1;
    double size = heap.bodies().stream().mapToDouble(Heap.Body::sizeM).average().orElse(1);
    lengthM = size > 0 ? size / 2 : 1;
    soft = new CompliantHeap(heap, forceN, lengthM);
    share = new double[soft.links];
    before = new double[soft.links];
  }

  /** Does it stay under {@code loads}, put on a heap that carries nothing? */
  public Rest under(List<Wrench> loads) {
    return follow(soft.unloaded(), loads, Tolerances.REST_FIRST_INERTIA);
  }

  /** Does it stay when the loads become {@code loads}, after it came to rest as {@code before}? */
  public Rest then(RestState before, List<Wrench> loads) {
    return follow(before.copy(), loads, Tolerances.REST_FIRST_INERTIA);
  }

  /** Number of linear solves so far, a measure of the work. */
  public int solves() {
    return soft.solves;
  }

  private Rest follow(RestState state, List<Wrench> loads, double firstInertia) {
    double[] load = ForceBalance.scaled(loads, forceN, lengthM);
    Arrays.fill(share, 1);
    double inertia = firstInertia;
    double before = Double.POSITIVE_INFINITY;
    int persistent = 0;
    for (int time = 0; time < Tolerances.REST_STEPS; time++) {
      Arrays.fill(soft.step, 0);
      double change = rounds(state, load, inertia);
      if (Double.isNaN(change)) {
        inertia = Math.min(inertia * 10, Tolerances.REST_FIRST_INERTIA);
        if (++persistent > 8) return new Rest.Undecided("the contacts did not settle");
        continue;
      }
      double acceleration = acceleration(inertia);
      if (acceleration <= Tolerances.REST_ACCELERATION && change <= Tolerances.REST_FRICTION) return atRest(state);
      boolean calmer = acceleration < 0.7 * before;
      boolean plain = inertia <= Tolerances.FALL_PLAIN_INERTIA && acceleration >= Tolerances.FALL_PLAINLY;
      boolean slow = inertia <= 1e3 * Tolerances.REST_LEAST_INERTIA && acceleration >= Tolerances.FALL_ACCELERATION;
      if ((plain || slow) && !calmer) {
        if (++persistent >= 3) return new Rest.Moves(Mechanism.of(heap, soft.step, lengthM), acceleration);
      } else {
        persistent = 0;
      }
      before = acceleration;
      if (change <= 0.1) inertia = Math.max(Tolerances.REST_LEAST_INERTIA, inertia * Tolerances.REST_SPEED_UP);
    }
    return new Rest.Undecided("neither rest nor a fall was reached");
  }

  /**
   * One time step: the step is found for the friction limits, the limits follow from the pushes, and again; the state is
   * then moved on. Returns how much the limits still changed, relative to the mean weight; NaN when no step was found.
   */
  private double rounds(RestState state, double[] load, double inertia) {
    double[] limit = state.limit.clone();
    Arrays.fill(before, 0);
    double[] centre = state.centre.clone();
    double[] held = new double[3 * soft.links];
    double change = 0;
    for (int round = 0; round < Tolerances.REST_ROUNDS; round++) {
      for (int i = 0; i < soft.links; i++) {
        if (!soft.bearing[i]) continue;
        soft.centre(i, centre[3 * i], centre[3 * i + 1], centre[3 * i + 2]);
        carryOver(state, centre, held, i);
      }
      if (!soft.minimise(state, held, limit, load, inertia)) return Double.NaN;
      change = 0;
      for (int i = 0; i < soft.links; i++) {
        if (!soft.bearing[i]) continue;
        double next = soft.friction[i] * total(i);
        change = Math.max(change, Math.abs(next - limit[i]));
      }
      boolean last = round + 1 == Tolerances.REST_ROUNDS || change <= Tolerances.REST_FRICTION;
      if (last) break;
      for (int i = 0; i < soft.links; i++) {
        if (!soft.bearing[i]) continue;
        limit[i] = relaxed(i, limit[i]);
        pressure(i, centre);
      }
    }
    soft.advance(state);
    for (int i = 0; i < soft.links; i++) {
      if (!soft.bearing[i]) continue;
      state.held[3 * i] = soft.slip[3 * i];
      state.held[3 * i + 1] = soft.slip[3 * i + 1];
      state.held[3 * i + 2] = soft.slip[3 * i + 2] * centre[3 * i + 2];
      state.centre[3 * i] = centre[3 * i];
      state.centre[3 * i + 1] = centre[3 * i + 1];
      state.centre[3 * i + 2] = centre[3 * i + 2];
      state.limit[i] = relaxed(i, limit[i]);
    }
    return change;
  }

  /**
   * The friction limit to try next. In a steep groove more friction means less push by more than as much: taken whole, the
   * limits swing wider at every round. Where they swing a smaller share of the change is taken, where they do not a larger.
   */
  private double relaxed(int i, double limit) {
    double off = soft.friction[i] * total(i) - limit;
    share[i] = off * before[i] < 0 ? Math.max(0.1, 0.5 * share[i]) : Math.min(1, 1.5 * share[i]);
    before[i] = off;
    return limit + share[i] * off;
  }

  private double total(int link) {
    double sum = 0;
    for (int c = soft.cornerStart[link]; c < soft.cornerStart[link + 1]; c++) sum += soft.push[c];
    return sum;
  }

  /** The shear and twist held so far, about the centre now in use and as forces on its arm. */
  private void carryOver(RestState state, double[] centre, double[] held, int i) {
    double v1 = state.held[3 * i];
    double v2 = state.held[3 * i + 1];
    double du = state.centre[3 * i] - centre[3 * i];
    double dv = state.centre[3 * i + 1] - centre[3 * i + 1];
    double moment = state.held[3 * i + 2] + du * v2 - dv * v1;
    double arm = centre[3 * i + 2];
    held[3 * i] = v1;
    held[3 * i + 1] = v2;
    held[3 * i + 2] = arm > 0 ? moment / arm : 0;
  }

  /** Centre of the pushes now, and the arm of the twist: the mean distance of the patch, or of the pushes if that is less. */
  private void pressure(int i, double[] centre) {
    Patch patch = soft.patches[i];
    double sum = total(i);
    if (!(sum > 0)) return;
    double u = 0;
    double v = 0;
    int start = soft.cornerStart[i];
    for (int k = 0; k < patch.u.length; k++) {
      u += soft.push[start + k] * patch.u[k] / sum;
      v += soft.push[start + k] * patch.v[k] / sum;
    }
    double gathered = 0;
    for (int k = 0; k < patch.u.length; k++) {
      gathered += soft.push[start + k] / sum * Math.hypot(patch.u[k] - u, patch.v[k] - v);
    }
    centre[3 * i] = u;
    centre[3 * i + 1] = v;
    centre[3 * i + 2] = Math.min(patch.meanDistance(u, v), gathered);
  }

  /** The largest acceleration in the step just made, in g. */
  private double acceleration(double inertia) {
    double worst = 0;
    for (int i = 0; i < soft.bodies; i++) {
      double arm = heap.bodies().get(i).sizeM() / 2 / lengthM;
      for (int k = 0; k < 3; k++) {
        worst = Math.max(worst, Math.abs(soft.step[6 * i + k]));
        worst = Math.max(worst, Math.abs(soft.step[6 * i + 3 + k]) * arm);
      }
    }
    return worst * inertia;
  }

  private Rest atRest(RestState state) {
    List<LinkForce> out = new ArrayList<>(soft.links);
    for (int i = 0; i < soft.links; i++) {
      Link link = heap.links().get(i);
      Patch patch = soft.patches[i];
      if (link instanceof Link.Bearing b) {
        double slack = Tolerances.REST_CONE * (1 + state.limit[i]);
        double[] q = Arrays.copyOfRange(soft.slip, 3 * i, 3 * i + 3);
        if (Math.sqrt(q[0] * q[0] + q[1] * q[1] + q[2] * q[2]) > state.limit[i] + slack) {
          return new Rest.Undecided("friction did not settle at " + heap.bodies().get(b.a()).name());
        }
        List<Double> pushes = new ArrayList<>();
        for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) pushes.add(soft.push[c] * forceN);
        Vec3 at = patch.centroid.plusTimes(state.centre[3 * i], patch.first).plusTimes(state.centre[3 * i + 1], patch.second);
        Vec3 shear = patch.first.times(q[0] * forceN).plusTimes(q[1] * forceN, patch.second);
        out.add(new LinkForce(total(i) * forceN, shear, at, patch.normal.times(q[2] * forceN * state.centre[3 * i + 2]), pushes));
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
    for (int k = 0; k < f.length; k++) f[k] = soft.spring[at + k] * forceN;
    return link instanceof Link.Bond b ? BondUse.bondForce(b, patch, f, lengthM) : BondUse.rodForce((Link.Rod) link, f, lengthM);
  }
}
