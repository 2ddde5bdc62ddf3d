package holdfast.engine.build;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.Solid;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;

/**
 * How a scene is built.
 *
 * @param rocks names in the order of the placements: the numbers of the stages
 * @param supports what rests on what
 * @param modules pieces fixed together
 * @param order the order of placing
 * @param batches cement and clock
 */
public record BuildPlan(
    List<String> rocks, Supports supports, List<Modules.Module> modules, BuildOrder.Order order, Batches batches) {
  /** Stages judged at most when nothing else is said; a plain order of thirty rocks needs thirty. */
  public static final int MOST_QUESTIONS = 400;

  public BuildPlan {
    rocks = List.copyOf(rocks);
    modules = List.copyOf(modules);
  }

  /**
   * The plan of a scene.
   *
   * @param bodies of its rocks
   * @param solids as they were searched for contacts: the placed rocks first, in the order of the placements
   * @param contacts between them
   * @param stander judges the stages
   */
  public static BuildPlan of(
      Scene scene, List<RockBody> bodies, List<Solid> solids, List<Contact> contacts, Stander stander, int mostQuestions) {
    List<String> rocks = scene.placements().stream().map(Placement::rock).toList();
    Supports supports = Supports.of(solids, rocks.size(), contacts);
    List<Modules.Module> modules = Modules.of(scene, bodies);
    List<Boolean> living = rocks.stream()
        .map(r -> scene.rock(r).map(k -> k.kind() == Rock.Kind.LIVE).orElse(false)).toList();
    List<Integer> module = rocks.stream().map(r -> moduleOf(modules, r)).toList();
    BuildOrder.Order order = BuildOrder.search(supports, joints(scene, rocks), living, module, stander, mostQuestions);
    return new BuildPlan(rocks, supports, modules, order, Batches.of(scene, order.stages(), living));
  }

  /** The joints that are fixed between placed rocks. */
  static List<BuildOrder.Joint> joints(Scene scene, List<String> rocks) {
    List<BuildOrder.Joint> out = new ArrayList<>();
    for (int j = 0; j < scene.joints().size(); j++) {
      JointSpec s = scene.joints().get(j);
      int a = rocks.indexOf(s.a());
      int b = rocks.indexOf(s.b());
      if (Modules.isBonded(s) && a >= 0 && b >= 0) out.add(new BuildOrder.Joint(j, a, b));
    }
    return out;
  }

  private static int moduleOf(List<Modules.Module> modules, String rock) {
    for (int i = 0; i < modules.size(); i++) if (modules.get(i).rocks().contains(rock)) return i;
    return -1;
  }
}
