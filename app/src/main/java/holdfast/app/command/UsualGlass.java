package holdfast.app.command;

/**
 * The thickness of glass that is usual for a tank, for those who have not measured theirs. Only a starting value: it is
 * said to be assumed wherever it is used. Grade: common practice, from guides for builders of rimless tanks (feet
 * rounded to millimetres); sizes between rows take the thinner glass, so that nothing is thought stronger than it is.
 */
final class UsualGlass {
  private static final double FOOT_MM = 304.8;

  private UsualGlass() {}

  /** Millimetres of glass for a tank of this length and height. */
  static double thicknessMm(double lengthMm, double heightMm) {
    double length = lengthMm / FOOT_MM;
    double height = heightMm / FOOT_MM;
    if (length >= 4.1 && height >= 1.55 || height >= 2.05) return 12;
    if (length >= 3.9 && height >= 1.4 || height >= 1.9) return 10;
    if (length >= 1.9 && height >= 1.4) return 8;
    return 5;
  }
}
