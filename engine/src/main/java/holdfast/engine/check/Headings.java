package holdfast.engine.check;

import holdfast.model.geom.Vec3;

/** Directions in words, as seen from the front of the tank. */
public final class Headings {
  private static final String[] WORDS = {
    "right", "back-right", "back", "back-left", "left", "front-left", "front", "front-right"
  };

  private Headings() {}

  /** The nearest of eight words to a direction in degrees, 0 to the right, 90 to the back. */
  public static String word(double degrees) {
    int eighth = (int) Math.floorMod(Math.round(degrees / 45), 8L);
    return WORDS[eighth];
  }

  /** The same for the horizontal part of a vector. */
  static String word(Vec3 v) {
    return word(Math.toDegrees(Math.atan2(v.y(), v.x())));
  }
}
