package holdfast.app.view;

/**
 * The scale of a stress map, in the unit shown: from nought to {@code top} in steps of {@code step}.
 */
record PaneScale(double top, double step) {
  /** Steps that the greatest value may take up at most. */
  private static final int STEPS = 8;

  /** The scale that just takes in a greatest value. */
  static PaneScale to(double greatest) {
    double least = Math.max(1e-3, greatest);
    double step = niceStep(least / STEPS);
    return new PaneScale(step * Math.ceil(least / step - 1e-9), step);
  }

  /** Digits after the point that its marks want. */
  int places() {
    return step < 0.1 ? 2 : step < 1 ? 1 : 0;
  }

  /** 1, 2 or 5 times a power of ten, not under {@code least}. */
  static double niceStep(double least) {
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double f : new double[] {1, 2, 5}) if (f * power >= least * (1 - 1e-9)) return f * power;
    return 10 * power;
  }
}
