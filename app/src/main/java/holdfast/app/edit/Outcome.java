package holdfast.app.edit;

import holdfast.model.scene.Scene;
import java.util.function.Function;

/** What came of an edit. */
public sealed interface Outcome {
  /** The scene is now another one. */
  record Changed(Scene scene) implements Outcome {}

  /** It cannot be done; the reason is a sentence for people. */
  record Refused(String reason) implements Outcome {}

  /** Both cases, exhaustively. */
  default <T> T match(Function<Scene, T> changed, Function<String, T> refused) {
    if (this instanceof Changed c) return changed.apply(c.scene());
    return refused.apply(((Refused) this).reason());
  }
}
