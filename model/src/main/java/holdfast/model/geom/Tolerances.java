package holdfast.model.geom;

/**
 * The lengths under which this package takes two things for one. All are shares of the size of the points at hand (the
 * longest side of their upright bounding box), so that a pebble and a boulder are treated alike.
 */
public final class Tolerances {
  /**
   * Points nearer than this are one point, and triangles within this of a common plane are one face. 0.3 micrometres on
   * a stone of 300 mm: above the noise of single-precision scans, far below what a contact can feel. Raising it towards
   * the contact tolerance would bend faces that rest on one another.
   */
  public static final double FLAT = 1e-6;

  /**
   * A point less than this outside a triangle does not raise a corner of its own. It only keeps rounding noise from
   * growing slivers; it must stay well below {@link #FLAT}.
   */
  static final double GRAZING = 1e-9;

  /** How far an input point may lie outside the finished hull. Must be a few times {@link #FLAT}, never smaller. */
  public static final double INSIDE = 4 * FLAT;

  /** A solid thinner than this has no inside that could be told from noise. Must be above {@link #INSIDE}. */
  public static final double THIN = 8 * FLAT;

  private Tolerances() {}
}
