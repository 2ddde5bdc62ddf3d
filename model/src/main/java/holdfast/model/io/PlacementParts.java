package holdfast.model.io;

import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads the placements and tells those that can't be meant: unknown rocks, rocks placed twice, rocks outside the tank. */
final class PlacementParts {
  /** How far a unit quaternion's length may be off: a hundred times what ten printed digits lose. */
  static final double UNIT_SLACK = 1e-6;
  /**
   * How far a rock may reach through a pane or the bottom before the file counts as wrong, millimetres. Less is a rough
   * sketch, which settling and the findings deal with and whose overlap they report.
   */
  static final double SKETCH_SLACK_MM = 25;

  private final Problems problems;
  private final RockTable rocks;
  private final Optional<Tank> tank;

  PlacementParts(Problems problems, RockTable rocks, Optional<Tank> tank) {
    this.problems = problems;
    this.rocks = rocks;
    this.tank = tank;
  }

  List<Placement> read(List<ObjectWalk> walks) {
    List<Placement> placements = new ArrayList<>();
    Set<String> placed = new HashSet<>();
    for (ObjectWalk walk : walks) {
      String name = walk.text(SceneKeys.PLACED_ROCK);
      if (!name.isEmpty() && !rocks.knows(name)) {
        walk.refuse(SceneKeys.PLACED_ROCK, rocks.hint(name));
      } else if (!name.isEmpty() && !placed.add(name)) {
        walk.refuse(SceneKeys.PLACED_ROCK, JsonLayout.quoted(name) + " a second time", "must be placed once");
      }
      Optional<Vec3> at = walk.vec3(SceneKeys.PLACED_AT);
      Optional<Quat> turn = turn(walk);
      boolean locked = walk.flag(SceneKeys.LOCKED, false);
      if (at.isEmpty() || turn.isEmpty()) continue;
      Placement placement = new Placement(name, at.get(), turn.get(), locked);
      tank.ifPresent(t -> rocks.rock(name).flatMap(r -> FormBox.of(r.form())).ifPresent(b -> checkInside(walk, placement, b, t)));
      placements.add(placement);
    }
    return placements;
  }

  private static Optional<Quat> turn(ObjectWalk walk) {
    if (walk.has(SceneKeys.TURN) && walk.has(SceneKeys.TURN_DEG)) {
      walk.refuseWhole("turn and turn_deg", "must have only one of the two");
      return Optional.empty();
    }
    if (walk.has(SceneKeys.TURN_DEG)) {
      return walk.vector(SceneKeys.TURN_DEG).map(d -> Quat.ofDegreesZyx(d[0], d[1], d[2]));
    }
    if (!walk.has(SceneKeys.TURN)) return Optional.of(Quat.IDENTITY);
    return walk.vector(SceneKeys.TURN).map(q -> new Quat(q[0], q[1], q[2], q[3])).filter(q -> isUnit(walk, q));
  }

  private static boolean isUnit(ObjectWalk walk, Quat q) {
    double norm = q.norm();
    if (Math.abs(norm - 1) <= UNIT_SLACK) return true;
    if (norm < UNIT_SLACK) {
      walk.refuse(SceneKeys.TURN, "must have length 1, has " + RockParts.shortNumber(norm) + "; no turn is [1, 0, 0, 0]");
    } else {
      Quat u = q.unit();
      walk.refuse(SceneKeys.TURN, "must have length 1, has " + eightDecimals(norm) + "; at length 1 it is ["
          + eightDecimals(u.w()) + ", " + eightDecimals(u.x()) + ", " + eightDecimals(u.y()) + ", " + eightDecimals(u.z()) + "]");
    }
    return false;
  }

  /** Eight decimals: what is printed is itself a unit quaternion within {@link #UNIT_SLACK}. */
  private static String eightDecimals(double v) {
    return JsonLayout.number(Math.rint(v * 1e8) / 1e8);
  }

  /**
   * The middle of the rock's box must be in the tank, and nothing that the rock is known to reach may be more than
   * {@link #SKETCH_SLACK_MM} through a pane or the bottom. Above the rim only the middle counts: too tall is a finding.
   */
  private static void checkInside(ObjectWalk walk, Placement placement, FormBox box, Tank tank) {
    Pose pose = new Pose(placement.atMm(), placement.turn());
    List<Vec3> placed = box.cornersMm().stream().map(pose::apply).toList();
    Vec3 least = FormBox.least(placed);
    Vec3 most = FormBox.most(placed);
    double slack = box.exact() ? SKETCH_SLACK_MM : Double.POSITIVE_INFINITY;
    Optional<String> why = outside("x", least.x(), most.x(), tank.lengthMm(), slack, slack)
        .or(() -> outside("y", least.y(), most.y(), tank.widthMm(), slack, slack))
        .or(() -> outside("z", least.z(), most.z(), tank.heightMm(), slack, Double.POSITIVE_INFINITY));
    why.ifPresent(w -> walk.refuse(SceneKeys.PLACED_AT, "must put the rock inside the tank: " + w));
  }

  private static Optional<String> outside(String axis, double least, double most, double size, double below, double above) {
    double middle = (least + most) / 2;
    boolean in = middle >= 0 && middle <= size && least >= -below && most <= size + above;
    return in ? Optional.empty() : Optional.of("it would reach from " + axis + " = " + tenths(least) + " to " + tenths(most)
        + " mm, and the tank from 0 to " + JsonLayout.number(size));
  }

  private static String tenths(double v) {
    return JsonLayout.number(Math.rint(v * 10) / 10);
  }
}
