package holdfast.engine.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Pose;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SupplyTest {

  static Hull box(double x, double y, double z, double lx, double ly, double lz) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) p.add(new Vec3(x + (i & 1) * lx, y + (i >> 1 & 1) * ly, z + (i >> 2) * lz));
    return HullBuilder.build(p).match(h -> h, why -> {
      throw new AssertionError(why);
    });
  }

  static RockBody body(String name, double kg, List<Hull> lobes) {
    return new RockBody(name, lobes, Unions.massProperties(lobes).orElseThrow(), kg, 0, 0);
  }

  static Rock rock(String name, Rock.Kind kind, double kg) {
    return new Rock(name, kind, new Rock.Measured(Rock.Look.BOX, 100, 100, 100, 1),
        new Rock.Weighed(kg, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty());
  }

  static Tank tank(double l, double w, double h) {
    return new Tank(l, w, h, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
  }

  static Placement at(String name, double x, double y, double z) {
    return new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false);
  }

  private static final Floor SHEET = new Floor(Floor.Kind.SHEET, 12.7, 0, 5, 0, Optional.empty());

  private Scene scene(Floor floor, List<Scene.Device> devices, List<Rock> rocks, List<Placement> places) {
    return new Scene("test", tank(600, 400, 450), floor, new Scene.Sand(40, 1.4), new Scene.Water(400, 35, 24.994),
        devices, List.of(), rocks, places, List.of(), Settings.DEFAULT);
  }

  /** By hand (derived): a cubic rock of 200 mm on a sheet of 5 mm in 40 mm of sand, and an overflow. */
  @Test
  void balancesByHand() {
    Scene s = scene(SHEET, List.of(new Scene.Device("overflow", new Vec3(500, 300, 0), new Vec3(100, 100, 600), 0)),
        List.of(rock("cube", Rock.Kind.DRY, 11.12)), List.of(at("cube", 100, 100, 5)));
    Supply supply = Supply.of(s, List.of(body("cube", 11.12, List.of(box(0, 0, 0, 0.2, 0.2, 0.2)))));
    Volumes v = supply.volumes();
    assertThat(v.boxM3()).isCloseTo(0.096, within(1e-15));
    assertThat(v.rockSolidM3()).isCloseTo(11.12 / 2780, within(1e-12));
    assertThat(v.devicesM3()).isCloseTo(0.1 * 0.1 * 0.4, within(1e-12));
    double floor = (0.24 - 0.01) * 0.005;
    assertThat(v.floorM3()).isCloseTo(floor, within(1e-12));
    double bulk = 0.24 * 0.04 - 0.04 * 0.035 - floor - 0.01 * 0.04;
    assertThat(v.sandBulkM3()).isCloseTo(bulk, within(1e-12));
    assertThat(supply.sandKg()).isCloseTo(bulk * 1400, within(1e-9));
    assertThat(v.sandGrainsM3()).isCloseTo(bulk * 0.5, within(1e-12));
    double water = 0.096 - 0.004 - bulk / 2 - floor - 0.004;
    assertThat(v.waterM3()).isCloseTo(water, within(1e-12));
    // 38 g/L of dry mix at a salinity of 35 (default, memory); density from EOS-80 at 25 degrees of 1968 (published).
    assertThat(supply.saltKg()).isCloseTo(water * 38, within(1e-9));
    assertThat(supply.weights().waterKg()).isCloseTo(water * 1023.343, within(1e-3));
    // Glass by hand: 620 x 420 x 12, two panes 620 x 450 x 10, two 400 x 450 x 10, at 2.5 kg/L.
    double glass = 2.5 * (6.2 * 4.2 * 0.12 + 2 * 6.2 * 4.5 * 0.1 + 2 * 4.0 * 4.5 * 0.1);
    assertThat(supply.weights().glassKg()).isCloseTo(glass, within(1e-9));
    assertThat(supply.weights().filledKg())
        .isCloseTo(glass + 11.12 + bulk * 1400 + floor * 1050 + supply.weights().waterKg(), within(1e-9));
    assertThat(supply.weights().footprintM2()).isCloseTo(0.62 * 0.42, within(1e-12));
    assertThat(supply.amount().kgPerL()).isCloseTo(11.12 / 108, within(1e-12));
  }

  /** Braces: what is not open at the rim, as thick as the sides (derived). */
  @Test
  void countsTheBraces() {
    Tank braced = new Tank(600, 400, 450, 10, 12, Tank.BottomSupport.FULL, false, false,
        List.of(new Tank.Opening(50, 50, 500, 300)), List.of(), List.of());
    assertThat(Weights.glassM3(braced) - Weights.glassM3(tank(600, 400, 450))).isCloseTo((0.24 - 0.15) * 0.01, within(1e-12));
  }

  /** Water, rock solid, grains, floor and devices fill the box to 1e-9 of it, whatever lies in it. */
  @Test
  void balancesForRandomHeaps() {
    long seed = 77;
    Random random = new Random(seed);
    for (int run = 0; run < 60; run++) {
      List<Rock> rocks = new ArrayList<>();
      List<Placement> places = new ArrayList<>();
      List<RockBody> bodies = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        List<Hull> lobes = new ArrayList<>();
        for (int k = 0; k <= random.nextInt(3); k++) {
          List<Vec3> p = new ArrayList<>();
          for (int c = 0; c < 14; c++) {
            p.add(new Vec3(random.nextDouble() * 0.12, random.nextDouble() * 0.12 + 0.03 * k, random.nextDouble() * 0.2));
          }
          lobes.add(HullBuilder.build(p).match(h -> h, why -> {
            throw new AssertionError(why);
          }));
        }
        String name = "rock " + i;
        double kg = 1500 * Unions.massProperties(lobes).orElseThrow().volumeM3();
        rocks.add(rock(name, Rock.Kind.DRY, kg));
        places.add(new Placement(name, new Vec3(140 * i, 100, 300 * random.nextDouble()),
            Quat.ofRotationVector(new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble())), false));
        bodies.add(body(name, kg, lobes));
      }
      Scene s = scene(Floor.DEFAULT, List.of(
          new Scene.Device("pump", new Vec3(10, 350, 30), new Vec3(60, 80, 60), 0)), rocks, places);
      Volumes v = Supply.of(s, bodies).volumes();
      assertThat(v.residualM3()).as("seed %d run %d", seed, run).isCloseTo(0, within(1e-9 * v.boxM3()));
      assertThat(v.waterM3()).isBetween(0.0, v.boxM3());
    }
  }

  /** The exact cut against a count of points on a lattice of 2 mm: within 1 %. */
  @Test
  void cutsTwoLobesByTheSandAsACountOfPointsDoes() {
    List<Hull> lobes = List.of(
        box(0, 0, 0, 0.1, 0.1, 0.06).moved(new Pose(Vec3.ZERO, Quat.about(new Vec3(1, 1, 0).unit(), 0.4))),
        box(0.04, 0.02, -0.02, 0.08, 0.1, 0.05));
    double level = 0.016;
    int n = 0;
    int steps = 120;
    double size = 0.24;
    for (int i = 0; i < steps; i++) {
      for (int j = 0; j < steps; j++) {
        for (int k = 0; k < steps; k++) {
          Vec3 p = new Vec3(-0.06 + (i + 0.5) * size / steps, -0.06 + (j + 0.5) * size / steps, -0.12 + (k + 0.5) * size / steps);
          if (p.z() > level) continue;
          if (Polyhedra.contains(lobes.get(0), p, 0) || Polyhedra.contains(lobes.get(1), p, 0)) n++;
        }
      }
    }
    double counted = n * Math.pow(size / steps, 3);
    double exact = Volumes.below(lobes, level, Unions.massProperties(lobes).orElseThrow().volumeM3());
    assertThat(exact).isCloseTo(counted, within(0.01 * counted));
  }

  /** Prices: 8 kg of dry at 4 and 2 kg of living at 20; starter 0.5 a litre (derived). */
  @Test
  void pricesTheMixAndTheAlternatives() {
    List<Rock> rocks = List.of(rock("base", Rock.Kind.DRY, 8), rock("crown", Rock.Kind.LIVE, 2));
    Settings prices = Settings.DEFAULT.with(Setting.PRICE_DRY, 4).with(Setting.PRICE_LIVE, 20).with(Setting.PRICE_STARTER, 0.5);
    Scene s = scene(Floor.DEFAULT, List.of(), rocks, List.of(at("base", 100, 100, 10), at("crown", 300, 100,
        10))).withSettings(prices);
    List<RockBody> bodies = List.of(
        body("base", 8, List.of(box(0, 0, 0, 0.2, 0.2, 0.1))), body("crown", 2, List.of(box(0, 0, 0, 0.1, 0.1, 0.1))));
    Supply supply = Supply.of(s, bodies);
    assertThat(supply.bills().get(0).total().orElseThrow()).isCloseTo(72, within(1e-9));
    assertThat(supply.bills().get(1).total().orElseThrow())
        .isCloseTo(40 + 0.5 * 1e3 * supply.volumes().waterM3(), within(1e-9));
    assertThat(supply.bills().get(2).total().orElseThrow()).isCloseTo(200, within(1e-9));
    assertThat(Supply.of(s.withSettings(Settings.DEFAULT), bodies).bills().get(0).total()).isEmpty();
  }
}
