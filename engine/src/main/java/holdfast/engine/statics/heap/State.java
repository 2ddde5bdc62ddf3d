package holdfast.engine.statics.heap;

/**
 * The states a layout goes through; each has its own weights, and the worst governs a finding.
 * {@code waterShare} is the level of the water as a share of the full level.
 */
public enum State {
  /** Being built: dry stone, no water. */
  DRY("dry", 0),
  /** In use. */
  FILLED("filled", 1),
  /** In use for long: the growth of the settings weighs on the top of every living rock. */
  GROWN("filled and overgrown", 1),
  /** Filling or draining: what stands above the line has lost its buoyancy. */
  THREE_QUARTERS("water at three quarters", 0.75),
  HALF("water at half", 0.5),
  QUARTER("water at a quarter", 0.25),
  /** Just drained: pores still full, no water round it; the heaviest. */
  DRAINED("drained", 0);

  private final String words;
  private final double waterShare;

  State(String words, double waterShare) {
    this.words = words;
    this.waterShare = waterShare;
  }

  public String words() {
    return words;
  }

  public double waterShare() {
    return waterShare;
  }
}
