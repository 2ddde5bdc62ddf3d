package holdfast.app.report;

import static java.math.RoundingMode.CEILING;
import static java.math.RoundingMode.FLOOR;
import static java.math.RoundingMode.HALF_EVEN;

import holdfast.engine.check.Severity;
import java.math.RoundingMode;

/** A finding's figure beside its limit, rounded to the safe side and with as many decimals as tell the two apart. */
public final class FigureText {
  private FigureText() {}

  /** "found: 11.6 mm, wanted: at least 50.0 mm". */
  public static String against(double figure, double limit, String unit, Severity severity, Units units) {
    boolean below = figure < limit;
    String side = severity == Severity.NOTE ? "limit " : below ? "wanted: at least " : "wanted: at most ";
    for (int more = 0; ; more++) {
      String a = rounded(figure, unit, below ? FLOOR : CEILING, more, units);
      String b = rounded(limit, unit, HALF_EVEN, more, units);
      if (!a.equals(b) || figure == limit || more == 3) return "found: " + a + ", " + side + b;
    }
  }

  /** "found: 11.6 mm", where there is no limit. */
  public static String alone(double figure, String unit, Units units) {
    return "found: " + rounded(figure, unit, HALF_EVEN, 0, units);
  }

  private static String rounded(double value, String unit, RoundingMode rounding, int moreDecimals, Units units) {
    return Quantity.ofUnit(unit)
        .map(q -> Units.fixed(q.in(units, value), q.decimals(units) + moreDecimals, rounding) + " " + units.sign(q))
        .orElseGet(() -> Units.fixed(value, 2 + moreDecimals, rounding) + (unit.isEmpty() ? "" : " " + unit));
  }
}
