package holdfast.engine.build;

import java.util.List;

/** Lengths and counts of this package. */
final class Tolerances {
  /**
   * Metres. Room that a pose on the way through an opening must have beyond the clearance that is asked for. Warning: at
   * nought the movement between two poses cannot be proved, as any movement takes some room.
   */
  static final double LEAST_ROOM_M = 5e-4;

  /** Metres. A stretch of movement shorter than this that is not proved is taken as blocked (safe). */
  static final double SHORTEST_M = 5e-5;

  /** Metres. What is told of the room on the way is at most this much less than there is. */
  static final double TOLD_M = 1e-3;

  /** Radians. The turn of one trial; smaller finds narrower ways and takes longer. */
  static final double TURN_STEP_RAD = Math.toRadians(7.5);

  /** Metres, falling. A way that was found is sought again with this much room to spare, and the first found is given. */
  static final List<Double> SPARE_M = List.of(0.02, 0.007);

  /** Of the body's diameter: the step down of one trial. */
  static final double DOWN_STEP = 1.0 / 40;

  /** Metres. A trial that lacks more room than this is not mended by turning it a little. */
  static final double MENDED_M = 0.03;

  /** Poses looked at before the search gives up: its bound on work, the same on every machine. */
  static final int MOST_POSES = 150_000;

  /** Directions of the body that are tried pointing down, and turns about each through half a circle. */
  static final int DIRECTIONS = 200;

  static final int TURNS = 8;

  /** Ways tried from under the opening to the upright pose. */
  static final int MOST_SETTINGS_DOWN = 60;

  private Tolerances() {}
}
