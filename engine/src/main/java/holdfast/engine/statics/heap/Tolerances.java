package holdfast.engine.statics.heap;

/** Every tolerance of heaps and loads: unit, purpose, warning. */
final class Tolerances {
  // -- margins ------------------------------------------------------------------------------------------------------

  /** Of the fastest point; what moves slower than this is carried along by the give of the contacts. */
  static final double MOVES_AT_ALL = 0.02;

  /** Tilting speed of the rim over speed of the centre; above it a movement is a topple. */
  static final double SLIDE_TILT = 0.1;

  // -- from a scene ---------------------------------------------------------------------------------------------------

  /** Metres; a rock that ends this little above the sand still rests on it. Sand is laid by hand to no better than this. */
  static final double SAND_REACH_M = 3e-3;

  /** Metres; corners of a foot on sand that are nearer than this are one. Far below a grain; larger eats small feet. */
  static final double SAND_WELD_M = 1e-6;

  /** Square metres; a bonded patch smaller than a few square millimetres is not counted. */
  static final double LEAST_BOND_M2 = 4e-6;

  private Tolerances() {}
}
