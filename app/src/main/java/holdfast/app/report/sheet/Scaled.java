package holdfast.app.report.sheet;

import java.util.List;

/**
 * From metres of a picture to millimetres of the page.
 *
 * @param ratio how many times smaller than life
 * @param x where the picture's origin goes on the page
 */
record Scaled(double ratio, double x, double y) {
  private static final double[] RATIOS = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30, 40, 50, 100};

  /** The largest round scale at which a picture of given size, metres, fits given millimetres. */
  static double ratioFor(double widthM, double heightM, double roomX, double roomY) {
    for (double r : RATIOS) {
      if (widthM * 1e3 / r <= roomX && heightM * 1e3 / r <= roomY) return r;
    }
    return Math.max(widthM * 1e3 / roomX, heightM * 1e3 / roomY);
  }

  /** The round scale after another, smaller; a half more after the last. */
  static double next(double ratio) {
    for (double r : RATIOS) if (r > ratio + 1e-9) return r;
    return 1.5 * ratio;
  }

  double x(double metres) {
    return x + metres * 1e3 / ratio;
  }

  double y(double metres) {
    return y + metres * 1e3 / ratio;
  }

  double length(double metres) {
    return metres * 1e3 / ratio;
  }

  List<double[]> all(List<double[]> points) {
    return points.stream().map(p -> new double[] {x(p[0]), y(p[1])}).toList();
  }

  String words() {
    return "1 : " + (ratio == Math.rint(ratio) ? String.valueOf((int) ratio) : String.valueOf(Math.round(ratio * 10) / 10.0));
  }
}
