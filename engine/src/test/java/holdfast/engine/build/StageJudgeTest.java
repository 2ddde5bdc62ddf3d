package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.build.BuildOrder.Help;
import holdfast.engine.build.BuildOrder.Stage;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The order of building with the statics themselves; boxes whose balance can be seen by hand. */
class StageJudgeTest {
  private final List<Rock> rocks = new ArrayList<>();
  private final List<Placement> places = new ArrayList<>();
  private final List<JointSpec> joints = new ArrayList<>();

  private void box(String name, double l, double w, double h, double kg, double x, double y, double z) {
    rocks.add(new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, l, w, h, 1),
        new Rock.Weighed(kg, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false));
  }

  private BuildPlan plan() {
    Tank tank = new Tank(1000, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    Scene scene = new Scene("stages", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, joints, Settings.DEFAULT.with(Setting.CONTACT_INSET_MM, 0));
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    List<Solid> solids = SceneSolids.ofPlaced(scene, shapes.placed());
    Stander judge = new StageJudge(scene, shapes.placed());
    BuildPlan plan = BuildPlan.of(scene, List.copyOf(shapes.bodies().values()), solids,
        ContactFinder.find(solids, ContactRules.DEFAULT).contacts(), judge, 200);
    recheck(plan, new StageJudge(scene, shapes.placed()));
    return plan;
  }

  /** Every stage of every order, asked again from nothing. */
  private static void recheck(BuildPlan plan, Stander judge) {
    Set<Integer> placed = new TreeSet<>();
    Set<Integer> cured = new TreeSet<>();
    Set<Integer> made = new TreeSet<>();
    for (Stage s : plan.order().stages()) {
      placed.add(s.rock());
      made.addAll(s.joints());
      assertThat(judge.stays(placed, cured)).isEqualTo(s.stands());
      if (s.curedHere()) {
        cured.addAll(made);
        assertThat(judge.stays(placed, cured)).isTrue();
      }
    }
  }

  @Test
  void aPlainStackGoesUpByItself() {
    box("top", 100, 100, 60, 1, 500, 250, 210);
    box("foot", 200, 200, 100, 6, 500, 250, 10);
    box("middle", 150, 150, 100, 3, 500, 250, 110);
    BuildPlan plan = plan();
    assertThat(plan.order().unaided()).isTrue();
    assertThat(plan.order().stages()).extracting(Stage::rock).containsExactly(1, 2, 0);
  }

  /**
   * A plank 300 long whose middle lies 50 mm out over the edge of a block 200 wide falls alone: its centre of mass is 50 mm
   * beyond the edge. A weight of 3 kg on it, 40 mm inside the edge, outweighs it: 120 against 50 kg mm (derived).
   */
  @Test
  void aCounterweightIsHeldForUntilItIsOn() {
    box("block", 200, 200, 100, 6, 300, 250, 10);
    box("plank", 300, 100, 40, 1, 450, 250, 110);
    box("weight", 120, 120, 100, 3, 360, 250, 150);
    BuildPlan plan = plan();
    assertThat(plan.order().complete()).isTrue();
    assertThat(plan.order().stages()).extracting(Stage::help).containsExactly(Help.NONE, Help.HAND, Help.NONE);
  }

  /** The same plank with mortar and no weight: 1 kg at 50 mm on a patch of 50 by 100 mm is far within 0.1 N/mm2 (derived). */
  @Test
  void aBracketIsProppedUntilItsMortarHasSet() {
    box("block", 200, 200, 100, 6, 300, 250, 10);
    box("plank", 300, 100, 40, 1, 500, 250, 110);
    joints.add(JointSpec.paste("block", "plank", JointSpec.Bond.MORTAR, 60));
    BuildPlan plan = plan();
    assertThat(plan.order().complete()).isTrue();
    Stage last = plan.order().stages().get(1);
    assertThat(last.help()).isEqualTo(Help.PROP);
    assertThat(last.curedHere()).isTrue();
    // One hour until mortar bears (default, memory).
    assertThat(plan.batches().waits().get(1)).isEqualTo(1);
  }

  /** Without either it never stands, and the plan says so. */
  @Test
  void whatCannotStandIsNotPlannedAway() {
    box("block", 200, 200, 100, 6, 300, 250, 10);
    box("plank", 300, 100, 40, 1, 500, 250, 110);
    assertThat(plan().order().complete()).isFalse();
  }
}
