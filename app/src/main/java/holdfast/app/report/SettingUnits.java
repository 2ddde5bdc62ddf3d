package holdfast.app.report;

import holdfast.model.scene.Setting;
import holdfast.model.scene.UsMeasure;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;

/**
 * The figures of a scene's settings in the units that people read and type. The file and the engine stay metric.
 */
public final class SettingUnits {
  /** Digits that are worth showing of a figure that was converted. */
  private static final int DIGITS = 4;

  /**
   * A unit that people of the other system read.
   *
   * @param metric how much of the file's unit one of it is
   */
  private record Other(String sign, double metric) {}

  private static final Map<String, Other> US = Map.ofEntries(
      Map.entry("N", new Other("lbf", UsMeasure.POUND_FORCE_N)),
      Map.entry("mm", new Other("in", UsMeasure.INCH_MM)),
      Map.entry("kg", new Other("lb", UsMeasure.POUND_KG)),
      Map.entry("kg submerged", new Other("lb submerged", UsMeasure.POUND_KG)),
      Map.entry("g", new Other("oz", UsMeasure.OUNCE_G)),
      Map.entry("kg/m3", new Other("lb/ft³", UsMeasure.POUND_KG / (UsMeasure.FOOT_M * UsMeasure.FOOT_M * UsMeasure.FOOT_M))),
      Map.entry("kg/m2", new Other("lb/ft²", UsMeasure.POUND_KG / (UsMeasure.FOOT_M * UsMeasure.FOOT_M))),
      Map.entry("kg/L", new Other("lb/gal", UsMeasure.POUND_KG / UsMeasure.GALLON_L)),
      Map.entry("g/L", new Other("oz/gal", UsMeasure.OUNCE_G / UsMeasure.GALLON_L)),
      Map.entry("g/ml mixed", new Other("oz/fl oz mixed", UsMeasure.OUNCE_G / UsMeasure.FLUID_OUNCE_ML)),
      Map.entry("N/mm2", new Other("psi", UsMeasure.PSI_N_MM2)),
      Map.entry("N/m3", new Other("lbf/in³", UsMeasure.POUND_FORCE_N / Math.pow(UsMeasure.INCH_MM * 1e-3, 3))),
      Map.entry("1/m", new Other("1/ft", 1 / UsMeasure.FOOT_M)),
      Map.entry("money/kg", new Other("money/lb", 1 / UsMeasure.POUND_KG)),
      Map.entry("money/L", new Other("money/gal", 1 / UsMeasure.GALLON_L)));

  private SettingUnits() {}

  /** The unit's sign as people read it; a few words where the figure has none. */
  public static String sign(Setting s, Units units) {
    if (s == Setting.SHAKE_G) return "g (gravity)";
    if (units == Units.US && US.containsKey(s.unit())) return US.get(s.unit()).sign();
    return switch (s.unit()) {
      case "" -> "no unit";
      case "deg" -> "degrees";
      case "h" -> "hours";
      case "d" -> "days";
      default -> s.unit().replaceAll("(?<=m)2", "²").replaceAll("(?<=m)3", "³");
    };
  }

  /** A value of the file as it is shown: to four digits where it is converted. */
  public static String shown(Setting s, double metric, Units units) {
    double factor = factor(s, units);
    if (factor == 1) return Units.plain(metric);
    BigDecimal rounded = new BigDecimal(metric / factor).round(new MathContext(DIGITS));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** The file's value of what was typed. */
  public static double metric(Setting s, double typed, Units units) {
    return typed * factor(s, units);
  }

  private static double factor(Setting s, Units units) {
    boolean converted = units == Units.US && s != Setting.SHAKE_G && US.containsKey(s.unit());
    return converted ? US.get(s.unit()).metric() : 1;
  }
}
