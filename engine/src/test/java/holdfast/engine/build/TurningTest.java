package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
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
import holdfast.model.shape.RockBody;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The poses that are told, in the frame of the tank. */
class TurningTest {
  private static Rock box(String name, double x, double y, double z) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, x, y, z, 1), new Rock.BulkDensity(1.6), 0,
        false, false, OptionalDouble.empty());
  }

  private static Scene scene(List<Scene.Device> devices) {
    Tank tank = new Tank(1200, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false,
        List.of(new Tank.Opening(200, 20, 45, 130), new Tank.Opening(400, 150, 150, 130)), List.of(), List.of());
    return new Scene("l", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), devices,
        List.of(), List.of(box("foot", 300, 100, 60), box("post", 60, 100, 240)),
        List.of(new Placement("foot", new Vec3(600, 250, 10), Quat.IDENTITY, false),
            new Placement("post", new Vec3(480, 250, 70), Quat.IDENTITY, false)),
        List.of(JointSpec.paste("foot", "post", JointSpec.Bond.MORTAR, 100)), Settings.DEFAULT);
  }

  private static Turning.Way way(Scene scene) {
    List<RockBody> bodies = List.copyOf(Shapes.of(scene, MeshLoader.NONE).bodies().values());
    Modules.Module m = Modules.of(scene, bodies).get(0);
    assertThat(m.passes()).isFalse();
    return Turning.of(scene, bodies, m).orElseThrow();
  }

  /** Corners within the depth of the opening, 30 mm, lie in it with 10 mm on each side; those under it between the panes. */
  @Test
  void everyPoseToldIsWhereItIsSaidToBe() {
    Scene scene = scene(List.of());
    Turning.Way way = way(scene);
    assertThat(way.opening()).isEqualTo(1);
    List<Vec3> corners = new ArrayList<>();
    Shapes.of(scene, MeshLoader.NONE).placed().forEach(r -> r.body().lobes()
        .forEach((Hull h) -> corners.addAll(h.moved(scene.placement(r.body().name()).orElseThrow().pose()).corners())));
    assertThat(corners).hasSize(16);
    Turning.Step before = null;
    for (Turning.Step s : way.steps()) {
      List<Vec3> now = corners.stream().map(s.pose()::apply).toList();
      assertThat(now.stream().mapToDouble(Vec3::z).min().orElseThrow() - 0.5).isCloseTo(s.lowestM(), within(1e-8));
      assertThat(now.stream().mapToDouble(Vec3::z).max().orElseThrow() - 0.5).isCloseTo(s.highestM(), within(1e-8));
      for (Vec3 p : now) {
        if (p.z() > 0.5) continue;
        boolean in = p.z() >= 0.47;
        assertThat(p.x()).isBetween(in ? 0.41 : 0.01, in ? 0.54 : 1.19);
        assertThat(p.y()).isBetween(in ? 0.16 : 0.01, in ? 0.27 : 0.49);
        assertThat(p.z()).isGreaterThanOrEqualTo(0.01 - 1e-9);
      }
      // Turned, then tilted: about the level line square to where the top goes.
      double toward = Math.toRadians(s.towardDegrees());
      Quat tilted = Quat.about(new Vec3(-Math.sin(toward), Math.cos(toward), 0), s.tiltRad());
      Quat told = tilted.times(Quat.about(Vec3.Z, s.turnRad()));
      assertThat(told.times(s.pose().turn().conjugate()).angleRad()).isCloseTo(0, within(1e-7));
      if (before != null) {
        assertThat(s.pose().turn().times(before.pose().turn().conjugate()).angleRad()).isLessThan(Math.toRadians(45.001));
      }
      before = s;
    }
    assertThat(way.steps().get(0).lowestM()).isPositive();
    assertThat(before.highestM()).isLessThanOrEqualTo(-0.03);
    assertThat(before.tiltRad()).isCloseTo(0, within(1e-9));
  }

  /** A device takes its strip of the room, and of the opening where it reaches up into it; less 10 mm of clearance. */
  @Test
  void devicesAreInTheWay() {
    Scene.Device low = new Scene.Device("pump", new Vec3(0, 380, 0), new Vec3(1200, 120, 400), 0);
    Gate gate = Gate.of(scene(List.of(low)), new Tank.Opening(400, 150, 150, 130));
    assertThat(gate.room().y1()).isCloseTo(0.37, within(1e-12));
    assertThat(gate.opening().y1()).isCloseTo(0.27, within(1e-12));
    Scene.Device high = new Scene.Device("overflow", new Vec3(0, 250, 0), new Vec3(1200, 250, 480), 0);
    Gate narrow = Gate.of(scene(List.of(high)), new Tank.Opening(400, 150, 150, 130));
    assertThat(narrow.opening().y1()).isCloseTo(0.24, within(1e-12));
    assertThat(narrow.thicknessM()).isCloseTo(0.03, within(1e-12));
    assertThat(narrow.depthM()).isCloseTo(0.49, within(1e-12));
  }
}
