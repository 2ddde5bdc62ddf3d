package holdfast.app.edit;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.List;
import java.util.OptionalDouble;

/** Small invented scenes for the tests of this module. */
public final class Scenes {
  private Scenes() {}

  public static Rock box(String name, double l, double w, double h, double kg) {
    return rock(name, Rock.Kind.DRY, Rock.Look.BOX, l, w, h, kg);
  }

  public static Rock rock(String name, Rock.Kind kind, Rock.Look look, double l, double w, double h, double kg) {
    return new Rock(name, kind, new Rock.Measured(look, l, w, h, 1), new Rock.Weighed(kg, Rock.Weighing.DRY, OptionalDouble.empty()),
        0, false, false, OptionalDouble.empty());
  }

  public static Placement at(String rock, double x, double y, double z) {
    return new Placement(rock, new Vec3(x, y, z), Quat.IDENTITY, false);
  }

  /** A slab with a block on it and a block on the tray. */
  public static Scene small() {
    Tank tank = new Tank(600, 400, 400, 8, 10, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    return new Scene("small", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(370, 35, 25), List.of(), List.of(),
        List.of(box("slab", 200, 150, 60, 3), box("block", 100, 100, 80, 1.4), box("spare", 80, 80, 60, 0.7)),
        List.of(at("slab", 300, 200, 10), at("block", 300, 200, 70)), List.of(), Settings.DEFAULT);
  }
}
