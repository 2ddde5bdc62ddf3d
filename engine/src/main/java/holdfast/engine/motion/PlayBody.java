package holdfast.engine.motion;

import java.util.Objects;

/**
 * A body to be played, with its weights in and out of the water.
 *
 * @param body its mass is all that has to be set in motion: stone, pore water and, under water, the added mass
 * @param weightAboveN weight out of the water, pores full (or dry, when there is no water)
 * @param weightUnderN weight under water
 * @param frontalAreaM2 area that the drag acts on
 */
public record PlayBody(MotionBody body, double weightAboveN, double weightUnderN, double frontalAreaM2) {
  public PlayBody {
    Objects.requireNonNull(body);
    if (!Double.isFinite(weightAboveN) || !Double.isFinite(weightUnderN)) {
      throw new IllegalArgumentException("weights must be finite, were " + weightAboveN + " and " + weightUnderN);
    }
    if (!(frontalAreaM2 >= 0)) throw new IllegalArgumentException("frontalAreaM2 must be 0 or more, was " + frontalAreaM2);
  }

  /** A body in air: its weight is its mass times g. */
  public static PlayBody dry(MotionBody body) {
    double w = body.massKg() * Gravity.G;
    return new PlayBody(body, w, w, 0);
  }

  public String name() {
    return body.name();
  }
}
