package holdfast.app.view.draw;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Figures as people read them on the scene, always with their unit. */
public final class Scale {
  /** Newtons from which tenths are not worth reading: of what is held, and of what loads something. */
  private static final double WHOLE_MARGIN_N = 100;
  private static final double WHOLE_LOAD_N = 10;

  /** Figures told of an area. */
  private static final int SIGNIFICANT = 3;

  private Scale() {}

  /** A length: whole millimetres, a tenth below ten, or inches and sixteenths. */
  public static String length(double mm, Units units) {
    return units.brief(Quantity.LENGTH, units == Units.METRIC && Math.abs(mm) >= 9.95 ? Math.rint(mm) : mm);
  }

  /** Three lengths with one unit. */
  public static String lengths(Units units, double... mm) {
    StringBuilder out = new StringBuilder();
    for (double v : mm) {
      if (!out.isEmpty()) out.append(" × ");
      out.append(units.briefNumber(Quantity.LENGTH, units == Units.METRIC ? Math.rint(v) : v));
    }
    return out + " " + units.sign(Quantity.LENGTH);
  }

  /** An area that holds something, rounded down to three figures: more is not known of a stone. */
  public static String area(double mm2, Units units) {
    double value = Quantity.AREA.in(units, mm2);
    BigDecimal known = new BigDecimal(value).round(new MathContext(SIGNIFICANT + 6, RoundingMode.HALF_EVEN))
        .round(new MathContext(SIGNIFICANT, RoundingMode.FLOOR));
    return (known.signum() == 0 ? "0" : known.stripTrailingZeros().toPlainString()) + " " + units.sign(Quantity.AREA);
  }

  /** A mass with all its decimals, so that columns of them line up. */
  public static String mass(double kg, Units units) {
    return units.text(Quantity.MASS, kg, RoundingMode.HALF_EVEN);
  }

  /** A force that is held or wanted, rounded down as findings are: a margin is never shown above what was found. */
  public static String force(double newton, Units units) {
    return force(newton, units, RoundingMode.FLOOR, WHOLE_MARGIN_N);
  }

  /** The least force of a range, rounded down. */
  public static String leastLoad(double newton, Units units) {
    return force(newton, units, RoundingMode.FLOOR, WHOLE_LOAD_N);
  }

  /** A force that loads something, rounded up. */
  public static String load(double newton, Units units) {
    return force(newton, units, RoundingMode.CEILING, WHOLE_LOAD_N);
  }

  private static String force(double newton, Units units, RoundingMode rounding, double wholeFromN) {
    boolean whole = units == Units.METRIC && newton >= wholeFromN;
    String text = whole ? Units.fixed(newton, 0, rounding) : units.number(Quantity.FORCE, newton, rounding);
    return (text.contains(".") ? text.replaceFirst("\\.?0+$", "") : text) + " " + units.sign(Quantity.FORCE);
  }

  /** A length that is free, rounded down. */
  public static String room(double mm, Units units) {
    return length(mm, units, RoundingMode.FLOOR);
  }

  /** A length by which something is too large, rounded up. */
  public static String excess(double mm, Units units) {
    return length(mm, units, RoundingMode.CEILING);
  }

  private static String length(double mm, Units units, RoundingMode rounding) {
    boolean whole = units == Units.METRIC && Math.abs(mm) >= 10;
    String text = whole ? Units.fixed(mm, 0, rounding) : units.number(Quantity.LENGTH, mm, rounding);
    return (text.contains(".") ? text.replaceFirst("\\.?0+$", "") : text) + " " + units.sign(Quantity.LENGTH);
  }

  /** A number with so many places, a true minus sign, and no minus before a zero. */
  public static String number(double v, int places) {
    String s = String.format(Locale.ROOT, "%." + places + "f", v);
    if (!s.startsWith("-")) return s;
    String bare = s.substring(1);
    return bare.chars().allMatch(c -> c == '0' || c == '.') ? bare : "\u2212" + bare;
  }
}
