package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class RoomFindingsTest {
  private final List<Rock> rocks = new ArrayList<>();
  private final List<Placement> places = new ArrayList<>();

  private void box(String name, double x, double y, double z, double lx, double ly, double lz) {
    rocks.add(new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, lx, ly, lz, 1), new Rock.BulkDensity(1.8), 0,
        false, false, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false));
  }

  /** Four walls round a room of 100 x 100 x 100 mm on the bare bottom, and a lid that leaves a slot along one of them. */
  private List<Finding> room(double slotMm) {
    box("left wall", 140, 150, 0, 20, 140, 100);
    box("right wall", 260, 150, 0, 20, 140, 100);
    box("front wall", 200, 90, 0, 100, 20, 100);
    box("back wall", 200, 210, 0, 100, 20, 100);
    box("lid", 200 + slotMm / 2, 150, 100, 140 - 40 - slotMm + 40, 140, 30);
    Tank tank = new Tank(400, 300, 300, 6, 8, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    Scene scene = new Scene("room", tank, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), new Scene.Sand(0, 1.5),
        new Scene.Water(250, 35, 25), List.of(), List.of(), rocks, places, List.of(), Settings.DEFAULT);
    return RoomFindings.of(scene, Shapes.of(scene, f -> new MeshResult.Unreadable("none"))).findings();
  }

  /**
   * The lid reaches 20 mm over each wall but on the left, where the slot opens: 5 mm of it inside the room's edge are too
   * narrow for a ball of 20 mm (derived: 20 mm of wall, 25 mm of slot). What the ball sweeps of the room's 1000 ml is less
   * than all and more than its middle, 80^3 = 512 ml.
   */
  @Test
  void aRoomWithANarrowMouthIsDeadWater() {
    List<Finding> found = room(25).stream().filter(f -> f.code() == Code.DEAD_WATER).toList();
    assertThat(found).hasSize(1);
    Finding f = found.get(0);
    assertThat(f.severity()).isEqualTo(Severity.WARN);
    assertThat(f.about()).containsExactly("left wall", "right wall", "front wall", "back wall", "lid");
    assertThat(f.figure().orElseThrow()).isBetween(512.0, 1000.0);
    assertThat(f.unit()).isEqualTo("ml");
    assertThat(f.sentence()).contains("openings under about 20 mm");
    assertThat(f.remedy()).contains("lid");
  }

  /** With 60 mm of slot, 40 mm of the mouth are open: twice what the ball needs. */
  @Test
  void aWideMouthIsNone() {
    assertThat(room(60)).noneMatch(f -> f.code() == Code.DEAD_WATER);
  }

  /**
   * A rock 0.3 mm within the glass touches it: an overlap of up to 1 mm is none (definition). Where the scene lets rock lean
   * on that pane there is nothing to say.
   */
  @Test
  void aRockMayTouchAPaneThatItMayTouch() {
    box("base", 200, 250.3, 0, 100, 100, 60);
    for (List<Side> mayTouch : List.of(List.<Side>of(), List.of(Side.BACK))) {
      Tank tank = new Tank(400, 300, 300, 6, 8, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), mayTouch);
      Scene scene = new Scene("pane", tank, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), new Scene.Sand(0, 1.5),
          new Scene.Water(250, 35, 25), List.of(), List.of(), rocks, places, List.of(), Settings.DEFAULT);
      List<Finding> found = RoomFindings.of(scene, Shapes.of(scene, f -> new MeshResult.Unreadable("none"))).findings();
      assertThat(found.stream().map(Finding::code).filter(c -> c == Code.TOUCHES_PANE || c == Code.GAP).toList())
          .isEqualTo(mayTouch.isEmpty() ? List.of(Code.TOUCHES_PANE) : List.of());
    }
  }
}
