package holdfast.engine.verification;

import java.util.Locale;

/**
 * One figure or verdict known from outside, beside ours.
 *
 * @param group heading of the table that it stands in
 * @param name what was asked
 * @param source where the expected value comes from
 * @param grade how well the source is known
 * @param expected the expected value as printed
 * @param ours what came out, to the digits that the tolerance makes worth printing
 * @param difference ours less expected, to the same digits; empty for verdicts
 * @param tolerance what difference is allowed; empty for verdicts
 * @param reason why so much
 * @param holds ours is within the tolerance
 */
record Row(
    String group, String name, String source, Grade grade, String expected, String ours, String difference,
    String tolerance, String reason, boolean holds) {

  /** How well a source is known. */
  enum Grade {
    /** A printed figure, seen in the source or in a stated copy. */
    PUBLISHED("published"),
    /** A printed figure recalled. */
    MEMORY("memory"),
    /** An exact or numeric derivation, given in a line. */
    DERIVED("derived");

    private final String word;

    Grade(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /** Where values come from, said once for a family of rows. */
  record Source(String group, String text, Grade grade) {
    /** A figure that must be met within {@code tolerance}, absolute. */
    Row figure(String name, double expected, double ours, double tolerance, String reason) {
      int digits = Math.max(5, (int) Math.ceil(-Math.log10(tolerance)) + 1);
      double off = ours - expected;
      boolean holds = Math.abs(off) <= tolerance;
      // What rounds to nothing is printed without a sign, so that the page does not depend on the last bit.
      double shown = Math.abs(off) < 0.5 * Math.pow(10, -digits) ? 0 : off;
      return new Row(group, name, text, grade, number(expected, digits), number(ours, digits), number(shown, digits),
          String.format(Locale.ROOT, "%.0e", tolerance), reason, holds);
    }

    /** A verdict in words that must be the same. */
    Row verdict(String name, String expected, String ours) {
      return new Row(group, name, text, grade, expected, ours, "", "", "", expected.equals(ours));
    }
  }

  private static String number(double v, int digits) {
    return String.format(Locale.ROOT, "%." + digits + "f", v);
  }
}
