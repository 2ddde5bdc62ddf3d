package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import java.util.OptionalDouble;

/**
 * The steady push at which the engine lets something move, by bisection: to hold the engine against the statics, never
 * the other way round. Engines creep under friction and tip tall stacks some degrees early.
 */
public final class SlowPush {
  /** Metres a second that the arm wants: slow enough to carry no energy worth the name. */
  private static final double SPEED_M_S = 0.02;

  /** Metres and seconds that it pushes at most: half a second of growing force, then as long held as shows movement. */
  private static final double STROKE_M = 0.05;

  private static final double PUSH_S = 2;

  /**
   * Metres: what goes farther has let go. Under a push below its friction a stone creeps by up to 4 mm in those two
   * seconds, most when it is pushed high up and bears on its front edge.
   */
  private static final double MOVED_M = 5e-3;

  private SlowPush() {}

  /**
   * The least push, between two forces, that shifts or topples anything; empty when even the larger one does not.
   *
   * @param share how close the bracket has to get, as a share of the force
   */
  public static OptionalDouble leastN(PlayJob job, String rock, Vec3 at, Vec3 toward, double lowN, double highN, double share) {
    double holds = lowN;
    double moves = highN;
    if (!moves(job, rock, at, toward, moves)) return OptionalDouble.empty();
    while (moves - holds > share * moves) {
      double middle = (holds + moves) / 2;
      if (moves(job, rock, at, toward, middle)) {
        moves = middle;
      } else {
        holds = middle;
      }
    }
    return OptionalDouble.of(moves);
  }

  private static boolean moves(PlayJob job, String rock, Vec3 at, Vec3 toward, double forceN) {
    Disturbance push = new Disturbance.Arm(rock, at, toward, SPEED_M_S, forceN, STROKE_M, PUSH_S);
    return Bump.play(job.withMostS(PUSH_S + 1), push).match(
        played -> played.outcomes().stream().anyMatch(o -> o.mostM() > MOVED_M), none -> false);
  }
}
