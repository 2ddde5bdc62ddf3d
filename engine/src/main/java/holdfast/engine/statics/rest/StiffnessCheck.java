package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.work.Parallel;
import java.util.List;
import java.util.function.Function;

/**
 * A third look at what stays, for the safe side. Where a contact has slipped as the heap came to rest, what holds may hang on
 * how stiff one contact is against another, and nobody knows that. Such a heap is let come to rest again with contacts
 * of other stiffnesses; where it then falls nothing is concluded. A heap in which nothing has slipped is not asked.
 *
 * <p>A sample and no proof: that no draw falls does not say that none could.
 */
public final class StiffnessCheck {
  private StiffnessCheck() {}

  /** The answer {@code rest} to {@code loads}, or {@code Undecided} where it hangs on the stiffnesses. */
  public static Rest confirmed(Heap heap, double typicalN, List<Wrench> loads, Rest rest) {
    return confirmed(rest, draw -> new Resting(heap, typicalN, draw, Resting.Calm.NO_FALL).under(loads));
  }

  /** @param asked what the heap does with contacts of other stiffnesses */
  static Rest confirmed(Rest rest, Function<Stiffness, Rest> asked) {
    if (!(rest instanceof Rest.Stays s) || !s.state().slips()) return rest;
    for (int draw = 1; draw <= Tolerances.STIFFNESS_DRAWS; draw++) {
      Parallel.stopIfInterrupted();
      if (asked.apply(Stiffness.drawn(draw)) instanceof Rest.Moves) {
        return new Rest.Undecided("it stays or falls by how stiff its contacts are");
      }
    }
    return rest;
  }
}
