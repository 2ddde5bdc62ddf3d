package holdfast.app.report;

import holdfast.model.scene.UsMeasure;
import java.util.Arrays;
import java.util.Optional;

/**
 * What a figure measures, its unit in files and findings, the unit that people of the other system read, and how many
 * decimals are worth printing in each.
 */
public enum Quantity {
  LENGTH("mm", 1, "in", UsMeasure.INCH_MM, 2),
  AREA("mm2", 0, "in2", UsMeasure.INCH_MM * UsMeasure.INCH_MM, 2),
  MASS("kg", 2, "lb", UsMeasure.POUND_KG, 2),
  FORCE("N", 1, "lbf", UsMeasure.POUND_FORCE_N, 2),
  IMPULSE("N s", 2, "lbf s", UsMeasure.POUND_FORCE_N, 3),
  ENERGY("J", 2, "ft lbf", UsMeasure.POUND_FORCE_N * UsMeasure.FOOT_M, 2),
  STRESS("N/mm2", 2, "psi", UsMeasure.PSI_N_MM2, 0),
  VOLUME("L", 1, "gal", UsMeasure.GALLON_L, 1),
  SMALL_VOLUME("ml", 0, "fl oz", UsMeasure.FLUID_OUNCE_ML, 1),
  DENSITY("kg/L", 2, "lb/gal", UsMeasure.POUND_KG / UsMeasure.GALLON_L, 2),
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
