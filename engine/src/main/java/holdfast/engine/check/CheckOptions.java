package holdfast.engine.check;

/**
 * How a check is to run; what it finds does not depend on {@code threads}.
 *
 * @param threads number of threads, 1 or more
 * @param roses ask about pushes, presses and shaking; without them only weight, room, pane and handling are judged, and the
 *     verdict of a scene with rocks is never better than undecided
 * @param variations number of seeded variations of friction, mass and position; 0 for none
 * @param seed seed of the variations
 */
public record CheckOptions(int threads, boolean roses, int variations, long seed) {
  public static final CheckOptions DEFAULT =
      new CheckOptions(Math.max(1, Runtime.getRuntime().availableProcessors()), true, 0, 1);

  public CheckOptions {
    if (threads < 1) throw new IllegalArgumentException("threads must be 1 or more, was " + threads);
    if (variations < 0) throw new IllegalArgumentException("variations must be 0 or more, was " + variations);
  }
}
