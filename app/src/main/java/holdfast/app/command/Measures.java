package holdfast.app.command;

import holdfast.app.report.TypedNumber;
import holdfast.app.report.Units;
import holdfast.model.scene.UsMeasure;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lengths, sizes and masses as people type them: {@code 90x45x45 cm}, {@code 36 x 18 x 16 in}, {@code 12 1/2 in},
 * {@code 5.6 kg}.
 */
final class Measures {
  private static final String WITH_UNIT = "\\s*(" + TypedNumber.PATTERN + ")\\s*([a-zA-Z\"″']*)\\s*";
  private static final Pattern ONE = Pattern.compile(WITH_UNIT);
  private static final Pattern POUNDS_OUNCES =
      Pattern.compile("\\s*(\\d+)\\s*lbs?\\s*(" + TypedNumber.PATTERN + ")\\s*oz\\s*", Pattern.CASE_INSENSITIVE);
  private static final Pattern THREE = Pattern.compile(WITH_UNIT + "[xX×*]" + WITH_UNIT + "[xX×*]" + WITH_UNIT);

  /** A length without a unit that is larger than this was most likely in millimetres: few tanks are 2 m long. */
  private static final double LIKELY_MM = 200;

  private Measures() {}

  /** Three lengths in millimetres. The unit must be said: half of all mistaken sizes are in another one. */
  static List<Double> sizeMm(String option, String typed) {
    Matcher m = THREE.matcher(typed);
    if (!m.matches()) {
      throw new InputProblem(option + ": '" + typed + "' is not a size.",
          "Three lengths and their unit are wanted, such as \"90x45x45 cm\" or \"36x18x16 in\".");
    }
    if (m.group(6).isEmpty()) {
      String said = m.group(2).isEmpty() ? m.group(4) : m.group(2);
      String likely = said.matches("[a-zA-Z]+") ? said : !said.isEmpty() ? "in" : number(m.group(1)) > LIKELY_MM ? "mm" : "cm";
      throw new InputProblem(option + ": '" + typed + "' says no unit" + (said.isEmpty() ? "." : " at its end."),
          "Add mm, cm, m or in: \"" + typed.strip() + " " + likely + "\".");
    }
    List<Double> size = new ArrayList<>();
    for (int i = 1; i <= 3; i++) {
      // One unit at the end is for all of them.
      String word = m.group(2 * i).isEmpty() ? m.group(6) : m.group(2 * i);
      double unit = lengthUnit(word).orElseThrow(() -> unknownUnit(option, word, "mm, cm, m or in"));
      size.add(round(number(m.group(2 * i - 1)) * unit));
    }
    return List.copyOf(size);
  }

  /** A length in millimetres; a bare number is millimetres. */
  static double lengthMm(String option, String typed) {
    Matcher m = ONE.matcher(typed);
    if (!m.matches()) {
      throw new InputProblem(option + ": '" + typed + "' is not a length.", "Such as: 10 mm, 1.2 cm, 0.5 in.");
    }
    double unit = m.group(2).isEmpty() ? 1
        : lengthUnit(m.group(2)).orElseThrow(() -> unknownUnit(option, m.group(2), "mm, cm, m or in"));
    return round(number(m.group(1)) * unit);
  }

  /** A mass in kilograms, to a microgram so that 1400 g is 1.4; a bare number is kilograms, and pounds may have ounces. */
  static double massKg(String option, String typed) {
    Matcher both = POUNDS_OUNCES.matcher(typed);
    if (both.matches()) {
      double kg = number(both.group(1)) * UsMeasure.POUND_KG + number(both.group(2)) * UsMeasure.OUNCE_G / 1e3;
      return Math.rint(kg * 1e9) / 1e9;
    }
    Matcher m = ONE.matcher(typed);
    if (!m.matches()) {
      throw new InputProblem(option + ": '" + typed + "' is not a mass.", "Such as: 5.6 kg, 850 g, 12 lb, 12 lb 4 oz.");
    }
    double unit = switch (m.group(2).toLowerCase(Locale.ROOT)) {
      case "", "kg" -> 1;
      case "g" -> 1e-3;
      case "lb", "lbs" -> UsMeasure.POUND_KG;
      case "oz" -> UsMeasure.OUNCE_G / 1e3;
      default -> throw unknownUnit(option, m.group(2), "kg, g, lb or oz");
    };
    return Math.rint(number(m.group(1)) * unit * 1e9) / 1e9;
  }

  /** The value, if it is in a range; both ends belong to it. */
  static double within(String what, double value, double least, double most, String unit) {
    if (value >= least && value <= most) return value;
    throw new InputProblem(what + " must be from " + plain(least) + " to " + plain(most) + " " + unit + ", was " + plain(value)
        + (Double.isFinite(value) ? " " + unit : "") + ".");
  }

  /** A number as one would type it: never 1.0E9, and no nought for what is only small. */
  private static String plain(double value) {
    if (!Double.isFinite(value)) return "no number";
    boolean small = value != 0 && Math.abs(value) < 1e-3;
    return small ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString() : Units.plain(value);
  }

  private static OptionalDouble lengthUnit(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "mm" -> OptionalDouble.of(1);
      case "cm" -> OptionalDouble.of(10);
      case "m" -> OptionalDouble.of(1000);
      case "in", "inch", "inches", "\"", "″" -> OptionalDouble.of(UsMeasure.INCH_MM);
      default -> OptionalDouble.empty();
    };
  }

  private static InputProblem unknownUnit(String option, String unit, String known) {
    return new InputProblem(option + ": the unit '" + unit + "' is not known.", "Known are " + known + ".");
  }

  /** Divided by nought it is beyond every range, and is told so. */
  private static double number(String digits) {
    try {
      return TypedNumber.of(digits);
    } catch (NumberFormatException e) {
      return Double.POSITIVE_INFINITY;
    }
  }

  /** To a ten-thousandth of a millimetre, so that 45 cm is 450 and not 449.99999999. */
  private static double round(double mm) {
    return Math.rint(mm * 1e4) / 1e4;
  }
}
