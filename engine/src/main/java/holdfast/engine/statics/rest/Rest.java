package holdfast.engine.statics.rest;

import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Mechanism;
import java.util.function.Function;

/** Whether a heap remains where it is, starting from no forces at all. */
public sealed interface Rest {
  /** It comes to rest with these forces. */
  record Stays(Forces forces, RestState state) implements Rest {}

  /**
   * It moves on.
   *
   * @param mechanism how; sliding does not lift here
   * @param accelerationG the largest acceleration left, in g
   */
  record Moves(Mechanism mechanism, double accelerationG) implements Rest {}

  /** The bond or rod at this place in the heap's list of links is asked for more than its strength. */
  record Breaks(int link, double use) implements Rest {}

  /** The iteration settled neither. */
  record Undecided(String reason) implements Rest {}

  /** The four cases, exhaustively. */
  default <T> T match(
      Function<Stays, T> stays, Function<Moves, T> moves, Function<Breaks, T> breaks, Function<Undecided, T> undecided) {
    if (this instanceof Stays s) return stays.apply(s);
    if (this instanceof Moves m) return moves.apply(m);
    if (this instanceof Breaks b) return breaks.apply(b);
    return undecided.apply((Undecided) this);
  }

  default boolean stays() {
    return this instanceof Stays;
  }
}
