package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.Elements;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import java.util.ArrayList;
import java.util.List;

/**
 * A second look at what stays, for the safe side. The limit of a patch's friction is an ellipse of shear and twist
 * ({@link Elements}), and that is an approximation: on a narrow patch whose pressure sits at one end it grants shear
 * together with twist that no pressure on the patch can give. What any pressure can give at most is friction at the
 * corners, each limited by its own push, since a force at a point of the patch can be shared out among the corners as the
 * point is. A heap that stays by the ellipse, and with every patch resting on its corners alone does not, is not believed.
 *
 * <p>Corners alone resist pure twist too well, so this is asked beside the ellipse and never in its place.
 */
public final class CornerCheck {
  private CornerCheck() {}

  /** The answer {@code rest} to {@code loads}, or what the heap does on its corners where that is no rest. */
  public static Rest confirmed(Heap heap, double typicalN, List<Wrench> loads, Rest rest) {
    if (!(rest instanceof Rest.Stays s) || within(heap, s.forces())) return rest;
    Rest corners = new Resting(onCorners(heap), typicalN).under(loads);
    // Bonds are asked by the patches: points carry more twist past them.
    return corners instanceof Rest.Moves || corners instanceof Rest.Undecided ? corners : rest;
  }

  /** Every bearing in one point a corner. */
  private static Heap onCorners(Heap heap) {
    List<Link> links = new ArrayList<>();
    for (Link l : heap.links()) {
      if (l instanceof Link.Bearing b) links.addAll(b.corners(b.friction()));
      else links.add(l);
    }
    return new Heap(heap.bodies(), links);
  }

  /** Whether friction at the corners can give all these shears and twists with these pushes. */
  private static boolean within(Heap heap, Forces forces) {
    for (int i = 0; i < heap.links().size(); i++) {
      if (heap.links().get(i) instanceof Link.Bearing b && b.polygon().size() > 1
          && !CornerLimit.admits(b, forces.links().get(i))) {
        return false;
      }
    }
    return true;
  }
}
