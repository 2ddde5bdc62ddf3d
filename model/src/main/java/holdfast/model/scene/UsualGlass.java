package holdfast.model.scene;

import java.util.List;

/**
 * Glass that is usual for a tank's size: common practice, from builders' tables. It warns of thin panes and stands in for
 * panes that nobody has measured; it never vouches for them.
 *
 * <p>24 x 12 x 12 in: 5 mm; 24 to 36 x 18 x 18 in: 8 mm; 24 x 24 x 24 or 48 x 18 x 18 in: 10 mm; larger: 12 mm and more.
 */
public final class UsualGlass {

  /** Inside sizes are given against nominal ones; this much over still counts as the nominal size. */
  private static final double SLACK_MM = 10;

  /** From thin to thick. */
  private static final List<Row> ROWS = List.of(
      new Row(24, 12, 12, 5), new Row(36, 18, 18, 8), new Row(24, 24, 24, 10), new Row(48, 18, 18, 10));

  private static final double LARGER_MM = 12;

  private record Row(double lengthIn, double widthIn, double heightIn, double glassMm) {
    boolean holds(double lengthMm, double widthMm, double heightMm) {
      return lengthMm <= lengthIn * UsMeasure.INCH_MM + SLACK_MM && widthMm <= widthIn * UsMeasure.INCH_MM + SLACK_MM
          && heightMm <= heightIn * UsMeasure.INCH_MM + SLACK_MM;
    }
  }

  private UsualGlass() {}

  /** The usual thickness in millimetres for an inside size; a tank may be turned in plan. */
  public static double forInsideMm(double lengthMm, double widthMm, double heightMm) {
    double a = Math.max(lengthMm, widthMm);
    double b = Math.min(lengthMm, widthMm);
    return ROWS.stream().filter(r -> r.holds(a, b, heightMm)).mapToDouble(Row::glassMm).findFirst().orElse(LARGER_MM);
  }

  /** The thinnest glass, in millimetres, that is usual for the inside which it leaves of an outside size. */
  public static double forOutsideMm(double lengthMm, double widthMm, double heightMm) {
    return ROWS.stream().mapToDouble(Row::glassMm)
        .filter(g -> forInsideMm(lengthMm - 2 * g, widthMm - 2 * g, heightMm - g) <= g).findFirst().orElse(LARGER_MM);
  }
}
