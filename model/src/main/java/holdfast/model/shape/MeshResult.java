package holdfast.model.shape;

import java.util.function.Function;

/** What came of reading a mesh. */
public sealed interface MeshResult {
  /** A surface, not yet known to be closed. */
  record Read(TriangleMesh mesh) implements MeshResult {}

  /** Nothing usable; {@code reason} is a phrase for people. */
  record Unreadable(String reason) implements MeshResult {}

  /** Both cases, exhaustively. */
  default <T> T match(Function<TriangleMesh, T> read, Function<String, T> unreadable) {
    if (this instanceof Read r) return read.apply(r.mesh());
    return unreadable.apply(((Unreadable) this).reason());
  }
}
