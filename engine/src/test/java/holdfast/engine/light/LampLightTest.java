package holdfast.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LampLightTest {
  /** A lamp 400 x 200 mm, 300 mm over the origin; its exitance is share / area = 12.5 per m2. */
  private static final Scene.Lamp LAMP = new Scene.Lamp("lamp", new Vec3(0, 0, 300), 400, 200, 1);
  private static final double EXITANCE = 1 / 0.08;

  static Hull box(double x, double y, double z, double lx, double ly, double lz) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) p.add(new Vec3(x + (i & 1) * lx, y + (i >> 1 & 1) * ly, z + (i >> 2) * lz));
    return HullBuilder.build(p).match(h -> h, why -> {
      throw new AssertionError(why);
    });
  }

  /**
   * View factor of a small surface to a parallel rectangle a x b at distance c, the surface under a corner:
   * Howell's catalogue B-3, also Incropera table 13.2 limit (published, from memory):
   * F = (1 / 2 pi) [X / sqrt(1 + X2) atan(Y / sqrt(1 + X2)) + Y / sqrt(1 + Y2) atan(X / sqrt(1 + Y2))], X = a/c, Y = b/c.
   */
  static double corner(double a, double b, double c) {
    double x = a / c;
    double y = b / c;
    double u = Math.sqrt(1 + x * x);
    double v = Math.sqrt(1 + y * y);
    return (x / u * Math.atan(y / u) + y / v * Math.atan(x / v)) / (2 * Math.PI);
  }

  @Test
  void openLightIsTheViewFactor() {
    LampLight light = new LampLight(List.of(LAMP), List.of(), 0, 0);
    double under = 4 * corner(0.2, 0.1, 0.3);
    assertThat(light.at(Vec3.ZERO, Vec3.Z).open()).isCloseTo(EXITANCE * under, within(0.002 * EXITANCE * under));
    // Aside of the lamp: the view factor is additive, a rectangle from 0.1 to 0.5 along x.
    double aside = 2 * (corner(0.5, 0.1, 0.3) - corner(0.1, 0.1, 0.3));
    assertThat(light.at(new Vec3(-0.3, 0, 0), Vec3.Z).open()).isCloseTo(EXITANCE * aside, within(0.003 * EXITANCE * aside));
  }

  /** A surface that faces sideways sees the rectangle edge-on from below: Howell B-4 (published, from memory). */
  @Test
  void tiltedSurfaceIsTheViewFactorAtRightAngles() {
    // Element at the origin facing +x; rectangle in the plane z = c, x from 0 to a, y from 0 to b:
    // F = (1 / 2 pi) [atan(b / c) - c / sqrt(a2 + c2) atan(b / sqrt(a2 + c2))].
    double a = 0.2;
    double b = 0.1;
    double c = 0.3;
    double d = Math.sqrt(a * a + c * c);
    double factor = 2 * (Math.atan(b / c) - c / d * Math.atan(b / d)) / (2 * Math.PI);
    LampLight light = new LampLight(List.of(LAMP), List.of(), 0, 0);
    assertThat(light.at(Vec3.ZERO, Vec3.X).open()).isCloseTo(EXITANCE * factor, within(0.003 * EXITANCE * factor));
  }

  @Test
  void aWidePlateCutsOffAllAndAHalfPlateHalf() {
    Hull wide = box(-0.3, -0.3, 0.1, 0.6, 0.6, 0.01);
    assertThat(new LampLight(List.of(LAMP), List.of(wide), 0, 0).at(Vec3.ZERO, Vec3.Z).reached()).isZero();
    Hull half = box(0, -0.3, 0.1, 0.6, 0.6, 0.01);
    LampLight.Irradiance e = new LampLight(List.of(LAMP), List.of(half), 0, 0).at(Vec3.ZERO, Vec3.Z);
    assertThat(e.reached()).isCloseTo(e.open() / 2, within(1e-12));
  }

  /**
   * A plate of 80 x 40 mm at a height of 150 mm hides the middle of the lamp, 160 x 80 mm at 300 mm: what is left is the
   * difference of two view factors (derived). Its upper side hides the less, so its underside counts.
   */
  @Test
  void aSmallPlateCutsOffItsOwnViewFactor() {
    Hull plate = box(-0.04, -0.02, 0.15, 0.08, 0.04, 1e-4);
    double left = 4 * (corner(0.2, 0.1, 0.3) - corner(0.08, 0.04, 0.3));
    LampLight.Irradiance e = new LampLight(List.of(LAMP), List.of(plate), 0, 0).at(Vec3.ZERO, Vec3.Z);
    // A stratum is wholly lit or wholly dark: the shadow's edge may be off by half a stratum of 14 on each side.
    assertThat(e.reached()).isCloseTo(EXITANCE * left, within(0.04 * EXITANCE * left));
  }

  /** A very small, far lamp: light falls straight and exp(-k h) is exact; 0.4 m of water at 0.15 per metre (derived). */
  @Test
  void waterTakesItsPart() {
    Scene.Lamp far = new Scene.Lamp("far", new Vec3(0, 0, 5000), 1, 1, 1);
    double dry = new LampLight(List.of(far), List.of(), 0.4, 0).at(Vec3.ZERO, Vec3.Z).open();
    double wet = new LampLight(List.of(far), List.of(), 0.4, 0.15).at(Vec3.ZERO, Vec3.Z).open();
    assertThat(wet / dry).isCloseTo(Math.exp(-0.06), within(1e-6));
    double above = new LampLight(List.of(far), List.of(), 0.4, 0.15).at(new Vec3(0, 0, 0.5), Vec3.Z).open();
    double aboveDry = new LampLight(List.of(far), List.of(), 0.4, 0).at(new Vec3(0, 0, 0.5), Vec3.Z).open();
    assertThat(above).isEqualTo(aboveDry);
  }
}
