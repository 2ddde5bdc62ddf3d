package holdfast.engine.bonding;

import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

/** Heaps of boxes whose joints are open. They are asked from four sides on one line, so that every set can be asked in full. */
public final class JointScenes {
  private final List<Rock> rocks = new ArrayList<>();
  private final List<Placement> places = new ArrayList<>();

  void cube(String name, boolean removable, double x, double y, double z) {
    box(name, removable, 100, 100, 100, x, y, z);
  }

  private void box(String name, boolean removable, double l, double w, double h, double x, double y, double z) {
    rocks.add(new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, l, w, h, 1), new Rock.BulkDensity(1.8), 0,
        false, removable, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false));
  }

  SceneHeap heap(double tierN, double shakeG, List<Side> viewed) {
    Tank tank = new Tank(1500, 600, 900, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), viewed, List.of());
    Settings settings = Settings.DEFAULT.with(Setting.PUSH_DIRECTIONS, 4).with(Setting.PUSH_OFFSET, 0)
        .with(Setting.PUSH_TIER_N, tierN).with(Setting.SHAKE_G, shakeG);
    Scene scene = new Scene("joints", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(850, 35, 25), List.of(), List.of(),
        rocks, places, List.of(), settings);
    return SceneHeap.of(scene, Shapes.of(scene, MeshLoader.NONE).placed());
  }

  /** Stones laid one after the other on whatever lies beneath, many of them too far out to stay. */
  public static SceneHeap laid(int count, long seed, double tierN, double shakeG) {
    JointScenes s = new JointScenes();
    Random r = new Random(seed);
    double[] x = new double[count];
    double[] top = new double[count];
    double[] length = new double[count];
    int feet = 1 + r.nextInt(2);
    for (int k = 0; k < count; k++) {
      length[k] = k < feet ? 180 + r.nextInt(100) : 110 + r.nextInt(120);
      double width = 90 + r.nextInt(90);
      double height = 50 + 10 * r.nextInt(4);
      double beneath = 10;
      if (k < feet) {
        x[k] = 500 + 260 * k;
      } else {
        int on = r.nextInt(k);
        x[k] = x[on] + (r.nextDouble() - 0.5) * 1.1 * length[on];
        for (int q = 0; q < k; q++) if (Math.abs(x[q] - x[k]) < (length[q] + length[k]) / 2) beneath = Math.max(beneath, top[q]);
      }
      top[k] = beneath + height;
      s.box("stone " + k, false, length[k], width, height, x[k], 300 + r.nextInt(16), beneath);
    }
    return s.heap(tierN, shakeG, List.of());
  }

  /** Two sides, each course {@code shift} millimetres farther in, and a lintel across. */
  static SceneHeap gate(int courses, double shift, double tierN, double shakeG) {
    JointScenes s = new JointScenes();
    for (int side = -1; side <= 1; side += 2) {
      for (int h = 0; h < courses; h++) {
        s.box("stone " + s.rocks.size(), false, h == 0 ? 240 : 150, 120, 60, 600 + side * (230 - shift * h), 300, 10 + 60 * h);
      }
    }
    s.box("lintel", false, 2 * (230 - shift * (courses - 1)) + 60, 120, 50, 600, 300, 10 + 60 * courses);
    return s.heap(tierN, shakeG, List.of());
  }
}
