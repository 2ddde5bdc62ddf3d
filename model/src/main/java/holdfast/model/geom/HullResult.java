package holdfast.model.geom;

import java.util.function.Function;

/** What came of building a hull: geometry fails by value. */
public sealed interface HullResult {
  /** A solid with volume. */
  record Solid(Hull hull) implements HullResult {}

  /** No solid: too few points, all in one plane, or not finite; {@code reason} is a phrase for people. */
  record Degenerate(String reason) implements HullResult {}

  /** Both cases, exhaustively. */
  default <T> T match(Function<Hull, T> solid, Function<String, T> degenerate) {
    if (this instanceof Solid s) return solid.apply(s.hull());
    return degenerate.apply(((Degenerate) this).reason());
  }
}
