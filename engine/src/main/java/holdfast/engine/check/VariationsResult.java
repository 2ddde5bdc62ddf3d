package holdfast.engine.check;

import java.util.List;

/**
 * How a layout fares when what is only guessed is guessed otherwise.
 *
 * @param count variations tried
 * @param seed what they were drawn with; the same seed gives the same variations
 * @param stands in how many it stays in every state
 * @param passes in how many every rock also bears the tier's push
 * @param weak the rocks that gave way first, most often first
 */
public record VariationsResult(int count, long seed, int stands, int passes, List<Weak> weak) {
  public VariationsResult {
    weak = List.copyOf(weak);
  }

  /** A rock that gave way first in so many variations. */
  public record Weak(String rock, int times) {}
}
