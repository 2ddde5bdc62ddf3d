package holdfast.engine.light;

import static holdfast.engine.light.LampLightTest.box;
import static holdfast.engine.light.LampLightTest.corner;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.RockBody;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LightReportTest {
  private static RockBody body(String name, Hull hull) {
    return new RockBody(name, List.of(hull), Unions.massProperties(List.of(hull)).orElseThrow(), 1, 0, 0);
  }

  private static Rock rock(String name, Rock.Kind kind) {
    return new Rock(name, kind, new Rock.Measured(Rock.Look.BOX, 10, 10, 10, 1),
        new Rock.Weighed(1, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty());
  }

  private static Placement at(String name, double x, double y, double z) {
    return new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false);
  }

  private static Scene scene(List<Placement> places) {
    Tank tank = new Tank(600, 600, 500, 10, 10, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    return new Scene("light", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), List.of(),
        List.of(new Scene.Lamp("lamp", new Vec3(300, 300, 700), 400, 200, 1)),
        List.of(rock("living", Rock.Kind.LIVE), rock("roof", Rock.Kind.DRY)), places, List.of(),
        Settings.DEFAULT.with(Setting.LIGHT_ATTENUATION_1_M, 0));
  }

  private static final List<RockBody> BODIES =
      List.of(body("living", box(-0.005, -0.005, 0, 0.01, 0.01, 0.1)), body("roof", box(0, -0.3, 0, 0.3, 0.6, 0.02)));

  /** A small flat top at 100 mm, the lamp 600 mm over it: the view factor, against that 250 mm below the lamp (published). */
  @Test
  void openRockGetsTheViewFactor() {
    LightReport report = LightReport.of(scene(List.of(at("living", 300, 300, 0))), BODIES);
    assertThat(report.rocks()).hasSize(1);
    LightReport.RockLight r = report.rocks().get(0);
    assertThat(r.unshaded()).isEqualTo(1);
    assertThat(r.shaded()).isFalse();
    assertThat(r.ofSurface()).isCloseTo(corner(0.2, 0.1, 0.6) / corner(0.2, 0.1, 0.25), within(0.005));
  }

  /** A roof over all that lies to the right of the rock's middle takes half of the light (derived). */
  @Test
  void roofOverOneSideTakesHalf() {
    LightReport report = LightReport.of(scene(List.of(at("living", 300, 300, 0), at("roof", 300, 300, 300))), BODIES);
    assertThat(report.rocks().get(0).unshaded()).isCloseTo(0.5, within(0.02));
  }

  /** Half of the light is asked for (setting): a roof that begins 15 mm farther left leaves less, one farther right more. */
  @Test
  void lessThanHalfIsShade() {
    for (double x : new double[] {285, 315}) {
      LightReport report = LightReport.of(scene(List.of(at("living", 300, 300, 0), at("roof", x, 300, 300))), BODIES);
      assertThat(report.rocks().get(0).shaded()).as("roof from %.0f mm", x).isEqualTo(x < 300);
    }
  }

  @Test
  void rockUnderARoofIsShaded() {
    LightReport report = LightReport.of(scene(List.of(at("living", 300, 300, 0), at("roof", 150, 300, 110))), BODIES);
    LightReport.RockLight r = report.rocks().get(0);
    assertThat(r.unshaded()).isLessThan(0.01);
    assertThat(r.shaded()).isTrue();
  }

  @Test
  void noLampsNoJudgement() {
    Scene s = scene(List.of(at("living", 300, 300, 0)));
    Scene dark = new Scene(s.name(), s.tank(), s.floor(), s.sand(), s.water(), s.devices(), List.of(), s.rocks(),
        s.placements(), s.joints(), s.settings());
    assertThat(LightReport.of(dark, BODIES).rocks()).isEmpty();
  }
}
