package holdfast.engine.statics.rest;

/**
 * Every tolerance of rest: unit, purpose, warning. Scaled figures are relative to the heap's own force (mean weight of a
 * body) and length (mean size of a body).
 */
final class Tolerances {
  // -- staying ------------------------------------------------------------------------------------------------------

  /** Tangential over normal stiffness of a contact; between 2/3 and 1 for like bodies (Mindlin 1949). */
  static final double REST_SHEAR_STIFFNESS = 0.8;

  /**
   * Stiffness of a glued rod along its axis over that of a contact. The stones bear on each other before the glue cures, so
   * the rod takes next to none of the weight; as stiff as the contact it would take half of it, and half the friction with
   * it. What it takes when the joint opens does not depend on this. Much lower, and the numbers suffer.
   */
  static final double REST_ROD_PULL_STIFFNESS = 0.01;

  /**
   * Share of its friction that a heap at rest keeps while it is nudged. What slides may come to rest on a trace of shear
   * across its way, worth up to 0.1 % of friction in the wedge of two planes; a nudge this large lets go of it.
   */
  static final double NUDGE_FRICTION = 0.998;

  /** Inertia over stiffness of a nudge: what slips under it goes about ten static compressions a step. */
  static final double NUDGE_INERTIA = 1e-4;

  /** Steps of a nudge. */
  static final int NUDGE_STEPS = 2;

  /** Inertia over stiffness of a superposition: what only it holds is not held. */
  static final double SUPERPOSED_INERTIA = 1e-14;

  /** Arm of a twist over the mean distance of the patch, below which it is rounding: the push is gathered in one corner. */
  static final double NO_ARM = 1e-9;

  /**
   * Share of its friction up to which a patch is asked what twist goes with a shear; beyond, the arm stays as it is there.
   * Nearer to one the twist and what it is measured against both vanish.
   */
  static final double MOST_SHEAR = 0.999;

  /** Share by which a centre of pressure is drawn in to the middle of its patch when a twist is asked for. */
  static final double TWIST_DRAWN_IN = 1e-6;

  /** Over the reach of the patch; gap between forces and sliding at which a twist is known. Taken off. */
  static final double TWIST_GAP = 1e-6;

  /** An arm this many times as long as a twist needs is long enough, rounding or not. */
  static final double TWIST_SPARE = 1.001;

  /** Share by which a superposition may take an arm too short: a no of it says nothing. */
  static final double TWIST_ROUGH = 0.01;

  /** Weight of the objective at the first point of the central path. */
  static final double TWIST_BEGIN = 30;

  /** Factor from one point of the central path to the next. */
  static final double TWIST_PATH = 10;

  /** Newton decrement at which a point of the path is found: further steps change the answer by its square. */
  static final double TWIST_CENTRED = 1e-5;

  /** The same for points on the way. */
  static final double TWIST_NEARLY = 0.5;

  /** Newton steps to a point of the path at most; 5 to 10 are needed. */
  static final int TWIST_NEWTON = 40;

  /** Share of a diagonal entry under which a pivot is rounding. */
  static final double TWIST_FREE = 1e-13;

  /**
   * Share of its friction that a superposition counts on. Close to a limit the way there matters, and its way is shorter
   * than that of time steps: what it says is borne must be borne with friction to spare.
   */
  static final double SUPERPOSED_FRICTION = 0.99;

  /** Newton steps of a superposition, before the answer is left to the long way. */
  static final int SUPERPOSED_NEWTON = 20;

  /** Places up to which a superposition solves for their forces; beyond, for the movements of the bodies. */
  static final int SUPERPOSED_DENSE = 20;

  /** First Newton steps of a superposition that take the centres of pressure along. */
  static final int SUPERPOSED_AIMS = 4;

  /** Times that a Newton step of a superposition is halved. */
  static final int SUPERPOSED_HALVINGS = 5;

  /** Steps in which the centres of pressure of a superposition settle. */
  static final int SUPERPOSED_STEPS = 20;

  /** Relative to the mean weight; what is out of balance when a superposition is found. */
  static final double SUPERPOSED_RESIDUAL = 1e-7;

  /** The same below which steps with the equations of the last one are tried. */
  static final double SUPERPOSED_CHORD = 5e-3;

  /** Share to which such a step must bring what is out of balance down to be worth another. */
  static final double SUPERPOSED_CHORD_PAYS = 0.2;

  /** The same while the centres of pressure still settle. */
  static final double SUPERPOSED_NEARLY = 1e-2;

  /** Relative to the largest load; residual of the forces on any body, put together anew, at which one is believed. */
  static final double SUPERPOSED_BALANCE = 1e-6;

  /** Least mean distance of a patch from a point, over that from its centroid; 0.97 in triangles, 1 in squares. */
  static final double ELASTIC_ARM = 0.95;

  /**
   * Stiffnesses of contacts are drawn between this and one over it. A few high points or a face make as much; with 3 half as
   * many of the heaps were seen that a 3D engine drops, and of those that it keeps none were seen with either.
   */
  static final double STIFFNESS_SPREAD = 10;

  /** Draws of stiffnesses for a heap in which a contact has slipped. */
  static final int STIFFNESS_DRAWS = 32;

  /** Share of its friction limit from which a contact at rest counts as one that slipped. */
  static final double NUDGE_AT = 0.998;

  /** Inertia over stiffness in the first step: about one static compression a step. */
  static final double REST_FIRST_INERTIA = 1;

  /** Inertia over stiffness is not lowered past this; a body that still moves then has gone a million compressions. */
  static final double REST_LEAST_INERTIA = 1e-9;

  /** Factor by which inertia falls after a step that went well. */
  static final double REST_SPEED_UP = 0.1;

  /** In g; what accelerates less than this is at rest. Above 1e-6 slow collapses pass for rest. */
  static final double REST_ACCELERATION = 1e-8;

  /** In g; what accelerates more than this goes far and does not calm down falls, long before the steps are longest. */
  static final double FALL_PLAINLY = 1e-3;

  /** Static compressions; who goes this far in one step, and on and on, falls. Coming to rest takes a few in all. */
  static final double FALL_FAR = 20;

  /** In g; what accelerates more than this, and does not calm down, falls. Between the two nothing is concluded. */
  static final double FALL_ACCELERATION = 1e-6;

  /** Steps, each ten times as long as the one before, in which a fall does not calm down. */
  static final int FALL_STEPS = 2;

  /** Relative to the mean weight; centres of pressure that shift moments less than this have settled. */
  static final double REST_CENTRE = 1e-8;

  /** Time steps before nothing is concluded. */
  static final int REST_STEPS = 100;

  /** Newton steps in one time step. Longer attempts pay less than a shorter time step. */
  static final int REST_NEWTON = 25;

  /** Newton steps of a first attempt with the longest step of all. */
  static final int REST_LEAP = 6;

  /** Rounds in which limits are held, to find a beginning for Newton's method. */
  static final int REST_LAGGED = 4;

  /** Times that a Newton step is halved before no step is found. */
  static final int REST_HALVINGS = 7;

  /** Factor by which inertia grows where no step was found. */
  static final double REST_SLOW_DOWN = 30;

  /** Steps not found before nothing is concluded. */
  static final int REST_FAILURES = 12;

  /** Inertia over stiffness in the first step from a heap at rest under another load. */
  static final double REST_NEXT_INERTIA = 1e-3;

  /** Relative to the mean weight; residual at which a step is found. */
  static final double REST_RESIDUAL = 1e-11;

  /**
   * Relative to the acceleration in a time step; residual that will do while bodies go on moving. They go so far in the long
   * steps that rounding alone leaves more than {@link #REST_RESIDUAL}. What comes to rest no longer accelerates and is found as
   * finely as that.
   */
  static final double MOVING_RESIDUAL = 1e-4;

  /** Relative to the mean weight; residual of a time step where only a fall is looked for. */
  static final double NO_FALL_RESIDUAL = 1e-7;

  /**
   * In g; what accelerates less than this where only a fall is looked for has not fallen. A fall accelerates a thousand times
   * as much or does not calm down.
   */
  static final double NO_FALL_ACCELERATION = 1e-6;

  /** Relative to the mean weight; the same for what centres of pressure still shift. */
  static final double NO_FALL_CENTRE = 1e-3;

  /** Relative to the limit; how far a force at rest may exceed its friction or its bond when recomputed. */
  static final double REST_CONE = 1e-6;

  private Tolerances() {}
}
