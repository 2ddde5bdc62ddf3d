package holdfast.engine.pane;

import static holdfast.engine.pane.PaneScenes.BARE;
import static holdfast.engine.pane.PaneScenes.SHEET;
import static holdfast.engine.pane.PaneScenes.foot;
import static holdfast.engine.pane.PaneScenes.load;
import static holdfast.engine.pane.PaneScenes.scene;
import static holdfast.engine.pane.PaneScenes.tank;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.pane.PaneFinding.Kind;
import holdfast.engine.pane.PaneFinding.Weight;
import holdfast.engine.pane.PaneReport.CaseStress;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.scene.Tank.BottomSupport;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BottomPaneTest {
  private static boolean has(PaneReport report, Kind kind, Weight weight) {
    return report.findings().stream().anyMatch(f -> f.kind() == kind && f.weight() == weight);
  }

  private static CaseStress only(PaneReport report, LoadCase load, String bed) {
    return report.cases().stream().filter(c -> c.load() == load && c.bed().equals(bed)).findFirst().orElseThrow();
  }

  /**
   * Water on four edges: 6 beta q a^2 / t^2 with beta for nu 0.2 between the table's 0.0812 at b/a 1.5 and 0.1017 at 2.0 (nu 0.3;
   * Timoshenko and Woinowsky-Krieger, table 8), less up to 8.3 % for glass; a the width and one side pane.
   */
  @Test
  void waterAloneOnFourEdges() {
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.EDGES, 8), Floor.DEFAULT, 545), load(0));
    CaseStress filled = only(report, LoadCase.FILLED, "four edges");
    double q = 9.81 * 1023.343 * 0.545; // EOS-80 at S 35, 25 degrees (published)
    double factor = 6 * q * 0.448 * 0.448 / (0.008 * 0.008) / 1e6;
    assertThat(filled.waterNmm2()).isBetween(0.0812 * 0.917 * factor, 0.1017 * factor);
    assertThat(filled.totalNmm2()).isCloseTo(filled.waterNmm2(), Percentage.withPercentage(0.1));
    assertThat(filled.rocksNmm2()).isZero();
    assertThat(filled.designNmm2()).isCloseTo(0.9 * 7.25, within(1e-9));
    assertThat(has(report, Kind.WATER, Weight.WARN)).isTrue();
    assertThat(has(report, Kind.STRESS, Weight.FAIL)).isFalse();
  }

  @Test
  void waterBendsNothingOnAFullDeck() {
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.FULL, 8), Floor.DEFAULT, 545), load(0));
    assertThat(report.cases()).hasSize(6).allSatisfy(c -> assertThat(c.totalNmm2()).isZero());
  }

  /** One foot, so the stress is the force times the plate's answer to that patch, worked out apart. */
  @Test
  void oneFootOnBareGlass() {
    Scene scene = scene(tank(BottomSupport.EDGES, 12), BARE, 0);
    PaneReport report = BottomPane.judge(scene, load(50, foot("spike", BARE, 0.37, 0.22, 1e-4, 50, 50)));
    Plate plate = new Plate(0.748, 0.448, 0.012, 70e9, 0.2);
    double radius = Math.sqrt(1.6 * 0.005 * 0.005 + 0.012 * 0.012) - 0.675 * 0.012;
    EdgePlate model = new EdgePlate(plate);
    double moment = model.bending(model.unitLoad(Patch.disc(0.374, 0.224, radius)), 0.374, 0.224).principal();
    CaseStress drained = only(report, LoadCase.DRAINED, "four edges");
    assertThat(drained.totalNmm2()).isCloseTo(100 * plate.surfaceStressPa(moment) / 1e6, Percentage.withPercentage(0.5));
    assertThat(drained.xMm()).isCloseTo(370, within(1.0));
    assertThat(drained.rock()).isEqualTo("spike");
    assertThat(drained.rockN()).isCloseTo(100, within(1e-6));
    assertThat(drained.rockShare()).isCloseTo(1, within(1e-6));
    // One spot of 10 mm: 100 N over 78.5 mm2 (derived).
    assertThat(report.feet().get(0).pressureNmm2()).isCloseTo(100 / (Math.PI * 25), Percentage.withPercentage(1));
    assertThat(has(report, Kind.POINT_LOAD, Weight.FAIL)).isTrue();
  }

  /**
   * A foot of 120 mm that bears on one spot of 10 mm, spread by 5.3 mm in a sheet of 6 mm. Roark, table 11.4, case 1b (published):
   * 3 W / (2 pi t^2) ((1 + nu) ln (2 b / pi r) + beta), beta 0.89 between 0.875 and 0.927 at a / b = 748 / 448.
   */
  @Test
  void aBroadFootOnOneSpot() {
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.EDGES, 12), SHEET, 0),
        load(50, foot("table", SHEET, 0.37, 0.22, 0.06, 50, 50)));
    CaseStress drained = only(report, LoadCase.DRAINED, "four edges");
    double roark = 3 * 100 / (2 * Math.PI * 0.012 * 0.012) * (1.2 * Math.log(2 * 0.448 / (Math.PI * 0.01028)) + 0.89) / 1e6;
    assertThat(drained.oneSpotNmm2()).isCloseTo(roark, Percentage.withPercentage(2));
    assertThat(drained.totalNmm2()).isLessThan(0.7 * roark);
  }

  /**
   * 40 mm of sand, 1.5 kg/l in bulk and 2.8 kg/l in the grain (settings): wet, 0.464 of it is water of 1023.343 kg/m3 (UNESCO
   * 44, published); under 450 mm of water the grains weigh on top of that what they do not displace (Archimedes).
   */
  @Test
  void sandPressesWet() {
    Scene scene = new Scene("sand", tank(BottomSupport.EDGES, 8), Floor.DEFAULT, new Scene.Sand(40, 1.5),
        new Scene.Water(450, 35, 25), List.of(), List.of(), List.of(), List.of(), List.of(), Settings.DEFAULT);
    double water = 1023.343;
    double share = 1.5 / 2.8;
    assertThat(BottomPane.evenPa(scene, LoadCase.DRY)).isZero();
    assertThat(BottomPane.evenPa(scene, LoadCase.DRAINED)).isCloseTo(9.81 * 0.04 * (1500 + (1 - share) * water), within(0.1));
    assertThat(BottomPane.evenPa(scene, LoadCase.FILLED))
        .isCloseTo(9.81 * (0.45 * water + 0.04 * share * (2800 - water)), within(0.1));
  }

  /** The rocks fail when they take a pane over that the water leaves under, or are over by themselves. */
  @Test
  void rocksShareIsToldFromTheWaters() {
    Floor grid = Floor.DEFAULT;
    PaneReport shared = BottomPane.judge(scene(tank(BottomSupport.EDGES, 12), grid, 545),
        load(120, foot("tall chunk", grid, 0.37, 0.22, 0.02, 0, 120)));
    CaseStress filled = only(shared, LoadCase.FILLED, "four edges");
    assertThat(filled.waterUtilisation()).isLessThan(1);
    assertThat(filled.rocksUtilisation()).isLessThan(1);
    assertThat(filled.utilisation()).isGreaterThan(1).isLessThan(filled.waterUtilisation() + filled.rocksUtilisation() + 1e-3);
    assertThat(has(shared, Kind.STRESS, Weight.FAIL)).isTrue();
    assertThat(has(shared, Kind.WATER, Weight.WARN)).isFalse();

    PaneReport light = BottomPane.judge(scene(tank(BottomSupport.EDGES, 8), grid, 545),
        load(20, foot("tall chunk", grid, 0.37, 0.22, 0.02, 0, 20)));
    assertThat(has(light, Kind.WATER, Weight.WARN)).isTrue();
    assertThat(has(light, Kind.STRESS, Weight.FAIL)).isFalse();

    PaneReport heavy = BottomPane.judge(scene(tank(BottomSupport.EDGES, 8), grid, 545),
        load(250, foot("tall chunk", grid, 0.37, 0.22, 0.02, 0, 250)));
    assertThat(has(heavy, Kind.STRESS, Weight.FAIL)).isTrue();
  }

  @Test
  void unknownSupportTakesTheWorst() {
    FootLoad foot = foot("slab", Floor.DEFAULT, 0.1, 0.1, 0.03, 10, 60);
    double worst = 0;
    for (BottomSupport s : List.of(BottomSupport.EDGES, BottomSupport.FULL)) {
      worst = Math.max(worst, BottomPane.judge(scene(tank(s, 10), Floor.DEFAULT, 500), load(60, foot)).governing().utilisation());
    }
    PaneReport unknown = BottomPane.judge(scene(tank(BottomSupport.UNKNOWN, 10), Floor.DEFAULT, 500), load(60, foot));
    assertThat(unknown.governing().utilisation()).isEqualTo(worst);
    assertThat(unknown.cases()).hasSize(9);
    assertThat(has(unknown, Kind.SUPPORT, Weight.WARN)).isTrue();
  }

  @Test
  void whatSpreadsLowersTheStress() {
    double bare = rocks(BARE, 0.02);
    double grid = rocks(Floor.DEFAULT, 0.02);
    double sheet = rocks(SHEET, 0.02);
    double broad = rocks(Floor.DEFAULT, 0.06);
    assertThat(grid).isLessThan(bare);
    assertThat(sheet).isLessThan(bare);
    assertThat(broad).isLessThan(grid);
  }

  private static double rocks(Floor floor, double radiusM) {
    PaneLoad load = load(80, foot("slab", floor, 0.3, 0.2, radiusM, 80, 80));
    return BottomPane.judge(scene(tank(BottomSupport.FULL, 10), floor, 500), load).governing().rocksNmm2();
  }

  /** A grid that stops short leaves a foot beside it on bare glass. */
  @Test
  void besideTheGridGlassIsBare() {
    Floor half = new Floor(Floor.Kind.GRID, 12.7, 1.5, 10, 10, Optional.of(new Floor.Extent(0, 0, 300, 440)));
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.FULL, 10), half, 500),
        load(40, foot("on it", half, 0.2, 0.2, 0.03, 0, 20), foot("beside it", BARE, 0.5, 0.2, 0.03, 0, 20)));
    assertThat(report.feet()).extracting(PaneReport.FootBearing::bare).containsExactly(false, true);
  }

  @Test
  void remediesAreTriedOnThePlate() {
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.FULL, 6), BARE, 500),
        load(70, foot("spike", BARE, 0.3, 0.2, 0.04, 70, 70)));
    assertThat(has(report, Kind.STRESS, Weight.FAIL)).isTrue();
    PaneReport.Remedy grid = report.remedies().stream()
        .filter(r -> r.kind() == PaneReport.Remedy.Kind.GRID).findFirst().orElseThrow();
    PaneReport after = BottomPane.judge(
        scene(tank(BottomSupport.FULL, 6), new Floor(Floor.Kind.GRID, 12.7, 1.5, 10, 0, Optional.empty()), 500),
        load(70, foot("spike", Floor.DEFAULT, 0.3, 0.2, 0.04, 70, 70)));
    assertThat(grid.utilisation()).isCloseTo(
        only(after, report.governing().load(), report.governing().bed()).utilisation(), Percentage.withPercentage(1));
    assertThat(grid.utilisation()).isLessThan(report.governing().utilisation());
  }

  @Test
  void aFootWithoutABoundIsNotDecided() {
    FootLoad free = foot("wedged one", Floor.DEFAULT, 0.3, 0.2, 0.03, 5, 30);
    FootLoad wedged = new FootLoad(free.rock(), free.polygon(), 5, Double.POSITIVE_INFINITY, false);
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.FULL, 10), Floor.DEFAULT, 500), load(30, wedged));
    assertThat(has(report, Kind.WEDGED, Weight.FAIL)).isTrue();
    assertThat(report.governing().rockN()).isLessThanOrEqualTo(60 + 1e-9);
  }

  /**
   * Two like feet far apart on bare glass: bedding one leaves the other, so the remedy must name both; and what it promises
   * must come true when the bedded feet are judged as feet of their own (the same question asked another way).
   */
  @Test
  void everyFootThatGovernsIsMended() {
    FootLoad left = foot("left spike", BARE, 0.15, 0.22, 1e-4, 130, 130);
    FootLoad right = foot("right spike", BARE, 0.59, 0.22, 1e-4, 128, 128);
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.FULL, 8), BARE, 0), load(258, left, right));
    assertThat(report.governing().rock()).isEqualTo("left spike");
    PaneReport.Remedy wider = remedy(report, PaneReport.Remedy.Kind.WIDER_FOOT);
    assertThat(wider.act()).contains("left spike a bedded foot").contains("right spike a bedded foot");
    assertThat(wider.utilisation()).isLessThanOrEqualTo(1);

    double most = 0;
    Plate plate = report.plate();
    java.util.regex.Matcher across = java.util.regex.Pattern.compile("foot (\\d+) mm across").matcher(wider.act());
    double[] x = {0.154, 0.594};
    for (double foam : new double[] {5e6, 5e7}) {
      FoamPlate model = new FoamPlate(plate, foam);
      across.reset();
      List<PlateModel.UnitLoad> feet = new java.util.ArrayList<>();
      for (int i = 0; i < 2 && across.find(); i++) {
        feet.add(model.unitLoad(Patch.disc(x[i], 0.224, 0.5e-3 * Double.parseDouble(across.group(1))).forThickness(0.008)));
      }
      assertThat(feet).hasSize(2);
      for (double at : x) {
        double[] m = model.influences(feet, at, 0.224);
        double xx = 260 * m[0] + 256 * m[3];
        double yy = 260 * m[1] + 256 * m[4];
        most = Math.max(most, plate.surfaceStressPa(Math.max(xx, yy)) / 1e6
            / report.strength().limitNmm2(LoadCase.DRAINED.duration()));
      }
    }
    assertThat(wider.utilisation()).isCloseTo(most, within(0.03));
    assertThat(has(report, Kind.STRESS, Weight.FAIL)).isTrue();
    assertThat(report.findings().stream().filter(f -> f.kind() == Kind.STRESS).findFirst().orElseThrow().remedy())
        .contains("left spike").contains("right spike").contains("% of what is allowed");
  }

  /** Where the weight as a whole is too much, no foot is promised to mend it: the share that may stay is told, and is right. */
  @Test
  void tooMuchRockIsToldAsThat() {
    FootLoad broad = foot("mountain", Floor.DEFAULT, 0.37, 0.22, 0.15, 600, 600);
    Scene scene = scene(tank(BottomSupport.EDGES, 8), Floor.DEFAULT, 0);
    PaneReport report = BottomPane.judge(scene, load(600, broad));
    assertThat(has(report, Kind.STRESS, Weight.FAIL)).isTrue();
    PaneReport.Remedy less = remedy(report, PaneReport.Remedy.Kind.LESS_ROCK);
    int percent = Integer.parseInt(less.act().replaceAll("\\D+(\\d+) %.*", "$1"));
    for (int more : new int[] {0, 2}) {
      double share = 0.01 * (percent + more);
      PaneReport lighter = BottomPane.judge(scene,
          load(share * 600, foot("mountain", Floor.DEFAULT, 0.37, 0.22, 0.15, share * 600, share * 600)));
      assertThat(has(lighter, Kind.STRESS, Weight.FAIL)).as("%d %% and %d", percent, more).isEqualTo(more > 0);
    }
  }

  private static PaneReport.Remedy remedy(PaneReport report, PaneReport.Remedy.Kind kind) {
    return report.remedies().stream().filter(r -> r.kind() == kind).findFirst()
        .orElseThrow(() -> new AssertionError("no " + kind + " in " + report.remedies()));
  }

  @Test
  void rangesThatCannotBeTheWeightAreNotDecided() {
    PaneReport tooMuch = BottomPane.judge(scene(tank(BottomSupport.FULL, 10), Floor.DEFAULT, 500),
        load(30, foot("slab", Floor.DEFAULT, 0.3, 0.2, 0.03, 40, 50)));
    PaneReport tooLittle = BottomPane.judge(scene(tank(BottomSupport.FULL, 10), Floor.DEFAULT, 500),
        load(30, foot("slab", Floor.DEFAULT, 0.3, 0.2, 0.03, 5, 20)));
    assertThat(has(tooMuch, Kind.UNDECIDED, Weight.FAIL)).isTrue();
    assertThat(has(tooLittle, Kind.UNDECIDED, Weight.FAIL)).isTrue();
  }

  @Test
  void drilledAndThinPanesWarn() {
    Tank drilled = new Tank(740, 440, 590, 8, 6, BottomSupport.FULL, true, true, List.of(), List.of(), List.of());
    PaneReport report = BottomPane.judge(scene(drilled, Floor.DEFAULT, 500), load(0));
    assertThat(has(report, Kind.DRILLED, Weight.WARN)).isTrue();
    assertThat(has(report, Kind.THICKNESS, Weight.WARN)).isTrue();
    assertThat(report.strength().tempered()).isTrue();
  }

  @Test
  void aSlipIsToldForBothFloors() {
    PaneReport report = BottomPane.judge(scene(tank(BottomSupport.EDGES, 10), Floor.DEFAULT, 500), load(0));
    PaneReport.Slip slip = report.slip().orElseThrow();
    assertThat(slip.bare().rigidN()).isGreaterThan(slip.bare().peakN());
    assertThat(slip.covered().peakN()).isLessThan(slip.bare().peakN());
    assertThat(slip.covered().ringNmm2()).isZero();
    assertThat(slip.bare().ringNmm2()).isPositive();
  }

  /** The mesh of foam beds, series and searches give the same bytes each time. */
  @ParameterizedTest
  @EnumSource(BottomSupport.class)
  void sameSceneSameReport(BottomSupport support) {
    PaneLoad load = load(90, foot("slab", Floor.DEFAULT, 0.3, 0.2, 0.04, 5, 50),
        foot("chunk", Floor.DEFAULT, 0.6, 0.35, 0.02, 20, 85));
    Scene scene = scene(tank(support, 10), Floor.DEFAULT, 500);
    assertThat(BottomPane.judge(scene, load)).isEqualTo(BottomPane.judge(scene, load));
  }

  /** No place of the map is above the refined greatest, and the map comes near it. */
  @ParameterizedTest
  @EnumSource(BottomSupport.class)
  void mapStaysUnderTheGreatest(BottomSupport support) {
    PaneReport report = BottomPane.judge(scene(tank(support, 10), Floor.DEFAULT, 500),
        load(90, foot("slab", Floor.DEFAULT, 0.3, 0.2, 0.04, 5, 50), foot("chunk", Floor.DEFAULT, 0.6, 0.35, 0.02, 20, 85)), 121);
    double greatest = report.map().stressNmm2().stream().mapToDouble(v -> v).max().orElseThrow();
    assertThat(greatest).isLessThanOrEqualTo(report.governing().totalNmm2() * (1 + 1e-6))
        .isGreaterThan(0.95 * report.governing().totalNmm2());
  }

  /** ASTM E1300 leaves aquariums out of its scope (published): nothing here may lean on it. */
  @Test
  void noStandardIsCalledGoverning() {
    PaneReport report = BottomPane.judge(
        scene(tank(BottomSupport.UNKNOWN, 8), BARE, 545), load(60, foot("slab", BARE, 0.3, 0.2, 0.03, 60, 60)));
    String all = String.join(" ", report.assumptions()) + String.join(" ", report.cautions())
        + report.findings().stream().map(f -> f.sentence() + f.remedy()).reduce("", String::concat);
    assertThat(all).doesNotContain("E1300").contains("maker");
  }

  @Test
  void sandIsNotCountedOn() {
    Scene sandy = scene(tank(BottomSupport.FULL, 10), BARE, 500);
    sandy = new Scene(sandy.name(), sandy.tank(), BARE, new Scene.Sand(40, 1.5), sandy.water(), List.of(), List.of(), List.of(),
        List.of(), List.of(), sandy.settings());
    FootLoad raised = foot("spike", new Floor(Floor.Kind.SHEET, 12.7, 0, 40, 0, Optional.empty()), 0.3, 0.2, 0.03, 40, 40);
    PaneReport report = BottomPane.judge(sandy, load(40, raised));
    assertThat(report.feet().get(0).onSand()).isTrue();
    assertThat(report.governing().rocksNmm2()).isEqualTo(
        BottomPane.judge(scene(tank(BottomSupport.FULL, 10), BARE, 500), load(40, foot("spike", BARE, 0.3, 0.2, 0.03, 40, 40)))
            .governing().rocksNmm2());
    // Submerged sand: 1500 (1 - 1023.3 / 2800) kg/m3, 40 mm (derived).
    assertThat(BottomPane.evenPa(sandy, LoadCase.FILLED)).isCloseTo(
        9.81 * (1023.343 * 0.5 + 0.04 * 1500 * (1 - 1023.343 / (1e3 * Setting.SAND_GRAIN_KG_PER_L.initial()))), within(0.5));
  }
}
