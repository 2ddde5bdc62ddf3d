package holdfast.app.report;

import static java.math.RoundingMode.CEILING;
import static java.math.RoundingMode.FLOOR;
import static java.math.RoundingMode.HALF_EVEN;

import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import java.math.RoundingMode;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A finding's figure beside its limit, rounded to the safe side and with as many decimals as tell the two apart. */
public final class FigureText {
  private FigureText() {}

  /** "found: 11.6 mm, wanted: at least 50.0 mm". */
  public static String against(double figure, double limit, String unit, Severity severity, Units units) {
    String side = severity == Severity.NOTE ? "limit " : figure < limit ? "wanted: at least " : "wanted: at most ";
    List<String> both = both(figure, limit, unit, units);
    return "found: " + both.get(0) + ", " + side + both.get(1);
  }

  private static List<String> both(double figure, double limit, String unit, Units units) {
    boolean below = figure < limit;
    for (int more = 0; ; more++) {
      String a = rounded(figure, unit, below ? FLOOR : CEILING, more, units);
      String b = rounded(limit, unit, below ? CEILING : FLOOR, more, units);
      if (!a.equals(b) || figure == limit || more == 3) return List.of(a, b);
    }
  }

  /**
   * A finding's sentence in these units. Where it tells the finding's own figure, rounded to be read in metric, the figure is
   * what is converted, and reads the same as beside its limit.
   */
  public static String sentence(Finding f, Units units) {
    String metric = f.sentence();
    if (units == Units.METRIC || f.figure().isEmpty() || f.limit().isEmpty() || Quantity.ofUnit(f.unit()).isEmpty()) {
      return units.prose(metric);
    }
    double figure = f.figure().getAsDouble();
    Matcher m = Pattern.compile("(?<![\\w.])(\\d+(?:\\.\\d+)?) " + Pattern.quote(f.unit()) + "(?![\\w/²])").matcher(metric);
    while (m.find()) {
      int point = m.group(1).indexOf('.');
      double digit = Math.pow(10, point < 0 ? 0 : point + 1 - m.group(1).length());
      if (Math.abs(Double.parseDouble(m.group(1)) - figure) >= digit) continue;
      return units.prose(metric.substring(0, m.start())) + both(figure, f.limit().getAsDouble(), f.unit(), units).get(0)
          + units.prose(metric.substring(m.end()));
    }
    return units.prose(metric);
  }

  /**
   * A room and the room that is wanted, each alone: the first not printed larger, the second not smaller than it is, and as
   * fine as it takes for the one to read below the other only if it is.
   */
  public static List<String> room(double roomMm, double wantedMm, Units units) {
    if (units == Units.METRIC) {
      return List.of(units.number(Quantity.LENGTH, roomMm, FLOOR), units.briefNumber(Quantity.LENGTH, wantedMm));
    }
    double room = Quantity.LENGTH.in(units, roomMm);
    double wanted = Quantity.LENGTH.in(units, wantedMm);
    boolean enough = roomMm >= wantedMm;
    if (enough == Math.floor(room * Inches.PARTS + 1e-6) >= Math.ceil(wanted * Inches.PARTS - 1e-6)) {
      return List.of(Inches.of(room, FLOOR), Inches.of(wanted, CEILING));
    }
    return List.of(Units.fixed(room, 3, FLOOR), Units.fixed(wanted, 3, enough ? FLOOR : CEILING));
  }

  /**
   * A density and the range that is usual, each alone: the range not printed wider than it is, and a density within it
   * not beyond what is printed of it. A density that is beyond reads as {@link #against} prints it.
   */
  public static List<String> range(double kgPerL, double low, double high, Units units) {
    boolean up = kgPerL > high || kgPerL >= low && kgPerL < (low + high) / 2;
    return List.of(units.text(Quantity.DENSITY, kgPerL, up ? CEILING : FLOOR),
        units.number(Quantity.DENSITY, low, CEILING), units.text(Quantity.DENSITY, high, FLOOR));
  }

  /** "found: 11.6 mm", where there is no limit. */
  public static String alone(double figure, String unit, Units units) {
    return "found: " + rounded(figure, unit, HALF_EVEN, 0, units);
  }

  private static String rounded(double value, String unit, RoundingMode rounding, int moreDecimals, Units units) {
    return Quantity.ofUnit(unit)
        .map(q -> (moreDecimals == 0 ? units.number(q, value, rounding)
            : Units.fixed(q.in(units, value), q.decimals(units) + moreDecimals, rounding)) + " " + units.sign(q))
        .orElseGet(() -> Units.fixed(value, 2 + moreDecimals, rounding) + (unit.isEmpty() ? "" : " " + unit));
  }
}
