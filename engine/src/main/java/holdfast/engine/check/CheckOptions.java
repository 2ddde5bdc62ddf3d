package holdfast.engine.check;

/**
 * How a check is to run; what it finds does not depend on {@code threads}.
 *
 * @param threads number of threads, 1 or more
 * @param roses ask about pushes, presses, shaking, what is dug or lifted away, and which joints to fix; without them only
 *     weight, room, pane and handling are judged, and the verdict of a scene with rocks is never better than undecided
 * @param variations number of seeded variations of friction, mass and position; 0 for none
 * @param seed seed of the variations
 * @param exact every push margin to a ten-thousandth; otherwise they may read up to 2.5 % low, but for the weakest direction of
 *     a rock, and never in doubt about the tier
 */
public record CheckOptions(int threads, boolean roses, int variations, long seed, boolean exact) {
  public static final CheckOptions DEFAULT =
      new CheckOptions(Math.max(1, Runtime.getRuntime().availableProcessors()), true, 0, 1);

  public CheckOptions(int threads, boolean roses, int variations, long seed) {
    this(threads, roses, variations, seed, false);
  }

  public CheckOptions {
    if (threads < 1) throw new IllegalArgumentException("threads must be 1 or more, was " + threads);
    if (variations < 0) throw new IllegalArgumentException("variations must be 0 or more, was " + variations);
  }
}
