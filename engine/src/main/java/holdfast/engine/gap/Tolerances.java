package holdfast.engine.gap;

/** Lengths of this package. */
public final class Tolerances {
  /** Metres. Cell of the reach maps. Smaller is sharper and slower; larger calls more of the pane unreachable (safe). */
  public static final double REACH_CELL_M = 0.005;

  /** Metres. Distance of the plumb lines that sample growing room; what is narrower can be missed. */
  public static final double PLUMB_M = 0.005;

  /** Plumb lines along the longer side of a rock at least, however small it is. */
  static final int LEAST_PLUMB_LINES = 20;

  /** Metres. A rock this near to a living one bears on it and is no roof over it. */
  static final double BEARS_M = 1e-3;

  /** Metres. Rounding of coordinates: two lengths that differ by less are the same. */
  static final double ROUNDING_M = 1e-9;

  private Tolerances() {}
}
