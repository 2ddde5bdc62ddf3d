package holdfast.model.shape;

import java.util.function.Function;

/** What came of shaping a rock. */
public sealed interface ShapeResult {
  /** A body. */
  record Shaped(RockBody body) implements ShapeResult {}

  /** No body; {@code reason} says what was found and what would be right. */
  record Unusable(String reason) implements ShapeResult {}

  /** Both cases, exhaustively. */
  default <T> T match(Function<RockBody, T> shaped, Function<String, T> unusable) {
    if (this instanceof Shaped s) return shaped.apply(s.body());
    return unusable.apply(((Unusable) this).reason());
  }
}
