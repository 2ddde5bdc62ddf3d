package holdfast.app.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The units that people read. Files, findings and JSON are metric whatever is chosen here.
 *
 * <p>Every figure is rounded in a direction that its printer names, so that a margin is never printed above what was
 * found, nor a stress below it.
 */
public enum Units {
  METRIC, US;

  private static final Pattern FIGURES = Pattern.compile(
      "(?<![\\w.])(\\d+(?:\\.\\d+)?(?:(?: to | or | by | × |–)\\d+(?:\\.\\d+)?)*) "
          + "(mm2|mm²|mm|kg/L|kg|N/mm2|N/mm²|N s|N|J|ml|litres|L)(?![\\w/²])");
  /** What follows a length that is free: "stands 12 mm from the front pane". */
  private static final Pattern ROOM = Pattern.compile(" (?:from|to spare|of free water)\\b");
  /** What stands before the force under which something moves; that of the tier is a round one. */
  private static final Pattern MARGIN = Pattern.compile("(?:push of|rim with|moves under|slides at|topples at) $");
  private static final Pattern FIGURE = Pattern.compile("\\d+(?:\\.\\d+)?");

  /** The number alone, rounded to the decimals of its quantity; a length in inches to a sixteenth. */
  public String number(Quantity quantity, double metricValue, RoundingMode rounding) {
    if (this == US && quantity == Quantity.LENGTH) return Inches.of(quantity.in(this, metricValue), rounding);
    return fixed(quantity.in(this, metricValue), quantity.decimals(this), rounding);
  }

  /** Number and unit. */
  public String text(Quantity quantity, double metricValue, RoundingMode rounding) {
    return number(quantity, metricValue, rounding) + " " + quantity.sign(this);
  }

  /** The number to the nearest, without idle zeros after the point: 580, not 580.0. */
  public String briefNumber(Quantity quantity, double metricValue) {
    return withoutIdleZeros(number(quantity, metricValue, RoundingMode.HALF_EVEN));
  }

  /** A number that people may type over: decimals in either system, without idle zeros. */
  public String typed(Quantity quantity, double metricValue) {
    return withoutIdleZeros(fixed(quantity.in(this, metricValue), quantity.decimals(this), RoundingMode.HALF_EVEN));
  }

  /** The same with its unit. */
  public String brief(Quantity quantity, double metricValue) {
    return briefNumber(quantity, metricValue) + " " + quantity.sign(this);
  }

  /** A number as one would write it by hand, with at most four decimals. */
  public static String plain(double value) {
    return withoutIdleZeros(fixed(value, 4, RoundingMode.HALF_EVEN));
  }

  static String withoutIdleZeros(String number) {
    return number.contains(".") ? number.replaceFirst("\\.?0+$", "") : number;
  }

  /** The unit's sign. */
  public String sign(Quantity quantity) {
    return quantity.sign(this);
  }

  /**
   * A sentence of the engine, which speaks metric, in these units: every figure that stands before a known unit is
   * rewritten, to about the number of digits that it had, a length to a sixteenth of an inch. What is at least so much is
   * not made less by that, nor what is at most so much more, nor a room, the push that moves something or how far a rock was
   * moved to try it. Grams stay, since the same sign stands for gravity.
   */
  public String prose(String metric) {
    if (this == METRIC) return metric.replaceAll("(?<=mm)2(?!\\w)", "²");
    return FIGURES.matcher(metric).replaceAll(m -> {
      Quantity q = Quantity.ofUnit(m.group(2).replace('²', '2').replace("litres", "L")).orElseThrow();
      RoundingMode rounding = rounding(metric.substring(0, m.start()), m.group(1), metric.substring(m.end()));
      return Matcher.quoteReplacement(
          FIGURE.matcher(m.group(1)).replaceAll(f -> converted(q, f.group(), rounding)) + " " + q.sign(this));
    });
  }

  private static RoundingMode rounding(String before, String figure, String after) {
    if (before.endsWith("at least ")) return RoundingMode.CEILING;
    boolean least = before.endsWith("at most ") || before.endsWith("moved ")
        || figure.contains(".") && MARGIN.matcher(before).find() || ROOM.matcher(after).lookingAt();
    return least ? RoundingMode.FLOOR : RoundingMode.HALF_EVEN;
  }

  private String converted(Quantity q, String number, RoundingMode rounding) {
    double value = q.in(this, Double.parseDouble(number));
    if (q == Quantity.LENGTH) return Inches.of(value, rounding);
    BigDecimal original = new BigDecimal(number);
    int digits = Math.max(3, original.stripTrailingZeros().precision());
    BigDecimal rounded = new BigDecimal(value).round(new java.math.MathContext(digits, rounding));
    if (rounded.scale() > q.decimals(this) + 1) rounded = rounded.setScale(q.decimals(this) + 1, rounding);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** A plain decimal number with this many decimals, without a minus before zero; the word for what is no number. */
  public static String fixed(double value, int decimals, RoundingMode rounding) {
    if (Double.isNaN(value)) return "unknown";
    if (Double.isInfinite(value)) return "no limit";
    BigDecimal d = new BigDecimal(value).setScale(decimals + 6, RoundingMode.HALF_EVEN).setScale(decimals, rounding);
    return (d.signum() == 0 ? d.abs() : d).toPlainString();
  }
}
