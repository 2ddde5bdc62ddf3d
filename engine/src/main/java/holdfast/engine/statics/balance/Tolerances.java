package holdfast.engine.statics.balance;

/**
 * Every tolerance of the force balance: unit, purpose, warning. Scaled figures are relative to the program's own force (mean
 * weight of a body) and length (mean size of a body).
 */
final class Tolerances {
  // -- cone solver --------------------------------------------------------------------------------------------------

  /** Scaled; largest residual of balance and of motion at which the solver may stop. Below 1e-10 it stalls in rounding. */
  static final double CONE_RESIDUAL = 1e-9;

  /** Relative distance of forces and mechanism for figures that are reported. */
  static final double CONE_GAP = 1e-8;

  /** A step shorter than this makes no progress. */
  static final double PATH_LEAST_STEP = 1e-9;

  /** Relative to the largest entry; added to the diagonal of the equations, taken back by refinement. */
  static final double PATH_REGULAR = 1e-15;

  // -- corners ------------------------------------------------------------------------------------------------------

  /**
   * Largest push of a corner, over all that the heap may be loaded by. Corners that lock against each other push as hard as
   * they are allowed to; nothing else comes near it. Much larger, and the digits of the locked ones are lost.
   */
  static final double CORNER_MOST = 1e3;

  /** Share of a corner's scaling below which that largest push is left out of it; a step is then exact but for that share. */
  static final double CORNER_CAPPED = 1e-6;

  /** Steps to the centre at most; 8 to 20 are needed. */
  static final int CORNER_CENTRE_STEPS = 60;

  /** Share of the way to the edge of the cone that a step to the centre goes. */
  static final double CORNER_CENTRE_SHARE = 0.9;

  /** What a movement is missing of the beginning, of 1, below which it is missing nothing. */
  static final double CORNER_NOTHING = 1e-14;

  /** Scaled; residual at which the centre is balanced. */
  static final double CORNER_BALANCED = 1e-9;

  /** Difference of any product from one at which the centre is found. */
  static final double CORNER_CENTRED = 0.3;

  /** Products at which a push begins, over its reach in the centre's own measure. */
  static final double CORNER_FIRST = 0.25;

  /** How far forces and movement are apart, of the bound, when a push is kept for its neighbours to begin at. */
  static final double CORNER_KEPT = 0.2;

  /** Of a load of length one; what is off by more than rounding is no sum of two others, and would not be in balance. */
  static final double CORNER_PLANE = 1e-13;

  /** Share of the way to the edge of the cone that a step goes. */
  static final double CORNER_STEP_SHARE = 0.97;

  /** Of the products there are; a step aims no higher, and lower as the last one went nearly all the way. */
  static final double CORNER_AIM = 0.08;

  /** Of the products there are; a step aims no lower. */
  static final double CORNER_LEAST_AIM = 1e-4;

  /** How often the products of a step are evened: each time costs a solution, an eighth of a step; a third spares no more. */
  static final int CORNER_EVENINGS = 2;

  /** Shares of a whole step, of forces times movements; one that goes farther is not evened. */
  static final double CORNER_FAR = 0.9;

  /** Of a whole step; how far beyond the edge it is seen which products have run away. */
  static final double CORNER_BEYOND = 0.4;

  /** Steps of a push at most; 3 to 9 are needed, 25 for a fine bound. */
  static final int CORNER_STEPS = 60;

  /** A path may go past what is asked by this factor, so that what is borne is seen to be. */
  static final double CORNER_PAST_CAP = 1.1;

  /** Share of a width at which a bound is worked out anew: what the path reads off is off by rounding. */
  static final double BOUND_READ = 0.999;

  /** Largest unknown of a bond or rod over its largest strength, for steep gradients of stress; only rounding is multiplied. */
  static final double FASTENED_REACH = 1e3;

  /** Relative width of a bound that is told. */
  static final double BOUND_COARSE = 1e-2;

  /** The same where staying is then searched finely. */
  static final double BOUND_FINE = 5e-8;

  /** Of the mean weight of a body; bounds below this are told absolutely, to the same share of it. */
  static final double BOUND_FLOOR = 1e-3;

  // -- force balance ------------------------------------------------------------------------------------------------

  /** Relative to the load; largest residual of a balance that is believed when recomputed in newtons. */
  static final double BALANCE_RESIDUAL = 1e-6;

  /** Relative to the friction limit; how far a recomputed force may lie outside its cone. */
  static final double BALANCE_CONE = 1e-6;

  /** Relative change of a margin at which the centres of pressure have settled, where a figure is asked for. */
  static final double PRESSURE_FINE = 1e-6;

  /** Rounds in which centres of pressure may settle; 1 where no twist acts, 2 to 6 elsewhere. */
  static final int PRESSURE_ROUNDS = 12;

  /** Share of a joint's friction; a twist below it does not depend on where the centre of pressure is. */
  static final double TWIST_IDLE = 1e-7;

  // -- what is certain not to hold --------------------------------------------------------------------------------------

  /**
   * Share by which friction and strengths are counted too high before it is called certain that nothing holds. It covers how
   * far forces at rest may exceed their limits, REST_CONE and what is let through of shear with twist; below that, certain is
   * not certain.
   */
  static final double CERTAIN_SPARE = 1e-2;

  /**
   * Of the mean weight of a body; forces that balance all but this much would be missed, so it must be far above what is left
   * out of balance at rest, REST_ACCELERATION and SUPERPOSED_BALANCE.
   */
  static final double CERTAIN_UNBALANCE = 1e-4;

  private Tolerances() {}
}
