package holdfast.engine.statics.solver;


/**
 * One link as the cone program sees it: a few unknowns, the wrenches they make on the two bodies, and the cone they
 * must stay in, written {@code h - G x in K} with {@code K} a product of half-lines and second-order cones.
 *
 * <p>All figures are scaled: forces by the program's force, lengths by its length.
 *
 * @param a body that the link acts on
 * @param b the other body, or -1 for the ground
 * @param size number of unknowns
 * @param wrenchA 6 x size, row by row: force and moment on {@code a}
 * @param wrenchB 6 x size: force and moment on {@code b}
 * @param halfLines the first rows of the cone, each a half-line
 * @param cones dimensions of the second-order cones that follow
 * @param g rows x size, row by row
 * @param h one entry a row
 */
public record Element(
    int a, int b, int size, double[] wrenchA, double[] wrenchB, int halfLines, int[] cones, double[] g, double[] h) {

  /** Rows of its cone. */
  public int rows() {
    return h.length;
  }
}
