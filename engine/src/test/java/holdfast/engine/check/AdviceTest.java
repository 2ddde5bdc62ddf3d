package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

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
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a report tells a person to do, where a careful reader took it the wrong way. Boxes in a tank of 600 x 500 mm. */
class AdviceTest {
  private static final Tank TANK =
      new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());

  private static Rock box(String name, double l, double w, double h) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, l, w, h, 1), new Rock.BulkDensity(1.8), 0, false, false,
        OptionalDouble.empty());
  }

  private static Placement at(String rock, double x, double y, double z) {
    return new Placement(rock, new Vec3(x, y, z), Quat.IDENTITY, false);
  }

  private static CheckReport check(List<Rock> rocks, List<Placement> places, List<JointSpec> joints, Settings settings) {
    Scene s = new Scene("boxes", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, joints, settings);
    return Check.run(s, Shapes.of(s, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.WEAKEST, 0, 1));
  }

  private static Finding of(CheckReport r, Code code) {
    return r.findings().stream().filter(f -> f.code() == code).findFirst().orElseThrow();
  }

  /** A box of 400 x 300 x 100 mm weighs 21.6 kg: 127 N under water, so that 20 N move nothing. */
  private static CheckReport heavy(double tierN) {
    return check(List.of(box("base", 400, 300, 100)), List.of(at("base", 300, 250, 10)), List.of(),
        Settings.DEFAULT.with(Setting.PUSH_TIER_N, tierN));
  }

  /** Asked about 7.5 N, the verdict must not speak of 8. */
  @Test
  void theVerdictTellsTheForceThatWasAskedAndNoMore() {
    assertThat(heavy(7.5).headline()).contains("under a push of 7.5 N on any rock");
    assertThat(heavy(20).headline()).contains("under a push of 20 N on any rock");
    assertThat(heavy(0.4).headline()).contains("under a push of 0.4 N on any rock");
  }

  /** A tall post close to two panes, and a stray stone in mid water that is fixed to it with mortar that does not reach. */
  @Test
  void theVerdictSaysHowManyMoreKindsFail() {
    CheckReport r = check(List.of(box("base", 100, 100, 100), box("post", 60, 60, 300), box("stray", 100, 100, 100)),
        List.of(at("base", 60, 60, 10), at("post", 60, 60, 110), at("stray", 400, 250, 60)),
        List.of(JointSpec.paste("base", "stray", JointSpec.Bond.MORTAR, 45)), Settings.DEFAULT.with(Setting.SHAKE_G, 0.3));
    List<String> kinds = r.findings().stream().filter(f -> f.severity() == Severity.FAIL).map(f -> f.code().title()).distinct()
        .toList();
    assertThat(kinds.size()).isGreaterThan(5);
    assertThat(r.headline()).isEqualTo("Not safe as it is: " + String.join(", ", kinds.subList(0, 4)) + " and "
        + (kinds.size() - 4) + " more kinds of fault.");
  }

  /** Three cubes glued into a post go over together: one of them cannot be turned onto a broader side. */
  @Test
  void whatIsFixedTogetherIsBroadenedAsOne() {
    CheckReport r = check(List.of(box("low", 100, 100, 100), box("mid", 100, 100, 100), box("top", 100, 100, 100)),
        List.of(at("low", 300, 250, 10), at("mid", 300, 250, 110), at("top", 300, 250, 210)),
        List.of(JointSpec.paste("low", "mid", JointSpec.Bond.MORTAR, 90), JointSpec.paste("mid", "top", JointSpec.Bond.MORTAR, 90)),
        Settings.DEFAULT);
    assertThat(of(r, Code.TOPPLES).remedy())
        .isEqualTo("Give the piece of low, mid and top a broader foot, lower it, or lay a stone to either side.");
  }

  /** 20 mm from the left pane where 40 are wanted; what it is fixed to has to come along. */
  @Test
  void whatIsFixedTogetherIsMovedAsOne() {
    List<Rock> rocks = List.of(box("low", 200, 200, 100), box("top", 100, 100, 60));
    List<Placement> places = List.of(at("low", 120, 250, 10), at("top", 120, 250, 110));
    CheckReport fixed = check(rocks, places, List.of(JointSpec.paste("low", "top", JointSpec.Bond.MORTAR, 90)), Settings.DEFAULT);
    assertThat(of(fixed, Code.GAP).remedy()).isEqualTo("Move low and what is fixed to it at least 20 mm to the right.");
    CheckReport loose = check(rocks, places, List.of(), Settings.DEFAULT);
    assertThat(of(loose, Code.GAP).remedy()).isEqualTo("Move low at least 20 mm to the right.");
  }

  /** A rock that touches nothing has no joint that could or could not mend it: only that it rests on nothing is told. */
  @Test
  void nothingIsSaidOfJointsThatCannotBe() {
    CheckReport r = check(List.of(box("base", 200, 200, 100)), List.of(at("base", 300, 250, 60)), List.of(), Settings.DEFAULT);
    assertThat(of(r, Code.FALLS).remedy()).isEqualTo("Settle the scene so that base rests on something.");
    assertThat(r.findings()).noneMatch(f -> f.code() == Code.NEEDS_BOND);
  }

  /** 30.4 mm through the left pane and 5.2 through the back: so far in, rounded up. */
  @Test
  void aRockThroughTheGlassIsToldHowFarToMove() {
    CheckReport r = check(List.of(box("base", 200, 200, 100)), List.of(at("base", 69.6, 405.2, 10)), List.of(), Settings.DEFAULT);
    Finding f = of(r, Code.OUTSIDE);
    assertThat(f.sentence()).isEqualTo("base reaches 31 mm through the glass.");
    assertThat(f.remedy()).isEqualTo("Move base at least 31 mm to the right and 6 mm forward.");
  }

  /** Longer than the tank: no move helps. */
  @Test
  void aRockThatIsTooLongIsNotMoved() {
    CheckReport r = check(List.of(box("base", 660, 100, 100)), List.of(at("base", 310, 250, 10)), List.of(), Settings.DEFAULT);
    assertThat(of(r, Code.OUTSIDE).remedy())
        .isEqualTo("Turn base, or choose a smaller rock: it is longer than the tank that way.");
  }

  /** 560 mm long in 600: 20 mm on either side where 40 are wanted. Moved from one pane it comes too close to the other. */
  @Test
  void aRockTooLongForItsGapsIsNotMovedFromOnePaneToTheOther() {
    CheckReport r = check(List.of(box("beam", 560, 100, 100)), List.of(at("beam", 300, 250, 10)), List.of(), Settings.DEFAULT);
    assertThat(r.findings().stream().filter(f -> f.code() == Code.GAP)).hasSize(2).allSatisfy(f -> assertThat(f.remedy())
        .isEqualTo("Turn beam, or choose a smaller rock: it leaves too little room on both sides."));
  }

  /** A pump of 100 mm stands in the way of a box from 200 to 400 mm: it is told to reach into it, not to stand before it. */
  @Test
  void aRockInADeviceReachesIntoIt() {
    Scene s = new Scene("pump", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(450, 35, 25),
        List.of(new Scene.Device("pump", new Vec3(380, 200, 0), new Vec3(100, 100, 200), 75)), List.of(),
        List.of(box("base", 200, 200, 100)), List.of(at("base", 300, 250, 10)), List.of(), Settings.DEFAULT);
    CheckReport r = Check.run(s, Shapes.of(s, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.WEAKEST, 0, 1));
    Finding f = of(r, Code.BLOCKS_DEVICE);
    assertThat(f.sentence()).isEqualTo("base reaches 20 mm into pump.");
    assertThat(f.remedy()).isEqualTo("Move base at least 95 mm away from it.");
  }
}
