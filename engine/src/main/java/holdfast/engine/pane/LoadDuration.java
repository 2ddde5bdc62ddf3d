package holdfast.engine.pane;

/**
 * How long a load lasts, and what that leaves of the strength of annealed glass.
 *
 * <p>k_mod = 0.663 t^(-1/16), t in hours, at most 1: EN 16612 (published, secondary copies); the table's own rounded
 * readings are used and the formula is kept for checking them.
 */
public enum LoadDuration {
  /** A blow or a stumble, 5 seconds. */
  BLOW("5 seconds", 5 / 3600.0, 1.00),
  WEEK("a week", 168, 0.48),
  MONTH("a month", 730, 0.44),
  /** 50 years. */
  PERMANENT("for good", 438_300, 0.29);

  private final String word;
  private final double hours;
  private final double kMod;

  LoadDuration(String word, double hours, double kMod) {
    this.word = word;
    this.hours = hours;
    this.kMod = kMod;
  }

  public String word() {
    return word;
  }

  public double hours() {
    return hours;
  }

  /** Share of the strength that is left, as tabulated. */
  public double kMod() {
    return kMod;
  }

  /** k_mod by formula for any duration above zero. */
  public static double kModFor(double hours) {
    if (!(hours > 0)) throw new IllegalArgumentException("hours must be above 0, was " + hours);
    return Math.min(1, 0.663 * Math.pow(hours, -1.0 / 16));
  }
}
