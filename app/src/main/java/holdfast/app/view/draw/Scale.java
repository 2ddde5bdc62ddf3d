package holdfast.app.view.draw;

import holdfast.app.report.Units;
import java.util.Locale;

/** Figures as people read them on the scene, always with their unit. */
public final class Scale {
  private static final double MM_PER_INCH = 25.4;
  private static final double KG_PER_POUND = 0.45359237;
  private static final double N_PER_POUND_FORCE = 4.4482216152605;

  private Scale() {}

  /** A length: whole millimetres, or inches to a tenth. */
  public static String length(double mm, Units units) {
    return units == Units.US ? number(mm / MM_PER_INCH, 1) + " in" : number(mm, mm < 9.95 ? 1 : 0) + " mm";
  }

  /** Three lengths with one unit. */
  public static String lengths(Units units, double... mm) {
    StringBuilder out = new StringBuilder();
    for (double v : mm) {
      if (!out.isEmpty()) out.append(" × ");
      out.append(units == Units.US ? number(v / MM_PER_INCH, 1) : number(v, 0));
    }
    return out + (units == Units.US ? " in" : " mm");
  }

  public static String mass(double kg, Units units) {
    return units == Units.US ? number(kg / KG_PER_POUND, 1) + " lb" : number(kg, kg < 9.995 ? 2 : 1) + " kg";
  }

  public static String force(double newton, Units units) {
    double v = units == Units.US ? newton / N_PER_POUND_FORCE : newton;
    return number(v, v < 9.95 ? 1 : 0) + (units == Units.US ? " lbf" : " N");
  }

  /** A number with so many places, a true minus sign, and no minus before a zero. */
  public static String number(double v, int places) {
    String s = String.format(Locale.ROOT, "%." + places + "f", v);
    if (s.startsWith("-")) s = s.substring(1).chars().allMatch(c -> c == '0' || c == '.') ? s.substring(1) : "\u2212" + s.substring(1);
    return s;
  }
}
