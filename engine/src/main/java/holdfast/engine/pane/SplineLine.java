package holdfast.engine.pane;

import java.util.ArrayList;
import java.util.List;

/**
 * Splines of the fifth degree along a line cut into elements of any lengths, smooth to the fourth derivative (de Boor, A
 * Practical Guide to Splines, 1978). The first function alone has a value at the start, the first two alone a slope there;
 * likewise at the end.
 */
final class SplineLine {
  static final int DEGREE = 5;

  /** Functions that are not nil in an element. */
  static final int LIVE = DEGREE + 1;

  /** Abscissae on (0, 1) and weights of the six-point Gauss rule, exact for products of two splines. */
  static final double[][] GAUSS = gauss6();

  private final double[] knots;
  private final int elements;

  /** A line from the first to the last of {@code ends}, the ends of its elements in rising order. */
  SplineLine(double[] ends) {
    this.elements = ends.length - 1;
    if (elements < 1) throw new IllegalArgumentException("a line needs an element, had " + ends.length + " ends");
    this.knots = new double[ends.length + 2 * DEGREE];
    for (int i = 0; i < knots.length; i++) knots[i] = ends[Math.min(Math.max(i - DEGREE, 0), elements)];
    for (int e = 0; e < elements; e++) {
      if (!(step(e) > 0)) throw new IllegalArgumentException("elements must have a length, had " + step(e));
    }
  }

  /** A place where the elements are to be short: their length grows with the distance from it, from {@code reachM} on. */
  record Focus(double fromM, double toM, double reachM) {
    double away(double at) {
      return Math.max(reachM, Math.max(fromM - at, at - toM));
    }
  }

  /**
   * A line from 0 to {@code lengthM} with elements of {@code share} of the distance to the nearest focus, and of at most
   * {@code mostM}.
   */
  static SplineLine graded(double lengthM, double mostM, double share, List<Focus> foci) {
    // Walked in small steps; the elements are even in the sum of step over wanted length.
    List<Double> at = new ArrayList<>(List.of(0.0));
    List<Double> sum = new ArrayList<>(List.of(0.0));
    double s = 0;
    double total = 0;
    while (s < lengthM) {
      double step = Math.min(0.1 * wanted(s, mostM, share, foci), lengthM - s);
      total += step / wanted(s + 0.5 * step, mostM, share, foci);
      s = lengthM - s - step < 1e-9 * lengthM ? lengthM : s + step;
      at.add(s);
      sum.add(total);
    }
    int count = Math.max(1, (int) Math.ceil(total - 1e-6));
    double[] ends = new double[count + 1];
    int from = 0;
    for (int i = 1; i < count; i++) {
      double goal = total * i / count;
      while (sum.get(from + 1) < goal) from++;
      double part = (goal - sum.get(from)) / (sum.get(from + 1) - sum.get(from));
      ends[i] = at.get(from) + part * (at.get(from + 1) - at.get(from));
    }
    ends[count] = lengthM;
    return new SplineLine(ends);
  }

  private static double wanted(double at, double mostM, double share, List<Focus> foci) {
    double least = mostM;
    for (Focus f : foci) least = Math.min(least, share * f.away(at));
    return least;
  }

  int elements() {
    return elements;
  }

  int functions() {
    return elements + DEGREE;
  }

  double start(int element) {
    return knots[element + DEGREE];
  }

  double step(int element) {
    return knots[element + DEGREE + 1] - knots[element + DEGREE];
  }

  /** The element at a place; the nearest for a place beside the line. */
  int elementAt(double x) {
    int low = 0;
    int high = elements;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (start(middle) <= x) low = middle;
      else high = middle;
    }
    return low;
  }

  /**
   * The functions of an element, whose numbers begin with the element's own, at a place in it.
   *
   * @return value, first and second derivative of each
   */
  double[][] at(int element, double x) {
    int span = element + DEGREE;
    double[] cubic = null;
    double[] quartic = null;
    double[] n = {1};
    for (int d = 1; d <= DEGREE; d++) {
      double[] next = new double[d + 1];
      for (int i = 0; i < d; i++) {
        double from = knots[span - d + 1 + i];
        double to = knots[span + 1 + i];
        double share = n[i] / (to - from);
        next[i] += (to - x) * share;
        next[i + 1] += (x - from) * share;
      }
      n = next;
      if (d == DEGREE - 2) cubic = n;
      if (d == DEGREE - 1) quartic = n;
    }
    return new double[][] {n, raised(quartic, span), raised(raised(cubic, span), span)};
  }

  /** Combines functions of one degree into the derivatives of those of the next. */
  private double[] raised(double[] lower, int span) {
    int degree = lower.length;
    double[] all = new double[degree + 1];
    for (int i = 0; i < degree; i++) {
      double slope = degree * lower[i] / (knots[span + 1 + i] - knots[span - degree + 1 + i]);
      all[i] -= slope;
      all[i + 1] += slope;
    }
    return all;
  }

  /** Integrals of products of derivatives (0,0), (1,1), (2,2), (2,0) along the line, as bands: [kind][i][k - i + DEGREE]. */
  double[][][] products() {
    int[][] kinds = {{0, 0}, {1, 1}, {2, 2}, {2, 0}};
    double[][][] all = new double[kinds.length][functions()][2 * DEGREE + 1];
    for (int e = 0; e < elements; e++) {
      for (double[] g : GAUSS) {
        double[][] f = at(e, start(e) + g[0] * step(e));
        for (int kind = 0; kind < kinds.length; kind++) {
          for (int i = 0; i < LIVE; i++) {
            double left = g[1] * step(e) * f[kinds[kind][0]][i];
            for (int k = 0; k < LIVE; k++) all[kind][e + i][k - i + DEGREE] += left * f[kinds[kind][1]][k];
          }
        }
      }
    }
    return all;
  }

  /** Abramowitz and Stegun, table 25.4, n = 6; the digits follow from the roots of Legendre's polynomial. */
  private static double[][] gauss6() {
    int n = 6;
    double[][] rule = new double[n][];
    for (int i = 0; i < n; i++) {
      double x = -Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
      double slope = 0;
      for (int round = 0; round < 8; round++) {
        double p = 1;
        double last = 0;
        for (int k = 1; k <= n; k++) {
          double next = ((2 * k - 1) * x * p - (k - 1) * last) / k;
          last = p;
          p = next;
        }
        slope = n * (x * p - last) / (x * x - 1);
        x -= p / slope;
      }
      rule[i] = new double[] {0.5 * (1 + x), 1 / ((1 - x * x) * slope * slope)};
    }
    return rule;
  }
}
