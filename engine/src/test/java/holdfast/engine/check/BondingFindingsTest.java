package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.bonding.JointScenes;
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

class BondingFindingsTest {
  private static Rock box(String name) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 100, 100, 1), new Rock.BulkDensity(1.8), 0,
        false, false, OptionalDouble.empty());
  }

  private static List<Finding> weak(double mortar) {
    Tank tank = new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    Scene scene = new Scene("bond", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), List.of(), List.of(),
        List.of(box("foot"), box("cap")),
        List.of(new Placement("foot", new Vec3(300, 250, 10), Quat.IDENTITY, false),
            new Placement("cap", new Vec3(300, 250, 110), Quat.IDENTITY, false)),
        List.of(JointSpec.paste("foot", "cap", JointSpec.Bond.MORTAR, 40)),
        Settings.DEFAULT.with(Setting.BOND_MORTAR_N_MM2, mortar));
    HeapStudy study = new HeapStudy(SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed()), 1);
    return BondingFindings.of(study, List.of(), 1, CheckWatch.NONE).stream().filter(f -> f.code() == Code.ROCK_WEAKER).toList();
  }

  /** Rock that crushes at 1.0 N/mm2 is credited with a tenth in tension (common practice): 0.10 passes, 0.11 does not. */
  @Test
  void pasteStrongerThanItsRockIsRemarkedOn() {
    assertThat(weak(0.10)).isEmpty();
    assertThat(weak(0.11)).singleElement().satisfies(f -> {
      assertThat(f.severity()).isEqualTo(Severity.WARN);
      assertThat(f.about()).containsExactly("foot", "cap");
      assertThat(f.remedy()).contains("bond.mortar_n_mm2 to 0.10");
    });
  }

  /** With all three joints this heap gives way when shaken, with one it doesn't: a person must not fix the others to be sure. */
  @Test
  void saysSoWhereMoreJointsWouldBeTooMany() {
    HeapStudy study = new HeapStudy(JointScenes.laid(5, 21, 2, 0.15), 1);
    Finding fails = Draft.fail(Code.SHAKES).about("stone 0").say("It gives way when shaken.", "Fix joints.");
    List<Finding> found = BondingFindings.of(study, List.of(fails), 1, CheckWatch.NONE);
    assertThat(found).singleElement().satisfies(f -> {
      assertThat(f.severity()).isEqualTo(Severity.FAIL);
      assertThat(f.sentence()).contains("no cheaper set does. Leave the other joints open: with every joint in mortar, ");
    });
  }
}
