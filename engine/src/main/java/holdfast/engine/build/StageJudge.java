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
import java.util.TreeSet;

/**
 * Judges a stage by the statics: the rocks placed so far, dry, without sand until that is laid, with the joints that have
 * set and bare stone on stone at all others. A stage stays when every separate heap of it has a balance of forces and comes
 * to rest.
 */
public final class StageJudge implements Stander {
  private final Scene scene;
  private final List<PlacedRock> rocks;
  private final StageJudge withSand;

  /** For the rocks of a scene, in the order of its placements. */
  public StageJudge(Scene scene, List<PlacedRock> rocks) {
    if (rocks.size() != scene.placements().size()) {
      throw new IllegalArgumentException(rocks.size() + " rocks for " + scene.placements().size() + " placements");
    }
    this.rocks = List.copyOf(rocks);
    this.withSand = new StageJudge(scene, this.rocks, null);
    this.scene = new Scene(
        scene.name(), scene.tank(), scene.floor(), new Scene.Sand(0, scene.sand().bulkKgPerL()), scene.water(), scene.devices(),
        scene.lamps(), scene.rocks(), scene.placements(), scene.joints(), scene.settings());
  }

  /** With the sand in; its own judge for that is itself. */
  private StageJudge(Scene scene, List<PlacedRock> rocks, StageJudge none) {
    this.scene = scene;
    this.rocks = rocks;
    this.withSand = none;
  }

  /** Numbers of the rocks that reach into the sand and find no floor there. */
  public static Set<Integer> sandFeet(Scene scene, List<PlacedRock> rocks) {
    Set<Integer> out = new TreeSet<>();
    for (SceneHeap.Seat s : SceneHeap.of(scene, rocks).seats()) if (s.kind() == SceneHeap.Kind.SAND) out.add(s.rock());
    return out;
  }

  @Override
  public Stander withSand() {
    return withSand == null ? this : withSand;
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
