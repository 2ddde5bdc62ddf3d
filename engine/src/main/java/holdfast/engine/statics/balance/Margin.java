package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Mechanism;
import java.util.function.Function;

/** How far a live load can grow before no admissible forces balance it. */
public sealed interface Margin {
  /**
   * The largest factor on the live load, carried by {@code forces} and capped by {@code mechanism}.
   *
   * @param factor what the forces carry
   * @param bound what the mechanism caps, {@code factor <= bound} up to rounding; of {@link PushBound} no larger factor is
   *     borne, and the two are as far apart as was asked
   */
  record Limited(double factor, double bound, Forces forces, Mechanism mechanism) implements Margin {}

  /** The load can grow to the cap that was set, and no limit was met. */
  record Beyond(double cap, Forces forces) implements Margin {}

  /** The dead load alone has no balance. */
  record Falls(Mechanism mechanism) implements Margin {}

  /**
   * The numbers settle nothing.
   *
   * @param near where the factor was when the search ended: a hint, no bound; not a number when there is none
   */
  record Undecided(String reason, double near) implements Margin {}

  /** The four cases, exhaustively. */
  default <T> T match(
      Function<Limited, T> limited, Function<Beyond, T> beyond, Function<Falls, T> falls, Function<Undecided, T> undecided) {
    if (this instanceof Limited l) return limited.apply(l);
    if (this instanceof Beyond b) return beyond.apply(b);
    if (this instanceof Falls f) return falls.apply(f);
    return undecided.apply((Undecided) this);
  }
}
