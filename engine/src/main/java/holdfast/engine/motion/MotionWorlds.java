package holdfast.engine.motion;

import java.util.function.Function;

/** Opens worlds, or says why there is none on this machine. */
public final class MotionWorlds {
  private MotionWorlds() {}

  /** What came of opening a world. */
  public sealed interface Opened {
    /** A world; whoever asked for it closes it. */
    record Ready(MotionWorld world) implements Opened {}

    /** No engine on this machine; {@code reason} is a sentence for people. */
    record Unavailable(String reason) implements Opened {}

    /** Both cases, exhaustively. */
    default <T> T match(Function<MotionWorld, T> ready, Function<String, T> unavailable) {
      if (this instanceof Ready r) return ready.apply(r.world());
      return unavailable.apply(((Unavailable) this).reason());
    }
  }

  /** A new empty world. */
  public static Opened open(WorldOptions options) {
    return PhysxRuntime.get().match(
        runtime -> new Opened.Ready(new PhysxWorld(runtime, options)), Opened.Unavailable::new);
  }
}
