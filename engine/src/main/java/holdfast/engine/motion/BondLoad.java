package holdfast.engine.motion;

import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;

/**
 * What a bond passes on, averaged over about as long as a fish, a hand or a magnet touches ({@link #MEAN_S}). A blow of no
 * duration loads the bond for one step of the engine, by a force that only says how short the step is; and an engine's
 * constraint forces tremble by a sixth from step to step.
 */
final class BondLoad {
  /** Seconds: a touch lasts a hundredth of a second (memory). */
  private static final double MEAN_S = 0.01;

  private Vec3 force = Vec3.ZERO;
  private Vec3 moment = Vec3.ZERO;
  private boolean first = true;

  /** Takes in the load of one step; the mean so far comes back. */
  Wrench add(Wrench load, double stepS) {
    double share = first ? 1 : Math.min(1, stepS / MEAN_S);
    first = false;
    force = force.plusTimes(share, load.force().minus(force));
    moment = moment.plusTimes(share, load.moment().minus(moment));
    return new Wrench(force, moment);
  }
}
