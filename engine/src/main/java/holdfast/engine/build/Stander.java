package holdfast.engine.build;

import java.util.Set;

/** Judges a stage of building: whether the rocks placed so far stay where they are, dry unless asked for another state. */
@FunctionalInterface
public interface Stander {
  /**
   * Whether the stage stays. What is not decided is answered with no.
   *
   * @param placed numbers of the rocks that are in place, in the order of the scene's placements
   * @param cured numbers of the joints, in the order of the scene's joints, that have set and bear; all others carry
   *     nothing
   */
  boolean stays(Set<Integer> placed, Set<Integer> cured);

  /** The same judge for stages in which the sand has been laid. */
  default Stander withSand() {
    return this;
  }

  /** The same judge for stages that come after filling. */
  default Stander filled() {
    return this;
  }

  /** The same judge for the heap that is there while the tank fills: it must stay at every level. */
  default Stander filling() {
    return this;
  }
}
