package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** An L of two boxes, 60 mm wide in its plane, 100 mm thick, each arm 300 mm; and a rod longer than the tank is deep. */
class HandlingFindingsTest {
  private static Rock box(String name, double x, double y, double z) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, x, y, z, 1), new Rock.BulkDensity(1.6), 0,
        false, false, OptionalDouble.empty());
  }

  private static List<Finding> openings(List<Tank.Opening> openings, double height, List<Rock> rocks, List<Placement> places,
      List<JointSpec> joints) {
    Tank tank = new Tank(1200, 500, height, 10, 12, Tank.BottomSupport.FULL, false, false, openings, List.of(), List.of());
    Scene scene = new Scene("l", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(height - 50, 35, 25), List.of(),
        List.of(), rocks, places, joints, Settings.DEFAULT);
    SceneHeap heap = SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
    return HandlingFindings.of(heap, r -> true, HandlingFindings.modules(heap, new Recall()), new Recall()).stream()
        .filter(f -> f.code() == Code.OPENING || f.code() == Code.OPENING_TURN).toList();
  }

  private static List<Finding> ell(double length, double width) {
    return openings(List.of(new Tank.Opening(400, 150, length, width)), 500,
        List.of(box("foot", 300, 100, 60), box("post", 60, 100, 240)),
        List.of(new Placement("foot", new Vec3(600, 250, 10), Quat.IDENTITY, false),
            new Placement("post", new Vec3(480, 250, 70), Quat.IDENTITY, false)),
        List.of(JointSpec.paste("foot", "post", JointSpec.Bond.MORTAR, 100)));
  }

  /**
   * Straight the L takes (300 + 60) / sqrt 2 = 255 mm across its open side, by turning sqrt 2 60 + 30 = 115 mm (its width at
   * the corner and the depth of the opening, a setting), and 100 mm the other way, 20 mm more for fingers (derived, see
   * {@code TurnSearchTest}); no way goes through less than its 60 mm and the fingers.
   */
  @Test
  void aPieceThatHooksThroughIsTold() {
    assertThat(ell(290, 130)).isEmpty();
    assertThat(ell(150, 130)).singleElement().satisfies(f -> {
      assertThat(f.severity()).isEqualTo(Severity.WARN);
      assertThat(f.code()).isEqualTo(Code.OPENING_TURN);
      assertThat(f.about()).containsExactly("foot", "post");
      assertThat(f.sentence())
          .startsWith("The piece of foot and post passes the opening only by turning it part way through.")
          .contains("with 10 mm for fingers on each side and");
    });
    assertThat(ell(75, 130)).singleElement().satisfies(f -> {
      assertThat(f.severity()).isEqualTo(Severity.FAIL);
      assertThat(f.sentence()).contains("does not pass the opening on a straight lift").contains("does not prove");
      assertThat(f.remedy()).contains("Or make the joint foot to post in the tank.");
    });
  }

  /** A rod of 900 mm passes 200 by 200 mm only on end, and 400 mm of water do not let it stand: it has to be leant in. */
  @Test
  void whatIsTallerOnEndThanTheTankIsNotCalledPassing() {
    List<Rock> rod = List.of(box("rod", 900, 60, 60));
    List<Placement> place = List.of(new Placement("rod", new Vec3(600, 250, 10), Quat.IDENTITY, false));
    assertThat(openings(List.of(new Tank.Opening(500, 150, 200, 200)), 1000, rod, place, List.of())).isEmpty();
    // With 440 mm of height it lies flatter than 30 degrees: 780 mm long in plan, 740 mm of it along the tank at least, and its
    // top end is within 200 mm of the middle of 1200 mm (derived).
    assertThat(openings(List.of(new Tank.Opening(500, 150, 200, 200)), 450, rod, place, List.of())).singleElement()
        .satisfies(f -> {
          assertThat(f.severity()).isEqualTo(Severity.FAIL);
          assertThat(f.sentence()).contains("too tall to stand under it");
        });
    // A longer opening lets it lean.
    assertThat(openings(List.of(new Tank.Opening(100, 150, 500, 200)), 450, rod, place, List.of())).singleElement()
        .satisfies(f -> assertThat(f.sentence()).contains("only by turning it part way through"));
  }

  /**
   * 0.4 kg of stone with half a litre of voids: 0.4 x 9.81 x (1 - 1023.3 / 2780) = 2.48 N down, 5.02 N up (Archimedes, sea
   * water of 35 and 25 degrees). Fixed to nine kilograms it floats no less, but is held.
   */
  @Test
  void whatFloatsIsAFailUnlessItIsHeld() {
    assertThat(foam(List.of())).satisfies(f -> {
      assertThat(f.severity()).isEqualTo(Severity.FAIL);
      assertThat(f.figure().orElseThrow()).isCloseTo(2.48 - 5.02, within(0.01));
    });
    assertThat(foam(List.of(JointSpec.paste("heavy", "foam", JointSpec.Bond.MORTAR, 90))).severity()).isEqualTo(Severity.WARN);
  }

  private static Finding foam(List<JointSpec> joints) {
    Tank tank = new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    Rock foam = new Rock("foam", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 100, 100, 1),
        new Rock.Weighed(0.4, Rock.Weighing.DRY, OptionalDouble.empty()), 500, false, false, OptionalDouble.empty());
    Scene scene = new Scene("foam", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), List.of(), List.of(),
        List.of(box("heavy", 200, 200, 100), foam),
        List.of(new Placement("heavy", new Vec3(300, 250, 10), Quat.IDENTITY, false),
            new Placement("foam", new Vec3(300, 250, 110), Quat.IDENTITY, false)), joints, Settings.DEFAULT);
    return Check.run(scene, Shapes.of(scene, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.NONE, 0, 1)).findings().stream()
        .filter(f -> f.code() == Code.FLOATS).findFirst().orElseThrow();
  }
}
