package holdfast.engine.motion;

/**
 * The package's tolerances, each with unit, purpose and what happens when it is changed.
 */
final class Tolerances {
  private Tolerances() {}

  // -- the rigid-body engine ----------------------------------------------------------------------------------------

  /**
   * Engine lengths per metre. The engine's own tolerances are made for things of size one; so a stone of ten
   * centimetres is handed over as one unit long. Everything with a length in it is scaled alike, so motion is the same.
   * Warning: single precision leaves 2e-7 m at two metres; a larger scale gains nothing.
   */
  static final double UNITS_PER_M = 10;

  /** Engine units: how near shapes must be for contacts to be made between them, 1 mm. Larger: false contacts round corners. */
  static final float CONTACT_OFFSET = 0.01f;

  /** Engine units, relative plane distance at which the engine merges faces; its default of 7e-4 moves faces by up to 0.07 mm. */
  static final float COOKING_PLANE = 1e-5f;

  /** Engine units a second: fastest push apart of overlapping shapes, 0.1 m/s, so that an overlap does not fling stones. */
  static final float DEPENETRATION_SPEED = 1f;

  /**
   * Share by which a loose stone of a heap is made smaller for the engine, times one to {@link #UNLIKE_SIZES}: at most half a
   * micrometre on a stone of 10 cm, some ten last digits of the engine's numbers. Warning: without it two boxes of exactly the
   * same width rock by millimetres when they are set flush.
   */
  private static final double UNLIKE = 1e-6;

  private static final int UNLIKE_SIZES = 5;

  /** The size at which body number {@code i} of a heap is handed over: no two neighbours keep exactly the same. */
  static double unlikeSize(int i) {
    return 1 - UNLIKE * (1 + i % UNLIKE_SIZES);
  }

  // -- settling and polish ------------------------------------------------------------------------------------------

  /** Metres: hover and overlap that settling promises to stay under. */
  static final double REST_M = 2e-4;

  /** Metres: features nearer than this are kept apart in one step of the polish. Larger than a step can move. */
  static final double NEAR_M = 3e-3;

  /** Metres: the farthest the polish moves in one linear step; a turn's second-order error is this squared over the size. */
  static final double POLISH_STEP_M = 2e-4;

  /** Metres: the polish has converged when no point moves farther than this in a step. */
  static final double POLISH_DONE_M = 1e-9;

  /** Metres: two lobes touch when their gap is at most this after polishing. */
  static final double TOUCH_M = 1e-6;
}
