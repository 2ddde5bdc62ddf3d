package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.build.Modules.Lift;
import holdfast.engine.build.Modules.Module;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.JointSpec.Bond;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ModulesTest {
  private static RockBody cube(String name, double kg, double poreKg) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) p.add(new Vec3((i & 1) * 0.2, (i >> 1 & 1) * 0.2, (i >> 2) * 0.2));
    Hull h = HullBuilder.build(p).match(x -> x, why -> {
      throw new AssertionError(why);
    });
    return new RockBody(name, List.of(h), Unions.massProperties(List.of(h)).orElseThrow(), kg, poreKg, 0);
  }

  private static Scene scene(List<Tank.Opening> openings, List<Vec3> at, List<JointSpec> joints) {
    Tank tank = new Tank(1200, 500, 600, 10, 12, Tank.BottomSupport.FULL, false, false, openings, List.of(), List.of());
    List<Placement> places = new ArrayList<>();
    for (int i = 0; i < at.size(); i++) places.add(new Placement("r" + i, at.get(i), Quat.IDENTITY, false));
    return new Scene("m", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(500, 35, 25), List.of(), List.of(),
        List.of(), places, joints, Settings.DEFAULT);
  }

  @Test
  void bondsMakeModules() {
    List<Vec3> at = List.of(new Vec3(0, 0, 0), new Vec3(600, 0, 0), new Vec3(0, 0, 200), new Vec3(600, 0, 200));
    List<JointSpec> joints = List.of(
        JointSpec.paste("r0", "r2", Bond.MORTAR, 50), JointSpec.paste("r1", "r3", Bond.NONE, 0));
    List<Module> modules = Modules.of(scene(List.of(), at, joints),
        List.of(cube("r0", 6, 1), cube("r1", 6, 1), cube("r2", 5, 0.5), cube("r3", 5, 0.5)));
    assertThat(modules).extracting(Module::rocks).containsExactly(List.of("r0", "r2"), List.of("r1"), List.of("r3"));
    Module m = modules.get(0);
    // 50 ml of mortar at 1.6 + 0.38 g/ml (defaults, derived).
    assertThat(m.dryKg()).isCloseTo(11.099, within(1e-9));
    assertThat(m.drainedKg()).isCloseTo(12.599, within(1e-9));
    assertThat(m.joints()).containsExactly(0);
    assertThat(m.lift()).isEqualTo(Lift.ONE);
    assertThat(m.passes()).isTrue();
    assertThat(m.sizeM().z()).isCloseTo(0.4, within(1e-12));
  }

  /** An L of five cubes does not pass 400 x 350 however it is turned; parted at the right joint it does. */
  @Test
  void proposesWhereToSplit() {
    List<Vec3> at = List.of(new Vec3(0, 0, 0), new Vec3(200, 0, 0), new Vec3(400, 0, 0), new Vec3(0, 200, 0), new Vec3(0, 0,
        200));
    List<JointSpec> joints = List.of(
        JointSpec.paste("r0", "r1", Bond.MORTAR, 50), JointSpec.paste("r1", "r2", Bond.MORTAR, 50),
        JointSpec.paste("r0", "r3", Bond.MORTAR, 50), JointSpec.paste("r0", "r4", Bond.MORTAR, 50));
    List<RockBody> bodies = new ArrayList<>();
    for (int i = 0; i < 5; i++) bodies.add(cube("r" + i, 3, 0));
    Module m = Modules.of(scene(List.of(new Tank.Opening(0, 0, 400, 350)), at, joints), bodies).get(0);
    assertThat(m.passes()).isFalse();
    assertThat(m.split()).isPresent();
    assertThat(m.split().get().joint()).isIn(0, 2, 3);
    assertThat(m.split().get().first().size() + m.split().get().second().size()).isEqualTo(5);
  }

  @Test
  void weighsItDrainedForTheLift() {
    List<JointSpec> none = List.of();
    List<Vec3> at = List.of(new Vec3(0, 0, 0));
    // Limits 16 and 32 kg (defaults, memory).
    assertThat(Modules.of(scene(List.of(), at, none), List.of(cube("r0", 15, 0.9))).get(0).lift()).isEqualTo(Lift.ONE);
    assertThat(Modules.of(scene(List.of(), at, none), List.of(cube("r0", 15, 1.1))).get(0).lift()).isEqualTo(Lift.TWO);
    assertThat(Modules.of(scene(List.of(), at, none), List.of(cube("r0", 30, 2.1))).get(0).lift()).isEqualTo(Lift.TOO_HEAVY);
  }

  /** A cube of 200 mm with 10 mm for fingers on each side (setting) takes 220 mm both ways; no tilt makes it narrower. */
  @Test
  void leavesRoomForFingersOnBothSides() {
    List<Vec3> at = List.of(new Vec3(0, 0, 0));
    for (double width : new double[] {222, 218}) {
      Scene scene = scene(List.of(new Tank.Opening(0, 0, 222, width)), at, List.of());
      assertThat(Modules.of(scene, List.of(cube("r0", 6, 1))).get(0).passes()).isEqualTo(width > 220);
    }
  }
}
