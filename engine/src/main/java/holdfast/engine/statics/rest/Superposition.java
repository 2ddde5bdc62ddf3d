package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.BondUse;
import holdfast.engine.statics.heap.Forces.LinkForce;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Scale;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.solver.DenseLu;
import java.util.Arrays;
import java.util.List;

/**
 * Whether a heap at rest bears a further load, by superposition: the known responses of the heap as it rests, plus forces
 * at the few places where a contact opens, closes or slips. Found are those forces {@code f} for which
 *
 * <pre>
 *   f = F(y) - F0(y),   y = response to the load and to f
 * </pre>
 *
 * with F what the contacts put up by their own law (corners that only push, friction limited by the push of the same step)
 * and F0 what they would put up if all that pressed at rest held on. These are the equations of {@link RestStep} in as many
 * unknowns as contacts change, by the same Newton method; where many change, its equations are solved body by body.
 * Friction is lowered a little ({@link Tolerances#SUPERPOSED_FRICTION}) and must be enough about the centres of pressure that
 * come out; where it is not, those are set and a further step is made. What is found is put together anew as forces on
 * every body and must balance, or it is not believed.
 *
 * <p>A yes says that rest was found and checked. A no says nothing: {@link Resting} has to be asked. Not for several threads
 * at once.
 *
 * @see <a href="https://doi.org/10.1007/978-3-540-75392-6">Acary and Brogliato 2008, Numerical Methods for Nonsmooth
 *     Dynamical Systems</a>, for contact with friction condensed to the contacts
 */
public final class Superposition {
  private static final int COLUMN = CompliantHeap.COLUMN;

  private final Heap heap;
  private final CompliantHeap soft;
  private final KnownResponses known;
  private final ShearLaws laws;
  private final int corners;
  private final double[] dead;
  private final double[] gap;
  private final double[] stretch;
  /** Whether a corner presses at rest. */
  private final boolean[] presses;
  private final int[] linkOf;

  private final double[] load;
  private final double[] d;
  /**
   * Per place: how far it went, the force asked for, the force wanted by the law, the change of force in a step. Where bodies
   * are solved for, the force asked for is none: their movement says it all.
   */
  private final double[] y;
  private final double[] f;
  private final double[] wanted;
  private final double[] change;
  private final double[] push;
  /** Places with a force, or a law, of their own now. */
  private int[] active = new int[64];
  private int actives;
  /** Those of the step before. */
  private int[] changed = new int[64];
  /** Whether the unknowns are the movements of the bodies; else the forces at the active places. */
  private boolean byBody;
  /** Forces in bonded springs. */
  private final double[] spring;
  private final DenseLu dense = new DenseLu();
  /** Of the bodies: what is out of balance, the movement of a step, and the movement and forces before it. */
  private final double[] balance;
  private final double[] moves;
  private final double[] dBefore;
  private final double[] fBefore;
  private final double[] row = new double[3];
  private final double[] q12 = new double[COLUMN];

  /**
   * @param at a heap at rest
   * @param deadLoad what it rests under, scaled, six figures a body
   */
  Superposition(Heap heap, KnownResponses known, RestState at, double[] deadLoad) {
    this.heap = heap;
    this.known = known;
    soft = known.soft;
    corners = known.corners;
    dead = deadLoad;
    gap = at.gap;
    stretch = at.stretch;
    laws = new ShearLaws(soft, known, at);
    presses = new boolean[corners];
    for (int c = 0; c < corners; c++) presses[c] = gap[c] < 0;
    linkOf = new int[known.places];
    for (int i = 0; i < soft.links; i++) {
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) linkOf[c] = i;
      for (int k = 0; k < 3; k++) linkOf[corners + 3 * i + k] = i;
    }
    load = new double[6 * soft.bodies];
    d = new double[6 * soft.bodies];
    balance = new double[6 * soft.bodies];
    moves = new double[6 * soft.bodies];
    dBefore = new double[6 * soft.bodies];
    y = new double[known.places];
    f = new double[known.places];
    wanted = new double[known.places];
    change = new double[known.places];
    fBefore = new double[known.places];
    push = new double[corners];
    spring = new double[soft.springStart[soft.links]];
  }

  /** Whether {@code factor} times a live load is seen to be borne. */
  public boolean bears(List<Wrench> live, double factor) {
    new Scale(soft.forceN / factor, soft.lengthM).six(live, load);
    laws.reset();
    Arrays.fill(f, 0);
    byBody = false;
    known.underLoad(load, d);
    evaluate();
    toBodies();
    // Where many places change a Newton step is dear, and centres of pressure are set before the last digits are sought.
    double first = byBody ? Tolerances.SUPERPOSED_NEARLY : Tolerances.SUPERPOSED_RESIDUAL;
    for (int step = 0; step < Tolerances.SUPERPOSED_STEPS; step++) {
      if (!newton(step == 0 ? Tolerances.SUPERPOSED_AIMS : 0, first)) return false;
      if (!laws.within(y, push, corners)) continue;
      if (first == Tolerances.SUPERPOSED_RESIDUAL) return checked();
      if (!newton(0, Tolerances.SUPERPOSED_RESIDUAL)) return false;
      if (laws.within(y, push, corners)) return checked();
    }
    return false;
  }

  /**
   * @param aims Newton steps before which centres of pressure are set anew
   * @param aim residual at which it ends
   */
  private boolean newton(int aims, double aim) {
    evaluate();
    double was = missing();
    for (int step = 0; step < Tolerances.SUPERPOSED_NEWTON; step++) {
      if (step < aims) {
        laws.aim(push);
        evaluate();
        was = missing();
      }
      if (was <= aim) return true;
      if (toBodies()) was = missing();
      if (!(byBody ? byBody() : byPlace())) return false;
      was = go(was, step == 0);
      if (Double.isNaN(was)) return false;
      if (byBody) was = goOn(was, aim);
    }
    return was <= aim;
  }

  /** Goes the step found, or as much of it as helps; the residual then, not a number where none of it does. */
  private double go(double was, boolean anyway) {
    int n = actives;
    keep();
    double share = 1;
    for (int halving = 0; halving < Tolerances.SUPERPOSED_HALVINGS; halving++) {
      for (int i = 0; i < d.length; i++) d[i] = dBefore[i] + share * moves[i];
      for (int k = 0; k < n && !byBody; k++) f[changed[k]] = fBefore[changed[k]] + share * change[changed[k]];
      evaluate();
      double now = missing();
      // Begun on a kink, a first step may go uphill.
      if (now <= (1 - 1e-4 * share) * was || anyway) return now;
      share /= 2;
    }
    return Double.NaN;
  }

  /**
   * Near the end the equations hardly change: further steps with those of the last one cost a fraction of it, and are gone
   * for as long as each brings the residual down far.
   */
  private double goOn(double was, double aim) {
    while (was > aim && was <= Tolerances.SUPERPOSED_CHORD) {
      known.underChangeAgain(balance, moves);
      System.arraycopy(d, 0, dBefore, 0, d.length);
      for (int i = 0; i < d.length; i++) d[i] += moves[i];
      evaluate();
      double now = missing();
      if (!(now <= Tolerances.SUPERPOSED_CHORD_PAYS * was)) {
        System.arraycopy(dBefore, 0, d, 0, d.length);
        evaluate();
        return missing();
      }
      was = now;
    }
    return was;
  }

  private void keep() {
    System.arraycopy(d, 0, dBefore, 0, d.length);
    if (byBody) return;
    System.arraycopy(f, 0, fBefore, 0, f.length);
    if (changed.length < actives) changed = new int[active.length];
    System.arraycopy(active, 0, changed, 0, actives);
  }

  /** What is out of balance on the bodies, into {@link #balance}; its length. */
  private double missing() {
    if (byBody) {
      unbalanced();
    } else {
      Arrays.fill(balance, 0);
      for (int k = 0; k < actives; k++) {
        int p = active[k];
        known.addTo(balance, p, linkOf[p], wanted[p] - f[p]);
      }
    }
    double sum = 0;
    for (double r : balance) sum += r * r;
    return Math.sqrt(sum);
  }

  private void evaluate() {
    actives = 0;
    for (int i = 0; i < soft.links; i++) {
      if (!soft.bearing[i]) continue;
      double total = 0;
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) {
        y[c] = known.along(c, i, d);
        double g = gap[c] + y[c];
        push[c] = g < 0 ? -soft.cornerStiffness[c] * g : 0;
        total += push[c];
        wanted[c] = presses[c] == g < 0 ? 0 : presses[c] ? soft.cornerStiffness[c] * g : push[c];
        if (wanted[c] != 0 || f[c] != 0) activate(c);
      }
      int at = corners + 3 * i;
      if (!laws.idle(i, total)) {
        for (int k = at; k < at + 3; k++) y[k] = known.along(k, i, d);
      }
      laws.evaluate(i, total, y, at, wanted);
      for (int k = at; k < at + 3; k++) if (wanted[k] != 0 || f[k] != 0) activate(k);
    }
  }

  /** Goes over to movements of the bodies as the unknowns where many places change; whether it did just now. */
  private boolean toBodies() {
    if (byBody || actives <= Tolerances.SUPERPOSED_DENSE) return false;
    byBody = true;
    Arrays.fill(f, 0);
    evaluate();
    return true;
  }

  private void activate(int place) {
    if (actives == active.length) active = Arrays.copyOf(active, 2 * actives);
    active[actives++] = place;
  }

  /** What a corner wants more for being farther out. */
  private double slope(int corner) {
    if (presses[corner] == gap[corner] + y[corner] < 0) return 0;
    return presses[corner] ? soft.cornerStiffness[corner] : -soft.cornerStiffness[corner];
  }

  /** One Newton step in the places: {@code (1 - F'(y) G) df = F(y) - f}, G the responses of the places to one another. */
  private boolean byPlace() {
    int n = actives;
    dense.size(n);
    for (int r = 0; r < n; r++) {
      int p = active[r];
      dense.b[r] = wanted[p] - f[p];
      for (int c = 0; c < n; c++) {
        dense.a[r * n + c] = -wantedMore(p, known.ofPlace(active[c], linkOf[active[c]]));
      }
      dense.a[r * n + r] += 1;
    }
    if (!dense.solve()) return false;
    Arrays.fill(moves, 0);
    for (int k = 0; k < n; k++) {
      int p = active[k];
      change[p] = dense.b[k];
      double[] response = known.ofPlace(p, linkOf[p]);
      for (int i = 0; i < moves.length; i++) moves[i] += change[p] * response[i];
    }
    return true;
  }

  /** The same step in the bodies: {@code (K - C F'(y) C') dd = C (F(y) - f)}, C the columns of the places. */
  private boolean byBody() {
    known.beginChange();
    for (int k = 0; k < actives; k++) {
      int p = active[k];
      int i = linkOf[p];
      if (p < corners) {
        double s = slope(p);
        if (s != 0) known.change(i, soft.cornerColumn, COLUMN * p, soft.cornerColumn, COLUMN * p, s);
        continue;
      }
      int r = (p - corners) % 3;
      laws.slope(i, r, row);
      int column = COLUMN * (p - corners);
      int first = column - COLUMN * r;
      double perPush = laws.perPush(i, r);
      for (int c = 0; c < COLUMN; c++) {
        q12[c] = row[0] * known.shearColumn[first + c] + row[1] * known.shearColumn[first + COLUMN + c]
            + row[2] * known.shearColumn[first + 2 * COLUMN + c];
      }
      if (perPush != 0) {
        for (int q = soft.cornerStart[i]; q < soft.cornerStart[i + 1]; q++) {
          if (!(push[q] > 0)) continue;
          for (int c = 0; c < COLUMN; c++) q12[c] -= perPush * soft.cornerStiffness[q] * soft.cornerColumn[COLUMN * q + c];
        }
      }
      known.change(i, known.shearColumn, column, q12, 0, 1);
    }
    return known.underChange(balance, moves);
  }

  /** What the law of a place wants more after a small movement. */
  private double wantedMore(int p, double[] movement) {
    int i = linkOf[p];
    if (p < corners) {
      double s = slope(p);
      return s == 0 ? 0 : s * known.along(p, i, movement);
    }
    int at = corners + 3 * i;
    laws.slope(i, p - at, row);
    double v = 0;
    for (int k = 0; k < 3; k++) if (row[k] != 0) v += row[k] * known.along(at + k, i, movement);
    double perPush = laws.perPush(i, p - at);
    if (perPush == 0) return v;
    for (int q = soft.cornerStart[i]; q < soft.cornerStart[i + 1]; q++) {
      if (push[q] > 0) v -= perPush * soft.cornerStiffness[q] * known.along(q, i, movement);
    }
    return v;
  }

  /** Whether what all forces leave out of balance is next to nothing, and bonds bear theirs. */
  private boolean checked() {
    double size = unbalanced();
    for (double r : balance) if (!(Math.abs(r) <= Tolerances.SUPERPOSED_BALANCE * size)) return false;
    for (int i = 0; i < soft.links; i++) if (!soft.bearing[i] && !bondHolds(i)) return false;
    return true;
  }

  /** Puts all loads and forces on all bodies together, into {@link #balance}; returns the largest load. */
  private double unbalanced() {
    double size = 1;
    for (int k = 0; k < balance.length; k++) {
      balance[k] = dead[k] + load[k];
      size = Math.max(size, Math.abs(balance[k]));
    }
    for (int i = 0; i < soft.links; i++) {
      if (!soft.bearing[i]) {
        spring(i);
        for (int r = soft.springStart[i]; r < soft.springStart[i + 1]; r++) {
          soft.addTo(balance, soft.springColumn, COLUMN * r, i, spring[r]);
        }
        continue;
      }
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) {
        if (push[c] > 0) known.addTo(balance, c, i, push[c]);
      }
      if (laws.limit(i) > 0) for (int k = 0; k < 3; k++) known.addTo(balance, corners + 3 * i + k, i, laws.force(i, k));
    }
    return size;
  }

  /** The forces in the springs of a bonded link. */
  private void spring(int i) {
    int from = soft.springStart[i];
    int n = soft.springStart[i + 1] - from;
    Arrays.fill(spring, from, from + n, 0);
    for (int c = 0; c < n; c++) {
      double s = stretch[from + c] + soft.along(soft.springColumn, COLUMN * (from + c), i, d);
      for (int r = 0; r < n; r++) spring[from + r] -= soft.springStiffness[i][r * n + c] * s;
    }
  }

  private boolean bondHolds(int i) {
    double[] force = Arrays.copyOfRange(spring, soft.springStart[i], soft.springStart[i + 1]);
    for (int r = 0; r < force.length; r++) force[r] *= soft.forceN;
    Link link = heap.links().get(i);
    LinkForce on = link instanceof Link.Bond b
        ? BondUse.bondForce(b, soft.patches[i], force, soft.lengthM)
        : BondUse.rodForce((Link.Rod) link, force, soft.lengthM);
    return BondUse.of(link, soft.patches[i], on) <= 1;
  }
}
