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
  private double sandMm;

  private void box(String name, double l, double w, double h, double kg, double x, double y, double z) {
    rock(name, Rock.Kind.DRY, l, w, h, kg, x, y, z);
  }

  private void rock(String name, Rock.Kind kind, double l, double w, double h, double kg, double x, double y, double z) {
    rock(name, kind, l, w, h, kg, 0, x, y, z);
  }

  private void rock(
      String name, Rock.Kind kind, double l, double w, double h, double kg, double sealedMl, double x, double y, double z) {
    rocks.add(new Rock(name, kind, new Rock.Measured(Rock.Look.BOX, l, w, h, 1),
        new Rock.Weighed(kg, Rock.Weighing.DRY, OptionalDouble.empty()), sealedMl, false, false, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false));
  }

  private BuildPlan plan() {
    Tank tank = new Tank(1000, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    Scene scene = new Scene("stages", tank, Floor.DEFAULT, new Scene.Sand(sandMm, 1.5), new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, joints, Settings.DEFAULT.with(Setting.CONTACT_INSET_MM, 0));
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    List<Solid> solids = SceneSolids.ofPlaced(scene, shapes.placed());
    Stander judge = new StageJudge(scene, shapes.placed());
    BuildPlan plan = BuildPlan.of(scene, List.copyOf(shapes.bodies().values()), solids,
        ContactFinder.find(solids, ContactRules.DEFAULT).contacts(), StageJudge.sandFeet(scene, shapes.placed()), judge,
        200);
    recheck(plan, new StageJudge(scene, shapes.placed()));
    plan.carry().ifPresent(c -> recheckPieces(plan, c, new StageJudge(scene, shapes.placed())));
    return plan;
  }

  /** Every stage of carrying in, asked again rock by rock, with all that was joined on the bench set. */
  private void recheckPieces(BuildPlan plan, BuildPlan.Carry carry, Stander judge) {
    Set<Integer> placed = new TreeSet<>();
    Set<Integer> cured = new TreeSet<>();
    for (int j = 0; j < joints.size(); j++) if (joints.get(j).madeIn() == JointSpec.MadeIn.BENCH) cured.add(j);
    Set<Integer> made = new TreeSet<>(cured);
    for (int i = 0; i < carry.order().stages().size(); i++) {
      Stage s = carry.order().stages().get(i);
      placed.addAll(plan.rocksOf(s.rock()));
      made.addAll(s.joints());
      Stander now = placed.stream().anyMatch(plan.onSand()::contains) ? judge.withSand() : judge;
      if (i >= plan.wetFrom()) now = now.filled();
      assertThat(now.stays(placed, cured)).isEqualTo(s.stands());
      if (s.curedHere()) cured = new TreeSet<>(made);
    }
    assertThat(placed).hasSize(rocks.size());
  }

  /** Every stage of every order, asked again from nothing. */
  private static void recheck(BuildPlan plan, Stander judge) {
    Set<Integer> placed = new TreeSet<>();
    Set<Integer> cured = new TreeSet<>();
    Set<Integer> made = new TreeSet<>();
    for (int i = 0; i < plan.order().stages().size(); i++) {
      Stage s = plan.order().stages().get(i);
      placed.add(s.rock());
      made.addAll(s.joints());
      Stander now = placed.stream().anyMatch(plan.onSand()::contains) ? judge.withSand() : judge;
      if (plan.carry().isEmpty() && i >= plan.wetFrom()) now = now.filled();
      assertThat(now.stays(placed, cured)).isEqualTo(s.stands());
      if (s.curedHere()) {
        cured.addAll(made);
        assertThat(now.stays(placed, cured)).isTrue();
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

  /** What stands on the floor comes before the sand, what stands on the sand after it, and the stages stand. */
  @Test
  void theSandIsLaidBeforeWhatStandsOnIt() {
    sandMm = 40;
    box("on sand", 150, 150, 80, 3, 200, 250, 40);
    box("on the first", 100, 100, 60, 1, 200, 250, 120);
    box("on the floor", 200, 200, 150, 8, 700, 250, 10);
    BuildPlan plan = plan();
    assertThat(plan.order().unaided()).isTrue();
    assertThat(plan.order().stages()).extracting(Stage::rock).containsExactly(2, 0, 1);
    assertThat(plan.onSand()).containsExactly(0);
    assertThat(plan.sandBefore()).isEqualTo(1);
  }

  /** A bridge with one end on a block and one in the sand needs the sand; one that lies on two blocks does not wait for it. */
  @Test
  void aBridgeIntoTheSandWaitsForIt() {
    sandMm = 60;
    box("block", 150, 150, 50, 3, 200, 250, 10);
    box("bridge", 400, 100, 40, 2, 350, 250, 60);
    BuildPlan plan = plan();
    assertThat(plan.order().unaided()).isTrue();
    assertThat(plan.onSand()).containsExactly(1);
    assertThat(plan.sandBefore()).isEqualTo(1);

    box("other block", 150, 150, 50, 3, 500, 250, 10);
    BuildPlan bridged = plan();
    assertThat(bridged.order().unaided()).isTrue();
    assertThat(bridged.sandBefore()).isEqualTo(-1);
  }

  /**
   * Foot and waist are joined on the bench and go in as one piece; the living cap is joined in the tank with putty, after
   * filling, and is out of its water only while it is set and fixed: 5 min a rock and 2 a joint (defaults).
   */
  @Test
  void piecesGoInAsTheyWereJoined() {
    rock("cap", Rock.Kind.LIVE, 100, 100, 60, 1, 300, 250, 210);
    box("foot", 200, 200, 100, 6, 300, 250, 10);
    box("waist", 150, 150, 100, 3, 300, 250, 110);
    box("apart", 150, 150, 100, 3, 700, 250, 10);
    joints.add(JointSpec.paste("foot", "waist", JointSpec.Bond.MORTAR, 40));
    joints.add(JointSpec.paste("waist", "cap", JointSpec.Bond.PUTTY, 20).madeIn(JointSpec.MadeIn.TANK));
    BuildPlan plan = plan();
    assertThat(plan.modules()).extracting(Modules.Module::rocks)
        .containsExactly(List.of("cap"), List.of("foot", "waist"), List.of("apart"));
    assertThat(plan.order().stages()).flatExtracting(Stage::joints).containsExactly(0);
    BuildPlan.Carry carry = plan.carry().orElseThrow();
    assertThat(carry.order().unaided()).isTrue();
    assertThat(carry.order().stages()).extracting(Stage::rock).containsExactly(1, 2, 0);
    assertThat(carry.order().stages()).flatExtracting(Stage::joints).containsExactly(1);
    assertThat(plan.wetFrom()).isEqualTo(2);
    assertThat(plan.batches().livingOutMin()).isZero();
    assertThat(carry.batches().livingOutMin()).isZero();
    assertThat(carry.batches().wetMin()).isEqualTo(7);
    assertThat(carry.batches().putty()).isEqualTo(20);
    assertThat(plan.mortar()).hasSize(1);
  }

  /** The same cap in mortar does not set under water: it goes in before filling and is out until then. */
  @Test
  void mortarInTheTankIsMadeBeforeFilling() {
    rock("cap", Rock.Kind.LIVE, 100, 100, 60, 1, 300, 250, 210);
    box("foot", 200, 200, 100, 6, 300, 250, 10);
    box("waist", 150, 150, 100, 3, 300, 250, 110);
    joints.add(JointSpec.paste("foot", "waist", JointSpec.Bond.MORTAR, 40));
    joints.add(JointSpec.paste("waist", "cap", JointSpec.Bond.MORTAR, 20).madeIn(JointSpec.MadeIn.TANK));
    BuildPlan plan = plan();
    assertThat(plan.wetFrom()).isEqualTo(2);
    // 5 min to set it, 3 to mix, 2 for the joint.
    assertThat(plan.carry().orElseThrow().batches().livingOutMin()).isEqualTo(10);
    assertThat(plan.mortar()).hasSize(2);
  }

  /** Two pieces that rest on each other, each under one of the other's rocks, cannot be lowered one after the other. */
  @Test
  void piecesThatLockAreNamed() {
    box("a low", 150, 150, 100, 3, 200, 250, 10);
    box("b high", 350, 100, 60, 2, 300, 200, 110);
    box("b low", 150, 150, 50, 3, 400, 300, 10);
    box("a high", 350, 100, 110, 2, 300, 305, 60);
    joints.add(JointSpec.paste("a low", "a high", JointSpec.Bond.MORTAR, 40));
    joints.add(JointSpec.paste("b low", "b high", JointSpec.Bond.MORTAR, 40));
    BuildPlan plan = plan();
    assertThat(plan.carry().orElseThrow().locked()).containsExactly(List.of(0, 1));
  }

  /**
   * Plank and counterweight are living rock, set after filling; the counterweight of 3 kg has a void of 0.9 l. Dry it outweighs
   * the plank, 120 against 50 kg mm; in water the plank weighs 0.63 kg and the rock 1.9 less 0.92, so 39 against 32 (pores flood,
   * mineral 2780 kg/m3; derived): still enough. With 1.2 l it is 1.9 less 1.23, 27 against 32: it stays only dry, and the plan
   * must not call the stage sound.
   */
  @Test
  void whatIsSetAfterFillingIsJudgedInWater() {
    box("block", 200, 200, 100, 6, 300, 250, 10);
    rock("plank", Rock.Kind.LIVE, 300, 100, 40, 1, 450, 250, 110);
    rock("cap", Rock.Kind.LIVE, 150, 150, 110, 3, 900, 360, 250, 150);
    BuildPlan enough = plan();
    assertThat(enough.order().complete()).isTrue();
    assertThat(enough.wetFrom()).isEqualTo(1);
    assertThat(enough.order().stages()).extracting(Stage::stands).containsExactly(true, false, true);

    rocks.remove(2);
    places.remove(2);
    rock("cap", Rock.Kind.LIVE, 150, 150, 110, 3, 1200, 360, 250, 150);
    BuildPlan open = plan();
    assertThat(open.order().stages()).extracting(Stage::stands).containsExactly(true, false, false);
    assertThat(open.order().complete()).isFalse();
  }

  /**
   * A dry weight of 3 kg with a void of 1.2 l holds the plank dry but not in water (27 against 32 kg mm, as above); a living cap
   * of 2 kg on it would (50 more), so it has to be there before the water rises. A weight without a void holds by itself.
   */
  @Test
  void whatTheHeapNeedsInWaterIsSetBeforeFilling() {
    box("block", 200, 200, 100, 6, 300, 250, 10);
    box("plank", 300, 100, 40, 1, 450, 250, 110);
    rock("weight", Rock.Kind.DRY, 150, 150, 110, 3, 1200, 360, 250, 150);
    rock("cap", Rock.Kind.LIVE, 110, 110, 80, 2, 360, 250, 260);
    BuildPlan plan = plan();
    assertThat(plan.order().complete()).isTrue();
    assertThat(plan.wetFrom()).isEqualTo(4);

    Rock solid = new Rock("weight", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 150, 150, 110, 1),
        new Rock.Weighed(3, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty());
    rocks.set(2, solid);
    assertThat(plan().wetFrom()).isEqualTo(3);
  }

  /** Without either it never stands, and the plan says so. */
  @Test
  void whatCannotStandIsNotPlannedAway() {
    box("block", 200, 200, 100, 6, 300, 250, 10);
    box("plank", 300, 100, 40, 1, 500, 250, 110);
    assertThat(plan().order().complete()).isFalse();
  }
}
