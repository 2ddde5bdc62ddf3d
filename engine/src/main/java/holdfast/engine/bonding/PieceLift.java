package holdfast.engine.bonding;

/**
 * A piece lifted, drained, by one of its rocks.
 *
 * @param piece its number
 * @param rock the rock in the hands
 * @param use the largest part of a joint's design strength that is called on; infinite when the piece comes apart,
 *     not a number when that was not settled
 * @param joint the joint that is asked most, by its place in the scene; -1 when the piece comes apart without a bond breaking
 */
public record PieceLift(int piece, int rock, double use, int joint) {
  public boolean holds() {
    return use <= 1;
  }
}
