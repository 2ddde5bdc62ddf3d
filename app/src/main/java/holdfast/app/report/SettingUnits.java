package holdfast.app.report;

import holdfast.model.scene.Setting;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;

/**
 * The figures of a scene's settings in the units that people read and type. The file and the engine stay metric.
 *
 * <p>Factors follow from those units that NIST Special Publication 811 (2008), appendix B.8, gives as exact: inch, foot,
 * pound, ounce, standard gravity, gallon and fluid ounce.
 */
public final class SettingUnits {
  private static final double IN_MM = 25.4;
  private static final double FT_M = 0.3048;
  private static final double LB_KG = 0.45359237;
  private static final double OZ_G = 1000 * LB_KG / 16;
  private static final double LBF_N = LB_KG * 9.80665;
  private static final double GAL_L = 3.785411784;
  private static final double FL_OZ_ML = 1000 * GAL_L / 128;

  /** Digits that are worth showing of a figure that was converted. */
  private static final int DIGITS = 4;

  /**
   * A unit that people of the other system read.
   *
   * @param metric how much of the file's unit one of it is
   */
  private record Other(String sign, double metric) {}

  private static final Map<String, Other> US = Map.ofEntries(
      Map.entry("N", new Other("lbf", LBF_N)),
      Map.entry("mm", new Other("in", IN_MM)),
      Map.entry("kg", new Other("lb", LB_KG)),
      Map.entry("kg submerged", new Other("lb submerged", LB_KG)),
      Map.entry("g", new Other("oz", OZ_G)),
      Map.entry("kg/m3", new Other("lb/ft³", LB_KG / (FT_M * FT_M * FT_M))),
      Map.entry("kg/m2", new Other("lb/ft²", LB_KG / (FT_M * FT_M))),
      Map.entry("kg/L", new Other("lb/gal", LB_KG / GAL_L)),
      Map.entry("g/L", new Other("oz/gal", OZ_G / GAL_L)),
      Map.entry("g/ml mixed", new Other("oz/fl oz mixed", OZ_G / FL_OZ_ML)),
      Map.entry("N/mm2", new Other("psi", LBF_N / (IN_MM * IN_MM))),
      Map.entry("N/m3", new Other("lbf/in³", LBF_N / Math.pow(IN_MM * 1e-3, 3))),
      Map.entry("1/m", new Other("1/ft", 1 / FT_M)),
      Map.entry("money/kg", new Other("money/lb", 1 / LB_KG)),
      Map.entry("money/L", new Other("money/gal", 1 / GAL_L)));

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
