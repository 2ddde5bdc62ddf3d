package holdfast.engine.contact;

import holdfast.model.geom.Vec3;
import java.util.Objects;

/**
 * How two bodies that are near each other fit.
 *
 * @param a number of one body
 * @param b number of the other, {@code a < b}
 * @param lobeA the lobe of {@code a} at the place of least distance
 * @param lobeB the lobe of {@code b} there
 * @param distanceM least distance, metres; below zero how deep they overlap (the shortest move that parts the two lobes)
 * @param kind what that means
 * @param normal unit direction out of {@code b} into {@code a} there
 * @param onA the point of {@code a} there
 * @param onB the point of {@code b} there
 */
public record PairFit(
    int a, int b, int lobeA, int lobeB, double distanceM, Kind kind, Vec3 normal, Vec3 onA, Vec3 onB) {

  public PairFit {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(normal);
    if (a >= b) throw new IllegalArgumentException("bodies must be in order, were " + a + " and " + b);
  }

  /** The same fit of bodies of other numbers in the same order. */
  PairFit between(int newA, int newB) {
    return newA == a && newB == b ? this : new PairFit(newA, newB, lobeA, lobeB, distanceM, kind, normal, onA, onB);
  }

  /** The three fits. */
  public enum Kind {
    /** One lies in the other by more than the rules allow; what is computed from it is not to be trusted. */
    OVERLAPS,
    /** Within the joint tolerance: they bear on each other. */
    TOUCHES,
    /** Near, yet not bearing. */
    HOVERS
  }
}
