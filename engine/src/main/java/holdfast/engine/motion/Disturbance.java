package holdfast.engine.motion;

import holdfast.model.geom.Vec3;
import java.util.List;

/** What sets a heap in motion. */
public sealed interface Disturbance {
  /** The rock it acts on. */
  String rock();

  /** Nothing: does it stay? */
  record Nothing() implements Disturbance {
    @Override
    public String rock() {
      return "";
    }
  }

  /** A blow too short to move anything while it lasts: {@code impulseNs} in newton seconds at a point of the world. */
  record Blow(String rock, Vec3 at, Vec3 impulseNs) implements Disturbance {}

  /**
   * An arm that follows a rock at a speed with what force it takes, up to a limit, over a stroke: a hand, a magnet, a
   * pump's jet. It only pushes.
   *
   * @param at where it touches at first, world; it stays with that point of the rock
   * @param toward unit direction
   * @param speedMS speed it wants
   * @param forceN most force
   * @param strokeM it lets go when the point has come this far
   * @param mostS it lets go after this time in any case, so that a rock that holds is let alone again
   */
  record Arm(String rock, Vec3 at, Vec3 toward, double speedMS, double forceN, double strokeM, double mostS)
      implements Disturbance {
    public Arm {
      if (!(speedMS > 0 && forceN > 0 && strokeM > 0 && mostS > 0)) {
        throw new IllegalArgumentException("speed, force, stroke and time must be above 0, were "
            + speedMS + ", " + forceN + ", " + strokeM + ", " + mostS);
      }
    }
  }

  /** The rock is taken out. */
  record Removal(String rock) implements Disturbance {}

  /**
   * The sand is dug from under feet of the rock, down to the bottom.
   *
   * @param feet outlines of those feet, world
   */
  record Undermining(String rock, List<List<Vec3>> feet) implements Disturbance {
    public Undermining {
      feet = feet.stream().map(List::copyOf).toList();
      if (feet.isEmpty()) throw new IllegalArgumentException("no foot of '" + rock + "' was given");
    }
  }

  /**
   * Effective mass of a swimming fish over its own mass: the water it carries along. One study of trout; the trade notes
   * give 1.2.
   */
  double FISH_ADDED = 1.2;

  /**
   * A fish that runs into a rock and is stopped by it: all its momentum, the water it carries along included, in one
   * blow. A fish that glances off gives less; none gives much more.
   */
  static Blow fish(String rock, Vec3 at, Vec3 toward, double massKg, double speedMS) {
    if (!(massKg > 0 && speedMS > 0)) {
      throw new IllegalArgumentException("mass and speed must be above 0, were " + massKg + ", " + speedMS);
    }
    return new Blow(rock, at, toward.times(FISH_ADDED * massKg * speedMS));
  }
}
