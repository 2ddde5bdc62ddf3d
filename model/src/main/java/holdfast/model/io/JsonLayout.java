package holdfast.model.io;

import com.fasterxml.jackson.core.io.NumberOutput;
import java.math.BigDecimal;

/** The canonical spelling of JSON strings and numbers. */
final class JsonLayout {
  /** Digits after the point, and before it, up to which a number is written without an exponent. */
  private static final int PLAIN_DIGITS = 15;

  private JsonLayout() {}

  /**
   * The shortest decimal that reads back as the same double (Schubfach, as implemented in Jackson; {@code
   * Double.toString} of Java 17 is not always the shortest), without a trailing {@code .0}. Negative zero is written 0.
   */
  static String number(double value) {
    if (!Double.isFinite(value)) throw new IllegalArgumentException("JSON has no number " + value);
    if (value == 0) return "0";
    BigDecimal exact = new BigDecimal(NumberOutput.toString(value, true)).stripTrailingZeros();
    int before = exact.precision() - exact.scale();
    if (before <= PLAIN_DIGITS && before > -6) return exact.toPlainString();
    String digits = exact.unscaledValue().abs().toString();
    String mantissa = digits.length() == 1 ? digits : digits.charAt(0) + "." + digits.substring(1);
    return (exact.signum() < 0 ? "-" : "") + mantissa + "e" + (before - 1);
  }

  /** The string in double quotes; only what must be escaped is (quote, backslash, controls, lone surrogates). */
  static String quoted(String text) {
    StringBuilder out = new StringBuilder(text.length() + 2).append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\n' -> out.append("\\n");
        case '\r' -> out.append("\\r");
        case '\t' -> out.append("\\t");
        default -> {
          if (isPair(text, i)) {
            out.append(c).append(text.charAt(++i));
          } else if (Character.isISOControl(c) || Character.isSurrogate(c) || c == '\u2028' || c == '\u2029') {
            out.append(String.format("\\u%04x", (int) c));
          } else {
            out.append(c);
          }
        }
      }
    }
    return out.append('"').toString();
  }

  private static boolean isPair(String text, int i) {
    return Character.isHighSurrogate(text.charAt(i)) && i + 1 < text.length() && Character.isLowSurrogate(text.charAt(i + 1));
  }
}
