package holdfast.engine.build;

import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Judges a stage by the statics: the rocks placed so far, dry or in water, without sand until that is laid, with the joints
 * that have set and bare stone on stone at all others. A stage stays when every separate heap of it has a balance of forces
 * and comes to rest.
 */
public final class StageJudge implements Stander {
  private static final List<State> DRY = List.of(State.DRY);
  private static final List<State> FILLED = List.of(State.FILLED);
  private static final List<State> FILLING = List.of(State.QUARTER, State.HALF, State.THREE_QUARTERS, State.FILLED);

  private final Scene scene;
  private final List<PlacedRock> rocks;
  private final boolean sand;
  private final List<State> states;

  /** For the rocks of a scene, in the order of its placements. */
  public StageJudge(Scene scene, List<PlacedRock> rocks) {
    this(scene, List.copyOf(rocks), false, DRY);
    if (rocks.size() != scene.placements().size()) {
      throw new IllegalArgumentException(rocks.size() + " rocks for " + scene.placements().size() + " placements");
    }
  }

  private StageJudge(Scene scene, List<PlacedRock> rocks, boolean sand, List<State> states) {
    this.scene = scene;
    this.rocks = rocks;
    this.sand = sand;
    this.states = states;
  }

  /** Numbers of the rocks that reach into the sand and find no floor there. */
  public static Set<Integer> sandFeet(Scene scene, List<PlacedRock> rocks) {
    Set<Integer> out = new TreeSet<>();
    for (SceneHeap.Seat s : SceneHeap.of(scene, rocks).seats()) if (s.kind() == SceneHeap.Kind.SAND) out.add(s.rock());
    return out;
  }

  @Override
  public Stander withSand() {
    return new StageJudge(scene, rocks, true, states);
  }

  @Override
  public Stander filled() {
    return new StageJudge(scene, rocks, sand, FILLED);
  }

  @Override
  public Stander filling() {
    return new StageJudge(scene, rocks, sand, FILLING);
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
    Scene.Sand laid = sand ? scene.sand() : new Scene.Sand(0, scene.sand().bulkKgPerL());
    SceneHeap heap = SceneHeap.of(new Scene(
        scene.name(), scene.tank(), scene.floor(), laid, scene.water(), scene.devices(), scene.lamps(), scene.rocks(), places,
        joints, scene.settings()), here);
    for (Heap.Part part : heap.heap().separate()) {
      for (State state : states) {
        if (!new PartJudge(part, heap.weights().loads(state)).safe()) return false;
      }
    }
    return true;
  }
}
