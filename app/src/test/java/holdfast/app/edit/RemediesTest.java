package holdfast.app.edit;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Each remedy is pressed and the scene judged anew: what it was for is gone. The millimetres are differences of the lengths
 * that the scene is made of (derived): a tank of 600 by 400 mm inside, the grid's top at 10 mm, gaps of 50 mm to the front and
 * 40 mm to the other panes.
 */
class RemediesTest {
  private static final Rock BLOCK = Scenes.box("block", 100, 100, 80, 1.4);
  private static final Rock SLAB = Scenes.box("slab", 200, 150, 60, 3);

  private static Scene scene(List<Rock> rocks, Placement... placed) {
    return Scenes.small().withRocks(rocks).withPlacements(List.of(placed));
  }

  private static Scene sandy(Scene s, double depthMm) {
    return new Edit.Furnish(s.tank(), s.floor(), new Scene.Sand(depthMm, 1.5), s.water()).on(s).match(x -> x, why -> {
      throw new AssertionError(why);
    });
  }

  /** Everything that is found without pushing. */
  private static CheckReport report(Scene s) {
    return Check.run(s, Shapes.of(s, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.NONE, 0, 1));
  }

  private static List<Finding> findings(Scene s) {
    return report(s).findings();
  }

  private static Finding found(Scene s, Code code, String rock) {
    return findings(s).stream().filter(f -> f.code() == code && f.about().get(0).equals(rock)).findFirst()
        .orElseThrow(() -> new AssertionError(findings(s)));
  }

  private static List<Remedy> remedies(Scene s, Finding f) {
    return new Remedies(report(s), Shapes.of(s, MeshLoader.NONE).placed()).of(f);
  }

  private static Scene pressed(Scene s, Remedy r) {
    Document d = new Document(s);
    assertThat(d.apply(r.edit())).isInstanceOf(Outcome.Changed.class);
    assertThat(d.stepsDone()).as("one step").isEqualTo(1);
    Scene after = d.scene();
    d.undo();
    assertThat(d.scene()).isEqualTo(s);
    return after;
  }

  /** Nothing of the kind is found there that matters as much. */
  private static void gone(Scene after, Finding f) {
    assertThat(findings(after)).noneMatch(o ->
        o.code() == f.code() && o.about().equals(f.about()) && o.severity().compareTo(f.severity()) <= 0);
  }

  /** The only remedy, its words, and the scene after it, in which the finding is gone. */
  private static Scene only(Scene s, Code code, String rock, String words) {
    Finding f = found(s, code, rock);
    List<Remedy> all = remedies(s, f);
    assertThat(all).extracting(Remedy::words).containsExactly(words);
    Scene after = pressed(s, all.get(0));
    gone(after, f);
    return after;
  }

  @Test
  void aRockTooCloseToAPaneIsMovedAway() {
    Scene s = scene(List.of(BLOCK), Scenes.at("block", 300, 80, 10));
    Scene after = only(s, Code.GAP, "block", "Move block 20 mm back");
    assertThat(after.placement("block").orElseThrow().atMm()).isEqualTo(new Vec3(300, 100, 10));
    only(scene(List.of(BLOCK), Scenes.at("block", 300, 50, 10)), Code.TOUCHES_PANE, "block", "Move block 50 mm back");
    only(scene(List.of(BLOCK), Scenes.at("block", 525, 200, 10)), Code.GAP, "block", "Move block 15 mm to the left");
  }

  /** Whole millimetres, and never one too few. */
  @Test
  void theMoveIsRoundedUp() {
    Scene after = only(scene(List.of(BLOCK), Scenes.at("block", 300, 79.7, 10)), Code.GAP, "block", "Move block 21 mm back");
    assertThat(after.placement("block").orElseThrow().atMm().y()).isEqualTo(100.7);
  }

  @Test
  void whatCarriesOthersIsMovedWithThemOrAlone() {
    Scene s = scene(List.of(SLAB, BLOCK), Scenes.at("slab", 300, 105, 10), Scenes.at("block", 300, 105, 70));
    Finding f = found(s, Code.GAP, "slab");
    List<Remedy> all = remedies(s, f);
    assertThat(all).extracting(Remedy::words)
        .containsExactly("Move slab and its heap 20 mm back", "Move slab 20 mm back");
    Scene heap = pressed(s, all.get(0));
    gone(heap, f);
    assertThat(heap.placement("block").orElseThrow().atMm()).isEqualTo(new Vec3(300, 125, 70));
    Scene alone = pressed(s, all.get(1));
    gone(alone, f);
    assertThat(alone.placement("block")).isEqualTo(s.placement("block"));
  }

  /** What a move would spoil elsewhere is no remedy: another gap, another rock in the way, a locked rock. */
  @Test
  void noRemedyThatMakesSomethingElseWorse() {
    Rock wide = Scenes.box("wide", 100, 340, 80, 4);
    Scene narrow = scene(List.of(wide), Scenes.at("wide", 300, 200, 10));
    assertThat(remedies(narrow, found(narrow, Code.GAP, "wide"))).isEmpty();
    Scene blocked = scene(List.of(BLOCK, SLAB), Scenes.at("block", 300, 80, 10), Scenes.at("slab", 300, 215, 10));
    assertThat(remedies(blocked, found(blocked, Code.GAP, "block"))).isEmpty();
    Scene free = scene(List.of(BLOCK, SLAB), Scenes.at("block", 300, 80, 10), Scenes.at("slab", 300, 227, 10));
    assertThat(remedies(free, found(free, Code.GAP, "block"))).hasSize(1);
    Scene locked = scene(List.of(BLOCK), new Placement("block", new Vec3(300, 80, 10), Quat.IDENTITY, true));
    assertThat(remedies(locked, found(locked, Code.GAP, "block"))).isEmpty();
  }

  @Test
  void aRockInTheGlassIsMovedIn() {
    only(scene(List.of(BLOCK), Scenes.at("block", 20, 200, 10)), Code.OUTSIDE, "block", "Move block 70 mm to the right");
    Scene corner = scene(List.of(BLOCK), Scenes.at("block", 600, 400, 10));
    only(corner, Code.OUTSIDE, "block", "Move block 90 mm to the left and 90 mm forward");
    Scene low = only(scene(List.of(BLOCK), Scenes.at("block", 300, 200, -5)), Code.OUTSIDE, "block", "Move block 15 mm up");
    assertThat(low.placement("block").orElseThrow().atMm().z()).isEqualTo(10);
  }

  @Test
  void aRockTooCloseToADeviceIsMovedAwayFromIt() {
    Scene s = scene(List.of(BLOCK), Scenes.at("block", 190, 200, 10));
    Scene overflow = new Scene(s.name(), s.tank(), s.floor(), s.sand(), s.water(),
        List.of(new Scene.Device("overflow", new Vec3(0, 150, 0), new Vec3(100, 100, 300), 60)), s.lamps(), s.rocks(),
        s.placements(), s.joints(), s.settings());
    Scene after = only(overflow, Code.BLOCKS_DEVICE, "block", "Move block 20 mm to the right");
    assertThat(after.placement("block").orElseThrow().atMm().x()).isEqualTo(210);
  }

  @Test
  void whatRestsOnSandIsLoweredToTheFloorWithAllThatItCarries() {
    Scene s = sandy(scene(List.of(SLAB, BLOCK), Scenes.at("slab", 300, 200, 40), Scenes.at("block", 300, 200, 100)), 40);
    Scene after = only(s, Code.ON_SAND, "slab", "Lower slab and its heap 30 mm onto the floor");
    assertThat(after.placement("block").orElseThrow().atMm().z()).isEqualTo(70);
    only(sandy(scene(List.of(SLAB), Scenes.at("slab", 300, 200, 40)), 40), Code.ON_SAND, "slab",
        "Lower slab 30 mm onto the floor");
  }

  /** On sand at one end and on a stone that stands on the floor at the other: what then carries what is not determined. */
  @Test
  void aHeapThatHalfStandsIsLeftToThePerson() {
    Rock beam = Scenes.box("beam", 300, 80, 30, 2);
    Scene s = sandy(scene(List.of(BLOCK, SLAB, beam), Scenes.at("block", 150, 200, 10),
        Scenes.at("slab", 400, 200, 30), Scenes.at("beam", 290, 200, 90)), 30);
    assertThat(remedies(s, found(s, Code.ON_SAND, "slab"))).isEmpty();
  }

  @Test
  void aRockInMidWaterIsLetDown() {
    Scene s = scene(List.of(BLOCK), Scenes.at("block", 300, 200, 50));
    Scene after = only(s, Code.FALLS, "block", "Let block down 40 mm");
    assertThat(after.placement("block").orElseThrow().atMm().z()).isEqualTo(10);
    // One that goes over its edge has something under it, and no one place to go to.
    Scene over = scene(List.of(SLAB, BLOCK), Scenes.at("slab", 300, 200, 10), Scenes.at("block", 430, 200, 70));
    assertThat(remedies(over, found(over, Code.FALLS, "block"))).isEmpty();
  }

  @Test
  void aBondThatHoldsNothingIsTakenOut() {
    Scene s = scene(List.of(SLAB, BLOCK), Scenes.at("slab", 200, 200, 10), Scenes.at("block", 450, 200, 10))
        .withJoints(List.of(JointSpec.paste("slab", "block", JointSpec.Bond.MORTAR, 40)));
    Scene after = only(s, Code.BOND_WITHOUT_CONTACT, "slab", "Take this bond out");
    assertThat(after.joints()).isEmpty();
  }

  /** What is tied to something that stays is moved with it or not at all. */
  @Test
  void aBondIsNotTornByAMove() {
    Scene s = scene(List.of(SLAB, BLOCK), Scenes.at("slab", 300, 105, 10), Scenes.at("block", 300, 105, 70))
        .withJoints(List.of(JointSpec.paste("slab", "block", JointSpec.Bond.MORTAR, 40)));
    only(s, Code.GAP, "slab", "Move slab and its heap 20 mm back");
  }

  /**
   * A heavy pillar in the middle of thin bare glass: what the pane's own study tried and found to be enough is what is
   * offered, and the pane is judged anew with it.
   */
  @Test
  void theBottomPaneIsRelieved() {
    Scene bare = pillar(5, Tank.BottomSupport.FULL, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), 370);
    assertThat(found(bare, Code.PANE_STRESS, "pillar").severity()).isEqualTo(Severity.FAIL);
    Scene after = only(bare, Code.PANE_STRESS, "pillar", "Lay a louvre grid under all rocks");
    assertThat(after.floor()).isEqualTo(Floor.DEFAULT);
    assertThat(after.placement("pillar").orElseThrow().atMm().z()).isEqualTo(10);
    only(pillar(6, Tank.BottomSupport.EDGES, Floor.DEFAULT, 120), Code.PANE_STRESS, "pillar", "Move pillar 75 mm back");
  }

  private static Scene pillar(double glassMm, Tank.BottomSupport support, Floor floor, double waterMm) {
    Tank t = new Tank(600, 400, 400, 8, glassMm, support, false, false, List.of(), List.of(Side.FRONT), List.of());
    Scene s = scene(List.of(Scenes.box("pillar", 200, 160, 200, 12)), Scenes.at("pillar", 300, 200, floor.topMm()));
    return new Edit.Furnish(t, floor, s.sand(), new Scene.Water(waterMm, 35, 25)).on(s).match(x -> x, why -> {
      throw new AssertionError(why);
    });
  }

  /** Whatever is offered in scenes that were not made for this does what it says. */
  @ParameterizedTest
  @ValueSource(strings = {"../scenes/bad.json", "src/test/resources/holdfast/app/view/handling.json"})
  void everyRemedyThatIsOfferedMends(String file) {
    Path path = Path.of(file);
    assertThat(Files.exists(path)).isTrue();
    Scene s = SceneReader.read(path).match(x -> x, why -> {
      throw new AssertionError(why.rendered());
    });
    int offered = 0;
    CheckReport report = report(s);
    Remedies known = new Remedies(report, Shapes.of(s, MeshLoader.NONE).placed());
    for (Finding f : report.findings()) {
      for (Remedy r : known.of(f)) {
        offered++;
        gone(pressed(s, r), f);
      }
    }
    assertThat(offered).isPositive();
  }
}
