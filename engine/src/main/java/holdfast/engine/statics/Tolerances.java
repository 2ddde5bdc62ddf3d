package holdfast.engine.statics;

/** Every tolerance of judgements and margins: unit, purpose, warning. */
final class Tolerances {
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
   * Times what the least of many cases is seen at a glance not to bear: what bears more than this at a glance is clear of
   * the least. A glance grants a little less friction than there is, and the least comes out higher by that; where it comes
   * out higher than this, the others are asked once more.
   */
  static final double GLANCE_CLEAR = 1.025;

  /**
   * Shares of a load that must be borne before it is: of some 240 heaps laid at random four have a push that is borne and a
   * smaller one that is not, over a range of a factor of four or a quarter. More of them cost a glance each.
   */
  static final double[] ON_THE_WAY = {0.5, 0.25};

  /** Factor by which the steps of a search grow that goes up from what is borne. */
  static final double CLIMB = 3;

  /** A margin is passed by these factors, one after the other, to see the first movement. */
  static final double[] JUST_BEYOND = {1.02, 1.05, 1.1, 1.2};

  private Tolerances() {}
}
