package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.pane.LoadCase;
import holdfast.engine.pane.PaneLoad;
import holdfast.engine.pane.PaneReport;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What the bottom pane is told of the rocks. Sea water of 35 and 25 degrees: 1023.343 kg/m3 (UNESCO 44, published). */
class PaneStudyTest {
  private static final Tank TANK =
      new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());

  /** Weight under water of a kilogram of stone, newtons: pores flood, mineral of 2780 kg/m3 (definition). */
  private static final double WET_N = 9.81 * (1 - 1023.343 / 2780);

  private static Rock box(String name, Rock.Kind kind, double side, double kg, double sealedMl) {
    return new Rock(name, kind, new Rock.Measured(Rock.Look.BOX, side, side, 100, 1),
        new Rock.Weighed(kg, Rock.Weighing.DRY, OptionalDouble.empty()), sealedMl, false, false, OptionalDouble.empty());
  }

  private static PaneStudy study(List<Rock> rocks, List<Placement> places, List<JointSpec> joints) {
    Scene s = new Scene("pane", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, joints, Settings.DEFAULT);
    return PaneStudy.of(new HeapStudy(SceneHeap.of(s, Shapes.of(s, MeshLoader.NONE).placed()), 1));
  }

  private static Placement at(String rock, double z) {
    return new Placement(rock, new Vec3(300, 250, z), Quat.IDENTITY, false);
  }

  private static PaneLoad.Case filled(PaneStudy study) {
    return study.report().map(PaneReport::load).orElseThrow().cases().get(LoadCase.FILLED);
  }

  /** Half a kilogram under water grows on a living rock (setting): the pane bears that for good as well. */
  @Test
  void whatGrowsWeighsOnThePane() {
    PaneLoad.Case dead = filled(study(List.of(box("base", Rock.Kind.DRY, 200, 6, 0)), List.of(at("base", 10)), List.of()));
    assertThat(dead.weightN()).isCloseTo(6 * WET_N, within(0.01));
    PaneLoad.Case living = filled(study(List.of(box("base", Rock.Kind.LIVE, 200, 6, 0)), List.of(at("base", 10)), List.of()));
    assertThat(living.weightN()).isCloseTo(6 * WET_N + 0.5 * 9.81, within(0.01));
    assertThat(living.feet()).singleElement()
        .satisfies(f -> assertThat(f.mostN()).isCloseTo(6 * WET_N + 0.5 * 9.81, within(0.1)));
  }

  /** A rock with voids of half a litre, 0.4 kg, pulls at the one it is fixed to: the pane bears what both weigh together. */
  @Test
  void whatFloatsAndIsHeldTakesWeightOffThePane() {
    PaneStudy s = study(List.of(box("heavy", Rock.Kind.DRY, 200, 9, 0), box("foam", Rock.Kind.DRY, 100, 0.4, 500)),
        List.of(at("heavy", 10), at("foam", 110)), List.of(JointSpec.paste("heavy", "foam", JointSpec.Bond.MORTAR, 90)));
    assertThat(filled(s).weightN()).isCloseTo(9.4 * WET_N - 9.81 * 1023.343 * 0.5e-3, within(0.01));
    assertThat(s.findings()).noneMatch(f -> f.code() == Code.UNDECIDED);
  }

  /** What falls has no forces on its feet that could be told, so the pane is not judged at all. */
  @Test
  void aHeapThatFallsIsNotPutOnThePane() {
    PaneStudy s = study(List.of(box("base", Rock.Kind.DRY, 200, 6, 0), box("stray", Rock.Kind.DRY, 100, 1, 0)),
        List.of(at("base", 10), at("stray", 300)), List.of());
    assertThat(s.report()).isEmpty();
    assertThat(s.findings()).isEmpty();
    assertThat(s.feet()).extracting(CheckReport.FootLine::state).containsExactly(State.DRAINED);
  }

  /**
   * A living rock comes with its pores full: a box of 4 litres with 6 kg of stone holds 1.023343 x (4 - 6 / 2.78) kg of water
   * (definition). What is dry is carried in dry.
   */
  @Test
  void aLivingRockIsLetSlipWithTheWaterItHolds() {
    assertThat(carriedKg(Rock.Kind.LIVE)).isCloseTo(6 + 1.023343 * (4 - 6 / 2.78), within(1e-5));
    assertThat(carriedKg(Rock.Kind.DRY)).isEqualTo(6);
  }

  private static double carriedKg(Rock.Kind kind) {
    PaneStudy s = study(List.of(box("base", kind, 200, 6, 0)), List.of(at("base", 10)), List.of());
    return s.report().orElseThrow().load().heaviest().orElseThrow().massKg();
  }

  private static List<Vec3> corners(double x0, double x1, double z0, double z1) {
    List<Vec3> out = new ArrayList<>();
    for (double x : new double[] {x0, x1}) {
      for (double y : new double[] {-20, 20}) {
        for (double z : new double[] {z0, z1}) out.add(new Vec3(x, y, z));
      }
    }
    return out;
  }

  private static Rock dense(String name, Rock.Form form) {
    return new Rock(name, Rock.Kind.DRY, form, new Rock.BulkDensity(2.7), 0, false, false, OptionalDouble.empty());
  }

  /**
   * A bench of 0.648 kg on two legs carries a post of 1.944 kg toward its right leg; a block of 2.916 kg, fixed to its left end
   * 240 mm out, relieves that leg. With the water at a quarter only the post stands out of it. Moments about the outer edge of
   * the left leg, the right one bearing on its inner edge 220 mm away, give what it bears at most (derived): twice of what it
   * bears drained, when all three are about as heavy as dry.
   */
  @Test
  void aFootThatALowRockRelievesBearsMoreWhileTheWaterFalls() {
    List<Rock> rocks = List.of(
        dense("bench", new Rock.Lobes(List.of(corners(-120, 120, 30, 50), corners(-120, -100, 0, 40), corners(100, 120, 0, 40)))),
        dense("post", new Rock.Measured(Rock.Look.BOX, 60, 40, 300, 1)),
        dense("block", new Rock.Measured(Rock.Look.BOX, 240, 100, 45, 1)));
    List<Placement> places = List.of(new Placement("bench", new Vec3(400, 250, 10), Quat.IDENTITY, false),
        new Placement("post", new Vec3(460, 250, 60), Quat.IDENTITY, false),
        new Placement("block", new Vec3(160, 250, 30), Quat.IDENTITY, false));
    Scene s = new Scene("bench", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, List.of(JointSpec.paste("bench", "post", JointSpec.Bond.MORTAR, 90),
            JointSpec.paste("bench", "block", JointSpec.Bond.MORTAR, 90)),
        Settings.DEFAULT.with(Setting.CONTACT_INSET_MM, 0).with(Setting.BOND_MORTAR_N_MM2, 5));
    PaneStudy study = PaneStudy.of(new HeapStudy(SceneHeap.of(s, Shapes.of(s, MeshLoader.NONE).placed()), 1));
    double wet = WET_N / 9.81;
    double post = 1 - (1 - wet) * (450 / 4.0 - 60) / 300;
    double most = 9.81 * (0.648 * wet * 120 + 1.944 * post * 180 - 2.916 * wet * 120) / 220;
    PaneLoad.Case drained = study.report().map(PaneReport::load).orElseThrow().cases().get(LoadCase.DRAINED);
    assertThat(drained.feet()).hasSize(2).anySatisfy(f -> assertThat(f.mostN()).isCloseTo(most, within(0.02 * most)));
    assertThat(study.feet()).extracting(CheckReport.FootLine::state).contains(State.QUARTER, State.DRAINED);
  }
}
