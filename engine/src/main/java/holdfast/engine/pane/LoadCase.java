package holdfast.engine.pane;

/** What stands on the bottom pane, and for how long. */
public enum LoadCase {
  /** Being built: dry rock, no water, for a month. */
  DRY("dry, being built", LoadDuration.MONTH, false),
  /** Filled for good: rock under water and the water itself. */
  FILLED("filled", LoadDuration.PERMANENT, true),
  /** Drained with the pores full: the heaviest rock, no water, for a week. */
  DRAINED("drained", LoadDuration.WEEK, false);

  private final String word;
  private final LoadDuration duration;
  private final boolean water;

  LoadCase(String word, LoadDuration duration, boolean water) {
    this.word = word;
    this.duration = duration;
    this.water = water;
  }

  public String word() {
    return word;
  }

  public LoadDuration duration() {
    return duration;
  }

  /** Water presses on the pane. */
  public boolean water() {
    return water;
  }
}
