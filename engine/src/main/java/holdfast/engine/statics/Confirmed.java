package holdfast.engine.statics;

import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.statics.rest.RestState;
import holdfast.engine.statics.rest.Resting;
import java.util.List;

/**
 * How much of a live load a heap was seen to bear and stay: searched from above, since the force balance is an upper
 * bound and often the truth. What it reports was tried; nothing is taken from a trend.
 *
 * @param factor the largest factor at which the heap was seen to stay
 * @param refuted the least factor above it at which it was not, or the upper bound when it stayed there
 * @param movement how it gave way at {@code refuted}; null where it did not, or was not decided
 */
record Confirmed(double factor, double refuted, Mechanism movement) {

  /**
   * Halves the range between what stays and what does not until it is within {@code share} of the upper bound.
   *
   * @param before the heap at rest under the dead load
   * @param most what the force balance allows
   */
  static Confirmed largest(
      Resting resting, RestState before, List<Wrench> dead, List<Wrench> live, double most, double share) {
    double stays = 0;
    double not = most;
    Mechanism how = null;
    double next = most * (1 - Tolerances.CONFIRM_TOP);
    while (not - stays > share * most) {
      Rest rest = resting.then(before, ForceBalance.sum(dead, live, next));
      if (rest.stays()) {
        stays = next;
      } else {
        not = next;
        if (rest instanceof Rest.Moves m) how = m.mechanism();
      }
      if (stays >= most * (1 - Tolerances.CONFIRM_TOP)) break;
      next = (stays + not) / 2;
    }
    return new Confirmed(stays, not, how);
  }
}
