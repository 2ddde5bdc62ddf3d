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

  /** Most elements along one side of the mesh that carries a bedded pane's free edges, but for the shorter ones at its ends. */
  static final int MOST_ELEMENTS = 56;

  /** Fewest elements along a side: a pane that is short against its characteristic length still bends smoothly. */
  static final int LEAST_ELEMENTS = 4;

  /** Longest element of that mesh, in characteristic lengths of the pane. Warning: over 0.4 deflections by an edge suffer. */
  static final double ELEMENT_LENGTHS = 0.33;

  /** The same of a mesh for one load: elements may be longer where it is far off. */
  static final double OWN_ELEMENT_LENGTHS = 0.6;

  /** Length of an element over its distance from an end of the pane or from the patch. Warning: at 0.7 moments lose 0.15 %. */
  static final double ELEMENT_SHARE = 0.6;

  /** Closer to an end of the pane than so many characteristic lengths, elements get no shorter. */
  static final double END_LENGTHS = 0.25;

  /** The same closer to a patch, or to the edge it lies at, than this share of its extent. */
  static final double PATCH_SHARE = 0.25;

  /** The same for a patch of no size, in characteristic lengths; the smallest that is asked for is five times as large. */
  static final double LEAST_REACH_LENGTHS = 0.003;

  /** A patch within this many characteristic lengths of an edge gets a mesh of its own. Warning: at 0.35 moments lose 0.2 %. */
  static final double OWN_MESH_LENGTHS = 0.5;

  /** A load closer than this share of an element to it peaks between the element's Gauss points. */
  static final double CLOSE_ELEMENTS = 0.5;

  /** Shortest panel over which such a peak is summed, in elements: what a peak is worth within it is next to nothing. */
  static final double LEAST_PANEL = 1e-4;

  /** Each panel ends this many times as far from the load as it begins. */
  static final double PANEL_RATIO = 3;

  /** Radius, in characteristic lengths, under which a patch sinks the pane as a point does; off by about 0.7 of its square. */
  static final double POINT_LENGTHS = 0.03;

  /** Loads on a pane on foam that are kept in case they come back. */
  static final int LOADS_KEPT = 128;

  /**
   * Nodes of a net, at most, for which it is kept what a newton there leaves along the outline of a pane on foam; 10 to 30 KB
   * each. A report's own net and map have fewer.
   */
  static final int NEWTONS_KEPT = 1000;

  /** A patch closer to a free edge than this many characteristic lengths is mirrored in it, which evens out what is left. */
  static final double MIRROR_LENGTHS = 0.75;

  /** Relative slack when the ranges of foot forces are held against the weight. */
  static final double WEIGHT_SHARE = 1e-3;

  /** The refined place of the greatest stress is found to this length, metres. */
  static final double PLACE_M = 3e-4;

  private Tolerances() {}
}
