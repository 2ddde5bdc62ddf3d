package holdfast.app.view;

import holdfast.app.view.draw.Scale;
import holdfast.engine.motion.Disturbance;

/** The strength of a bump as people can imagine it. */
final class BumpWords {
  /** How hard an arrow of one metre hits, newton seconds. */
  static final double NS_PER_METRE = 4;

  /** A fish that bumps into a rock at an ordinary pace. */
  private static final double FISH_SPEED_M_S = 1;

  private BumpWords() {}

  /** The strength in newton seconds, and as a fish whose momentum that is, the water it carries along included. */
  static String inWords(double impulseNs) {
    double kg = impulseNs / FISH_SPEED_M_S / Disturbance.FISH_ADDED;
    String fish = kg < 0.995 ? Scale.number(Math.max(10, Math.round(kg * 100) * 10), 0) + " g" : Scale.number(kg, 1) + " kg";
    return Scale.number(impulseNs, 2) + " N s: a " + fish + " fish at 1 m/s";
  }
}
