package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.BondUse;
import holdfast.engine.statics.heap.Elements;
import holdfast.engine.statics.heap.Elements.Centre;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Forces.LinkForce;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Patch;
import holdfast.engine.statics.heap.Scale;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.solver.BlockCholesky;
import holdfast.engine.statics.solver.ConeProgram;
import holdfast.engine.statics.solver.ConeSolution;
import holdfast.engine.statics.solver.ConeSolution.End;
import holdfast.engine.statics.solver.ConeSolver;
import holdfast.engine.statics.solver.Element;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The force balance of one heap: do admissible contact forces exist, how far can a load grow, how much can a link carry.
 *
 * <p>Each question is a cone program ({@link ConeProgram}). Shear acts at the centre of pressure, which depends on the
 * answer; the centres start at the patches' middles, the program is solved, the centres are moved to where the pushes
 * gather, and it is solved again until the answer no longer changes. Where no twist acts the first answer is final. Every
 * answer is recomputed in newtons, with twist taken about the true centre of pressure, before it is believed; what is
 * then off yields {@code Undecided}.
 *
 * <p>Limits: this is the associative problem; whether a heap <em>stays</em> is for {@code Resting}. Where twist acts it is not a
 * convex problem: a patch bears the twist {@code |T| <= c(p) mu N}, and c, a mean of distances from p, is a convex function of
 * the centre of pressure, so what lies under it is no convex set. A factor found with twist is therefore borne for sure, by
 * the forces that come with it, but need not be the largest: some percent more may be borne with the pressure gathered
 * elsewhere. Where no twist acts it is the largest, and the mechanism proves it. A bound that holds everywhere is
 * {@link PushBound}'s, and margins are held against that one. Not safe for use by several threads at once; make one each.
 */
public final class ForceBalance {
  private final Heap heap;
  private final Scale scale;
  private final double forceN;
  private final double lengthM;
  private final Elements elements;
  private final Patch[] patches;
  private final Centre[] middles;
  private BlockCholesky pattern;

  /** Prepares {@code heap} for loads whose mean weight a body is about {@code typicalN}. */
  public ForceBalance(Heap heap, double typicalN) {
    this.heap = heap;
    scale = Scale.of(heap, typicalN);
    forceN = scale.forceN();
    lengthM = scale.lengthM();
    elements = new Elements(heap, forceN, lengthM);
    patches = heap.links().stream().map(l -> new Patch(l.normal(), l.polygon())).toArray(Patch[]::new);
    middles = new Centre[patches.length];
    for (int i = 0; i < patches.length; i++) middles[i] = Centre.middle(patches[i]);
  }

  /** The mean size of the force on a body under {@code loads}, to scale by. */
  public static double typicalN(List<Wrench> loads) {
    return loads.stream().mapToDouble(w -> w.force().norm()).average().orElse(1);
  }

  public Heap heap() {
    return heap;
  }

  /** Do some admissible forces balance {@code loads} (one wrench a body, newtons, about its centre)? */
  public Balance stands(List<Wrench> loads) {
    if (heap.links().isEmpty()) return unsupported(loads);
    Centre[] at = middles.clone();
    String why = "";
    Balance.Falls falls = null;
    for (int round = 0; round < Tolerances.PRESSURE_ROUNDS; round++) {
      ConeSolution s = solve(at, scale.six(loads), null, 0, null);
      if (s.end() == End.NO_FORCES) {
        if (falls != null) return falls;
        falls = new Balance.Falls(Mechanism.of(heap, s.y(), lengthM));
        at = leaned(loads);
        if (at == null) return falls;
        continue;
      }
      if (s.end() != End.OPTIMAL) return falls != null ? falls : new Balance.Undecided("the force balance did not settle");
      Forces f = forces(s.x(), at);
      double off = f.unbalanced(heap, loads);
      if (off > Tolerances.BALANCE_RESIDUAL) return new Balance.Undecided(off(off));
      Centres next = settle(f, at, Tolerances.BALANCE_CONE);
      if (next.admissible) return new Balance.Stands(f);
      why = next.worst;
      at = next.centres;
    }
    return falls != null ? falls : new Balance.Undecided("the centre of pressure did not settle at " + why);
  }

  /** Nothing bears anything: it stands only where there is nothing to bear. */
  private Balance unsupported(List<Wrench> loads) {
    double[] six = scale.six(loads);
    boolean free = Arrays.stream(six).allMatch(v -> v == 0);
    return free ? new Balance.Stands(new Forces(List.of())) : new Balance.Falls(Mechanism.of(heap, six, lengthM));
  }

  /**
   * Where the pressure gathers when every patch may twist on its longest arm: about its middle a patch resists twist the
   * least, and what falls with the centres held there may stand with them elsewhere. Null when even so nothing balances.
   */
  private Centre[] leaned(List<Wrench> loads) {
    Centre[] wide = middles.clone();
    for (int i = 0; i < wide.length; i++) {
      if (!(heap.links().get(i) instanceof Link.Bearing)) continue;
      Patch p = patches[i];
      double arm = wide[i].meanDistanceM();
      for (int k = 0; k < p.corners.size(); k++) arm = Math.max(arm, p.meanDistance(p.u[k], p.v[k]));
      wide[i] = new Centre(wide[i].u(), wide[i].v(), arm);
    }
    ConeSolution s = solve(wide, scale.six(loads), null, 0, null);
    return s.end() == End.OPTIMAL ? settle(forces(s.x(), wide), wide, Tolerances.BALANCE_CONE).centres : null;
  }

  /**
   * The largest factor l, up to {@code cap}, for which some admissible forces balance {@code dead + l live}.
   *
   * @param settled relative change at which the centres of pressure count as settled; forces may then lie outside their
   *     cones by as much
   */
  public Margin margin(List<Wrench> dead, List<Wrench> live, double cap, double settled) {
    Centre[] at = middles.clone();
    Margin.Limited best = null;
    Margin.Falls falls = null;
    double before = Double.NaN;
    double[] deadScaled = scale.six(dead);
    double[] liveScaled = scale.six(live);
    for (int round = 0; round < Tolerances.PRESSURE_ROUNDS; round++) {
      ConeSolution s = solve(at, deadScaled, liveScaled, cap, null);
      if (s.end() == End.NO_FORCES) {
        if (falls == null && round == 0) {
          falls = new Margin.Falls(Mechanism.of(heap, s.y(), lengthM));
          at = leaned(dead);
          if (at != null) continue;
        }
        return best != null ? best : falls != null ? falls : orUndecided(null, before);
      }
      if (s.end() != End.OPTIMAL) return orUndecided(best, before);
      double factor = s.x()[s.x().length - 1];
      Forces f = forces(s.x(), at);
      double off = f.unbalanced(heap, sum(dead, live, factor));
      if (off > Tolerances.BALANCE_RESIDUAL) return best != null ? best : new Margin.Undecided(off(off), before);
      Centres next = settle(f, at, Math.max(Tolerances.BALANCE_CONE, settled));
      if (next.admissible) {
        if (factor >= cap * (1 - Tolerances.PRESSURE_FINE)) return new Margin.Beyond(cap, f);
        if (best == null || factor > best.factor()) {
          best = new Margin.Limited(factor, -s.dual(), f, Mechanism.of(heap, s.y(), lengthM));
        }
        if (next.idle || Math.abs(factor - before) <= settled * Math.abs(factor)) return best;
      }
      before = factor;
      at = next.centres;
    }
    return orUndecided(best, before);
  }

  /** The same to a millionth. */
  public Margin fine(List<Wrench> dead, List<Wrench> live, double cap) {
    return margin(dead, live, cap, Tolerances.PRESSURE_FINE);
  }

  private static Margin orUndecided(Margin.Limited best, double near) {
    return best != null ? best : new Margin.Undecided("the force balance did not settle", near);
  }

  /** Least and most of the sum of normal forces in the links {@code which}, over all admissible balances of {@code loads}. */
  public Range range(List<Wrench> loads, List<Integer> which) {
    double least = extreme(loads, which, 1);
    double most = extreme(loads, which, -1);
    return new Range(Math.max(0, least), -most);
  }

  /**
   * Bounds of a force, newtons.
   *
   * @param mostN infinite where self-stress can raise it without end; not a number where it was not settled
   */
  public record Range(double leastN, double mostN) {
    public boolean bounded() {
      return Double.isFinite(mostN);
    }
  }

  private double extreme(List<Wrench> loads, List<Integer> which, double sign) {
    int n = 0;
    int[] start = new int[heap.links().size()];
    List<Element> list = elementsAt(middles);
    for (int i = 0; i < start.length; i++) {
      start[i] = n;
      n += list.get(i).size();
    }
    double[] cost = new double[n];
    for (int i : which) {
      int pushes = heap.links().get(i) instanceof Link.Bearing b ? b.polygon().size() : 1;
      for (int k = 0; k < pushes; k++) cost[start[i] + k] = sign;
    }
    ConeSolution s = solve(middles, scale.six(loads), null, 0, cost);
    return switch (s.end()) {
      case OPTIMAL -> s.primal() * forceN;
      case UNBOUNDED -> Double.NEGATIVE_INFINITY;
      default -> Double.NaN;
    };
  }

  // -- between newtons and the program ------------------------------------------------------------------------------

  private List<Element> elementsAt(Centre[] at) {
    List<Element> list = new ArrayList<>(patches.length);
    for (int i = 0; i < patches.length; i++) list.add(elements.of(heap.links().get(i), patches[i], at[i]));
    return list;
  }

  private ConeSolution solve(Centre[] at, double[] load, double[] live, double cap, double[] cost) {
    double gap = Tolerances.CONE_GAP;
    double residual = Tolerances.CONE_RESIDUAL;
    ConeProgram program = new ConeProgram(heap.bodies().size(), elementsAt(at), load, live, cap, cost);
    if (program.liveBodies().length > 1) return new ConeSolver(program, program.pattern()).solve(gap, residual);
    if (pattern == null) pattern = program.pattern();
    return new ConeSolver(program, pattern).solve(gap, residual);
  }

  /** Loads on every body: the dead ones and a factor on the live ones. */
  public static List<Wrench> sum(List<Wrench> dead, List<Wrench> live, double factor) {
    List<Wrench> out = new ArrayList<>(dead.size());
    for (int i = 0; i < dead.size(); i++) out.add(dead.get(i).plus(live.get(i).times(factor)));
    return out;
  }

  private Forces forces(double[] x, Centre[] at) {
    List<LinkForce> out = new ArrayList<>(patches.length);
    int o = 0;
    for (int i = 0; i < patches.length; i++) {
      Link link = heap.links().get(i);
      Patch patch = patches[i];
      if (link instanceof Link.Bearing b) {
        int m = patch.corners.size();
        boolean rubs = b.friction() > 0;
        boolean twists = rubs && patch.reachM() > 0;
        List<Double> pushes = new ArrayList<>(m);
        double normal = 0;
        for (int k = 0; k < m; k++) {
          pushes.add(x[o + k] * forceN);
          normal += x[o + k] * forceN;
        }
        Vec3 shear = rubs ? patch.first.times(x[o + m] * forceN).plusTimes(x[o + m + 1] * forceN, patch.second) : Vec3.ZERO;
        double twist = twists ? x[o + m + 2] * forceN * at[i].meanDistanceM() : 0;
        Centre true_ = pressure(patch, pushes, normal, at[i]);
        double du = at[i].u() - true_.u();
        double dv = at[i].v() - true_.v();
        twist += du * shear.dot(patch.second) - dv * shear.dot(patch.first);
        Vec3 where = patch.centroid.plusTimes(true_.u(), patch.first).plusTimes(true_.v(), patch.second);
        out.add(new LinkForce(normal, shear, where, link.normal().times(twist), pushes));
        o += m + (twists ? 3 : rubs ? 2 : 0);
      } else if (link instanceof Link.Bond b) {
        int n = b.moment() && patch.areaM2 > 0 ? 6 : 3;
        out.add(BondUse.bondForce(b, patch, newtons(x, o, n), lengthM));
        o += n;
      } else {
        Link.Rod r = (Link.Rod) link;
        int n = r.pullN() > 0 ? 5 : 4;
        out.add(BondUse.rodForce(r, newtons(x, o, n), lengthM));
        o += n;
      }
    }
    return new Forces(out);
  }

  private double[] newtons(double[] x, int from, int count) {
    double[] out = new double[count];
    for (int i = 0; i < count; i++) out[i] = x[from + i] * forceN;
    return out;
  }

  /** The centre of the pushes; where there is hardly any push, what it was. */
  static Centre pressure(Patch patch, List<Double> pushes, double normalN, Centre was) {
    double u = 0;
    double v = 0;
    double sum = 0;
    for (int k = 0; k < pushes.size(); k++) {
      double n = Math.max(0, pushes.get(k));
      sum += n;
      u += n * patch.u[k];
      v += n * patch.v[k];
    }
    if (!(sum > 0) || !(normalN > 0)) return was;
    return new Centre(u / sum, v / sum, patch.meanDistance(u / sum, v / sum));
  }

  private record Centres(Centre[] centres, boolean admissible, boolean idle, String worst) {}

  /** Where the pressure now is, whether every force lies in its true cone, and whether no twist depends on the centres. */
  private Centres settle(Forces f, Centre[] at, double allowed) {
    Centre[] next = at.clone();
    boolean admissible = true;
    boolean idle = true;
    String worst = "";
    for (int i = 0; i < patches.length; i++) {
      if (!(heap.links().get(i) instanceof Link.Bearing b) || b.friction() == 0) continue;
      LinkForce lf = f.links().get(i);
      Patch patch = patches[i];
      Centre c = pressure(patch, lf.cornersN(), lf.normalN(), at[i]);
      next[i] = c;
      double limit = b.friction() * lf.normalN();
      double slack = allowed * (limit + forceN);
      double twist = Math.abs(lf.moment().dot(b.normal()));
      double shear = lf.shear().norm();
      double asForce = c.meanDistanceM() > 0 ? twist / c.meanDistanceM() : 0;
      // The twist that the program itself saw, about the centre that was held.
      Vec3 was = patch.centroid.plusTimes(at[i].u(), patch.first).plusTimes(at[i].v(), patch.second);
      double held = Math.abs(lf.moment().dot(b.normal()) + lf.at().minus(was).cross(lf.shear()).dot(b.normal()));
      double arm = Math.min(c.meanDistanceM(), at[i].meanDistanceM());
      if (Math.max(twist, held) > Tolerances.TWIST_IDLE * (limit + forceN) * arm) idle = false;
      double gathered = 0;
      for (int k = 0; k < patch.corners.size(); k++) {
        gathered += b.friction() * Math.max(0, lf.cornersN().get(k)) * Math.hypot(patch.u[k] - c.u(), patch.v[k] - c.v());
      }
      boolean fits = Math.hypot(shear, asForce) <= limit + slack
          && twist <= gathered + slack * (c.meanDistanceM() + 1e-3 * lengthM);
      if (!fits) {
        admissible = false;
        worst = heap.bodies().get(b.a()).name();
      }
    }
    return new Centres(next, admissible, idle, worst);
  }

  /** Forces that were found elsewhere, put together anew: a balance of {@code loads} only where nothing is left over. */
  public static Balance checked(Heap heap, List<Wrench> loads, Forces found) {
    double off = found.unbalanced(heap, loads);
    return off <= Tolerances.BALANCE_RESIDUAL ? new Balance.Stands(found) : new Balance.Undecided(off(off));
  }

  private static String off(double residual) {
    return String.format(java.util.Locale.ROOT, "recomputed forces are out of balance by %.1e of the load", residual);
  }
}
