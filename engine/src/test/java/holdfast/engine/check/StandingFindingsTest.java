package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.contact.TankSolids;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.statics.State;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StandingFindingsTest {
  private static final Tank TANK =
      new Tank(400, 300, 300, 6, 8, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());

  /** A box of 100 x 80 x 60 mm and 0.2 kg whose voids hold no water. */
  private static List<Finding> alone(double sealedMl) {
    Rock rock = new Rock("buoy", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 80, 60, 1),
        new Rock.Weighed(0.2, Rock.Weighing.DRY, OptionalDouble.empty()), sealedMl, false, false, OptionalDouble.empty());
    Scene scene = new Scene("buoy", TANK, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), new Scene.Sand(0, 1.5),
        new Scene.Water(250, 35, 25), List.of(), List.of(), List.of(rock),
        List.of(new Placement("buoy", new Vec3(200, 150, 0), Quat.IDENTITY, false)), List.of(), Settings.DEFAULT);
    return StandingFindings.of(new HeapStudy(SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed()), 1));
  }

  /**
   * Archimedes: 0.2 kg of mineral at 2.7 to 2.8 kg/L displace 0.07 L and 0.3 L of voids as much again, in sea water of 1.02
   * kg/L 0.38 kg: it floats. With 0.1 L of voids the 0.17 kg are less than it weighs.
   */
  @Test
  void whatFloatsIsNotToldToDrop() {
    assertThat(alone(300)).singleElement().satisfies(f -> {
      assertThat(f.code()).isEqualTo(Code.FALLS);
      assertThat(f.state()).contains(State.FILLED);
      assertThat(f.sentence()).isEqualTo("buoy floats up: the water lifts it by more than it weighs.");
      assertThat(f.remedy()).isEqualTo("Fix buoy down, or take out foam.");
    });
    assertThat(alone(100)).isEmpty();
  }

  /** A pump bears nothing (definition), and one that is called like a part of the floor no more than another. */
  @ParameterizedTest
  @ValueSource(strings = {"pump", TankSolids.GRID, TankSolids.SHEET, TankSolids.BOTTOM})
  void whatStandsOnADeviceFalls(String device) {
    Rock rock = new Rock("stone", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 80, 60, 1),
        new Rock.BulkDensity(1.8), 0, false, false, OptionalDouble.empty());
    Scene scene = new Scene("pump", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(250, 35, 25),
        List.of(new Scene.Device(device, new Vec3(150, 100, 10), new Vec3(100, 100, 50), 0)), List.of(), List.of(rock),
        List.of(new Placement("stone", new Vec3(200, 150, 60), Quat.IDENTITY, false)), List.of(), Settings.DEFAULT);
    assertThat(StandingFindings.of(new HeapStudy(SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed()), 1)))
        .singleElement().satisfies(f -> assertThat(f.code()).isEqualTo(Code.FALLS));
  }
}
