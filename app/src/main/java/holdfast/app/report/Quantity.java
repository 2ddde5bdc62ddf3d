package holdfast.app.report;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a figure measures, its unit in files and findings, the unit that people of the other system read, and how many
 * decimals are worth printing in each.
 *
 * <p>Factors: NIST Special Publication 811 (2008), appendix B.8; inch, pound and standard gravity are exact there, and
 * with them all the rest.
 */
public enum Quantity {
  LENGTH("mm", 1, "in", 25.4, 2),
  AREA("mm2", 0, "in2", 25.4 * 25.4, 2),
  MASS("kg", 2, "lb", 0.45359237, 2),
  FORCE("N", 1, "lbf", 4.4482216152605, 2),
  IMPULSE("N s", 2, "lbf s", 4.4482216152605, 3),
  ENERGY("J", 2, "ft lbf", 1.3558179483314004, 2),
  STRESS("N/mm2", 2, "psi", 6894.757293168361e-6, 0),
  VOLUME("L", 1, "gal", 3.785411784, 1),
  SMALL_VOLUME("ml", 0, "fl oz", 29.5735295625, 1),
  DENSITY("kg/L", 2, "lb/gal", 0.45359237 / 3.785411784, 1),
  SHAKE("g", 3, "g", 1, 3);

  private final String metric;
  private final int metricDecimals;
  private final String us;
  private final double metricPerUs;
  private final int usDecimals;

  Quantity(String metric, int metricDecimals, String us, double metricPerUs, int usDecimals) {
    this.metric = metric;
    this.metricDecimals = metricDecimals;
    this.us = us;
    this.metricPerUs = metricPerUs;
    this.usDecimals = usDecimals;
  }

  /** The quantity that a finding's unit stands for; empty for a unit that reads the same everywhere, such as degrees. */
  public static Optional<Quantity> ofUnit(String unit) {
    return Arrays.stream(values()).filter(q -> q.metric.equals(unit)).findFirst();
  }

  String metric() {
    return metric;
  }

  /** The unit's sign as people read it, with raised figures. */
  String sign(Units units) {
    return (units == Units.US ? us : metric).replace("2", "²");
  }

  int decimals(Units units) {
    return units == Units.US ? usDecimals : metricDecimals;
  }

  public double in(Units units, double metricValue) {
    return units == Units.US ? metricValue / metricPerUs : metricValue;
  }
}
