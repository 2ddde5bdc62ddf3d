package holdfast.model.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Mat3;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Rock.BulkDensity;
import holdfast.model.scene.Rock.Weighed;
import holdfast.model.scene.Rock.Weighing;
import holdfast.model.scene.Settings;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * Expected values: Archimedes and the definitions of weight and water (derived); density of sea water 1023.34306 kg/m3
 * at salinity 35 and 25 degrees of 1968, UNESCO Technical Papers in Marine Science 44 (published).
 */
class RockShapesTest {
  private static final double SEA = 1023.34306;

  private static RockBody inSea(Rock rock) {
    return RockShapes.body(rock, Settings.DEFAULT, SEA, MeshLoader.NONE).match(b -> b, why -> {
      throw new AssertionError(why);
    });
  }

  private static Weighed reads(double kg, Weighing state) {
    return new Weighed(kg, state, OptionalDouble.empty());
  }

  @Test
  void aSolidBox() {
    RockBody b = Rocks.body(Rocks.rock(Rocks.box(100, 100, 200), Rocks.dry(4)));
    assertThat(b.solid().volumeM3()).isCloseTo(0.002, within(1e-15));
    assertThat(b.centre().distanceTo(new Vec3(0, 0, 0.1))).isLessThan(1e-15);
    assertThat(b.dryMassKg()).isEqualTo(4);
    // m (b^2 + c^2) / 12.
    Mat3 i = b.inertia();
    assertThat(i.xx()).isCloseTo(4 * (0.01 + 0.04) / 12, within(1e-14));
    assertThat(i.yy()).isCloseTo(4 * (0.01 + 0.04) / 12, within(1e-14));
    assertThat(i.zz()).isCloseTo(4 * 0.02 / 12, within(1e-14));
  }

  @Test
  void dampRockGivesUpItsWater() {
    assertThat(Rocks.body(Rocks.rock(Rocks.box(100, 100, 200), reads(2, Weighing.DAMP))).dryMassKg())
        .as("15 % of the mass unless given").isCloseTo(1.7, within(1e-12));
    Weighed given = new Weighed(2, Weighing.DAMP, OptionalDouble.of(0.5));
    assertThat(Rocks.body(Rocks.rock(Rocks.box(100, 100, 200), given)).dryMassKg()).isCloseTo(1.5, within(1e-12));
  }

  @Test
  void underWaterTheMineralAloneIsCarried() {
    // 2.78 kg of mineral at 2780 kg/m3 is 1 L: it reads 2.78 - 1.02334306 kg under water.
    RockBody b = inSea(Rocks.rock(Rocks.box(100, 100, 200), reads(2.78 - 1.02334306, Weighing.UNDERWATER)));
    assertThat(b.dryMassKg()).isCloseTo(2.78, within(1e-12));
    assertThat(b.poreWaterKg()).as("the other litre of the hull").isCloseTo(1.02334306, within(1e-12));
    // A sealed void of 200 ml takes another 0.204668612 kg off the reading, and out of the pores.
    RockBody s = inSea(Rocks.rock(Rocks.box(100, 100, 200), reads(2.78 - 1.2 * 1.02334306, Weighing.UNDERWATER), 200));
    assertThat(s.dryMassKg()).isCloseTo(2.78, within(1e-12));
    assertThat(s.poreWaterKg()).isCloseTo(0.8 * 1.02334306, within(1e-12));
    assertThat(s.sealedVolumeM3()).isEqualTo(2e-4);
  }

  @Test
  void bulkDensityTakesOverlapsOnce() {
    // Two boxes of 1 L that share a quarter litre: 1.75 L.
    Rock.Lobes form = new Rock.Lobes(List.of(
        Rocks.boxMm(0, 0, 0, 100, 100, 100), Rocks.boxMm(50, 50, 0, 100, 100, 100)));
    RockBody b = Rocks.body(Rocks.rock(form, new BulkDensity(1.4)));
    assertThat(b.solid().volumeM3()).isCloseTo(1.75e-3, within(1e-15));
    assertThat(b.dryMassKg()).isCloseTo(2.45, within(1e-12));
    assertThat(b.centre().distanceTo(new Vec3(0.075, 0.075, 0.05))).as("by symmetry").isLessThan(1e-15);
  }

  @Test
  void everyWeighedStoneWeighsWhatTheScaleSaid() {
    for (Rock.Look look : Rock.Look.values()) {
      RockBody b = Rocks.body(Rocks.rock(new Rock.Measured(look, 170, 140, 150, 3), Rocks.dry(1.6)));
      assertThat(b.dryMassKg()).isEqualTo(1.6);
      // Mass over volume times the integral of 1: the density spreads exactly the weighed mass over the union.
      assertThat(b.inertia().xx() * b.solid().volumeM3() / b.solid().inertia().xx()).isCloseTo(1.6, within(1e-12));
    }
  }

  @Test
  void solidMineralHasNoPores() {
    assertThat(Rocks.body(Rocks.rock(Rocks.box(100, 100, 100), Rocks.dry(2.78))).poreWaterKg()).isCloseTo(0, within(1e-12));
  }

  @Test
  void denserThanTheMineralIsAnError() {
    assertThat(Rocks.reason(Rocks.rock(Rocks.box(100, 100, 100), Rocks.dry(3)))).isEqualTo(
        "3.000 kg of dry stone in a shape of 1.000 L is 3.00 kg/L, denser than the mineral itself (2.78 kg/L): "
            + "at most 2.780 kg, or a shape of at least 1.079 L");
    assertThat(Rocks.reason(Rocks.rock(Rocks.box(100, 100, 100), Rocks.dry(2.5), 250))).isEqualTo(
        "2.500 kg of dry stone in a shape of 1.000 L is 3.33 kg/L, denser than the mineral itself (2.78 kg/L): "
            + "at most 2.085 kg, or a shape of at least 1.149 L");
  }

  @Test
  void whatCannotBeShapedSaysWhy() {
    assertThat(Rocks.reason(Rocks.rock(Rocks.box(100, 100, 100), Rocks.dry(1), 1000)))
        .isEqualTo("its sealed volume of 1.000 L is not below the 1.000 L of its shape");
    Weighed soaked = new Weighed(1, Weighing.DAMP, OptionalDouble.of(1.2));
    assertThat(Rocks.reason(Rocks.rock(Rocks.box(100, 100, 100), soaked)))
        .isEqualTo("its dry stone comes to -0.200 kg; the reading, less the water it holds, must be above 0");
    List<Vec3> flat = List.of(Vec3.ZERO, new Vec3(10, 0, 0), new Vec3(0, 10, 0), new Vec3(10, 10, 0));
    assertThat(Rocks.reason(Rocks.rock(new Rock.Points(flat), Rocks.dry(1))))
        .isEqualTo("its shape is no solid: all points lie in one plane");
    assertThat(Rocks.reason(Rocks.rock(new Rock.Lobes(List.of(Rocks.boxMm(0, 0, 0, 9, 9, 9), flat)), Rocks.dry(1e-4))))
        .isEqualTo("lobe 2 is no solid: all points lie in one plane");
    assertThat(Rocks.reason(Rocks.rock(new Rock.Lobes(List.of()), Rocks.dry(1)))).isEqualTo("it has no lobes");
    assertThat(Rocks.reason(Rocks.rock(Rocks.box(100, 0, 100), Rocks.dry(1))))
        .isEqualTo("its length, width and height must be above 0");
    assertThat(Rocks.reason(Rocks.rock(new Rock.Mesh("shelf.obj", 1), Rocks.dry(1))))
        .isEqualTo("mesh 'shelf.obj': no mesh files can be read here");
  }
}
