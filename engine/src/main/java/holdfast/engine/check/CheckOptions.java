package holdfast.engine.check;

/**
 * How a check is to run; what it finds does not depend on {@code threads}.
 *
 * @param threads number of threads, 1 or more
 * @param pushes how much is asked about pushes
 * @param variations number of seeded variations of friction, mass and position; 0 for none
 * @param seed seed of the variations
 * @param exact every push margin to a ten-thousandth; otherwise they may read up to 2 % low, but for the weakest direction of
 *     a rock, and never in doubt about the tier
 */
public record CheckOptions(int threads, Pushes pushes, int variations, long seed, boolean exact) {
  /** How much is asked about pushes; findings and verdict are the same with {@link #WEAKEST} and {@link #ROSES}. */
  public enum Pushes {
    /**
     * Nothing, nor about presses, shaking, what is dug or lifted away and which joints to fix: only weight, room, pane and
     * handling are judged, and the verdict of a scene with rocks is never better than undecided.
     */
    NONE,
    /** The same, and whether anything goes over under the push, press and shaking asked for: the first that does. */
    TIER,
    /** All that findings and verdict hang on, and of every rock its weakest direction. */
    WEAKEST,
    /** The margin of every rock from every direction as well. */
    ROSES
  }

  public static final CheckOptions DEFAULT =
      new CheckOptions(Math.max(1, Runtime.getRuntime().availableProcessors()), Pushes.WEAKEST, 0, 1);

  public CheckOptions(int threads, Pushes pushes, int variations, long seed) {
    this(threads, pushes, variations, seed, false);
  }

  public CheckOptions {
    if (threads < 1) throw new IllegalArgumentException("threads must be 1 or more, was " + threads);
    if (variations < 0) throw new IllegalArgumentException("variations must be 0 or more, was " + variations);
  }

  /** Whether margins are asked for, and all that goes with them. */
  boolean pushed() {
    return pushes.compareTo(Pushes.WEAKEST) >= 0;
  }
}
