package holdfast.engine.build;

import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * A way through an opening on which the body turns, from above the rim to upright in the otherwise empty tank; taken the other
 * way it comes out.
 *
 * @param poses where it is in turn; from one to the next it turns about one axis while the pivot of that leg goes up or down
 * @param pivots a point of the body for each leg, metres in the frame of its corners as built
 * @param roomM least room on the tighter side on the whole way beyond the clearance asked for, metres; proved, a lower bound
 */
public record TurnPath(List<GatePose> poses, List<Vec3> pivots, double roomM) {
  public TurnPath {
    poses = List.copyOf(poses);
    pivots = List.copyOf(pivots);
    if (pivots.size() + 1 != poses.size()) throw new IllegalArgumentException("a pivot for each leg");
  }
}
