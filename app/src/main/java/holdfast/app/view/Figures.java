package holdfast.app.view;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;

/** A figure of a finding with its unit, in the units that people chose. */
final class Figures {
  private Figures() {}

  static String of(double value, String unit, Units units) {
    return Quantity.ofUnit(unit).map(q -> units.brief(q, value))
        .orElseGet(() -> Units.plain(Math.rint(value * 100) / 100) + (unit.isBlank() ? "" : " " + unit));
  }
}
