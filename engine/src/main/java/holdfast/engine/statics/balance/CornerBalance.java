package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.Elements;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
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

/**
 * Whether it is certain that links cannot hold loads, however many of them there are and whichever of them are taken away.
 *
 * <p>Every bearing is replaced by friction at each of its corners, limited by that corner's own push. A force anywhere on the
 * patch can be shared out among the corners as its place is, so what any pressure on the patch can give, corners can give.
 * With points no twist is left, the program is convex, and a movement that gains energy against every admissible force
 * (Farkas' lemma on cones) proves that no forces balance the loads. Zero is an admissible force of every link, so fewer
 * links have no more forces: where these cannot hold the loads, none of their subsets can, and a heap that stays has forces
 * in balance.
 *
 * <p>It errs to one side: friction and strengths are counted a little too high, the loads may be a little off, and only
 * what then still has a proof is called impossible. A no says nothing.
 *
 * @see <a href="https://web.stanford.edu/~boyd/cvxbook/">Boyd and Vandenberghe 2004, Convex optimization</a>, section 5.9.4,
 *     for the alternative of a program on cones
 */
public final class CornerBalance {
  private CornerBalance() {}

  /**
   * Whether no subset of the links of {@code heap} has forces that balance {@code loads}.
   *
   * @param loads one wrench a body, newtons, about its centre
   */
  public static boolean impossible(Heap heap, List<Wrench> loads) {
    Scale scale = Scale.of(heap, ForceBalance.typicalN(loads));
    Heap generous = new Heap(heap.bodies(), generous(heap.links()));
    Elements elements = new Elements(generous, scale.forceN(), scale.lengthM());
    List<Element> all = new ArrayList<>();
    for (Link l : generous.links()) {
      Patch patch = new Patch(l.normal(), l.polygon());
      all.add(elements.of(l, patch, Elements.Centre.middle(patch)));
    }
    if (all.isEmpty()) return false;
    double[] load = scale.six(loads);
    ConeProgram program = new ConeProgram(heap.bodies().size(), all, load, null, 0, null);
    ConeSolution s = new ConeSolver(program, program.pattern()).solve(Tolerances.CONE_GAP, Tolerances.CONE_RESIDUAL);
    if (s.end() != End.NO_FORCES) return false;
    double gained = 0;
    double moved = 0;
    for (int i = 0; i < load.length; i++) {
      gained -= program.rhs[i] * s.y()[i];
      moved += Math.abs(s.y()[i]);
    }
    for (int i = 0; i < program.rows; i++) gained -= program.h[i] * s.z()[i];
    return gained > Tolerances.CERTAIN_UNBALANCE * moved;
  }

  private static List<Link> generous(List<Link> links) {
    double more = 1 + Tolerances.CERTAIN_SPARE;
    List<Link> out = new ArrayList<>();
    for (Link l : links) {
      if (l instanceof Link.Bearing b) {
        out.addAll(b.corners(more * b.friction()));
      } else if (l instanceof Link.Bond b) {
        out.add(new Link.Bond(b.a(), b.b(), b.normal(), b.polygon(), b.areaM2(), more * b.tensionN_m2(), more * b.shearN_m2(),
            more * b.crushingN_m2(), b.moment()));
      } else {
        Link.Rod r = (Link.Rod) l;
        out.add(new Link.Rod(r.a(), r.b(), r.normal(), r.at(), r.diameterM(), more * r.shearN(), more * r.bendingNm(),
            more * r.pullN()));
        // Elastic, a glued rod may also push.
        out.add(new Link.Bearing(r.a(), r.b(), r.normal(), List.of(r.at()), 0));
      }
    }
    return out;
  }
}
