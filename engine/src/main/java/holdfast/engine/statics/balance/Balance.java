package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Mechanism;
import java.util.function.Function;

/** Whether some admissible forces balance given loads. */
public sealed interface Balance {
  /** They do: here are such forces, recomputed and found in balance and inside their cones. */
  record Stands(Forces forces) implements Balance {}

  /** They cannot: this movement gains energy against every admissible force. */
  record Falls(Mechanism mechanism) implements Balance {}

  /** The numbers settle neither. */
  record Undecided(String reason) implements Balance {}

  /** The three cases, exhaustively. */
  default <T> T match(Function<Stands, T> stands, Function<Falls, T> falls, Function<Undecided, T> undecided) {
    if (this instanceof Stands s) return stands.apply(s);
    if (this instanceof Falls f) return falls.apply(f);
    return undecided.apply((Undecided) this);
  }
}
