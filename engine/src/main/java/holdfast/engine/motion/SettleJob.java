package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import java.util.List;
import java.util.Set;

/**
 * A rough sketch to be settled.
 *
 * @param bodies the rocks as sketched
 * @param locked names of those that stay where they are
 * @param fixed floor, panes, devices
 * @param bonds pairs of names that are fixed to each other
 * @param bondReachM bonded rocks that hover up to this far apart are drawn together
 * @param friction by pair of surfaces
 */
public record SettleJob(
    List<MotionBody> bodies, Set<String> locked, List<Solid> fixed,
    List<Bonded> bonds, double bondReachM, WorldOptions.Friction friction) {

  public SettleJob {
    bodies = List.copyOf(bodies);
    locked = Set.copyOf(locked);
    fixed = List.copyOf(fixed);
    bonds = List.copyOf(bonds);
    if (!(bondReachM >= 0)) throw new IllegalArgumentException("bondReachM must be 0 or more, was " + bondReachM);
  }

  /** Two rocks that are fixed to each other. */
  public record Bonded(String a, String b) {}
}
