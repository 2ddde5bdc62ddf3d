package holdfast.model.shape;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Rock.Look;
import holdfast.model.scene.Rock.Mass;
import holdfast.model.scene.Rock.Measured;
import holdfast.model.scene.Rock.Weighed;
import holdfast.model.scene.Rock.Weighing;
import holdfast.model.scene.Settings;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Rocks for tests. */
final class Rocks {
  private Rocks() {}

  static Mass dry(double kg) {
    return new Weighed(kg, Weighing.DRY, OptionalDouble.empty());
  }

  static Rock rock(Rock.Form form, Mass mass) {
    return rock(form, mass, 0);
  }

  static Rock rock(Rock.Form form, Mass mass, double sealedMl) {
    return new Rock("table slab", Rock.Kind.DRY, form, mass, sealedMl, false, false, OptionalDouble.empty());
  }

  static Measured box(double length, double width, double height) {
    return new Measured(Look.BOX, length, width, height, 1);
  }

  static RockBody body(Rock rock) {
    return RockShapes.body(rock, Settings.DEFAULT, MeshLoader.NONE).match(b -> b, why -> {
      throw new AssertionError("unusable: " + why);
    });
  }

  static String reason(Rock rock) {
    return RockShapes.body(rock, Settings.DEFAULT, MeshLoader.NONE).match(b -> {
      throw new AssertionError("usable");
    }, why -> why);
  }

  static List<Vec3> boxMm(double x, double y, double z, double length, double width, double height) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) p.add(new Vec3(x + (i & 1) * length, y + (i >> 1 & 1) * width, z + (i >> 2) * height));
    return p;
  }
}
