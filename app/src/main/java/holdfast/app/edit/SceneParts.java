package holdfast.app.edit;

import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Changed copies of a scene, part by part. */
final class SceneParts {
  private SceneParts() {}

  static <T> List<T> plus(List<T> list, T one) {
    List<T> out = new ArrayList<>(list);
    out.add(one);
    return out;
  }

  static Outcome placed(Scene s, String rock, Function<Placement, Outcome> then) {
    return s.placement(rock).map(then).orElseGet(() -> new Outcome.Refused("'" + rock + "' is not in the tank."));
  }

  static Outcome replaced(Scene s, Placement old, Placement now) {
    return new Outcome.Changed(s.withPlacements(s.placements().stream().map(p -> p == old ? now : p).toList()));
  }

  /** The joints with this one in its old place, at the end where it is new, or left out where it is freed. */
  static List<JointSpec> fixed(List<JointSpec> joints, JointSpec one) {
    if (one.bond() == JointSpec.Bond.NONE) return joints.stream().filter(j -> !j.joins(one.a(), one.b())).toList();
    if (joints.stream().noneMatch(j -> j.joins(one.a(), one.b()))) return plus(joints, one);
    return joints.stream().map(j -> j.joins(one.a(), one.b()) ? one : j).toList();
  }

  static Scene withoutJointsOf(Scene s, String rock) {
    if (s.joints().stream().noneMatch(j -> j.a().equals(rock) || j.b().equals(rock))) return s;
    return s.withJoints(s.joints().stream().filter(j -> !j.a().equals(rock) && !j.b().equals(rock)).toList());
  }

  static Scene described(Scene s, String rock, Rock as) {
    Scene next = s.withRocks(s.rocks().stream().map(r -> r.name().equals(rock) ? as : r).toList());
    if (as.name().equals(rock)) return next;
    return next
        .withPlacements(s.placements().stream()
            .map(p -> p.rock().equals(rock) ? new Placement(as.name(), p.atMm(), p.turn(), p.locked()) : p).toList())
        .withJoints(s.joints().stream().map(j -> renamed(j, rock, as.name())).toList());
  }

  private static JointSpec renamed(JointSpec j, String old, String now) {
    return new JointSpec(j.a().equals(old) ? now : j.a(), j.b().equals(old) ? now : j.b(), j.bond(), j.amountMl(),
        j.rodDiameterMm(), j.rodDepthMm(), j.rodGlued(), j.madeIn());
  }

  static Scene furnished(Scene s, Tank tank, Floor floor, Scene.Sand sand, Scene.Water water) {
    return new Scene(s.name(), tank, floor, sand, water, s.devices(), s.lamps(), s.rocks(), s.placements(), s.joints(),
        s.settings());
  }
}
