package holdfast.engine.statics.solver;

/**
 * Every tolerance of the cone programs: unit, purpose, warning. Scaled figures are relative to the program's own force
 * and length, of size one.
 */
final class Tolerances {
  // -- cone solver --------------------------------------------------------------------------------------------------

  /** Scaled; objectives smaller than this are compared absolutely. */
  static final double CONE_GAP_FLOOR = 1e-3;

  /** Relative; how far from exact a mechanism may be that proves that no forces exist. Looser calls standing heaps falling. */
  static final double CONE_CERTIFICATE = 1e-8;

  /** Where rounding stops the solver early, tolerances this many times as wide are let through, and recomputed. */
  static final double CONE_NEARLY = 500;

  /** Steps without progress, once nearly there, after which the solver stops. */
  static final int CONE_WORSE_STEPS = 3;

  /** Steps before the solver gives up; it needs 8 to 25. */
  static final int CONE_STEPS = 80;

  /** Share of the way to the edge of the cone that a step goes. */
  static final double CONE_STEP_SHARE = 0.985;

  /** A step shorter than this makes no progress. */
  static final double CONE_LEAST_STEP = 1e-9;

  /** Relative; how deep inside the cone the start lies. */
  static final double CONE_START = 1e-2;

  /** Relative to the largest entry; added to the diagonal of the equations, taken back by refinement. */
  static final double CONE_REGULAR = 1e-15;

  /** Relative; a pivot of a link's own block that has cancelled to less than this is replaced. */
  static final double CONE_SMALL_PIVOT = 1e-14;

  /** Rounds of refinement of a linear solve at most. */
  static final int CONE_REFINEMENTS = 4;

  /** Relative; a linear solve this exact is not refined further when the end is near. */
  static final double CONE_REFINED = 1e-12;

  /** The same far from the end, where a direction need not be exact. */
  static final double CONE_REFINED_LEAST = 1e-6;

  private Tolerances() {}
}
