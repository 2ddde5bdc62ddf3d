package holdfast.engine.motion;

import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Lets one rock down onto a heap at a spot: straight down to its first touch, then to rest with the others held, then
 * once more with all of them free, which tells whether the heap bears it.
 *
 * <p>The way down is exact: along a vertical move the plane that parts two convex pieces stays where it is, so the gap
 * along it over the plane's slope is a drop that cannot pass through (conservative advancement, Mirtich 1996).
 */
public final class Drop {
  private static final int MOST_STEPS = 500;

  /** Metres: nearer is a touch. */
  private static final double TOUCH_M = 1e-6;

  private Drop() {}

  /** What came of a drop. */
  public sealed interface Dropped {
    /**
     * It lies.
     *
     * @param pose where the rock came to rest
     * @param rolledM how far its centre moved sideways from the spot
     * @param disturbedM the farthest that another rock's centre moved when all were let go
     * @param heap everything at rest in the end
     */
    record Lies(Pose pose, double rolledM, double disturbedM, SettleResult.Settled heap) implements Dropped {}

    /** It could not be dropped there; {@code reason} is a phrase. */
    record Failed(String reason) implements Dropped {}
  }

  /**
   * Drops a rock.
   *
   * @param job the heap; the rock is one of its bodies, wherever it now is
   * @param spot where its centre of mass is to be, seen from above; {@code z} is not looked at
   * @param turn how it is held
   */
  public static Dropped drop(SettleJob job, String rock, Vec3 spot, Quat turn) {
    int number = number(job, rock);
    if (number < 0) return new Dropped.Failed("there is no placed rock '" + rock + "'");
    Optional<Pose> touch = firstTouch(job, number, spot, turn);
    if (touch.isEmpty()) return new Dropped.Failed("nothing under that spot");
    List<MotionBody> bodies = new ArrayList<>(job.bodies());
    bodies.set(number, bodies.get(number).at(touch.get()));
    Set<String> others = new LinkedHashSet<>();
    for (MotionBody b : bodies) if (!b.name().equals(rock)) others.add(b.name());
    SettleResult held = Settle.settle(new SettleJob(bodies, others, job.fixed(), List.of(), 0, job.friction()));
    if (held instanceof SettleResult.NotDone n) return new Dropped.Failed(n.reason());
    SettleResult.Settled first = (SettleResult.Settled) held;
    if (!first.atRest()) return new Dropped.Failed("it finds no rest there");
    bodies.set(number, bodies.get(number).at(first.moves().get(number).pose()));
    List<SettleJob.Bonded> bonds = job.bonds().stream().filter(b -> !b.a().equals(rock) && !b.b().equals(rock)).toList();
    SettleResult free = Settle.settle(new SettleJob(bodies, job.locked(), job.fixed(), bonds, job.bondReachM(), job.friction()));
    if (free instanceof SettleResult.NotDone n) return new Dropped.Failed(n.reason());
    SettleResult.Settled last = (SettleResult.Settled) free;
    double disturbed = 0;
    for (int i = 0; i < bodies.size(); i++) if (i != number) disturbed = Math.max(disturbed, last.moves().get(i).shiftM());
    Pose pose = last.moves().get(number).pose();
    Vec3 centre = pose.apply(bodies.get(number).centre());
    return new Dropped.Lies(pose, Math.hypot(centre.x() - spot.x(), centre.y() - spot.y()), disturbed, last);
  }

  static int number(SettleJob job, String rock) {
    for (int i = 0; i < job.bodies().size(); i++) if (job.bodies().get(i).name().equals(rock)) return i;
    return -1;
  }

  /** The pose in which a rock that comes straight down first touches something; empty when it never does. */
  static Optional<Pose> firstTouch(SettleJob job, int number, Vec3 spot, Quat turn) {
    MotionBody body = job.bodies().get(number);
    double top = 0;
    for (MotionBody b : job.bodies()) if (b != body) top = Math.max(top, b.centreInWorld().z() + b.reachM());
    Vec3 offset = turn.rotate(body.centre());
    double z = top + body.reachM() + Tolerances.NEAR_M;
    Pose pose = new Pose(new Vec3(spot.x() - offset.x(), spot.y() - offset.y(), z - offset.z()), turn);
    List<MotionBody> bodies = new ArrayList<>(job.bodies());
    int[] group = new int[bodies.size()];
    Arrays.fill(group, -1);
    group[number] = 0;
    Cluster cluster = new Cluster(bodies, group, job.fixed());
    for (int step = 0; step < MOST_STEPS; step++) {
      cluster.poses[number] = pose;
      double drop = Double.POSITIVE_INFINITY;
      for (Cluster.Facing f : cluster.facings(z + 1)) {
        // The normal points out of b into a; only what lies under the rock is approached.
        double slope = f.a() == number ? f.gap().normal().z() : -f.gap().normal().z();
        if (slope > 1e-9) drop = Math.min(drop, Math.max(0, f.gap().gapM()) / slope);
      }
      if (Double.isInfinite(drop)) return Optional.empty();
      pose = pose.movedBy(new Vec3(0, 0, -drop));
      if (drop < TOUCH_M) return Optional.of(pose);
    }
    return Optional.of(pose);
  }
}
