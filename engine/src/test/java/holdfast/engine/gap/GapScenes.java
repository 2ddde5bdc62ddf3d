package holdfast.engine.gap;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** A small tank, 600 x 300 x 400 with water to 360, and rocks in it. */
final class GapScenes {
  static final Tank TANK = new Tank(600, 300, 400, 6, 8, Tank.BottomSupport.FULL, false, false,
      List.of(), List.of(Side.FRONT, Side.LEFT), List.of(Side.BACK));
  private static final Floor BARE = new Floor(Floor.Kind.BARE, 12.7, 1.5, 0, 0, Optional.empty());

  private GapScenes() {}

  static Scene scene(Settings settings, Scene.Device... devices) {
    return new Scene("test", TANK, BARE, Scene.Sand.DEFAULT, new Scene.Water(360, 35, 25), List.of(devices), List.of(),
        List.of(), List.of(), List.of(), settings);
  }

  static PlacedRock rock(int index, String name, Rock.Kind kind, Hull... lobes) {
    Rock rock = new Rock(name, kind, new Rock.Measured(Rock.Look.BOX, 100, 100, 100, 1),
        new Rock.Weighed(2, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty());
    RockBody body = new RockBody(name, List.of(lobes), Polyhedra.massProperties(lobes[0]), 2, 0, 0);
    return PlacedRock.of(index, rock, body, Pose.IDENTITY);
  }

  /** A box from corner to corner, millimetres. */
  static Hull box(double x0, double y0, double z0, double x1, double y1, double z1) {
    List<Vec3> c = new ArrayList<>();
    for (double x : new double[] {x0, x1}) {
      for (double y : new double[] {y0, y1}) for (double z : new double[] {z0, z1}) c.add(new Vec3(x, y, z).times(1e-3));
    }
    return hull(c);
  }

  static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, reason -> {
      throw new AssertionError(reason);
    });
  }

  static Hull stone(Random random, double width, Vec3 at) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 25; i++) {
      Vec3 d = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      p.add(d.times(width * (0.4 + 0.1 * random.nextDouble())));
    }
    return hull(p).moved(new Pose(at, Quat.IDENTITY));
  }
}
