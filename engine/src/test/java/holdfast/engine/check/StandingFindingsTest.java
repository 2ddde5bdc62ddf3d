package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.contact.TankSolids;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
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

  /** A block of 200 x 200 x 100 mm and a brick of 100 x 100 x 60 mm; what the one that lies in the other is told to do. */
  private static Finding overlap(Vec3 block, Vec3 brick, boolean brickLocked, boolean brickFirst) {
    List<Rock> rocks = List.of(box("block", 200, 100), box("brick", 100, 60));
    Placement a = new Placement("block", block, Quat.IDENTITY, false);
    Placement b = new Placement("brick", brick, Quat.IDENTITY, brickLocked);
    Scene scene = new Scene("overlap", TANK, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()),
        new Scene.Sand(0, 1.5), new Scene.Water(250, 35, 25), List.of(), List.of(), rocks,
        brickFirst ? List.of(b, a) : List.of(a, b), List.of(), Settings.DEFAULT);
    List<Finding> all = StandingFindings.of(new HeapStudy(SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed()), 1));
    return all.stream().filter(f -> f.code() == Code.OVERLAPS).findFirst().orElseThrow();
  }

  private static Rock box(String name, double side, double height) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, side, side, height, 1), new Rock.BulkDensity(1.8), 0,
        false, false, OptionalDouble.empty());
  }

  /** Whichever is placed first, a person moves the upper one; of two side by side one that is not locked, else the smaller. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void theOneThatAPersonWouldMoveIsToldToMove(boolean brickFirst) {
    Finding upper = overlap(new Vec3(200, 150, 0), new Vec3(200, 150, 97), false, brickFirst);
    assertThat(upper.about()).containsExactly("brick", "block");
    assertThat(upper.sentence()).startsWith("brick lies 3.0 mm inside block;");
    assertThat(upper.remedy()).isEqualTo("Settle the scene, or move brick 3.0 mm up.");
    Finding big = overlap(new Vec3(200, 150, 57), new Vec3(200, 150, 0), false, brickFirst);
    assertThat(big.remedy()).as("the upper is the larger").isEqualTo("Settle the scene, or move block 3.0 mm up.");
    Finding beside = overlap(new Vec3(150, 150, 0), new Vec3(297, 150, 0), false, brickFirst);
    assertThat(beside.remedy()).isEqualTo("Settle the scene, or move brick 3.0 mm toward the right.");
    Finding held = overlap(new Vec3(150, 150, 0), new Vec3(297, 150, 0), true, brickFirst);
    assertThat(held.remedy()).as("the smaller is locked").isEqualTo("Settle the scene, or move block 3.0 mm toward the left.");
  }

  @Test
  void aRockInTheGlassIsMovedOutOfIt() {
    Finding f = overlap(new Vec3(98, 150, 0), new Vec3(330, 150, 0), false, false);
    assertThat(f.about()).containsExactly("block", "left pane");
    assertThat(f.remedy()).isEqualTo("Settle the scene, or move block 2.0 mm toward the right.");
  }

  /**
   * A span of 130 mm over two legs rests on 15 x 100 mm of each: narrow beside the 10 mm that a paste reaches, yet a strip that
   * it fills (definition).
   */
  @Test
  void aNarrowStripCanBeFixed() {
    List<Rock> rocks = List.of(box("left", 100, 60), box("right", 100, 60), box("span", 130, 40));
    List<Placement> places = List.of(new Placement("left", new Vec3(100, 150, 0), Quat.IDENTITY, false),
        new Placement("right", new Vec3(300, 150, 0), Quat.IDENTITY, false),
        new Placement("span", new Vec3(200, 150, 60), Quat.IDENTITY, false));
    Scene scene = new Scene("arch", TANK, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), new Scene.Sand(0, 1.5),
        new Scene.Water(250, 35, 25), List.of(), List.of(), rocks, places,
        List.of(JointSpec.paste("left", "span", JointSpec.Bond.MORTAR, 40),
            JointSpec.paste("right", "span", JointSpec.Bond.MORTAR, 40)),
        Settings.DEFAULT);
    SceneHeap heap = SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
    assertThat(heap.idleBonds()).isEmpty();
    // At most all of 15 x 100 mm, and of 40 ml 10 mm thick at most 4000 mm2 (definition).
    assertThat(heap.seats()).filteredOn(s -> s.kind() == SceneHeap.Kind.BOND).hasSize(2)
        .allSatisfy(s -> assertThat(s.areaM2()).isCloseTo(1500e-6, within(1e-8)));
  }
}
