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
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A box of 100 mm fixed on another, lifted by either. */
class LiftFindingsTest {
  private static Rock box(String name, double bulk) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 100, 100, 1), new Rock.BulkDensity(bulk), 0,
        false, false, OptionalDouble.empty());
  }

  private static List<Finding> found(double footBulk, double strengthNmm2) {
    Tank tank = new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    Scene scene = new Scene("lift", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), List.of(), List.of(),
        List.of(box("foot", footBulk), box("cap", 1.2)),
        List.of(new Placement("foot", new Vec3(300, 250, 10), Quat.IDENTITY, false),
            new Placement("cap", new Vec3(300, 250, 110), Quat.IDENTITY, false)),
        List.of(JointSpec.paste("foot", "cap", JointSpec.Bond.MORTAR, 100)),
        Settings.DEFAULT.with(Setting.BOND_MORTAR_N_MM2, strengthNmm2).with(Setting.CONTACT_INSET_MM, 0));
    SceneHeap heap = SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
    return LiftFindings.of(heap, HandlingFindings.modules(heap, new Recall()));
  }

  /**
   * Held by the cap the foot hangs on 100 x 100 mm of paste: 2.4 kg of stone, and 1 l less 2.4 / 2.78 l of it in pores full of
   * water at 1.023 kg/l, 2.54 kg or 24.9 N, which is 0.00249 N/mm2 (derived). Held by the foot the cap only presses.
   */
  @Test
  void aPieceThatComesApartByOneRockIsHeldByTheOther() {
    assertThat(found(2.4, 0.00255)).isEmpty();
    assertThat(found(2.4, 0.00245)).singleElement().satisfies(f -> {
      assertThat(f.code()).isEqualTo(Code.BREAKS_LIFTED);
      assertThat(f.severity()).isEqualTo(Severity.WARN);
      assertThat(f.figure().orElseThrow()).isCloseTo(100 * 0.00249 / 0.00245, within(1.0));
      assertThat(f.about()).containsExactly("foot", "cap");
      assertThat(f.sentence()).startsWith("Lifted wet by cap, the piece of foot and cap asks its joint of foot and cap for 10");
      assertThat(f.remedy()).isEqualTo("Hold it by foot, never by cap.");
    });
  }
}
