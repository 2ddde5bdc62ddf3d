package holdfast.app.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as people type it: a decimal one with a point or a comma, or a fraction with or without a whole number before it,
 * as tapes in inches have them: {@code 12.5}, {@code 12,5}, {@code 1/2}, {@code 12 1/2}, {@code 12-1/2}.
 */
public final class TypedNumber {
  /** What is a number without a sign, for patterns of which it is a part. */
  public static final String PATTERN = "(?:\\d+[\\s-]+)?\\d+/\\d+|\\d+(?:[.,]\\d*)?|[.,]\\d+";

  private static final Pattern WHOLE = Pattern.compile("([+\u2212-]?)\\s*(" + PATTERN + ")");

  private TypedNumber() {}

  /**
   * Its value.
   *
   * @throws NumberFormatException where it is none, or is divided by nought
   */
  public static double of(String typed) {
    Matcher m = WHOLE.matcher(typed.strip());
    if (!m.matches()) throw new NumberFormatException("'" + typed + "' is not a number");
    double value = value(m.group(2));
    if (!Double.isFinite(value)) throw new NumberFormatException("'" + typed + "' divides by nought");
    return m.group(1).isEmpty() || m.group(1).equals("+") ? value : -value;
  }

  /** Of what matches {@link #PATTERN}. */
  private static double value(String digits) {
    if (digits.indexOf('/') < 0) return Double.parseDouble(digits.replace(',', '.'));
    String[] parts = digits.split("[\\s/-]+");
    double whole = parts.length == 3 ? Double.parseDouble(parts[0]) : 0;
    return whole + Double.parseDouble(parts[parts.length - 2]) / Double.parseDouble(parts[parts.length - 1]);
  }
}
