package holdfast.engine.statics;

/**
 * Every tolerance of the statics: unit, purpose, warning. Scaled figures are relative to the program's own force (mean
 * weight of a body) and length (mean size of a body).
 */
final class Tolerances {
  // -- cone solver --------------------------------------------------------------------------------------------------

  /** Scaled; largest residual of balance and of motion at which the solver may stop. Below 1e-10 it stalls in rounding. */
  static final double CONE_RESIDUAL = 1e-9;

  /** Relative distance of forces and mechanism for figures that are reported. */
  static final double CONE_GAP = 1e-8;

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
  static final double CORNER_FIRST = 0.15;

  /** How far forces and movement are apart, of the bound, when a push is kept for its neighbours to begin at. */
  static final double CORNER_KEPT = 0.2;

  /** Of a load of length one; what is off by more than rounding is no sum of two others, and would not be in balance. */
  static final double CORNER_PLANE = 1e-13;

  /** Share of the way to the edge of the cone that a step goes. */
  static final double CORNER_STEP_SHARE = 0.97;

  /** Of the products there are; a step aims no higher, and lower as the last one went nearly all the way. */
  static final double CORNER_AIM = 0.25;

  /** Of the products there are; a step aims no lower. */
  static final double CORNER_LEAST_AIM = 1e-4;

  /** Steps of a push at most; 5 to 12 are needed, 25 for a fine bound. */
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

  // -- margins ------------------------------------------------------------------------------------------------------

  /** Share of the force balance's bound at which staying is tried first; nearer than this the contacts hang by rounding. */
  static final double CONFIRM_TOP = 5e-8;

  /** Where the bound itself is not borne, this share of it is tried next: the two limits are often close. */
  static final double CONFIRM_FIRST_CUT = 0.98;

  /** Share; a margin searched more finely than this asks the force balance for its bound first. */
  static final double BOUND_PAYS = 5e-3;

  /** Share of the bound to which a confirmed factor is searched where a figure is asked for. */
  static final double CONFIRM_FINE = 1e-4;

  /** Factors on a load of the size of the weight are not looked for beyond this. */
  static final double FACTOR_CAP = 100;

  /** Relative; loads nearer than this to a multiple of others are that multiple. */
  static final double PROPORTIONAL = 1e-12;

  /** Share of what was asked for below which a glance looks no further: hardly anything is borne there. */
  static final double GLANCE_LEAST = 1e-3;

  /**
   * Shares of a load that must be borne before it is: of some 240 heaps laid at random four have a push that is borne and a
   * smaller one that is not, over a range of a factor of four or a quarter. More of them cost a glance each.
   */
  static final double[] ON_THE_WAY = {0.5, 0.25};

  /** Factor by which the steps of a search grow that goes up from what is borne. */
  static final double CLIMB = 3;

  /** A margin is passed by these factors, one after the other, to see the first movement. */
  static final double[] JUST_BEYOND = {1.02, 1.05, 1.1, 1.2};

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
