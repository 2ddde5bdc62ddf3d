package holdfast.engine.contact;

/**
 * The lengths and ratios below which this package treats things as equal. Ratios are "of size": of the largest distance
 * between two corners of the smaller body.
 */
public final class Tolerances {
  /** Metres. Two lobes this near bear on each other, however small. Raising it joins rocks that do not touch. */
  public static final double JOINT_FLOOR_M = 0.3e-3;

  /** Of size. The same for large rocks: a thousandth. Raising it joins rocks that do not touch. */
  public static final double JOINT_SHARE = 1e-3;

  /**
   * Of size. The patch is where the gap exceeds the least gap by no more than this: for a cube about 5e-4 of its side,
   * 0.05 mm on 100 mm, well under the roughness of sawn stone. A tilt of {@code a} then shows as a strip
   * {@code patch / tan a} wide, so half a degree under a 100 mm cube reads as 6 mm of its 100. Raising it makes tilted
   * faces look as if they lay flat (unsafe); lowering it makes settled faces look like edges (safe, but false alarms).
   */
  public static final double PATCH_SHARE = 3e-4;

  /** Metres. Never ask for a fit finer than this of centimetre stones; see {@link #PATCH_SHARE}. */
  public static final double PATCH_FLOOR_M = 0.02e-3;

  /** Metres. Nearer than this without bearing is reported as hovering. Only wording depends on it. */
  public static final double NEAR_M = 5e-3;

  /** Metres. An overlap above this is a finding. */
  public static final double OVERLAP_M = 1e-3;

  /** Times the patch tolerance. A patch narrower than this is an edge, one shorter and narrower a point. */
  public static final double SLIVER_PATCHES = 4;

  /** Of size. Corners of a patch that stand out by less are dropped (the patch shrinks, which is safe). */
  public static final double CORNER_SHARE = 1e-5;

  /** Most corners of a patch; beyond it those that lose the least area are dropped. Cost of the statics grows with it. */
  public static final int MAX_CORNERS = 8;

  /**
   * Times the patch tolerance. A face normal within this of the deepest axis is preferred to it, so that flush faces
   * get the exact face normal. Too large picks faces that do not bear.
   */
  static final double FACE_PREFERENCE_PATCHES = 0.02;

  /** Of size. Points nearer than this are one point; above rounding of coordinates, below any real length. */
  static final double WELD_SHARE = 1e-10;

  /** Of size. A point this little outside a line is on it. */
  static final double ON_LINE_SHARE = 1e-13;

  /** Of the largest coordinate. Rounding of coordinates; keeps the two above honest for a pebble far from the origin. */
  static final double ROUNDING = 4e-16;

  /** Of size. Shadows that overlap by less only graze each other: no bearing along that normal. */
  static final double GRAZING_SHARE = 1e-6;

  /** Cosine. A face steeper than this against the normal is a wall: the shadow's outline stands for it. */
  static final double WALL_COSINE = 1e-7;

  private Tolerances() {}
}
