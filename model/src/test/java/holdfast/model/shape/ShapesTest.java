package holdfast.model.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import org.junit.jupiter.api.Test;

class ShapesTest {
  private static Rock named(String name, Rock.Form form, double kg) {
    return new Rock(name, Rock.Kind.DRY, form, Rocks.dry(kg), 0, false, false, OptionalDouble.empty());
  }

  private static Scene scene(List<Rock> rocks, List<Placement> placements) {
    Tank tank = new Tank(600, 400, 400, 10, 10, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT), List.of());
    return new Scene("small", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(370, 35, 25),
        List.of(), List.of(), rocks, placements, List.of(), Settings.DEFAULT);
  }

  @Test
  void shapesAllPlacesSomeAndListsEveryProblem() {
    Scene s = scene(
        List.of(
            named("foot", Rocks.box(200, 100, 50), 1.5),
            named("lead", Rocks.box(100, 100, 100), 9),
            named("spare", new Rock.Measured(Rock.Look.ROUND, 90, 80, 70, 5), 0.3),
            named("scan", new Rock.Mesh("a.obj", 1), 1)),
        List.of(
            new Placement("lead", Vec3.ZERO, Quat.IDENTITY, false),
            new Placement("foot", new Vec3(300, 200, 10), Quat.ofDegreesZyx(90, 0, 0), false)));
    Shapes shapes = Shapes.of(s, MeshLoader.NONE);
    assertThat(shapes.sound()).isFalse();
    assertThat(shapes.problems()).extracting(Shapes.Problem::rockIndex).containsExactly(1, 3);
    assertThat(shapes.problems().get(0).reason()).startsWith("9.000 kg of dry stone in a shape of 1.000 L is 9.00 kg/L");
    assertThat(shapes.bodies().keySet()).containsExactly("foot", "spare");
    assertThat(shapes.placed()).hasSize(1);
    PlacedRock foot = shapes.placed("foot").orElseThrow();
    assertThat(foot.index()).isEqualTo(1);
    assertThat(foot.centre().distanceTo(new Vec3(0.3, 0.2, 0.035))).isLessThan(1e-12);
    // A quarter turn about z: the 200 mm now run front to back.
    assertThat(foot.reach(Vec3.Y)).isCloseTo(0.3, within(1e-12));
    assertThat(foot.reach(Vec3.X)).isCloseTo(0.35, within(1e-12));
  }

  @Test
  void anEditedRockIsShapedAnewAndTheOthersAreNot() {
    Rock a = named("slab", new Rock.Measured(Rock.Look.SLAB, 200, 150, 60, 1), 1.5);
    Rock b = named("cobble", new Rock.Measured(Rock.Look.ROUND, 100, 90, 80, 2), 0.5);
    Shapes before = Shapes.of(scene(List.of(a, b), List.of()), MeshLoader.NONE);
    Rock heavier = named("slab", a.form(), 1.6);
    Shapes after = Shapes.of(scene(List.of(heavier, b), List.of()), MeshLoader.NONE);
    assertThat(after.bodies().get("slab").dryMassKg()).isEqualTo(1.6);
    assertThat(before.bodies().get("slab").dryMassKg()).isEqualTo(1.5);
    assertThat(after.bodies().get("cobble")).isSameAs(before.bodies().get("cobble"));
  }
}
