package holdfast.engine.statics.solver;

/**
 * What the cone solver came to.
 *
 * @param end why it stopped
 * @param x forces in the links, then the live factor when there is one (scaled)
 * @param y velocities of the bodies, six each: the multipliers of the equations of balance; with {@code NO_FORCES} the
 *     mechanism that proves it
 * @param z multipliers of the cone
 * @param primal value of the objective reached by the forces
 * @param dual bound on the objective from the mechanism
 * @param iterations number of steps
 */
public record ConeSolution(End end, double[] x, double[] y, double[] z, double primal, double dual, int iterations) {

  /** Why the solver stopped. */
  public enum End {
    /** Forces and mechanism agree within the tolerance. */
    OPTIMAL,
    /** A mechanism proves that no admissible forces exist. */
    NO_FORCES,
    /** The objective has no bound. */
    UNBOUNDED,
    /** It came to neither: nothing may be concluded. */
    UNSETTLED
  }
}
