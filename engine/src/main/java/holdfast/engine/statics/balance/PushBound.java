package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.Elements;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Patch;
import holdfast.engine.statics.heap.Scale;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.solver.ConeProgram;
import holdfast.engine.statics.solver.ConeSolution;
import holdfast.engine.statics.solver.ConeSolution.End;
import holdfast.engine.statics.solver.ConeSolver;
import holdfast.engine.statics.solver.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * How far a live load on a heap can grow before no admissible forces balance it: a true upper bound of what stays.
 *
 * <p>Every bearing is replaced by Coulomb friction at each of its corners, limited by that corner's own push. A force
 * anywhere on a patch can be shared out among the corners as its place is, so what any pressure on the patch can give,
 * corners can give ({@link CornerBalance}); bonds and rods stay what they are ({@link Elements}). With points no twist is
 * left, the program is convex, and what is found is its largest factor, enclosed between forces and a mechanism:
 *
 * <ul>
 * <li>below, forces put together anew in newtons, in balance to {@link Tolerances#BALANCE_RESIDUAL} and inside their cones;
 * <li>above, the power of the dead load on a movement over that of the live load, worked out anew from the movements of the
 *     bodies. Where a corner opens less than its friction asks, it is charged what its largest push would gain.
 * </ul>
 *
 * <p>{@link CornerPath} solves it, of a round of pushes on one point ({@link #margins}) those between two others from where
 * these came by ({@link CornerStart}); where that comes to no centre, as on the brink of falling, the general
 * {@link ConeSolver} is asked the same, and its answer is recomputed likewise.
 *
 * <p>Limits: associative sliding and even twisting at corners are granted, so it is a bound and no margin; whether the heap
 * <em>stays</em> is for {@code Resting}. No corner's push counts beyond {@link Tolerances#CORNER_MOST} times all loads: forces
 * that lock harder than that are left out. Not safe for use by several threads at once; make one each.
 *
 * @see <a href="https://doi.org/10.1016/j.compstruc.2006.02.005">Gilbert, Casapulla and Ahmed 2006, Limit analysis of masonry
 *     block structures with non-associative frictional joints using linear programming</a>, for the associative program
 */
public final class PushBound {
  private final CornerModel model;
  private final List<Wrench> dead;
  private final double[] deadScaled;
  private final double deadN;
  /** Centres by the order of magnitude of what may load the heap; null where none was found. */
  private final Map<Integer, Centre> centres = new TreeMap<>();
  /** Where pushes of one round came by, to be used again by the next. */
  private final List<CornerStart> starts = new ArrayList<>();
  private int steps;

  /** Prepares {@code heap} under {@code dead}, one wrench a body, newtons, about its centre. */
  public PushBound(Heap heap, List<Wrench> dead) {
    this.dead = List.copyOf(dead);
    double typical = ForceBalance.typicalN(dead);
    model = new CornerModel(heap, typical > 0 ? typical : 1);
    deadScaled = model.scaled(dead);
    deadN = size(dead);
  }

  /** A heap ready to be pushed: the centre under its dead load, and a path that starts there. */
  private record Centre(double mostPush, CornerPath at, CornerPath path) {}

  private double size(List<Wrench> loads) {
    double sum = 0;
    for (Wrench w : loads) sum += w.force().norm() + w.moment().norm() / model.lengthM;
    return sum;
  }

  /** Steps of the last question, all its loads together; 0 where the general solver was asked. */
  int steps() {
    return steps;
  }

  /** The largest factor on {@code live} up to {@code cap}, to one part in a hundred. */
  public Margin coarse(List<Wrench> live, double cap) {
    return margin(live, cap, Tolerances.BOUND_COARSE);
  }

  /** The same to 5e-8 of the bound. */
  public Margin fine(List<Wrench> live, double cap) {
    return margin(live, cap, Tolerances.BOUND_FINE);
  }

  /**
   * The largest factor on {@code live} up to {@code cap}.
   *
   * @param share how far forces and mechanism may be apart, of the bound
   */
  public Margin margin(List<Wrench> live, double cap, double share) {
    steps = 0;
    return margin(new Live(live), cap, share, null);
  }

  /**
   * The largest factors on several live loads, each as {@link #margin} has it, for less: of loads that go round, such as
   * pushes on one point from all sides, those that lie between two others begin where the paths of these came by. Four that
   * are spread out come first, then what halves the gaps. Others than that are asked one by one.
   *
   * @param lives in their order round; where each is a sum of its neighbours, as pushes on one point in a plane are
   * @return in the same order; the same list has the same answers, whatever was asked before
   */
  public List<Margin> margins(List<List<Wrench>> lives, double cap, double share) {
    steps = 0;
    int n = lives.size();
    Live[] all = lives.stream().map(Live::new).toArray(Live[]::new);
    CornerStart[] passed = new CornerStart[n];
    Margin[] found = new Margin[n];
    for (CornerRound.Turn t : CornerRound.of(n)) {
      Live a = all[t.at()];
      Between b = t.first() < 0 ? null : between(a, all[t.first()], passed[t.first()], all[t.second()], passed[t.second()]);
      a.keep = t.last() ? null : start(t.at());
      found[t.at()] = margin(a, cap, share, b);
      passed[t.at()] = a.keep;
    }
    return List.of(found);
  }

  /** One live load: in newtons, and scaled to length one. */
  private final class Live {
    final List<Wrench> newtons;
    final double[] unit;
    final double norm;
    /** Where it is to be kept how the path came by, or null. */
    CornerStart keep;

    Live(List<Wrench> newtons) {
      this.newtons = newtons;
      unit = model.scaled(newtons);
      norm = Math.sqrt(dot(unit, unit));
      if (norm > 0) for (int i = 0; i < unit.length; i++) unit[i] /= norm;
    }
  }

  /** What a live load is of two others: so much of each. */
  private record Between(CornerStart one, double a, CornerStart two, double b) {}

  /** Null where it does not lie between the two, or nothing is known of them. */
  private static Between between(Live of, Live one, CornerStart atOne, Live two, CornerStart atTwo) {
    if (!atOne.kept() || !atTwo.kept()) return null;
    double c = dot(one.unit, two.unit);
    double p = dot(one.unit, of.unit);
    double q = dot(two.unit, of.unit);
    double det = 1 - c * c;
    double a = (p - c * q) / det;
    double b = (q - c * p) / det;
    if (!(det > 0) || !(a >= 0) || !(b >= 0)) return null;
    for (int i = 0; i < of.unit.length; i++) {
      if (!(Math.abs(a * one.unit[i] + b * two.unit[i] - of.unit[i]) <= Tolerances.CORNER_PLANE)) return null;
    }
    return new Between(atOne, a, atTwo, b);
  }

  private CornerStart start(int at) {
    while (starts.size() <= at) starts.add(new CornerStart());
    CornerStart s = starts.get(at);
    s.clear();
    return s;
  }

  private Margin margin(Live live, double cap, double share, Between between) {
    if (model.heap.links().isEmpty()) return unsupported(live.newtons, cap);
    Centre c = centre(Math.max(deadN, cap * size(live.newtons)));
    if (c.at == null) return general(live.newtons, cap, c.mostPush);
    if (live.norm == 0) {
      Forces f = forces(c.at, null, 0);
      boolean balanced = model.unbalance(f, dead) <= Tolerances.BALANCE_RESIDUAL;
      return balanced ? new Margin.Beyond(cap, f) : general(live.newtons, cap, c.mostPush);
    }
    double reach = Tolerances.CORNER_PAST_CAP * cap * live.norm;
    Margin found = null;
    if (between != null && c.path.begin(between.one, between.a, between.two, between.b, live.unit, reach)) {
      found = along(c, live, cap, share);
    }
    if (found == null) {
      c.path.begin(c.at, live.unit, reach);
      found = along(c, live, cap, share);
    }
    return found != null ? found : general(live.newtons, cap, c.mostPush);
  }

  /** Follows the path from where it has begun; null where it comes to nothing that holds. */
  private Margin along(Centre c, Live live, double cap, double share) {
    double most = cap * live.norm;
    CornerPath p = c.path;
    for (int k = 0; k < Tolerances.CORNER_STEPS; k++, steps++) {
      double bound = p.bound();
      boolean capped = bound < Double.POSITIVE_INFINITY;
      double apart = bound - p.l;
      boolean near = capped && apart <= Tolerances.BOUND_READ * share * Math.max(bound, Tolerances.BOUND_FLOOR);
      boolean passes = live.keep != null && !live.keep.kept() && capped;
      if (passes && apart <= Tolerances.CORNER_KEPT * bound) live.keep.keep(p, bound);
      if (p.l >= most) {
        Forces f = forces(p, c.at, most / p.l);
        double off = model.unbalance(f, ForceBalance.sum(dead, live.newtons, cap));
        if (off <= Tolerances.BALANCE_RESIDUAL) return new Margin.Beyond(cap, f);
      } else if (near && (bound < most || apart <= Tolerances.BOUND_FINE * bound)) {
        Margin m = limited(c, live, share);
        if (m != null) return m;
      }
      if (!p.look() || !p.step()) return null;
    }
    return null;
  }

  private Centre centre(double loadN) {
    int order = loadN > 0 ? (int) Math.ceil(Math.log10(loadN)) : 0;
    return centres.computeIfAbsent(order, o -> {
      double mostPush = Tolerances.CORNER_MOST * Math.pow(10, o) / model.forceN;
      CornerPath at = model.path(deadScaled, mostPush);
      return at.centre() ? new Centre(mostPush, at, model.path(deadScaled, mostPush)) : new Centre(mostPush, null, null);
    });
  }

  /** The forces of a path, or {@code share} of them and the rest of those at the centre. */
  private Forces forces(CornerPath p, CornerPath centre, double share) {
    double[][] s = p.corners().point().s;
    double[] x = p.fastened() == null ? null : p.fastened().x;
    if (centre == null) return model.forces(s, x);
    double[][] from = centre.corners().point().s;
    double[][] to = {between(from[0], s[0], share), between(from[1], s[1], share), between(from[2], s[2], share)};
    return model.forces(to, x == null ? null : between(centre.fastened().x, x, share));
  }

  private static double[] between(double[] from, double[] to, double share) {
    double[] out = new double[from.length];
    for (int i = 0; i < out.length; i++) out[i] = (1 - share) * from[i] + share * to[i];
    return out;
  }

  /** The two ends of what was found, each recomputed; null where they do not hold or are still too far apart. */
  private Margin limited(Centre c, Live live, double share) {
    CornerPath p = c.path;
    double cost = p.fastened() == null ? 0 : p.fastened().cost(p.y);
    double[] centres = model.aboutCentres(p.y);
    double along = dot(live.unit, p.y);
    double bound = (cost + model.excess(centres, c.mostPush) - dot(deadScaled, p.y)) / along;
    if (!(along > 0) || !(bound - p.l <= share * Math.max(bound, Tolerances.BOUND_FLOOR))) return null;
    Forces f = forces(p, null, 0);
    if (model.unbalance(f, ForceBalance.sum(dead, live.newtons, p.l / live.norm)) > Tolerances.BALANCE_RESIDUAL) return null;
    Mechanism moves = Mechanism.of(model.heap, centres, model.lengthM);
    return new Margin.Limited(p.l / live.norm, Math.max(p.l, bound) / live.norm, f, moves);
  }

  private static double dot(double[] a, double[] b) {
    double v = 0;
    for (int i = 0; i < a.length; i++) v += a[i] * b[i];
    return v;
  }

  /** Nothing bears anything: it stands only where there is nothing to bear. */
  private Margin unsupported(List<Wrench> live, double cap) {
    for (Wrench w : dead) if (!w.isZero()) return new Margin.Falls(Mechanism.of(model.heap, deadScaled, model.lengthM));
    Forces none = new Forces(List.of());
    for (Wrench w : live) {
      if (!w.isZero()) return new Margin.Limited(0, 0, none, Mechanism.of(model.heap, model.scaled(live), model.lengthM));
    }
    return new Margin.Beyond(cap, none);
  }

  // -- the general solver ---------------------------------------------------------------------------------------------

  Margin general(List<Wrench> live, double cap, double mostPush) {
    Heap heap = new Heap(model.heap.bodies(), model.points());
    Elements make = new Elements(heap, model.forceN, model.lengthM);
    List<Element> elements = new ArrayList<>();
    for (Link l : heap.links()) {
      Patch patch = new Patch(l.normal(), l.polygon());
      elements.add(make.of(l, patch, Elements.Centre.middle(patch)));
    }
    double[] load = new Scale(model.forceN, model.lengthM).six(dead);
    double[] more = new Scale(model.forceN, model.lengthM).six(live);
    ConeProgram program = new ConeProgram(heap.bodies().size(), elements, load, more, cap, null);
    ConeSolution s = new ConeSolver(program, program.pattern()).solve(Tolerances.CONE_GAP, Tolerances.CONE_RESIDUAL);
    if (s.end() == End.NO_FORCES) return new Margin.Falls(Mechanism.of(model.heap, s.y(), model.lengthM));
    if (s.end() != End.OPTIMAL) return new Margin.Undecided("the force balance did not settle", Double.NaN);
    double factor = Math.max(0, Math.min(cap, s.x()[program.links]));
    Forces f = model.forces(corners(heap, s.x()), fastened(heap, elements, s.x()));
    double off = model.unbalance(f, ForceBalance.sum(dead, live, factor));
    if (off > Tolerances.BALANCE_RESIDUAL) {
      return new Margin.Undecided(String.format(java.util.Locale.ROOT,
          "recomputed forces are out of balance by %.1e of the load", off), Double.NaN);
    }
    if (factor >= cap * (1 - Tolerances.BOUND_FINE)) return new Margin.Beyond(cap, f);
    double along = dot(more, s.y());
    double cost = 0;
    for (int i = 0; i < program.rows - 2; i++) cost += program.h[i] * s.z()[i];
    double bound = (cost + model.excess(s.y(), mostPush) - dot(load, s.y())) / along;
    if (!(along > 0) || !(bound <= cap)) bound = cap;
    return new Margin.Limited(factor, Math.max(factor, bound), f, Mechanism.of(model.heap, s.y(), model.lengthM));
  }

  private static double[][] corners(Heap heap, double[] x) {
    List<Link.Bearing> points = new ArrayList<>();
    for (Link l : heap.links()) if (l instanceof Link.Bearing b) points.add(b);
    double[][] out = new double[3][points.size()];
    for (int k = 0, o = 0; k < points.size(); k++) {
      double friction = points.get(k).friction();
      out[0][k] = friction > 0 ? friction * x[o++] : x[o++];
      if (friction > 0) {
        out[1][k] = x[o++];
        out[2][k] = x[o++];
      }
    }
    return out;
  }

  private static double[] fastened(Heap heap, List<Element> elements, double[] x) {
    int from = 0;
    int to = 0;
    for (int i = 0; i < elements.size(); i++) {
      to += elements.get(i).size();
      if (heap.links().get(i) instanceof Link.Bearing) from = to;
    }
    double[] out = new double[to - from];
    System.arraycopy(x, from, out, 0, out.length);
    return out;
  }
}
