package holdfast.engine.check;

import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.State;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** A finding being written. */
final class Draft {
  /**
   * In units of the last digit told: a figure this near to the next digit is that digit, less the rounding of the numbers.
   * Warning: much more would tell a margin above what was found.
   */
  private static final double ROUNDING = 1e-6;

  private final Code code;
  private final Severity severity;
  private final List<String> about = new ArrayList<>();
  private OptionalDouble figure = OptionalDouble.empty();
  private OptionalDouble limit = OptionalDouble.empty();
  private String unit = "";
  private Optional<State> state = Optional.empty();
  private Optional<Mechanism> mechanism = Optional.empty();

  private Draft(Code code, Severity severity) {
    this.code = code;
    this.severity = severity;
  }

  static Draft fail(Code code) {
    return new Draft(code, Severity.FAIL);
  }

  static Draft warn(Code code) {
    return new Draft(code, Severity.WARN);
  }

  static Draft note(Code code) {
    return new Draft(code, Severity.NOTE);
  }

  Draft about(String... names) {
    about.addAll(List.of(names));
    return this;
  }

  Draft about(List<String> names) {
    about.addAll(names);
    return this;
  }

  Draft figure(double value, double against, String in) {
    figure = Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    limit = Double.isNaN(against) ? OptionalDouble.empty() : OptionalDouble.of(against);
    unit = in;
    return this;
  }

  Draft in(State s) {
    state = Optional.of(s);
    return this;
  }

  /** How it begins to move; a twist for each rock of the scene. */
  Draft moving(Optional<Mechanism> m) {
    mechanism = m;
    return this;
  }

  Finding say(String sentence, String remedy) {
    return new Finding(code, severity, about, figure, limit, unit, state, sentence, remedy, mechanism);
  }

  /** Text with figures, in the same way everywhere in the world. */
  static String text(String format, Object... parts) {
    return String.format(Locale.ROOT, format, parts);
  }

  /** Rounded down to a tenth: a margin is never told greater than it was found. */
  static double down(double margin) {
    return Math.floor(margin * 10 + ROUNDING) / 10;
  }

  /** Rounded up to a tenth: a load or a stress is never told smaller than it is. */
  static double up(double load) {
    return Math.ceil(load * 10 - ROUNDING) / 10;
  }

  /** Rounded down to a whole one: a gap is never told wider than it is. */
  static double wholeDown(double figure) {
    return Math.floor(figure + ROUNDING);
  }

  /** Rounded up to a whole one: what is to be moved is never told shorter than it must be. */
  static double wholeUp(double figure) {
    return Math.ceil(figure - ROUNDING);
  }

  /** A figure as the scene gives it, to a thousandth and without idle zeros: 20, 7.5. What was asked is not told as more. */
  static String plain(double figure) {
    return BigDecimal.valueOf(figure).setScale(3, RoundingMode.FLOOR).stripTrailingZeros().toPlainString();
  }

  /** Names in a row: a; a and b; a, b and c. */
  static String names(List<String> names) {
    if (names.size() < 2) return String.join("", names);
    return String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
  }
}
