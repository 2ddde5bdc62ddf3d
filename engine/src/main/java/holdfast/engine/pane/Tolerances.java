package holdfast.engine.pane;

/** The numbers of this package that trade accuracy for time, or tell equal from unequal. */
final class Tolerances {
  /** An image of a load that adds less than this share of one newton's moment (N m/m per N) ends the row of images. */
  static final double IMAGE_SHARE = 1e-7;

  /**
   * Farther from a patch than this many of its radii, the patch acts through four points with its area and moments.
   * Warning: below 2 the field next to the patch is off by percents.
   */
  static final double FAR_RADII = 5;

  /** Farther than this many radii, one point at the centroid does. Warning: the error is (radius / 2 distance)^2. */
  static final double VERY_FAR_RADII = 12;

  /** A patch whose radius is under this share of its distance to the pane's edge needs only four points for its images. */
  static final double SMALL_BY_EDGE = 0.3;

  /** The same, where one point does for what the edges add; the error of that part is (radius / 2 distance)^2. */
  static final double TINY_BY_EDGE = 0.1;

  /** Squared distance, m2, below which a field point counts as lying on a source point; only keeps logarithms finite. */
  static final double SAME_POINT_M2 = 1e-18;

  /** Terms of the double sine series for deflection across the pane's shorter side. Error falls with the square. */
  static final int DEFLECTION_TERMS = 48;

  /** Most elements along one side of the mesh that carries the free edges of a bedded pane. */
  static final int MOST_ELEMENTS = 40;

  /** Elements of that mesh to one characteristic length of pane on foam. Warning: under 1.5 edge moments lose percents. */
  static final double ELEMENTS_PER_LENGTH = 2;

  /** A load closer to a free edge than this many characteristic lengths is mirrored in it, which evens out what is left. */
  static final double MIRROR_LENGTHS = 1.5;

  /** Relative slack when the ranges of foot forces are held against the weight. */
  static final double WEIGHT_SHARE = 1e-3;

  /** The refined place of the greatest stress is found to this length, metres. */
  static final double PLACE_M = 2e-4;

  private Tolerances() {}
}
