package holdfast.app.view;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Scale;
import holdfast.engine.motion.Disturbance;
import holdfast.model.scene.UsMeasure;
import java.math.RoundingMode;

/** The strength of a bump as people can imagine it. */
final class BumpWords {
  /** How hard an arrow of one metre hits, newton seconds. */
  static final double NS_PER_METRE = 4;

  /** A fish that bumps into a rock at an ordinary pace. */
  private static final double FISH_SPEED_M_S = 1;

  /** Exact (NIST SP 811, B.8). */
  private static final double OZ_PER_LB = 16;

  private BumpWords() {}

  /** The strength in newton seconds, and as a fish whose momentum that is, the water it carries along included. */
  static String inWords(double impulseNs, Units units) {
    double kg = impulseNs / FISH_SPEED_M_S / Disturbance.FISH_ADDED;
    if (units == Units.US) {
      double lb = Quantity.MASS.in(units, kg);
      String fish = lb < 0.995 ? Scale.number(Math.max(0.5, lb * OZ_PER_LB), 1) + " oz" : Scale.number(lb, 1) + " lb";
      return units.text(Quantity.IMPULSE, impulseNs, RoundingMode.HALF_EVEN) + ": a " + fish + " fish at "
          + Scale.number(FISH_SPEED_M_S / UsMeasure.FOOT_M, 1) + " ft/s";
    }
    String fish = kg < 0.995 ? Scale.number(Math.max(10, Math.round(kg * 100) * 10), 0) + " g" : Scale.number(kg, 1) + " kg";
    return Scale.number(impulseNs, 2) + " N s: a " + fish + " fish at 1 m/s";
  }
}
