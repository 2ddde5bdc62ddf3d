package holdfast.app.command;

import holdfast.model.scene.UsMeasure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lengths, sizes and masses as people type them: {@code 90x45x45 cm}, {@code 36 x 18 x 16 in}, {@code 5.6 kg}. */
final class Measures {
  private static final String NUMBER = "\\d+(?:[.,]\\d+)?|[.,]\\d+";
  private static final Pattern ONE = Pattern.compile("\\s*(" + NUMBER + ")\\s*([a-zA-Z\"″']*)\\s*");
  private static final Pattern THREE = Pattern.compile(
      "\\s*(" + NUMBER + ")\\s*[xX×*]\\s*(" + NUMBER + ")\\s*[xX×*]\\s*(" + NUMBER + ")\\s*([a-zA-Z\"″']*)\\s*");

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
    if (m.group(4).isEmpty()) {
      throw new InputProblem(option + ": '" + typed + "' says no unit.", "Add mm, cm, m or in: \"" + typed.strip()
          + (number(m.group(1)) > LIKELY_MM ? " mm" : " cm") + "\".");
    }
    double unit = lengthUnit(m.group(4)).orElseThrow(() -> unknownUnit(option, m.group(4), "mm, cm, m or in"));
    List<Double> size = new ArrayList<>();
    for (int i = 1; i <= 3; i++) size.add(round(number(m.group(i)) * unit));
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

  /** A mass in kilograms; a bare number is kilograms. */
  static double massKg(String option, String typed) {
    Matcher m = ONE.matcher(typed);
    if (!m.matches()) throw new InputProblem(option + ": '" + typed + "' is not a mass.", "Such as: 5.6 kg, 850 g, 12 lb.");
    double unit = switch (m.group(2).toLowerCase(Locale.ROOT)) {
      case "", "kg" -> 1;
      case "g" -> 1e-3;
      case "lb", "lbs" -> UsMeasure.POUND_KG;
      case "oz" -> UsMeasure.OUNCE_G / 1e3;
      default -> throw unknownUnit(option, m.group(2), "kg, g, lb or oz");
    };
    return number(m.group(1)) * unit;
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

  private static double number(String digits) {
    return Double.parseDouble(digits.replace(',', '.'));
  }

  /** To a ten-thousandth of a millimetre, so that 45 cm is 450 and not 449.99999999. */
  private static double round(double mm) {
    return Math.rint(mm * 1e4) / 1e4;
  }
}
