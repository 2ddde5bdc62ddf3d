package holdfast.app.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Lengths as a tape in inches has them: whole inches and sixteenths, since that is what glass, rods, panels and gaps are
 * named and measured in where inches are used. What is less than an eighth, where a sixteenth would be half of it or all,
 * stands in hundredths.
 */
final class Inches {
  /** Parts of an inch that a common tape is marked in (common practice). */
  static final int PARTS = 16;

  /** Inches below which hundredths are told. */
  private static final double LEAST = 2.0 / PARTS;

  private Inches() {}

  /** "1 9/16", "3/8", "12", "0.04"; rounded as its printer says. */
  static String of(double inches, RoundingMode rounding) {
    if (!Double.isFinite(inches)) return Units.fixed(inches, 0, rounding);
    if (Math.abs(inches) < LEAST) return Units.withoutIdleZeros(Units.fixed(inches, 2, rounding));
    // Noise of the conversion first, so that a true inch is one inch rounded down.
    long parts = new BigDecimal(inches * PARTS).setScale(6, RoundingMode.HALF_EVEN).setScale(0, rounding).longValueExact();
    long whole = Math.abs(parts) / PARTS;
    long over = Math.abs(parts) % PARTS;
    long below = PARTS;
    while (over > 0 && over % 2 == 0) {
      over /= 2;
      below /= 2;
    }
    String fraction = over == 0 ? "" : over + "/" + below;
    String together = whole > 0 && over > 0 ? whole + " " + fraction : over > 0 ? fraction : String.valueOf(whole);
    return (parts < 0 ? "-" : "") + together;
  }
}
