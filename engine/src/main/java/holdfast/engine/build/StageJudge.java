package holdfast.engine.build;

import holdfast.engine.statics.Heap;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.statics.State;
import holdfast.engine.statics.Wrench;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Judges a stage by the statics: the rocks placed so far, dry, without sand, with the joints that have set and bare stone
 * on stone at all others. A stage stays when every separate heap of it has a balance of forces and comes to rest.
 */
public final class StageJudge implements Stander {
  private final Scene scene;
  private final List<PlacedRock> rocks;

  /** For the rocks of a scene, in the order of its placements. */
  public StageJudge(Scene scene, List<PlacedRock> rocks) {
    if (rocks.size() != scene.placements().size()) {
      throw new IllegalArgumentException(rocks.size() + " rocks for " + scene.placements().size() + " placements");
    }
    // The sand comes after the rock.
    this.scene = new Scene(
        scene.name(), scene.tank(), scene.floor(), new Scene.Sand(0, scene.sand().bulkKgPerL()), scene.water(), scene.devices(),
        scene.lamps(), scene.rocks(), scene.placements(), scene.joints(), scene.settings());
    this.rocks = List.copyOf(rocks);
  }

  @Override
  public boolean stays(Set<Integer> placed, Set<Integer> cured) {
    List<PlacedRock> here = new ArrayList<>();
    List<Placement> places = new ArrayList<>();
    for (int i : placed) {
      here.add(rocks.get(i));
      places.add(scene.placements().get(i));
    }
    List<JointSpec> joints = cured.stream().map(scene.joints()::get).toList();
    SceneHeap heap = SceneHeap.of(scene.withPlacements(places).withJoints(joints), here);
    List<Wrench> dry = heap.weights().loads(State.DRY);
    for (Heap.Part part : heap.heap().separate()) {
      if (!new PartJudge(part, dry).safe()) return false;
    }
    return true;
  }
}
