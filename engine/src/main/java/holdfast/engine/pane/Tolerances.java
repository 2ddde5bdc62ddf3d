package holdfast.engine.pane;

/** The numbers of this package that trade accuracy for time, or tell equal from unequal. */
final class Tolerances {
  /** Images of a load farther off than this over its strip's width times pi are left out: exp(-18) = 1.5e-8. */
  static final double IMAGE_REACH = 18;

  /** Nearer to a patch than this many of its radii its logarithmic core is integrated exactly. */
  static final double NEAR_RADII = 2;

  /** Radius of a patch over the distance it is seen from, under which one point does. The error is a quarter of its square. */
  static final double TINY_SHARE = 0.1;

  /** The same for four points with the patch's moments; the error goes with the fourth power. */
  static final double SMALL_SHARE = 0.35;

  /** The same for seven points, exact to the fifth degree on an ellipse. Nearer, every side of the polygon gets its own. */
  static final double MEDIUM_SHARE = 0.8;

  /** Distance, metres, at which a smooth field is asked beside a point of its source instead of on it. */
  static final double BESIDE_M = 1e-8;

  /** Squared distance, m2, below which a place counts as lying on a patch's corner; only keeps logarithms finite. */
  static final double SAME_POINT_M2 = 1e-18;

  /** Terms of the double sine series for deflection across the pane's shorter side. Error falls with the square. */
  static final int DEFLECTION_TERMS = 40;

  /** Most elements along one side of the mesh that carries the free edges of a bedded pane. */
  static final int MOST_ELEMENTS = 56;

  /** Fewest elements along a side: a pane that is short against its characteristic length still bends smoothly. */
  static final int LEAST_ELEMENTS = 14;

  /** Elements of that mesh to one characteristic length of pane on foam. Warning: under 1.5 edge moments lose percents. */
  static final double ELEMENTS_PER_LENGTH = 4;

  /** A load closer to a free edge than this many characteristic lengths is mirrored in it, which evens out what is left. */
  static final double MIRROR_LENGTHS = 0.75;

  /** Relative slack when the ranges of foot forces are held against the weight. */
  static final double WEIGHT_SHARE = 1e-3;

  /** The refined place of the greatest stress is found to this length, metres. */
  static final double PLACE_M = 3e-4;

  private Tolerances() {}
}
