package holdfast.engine.bonding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.bonding.JointDemand.Demand;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.JointSpec.Bond;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.RockBody;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Joints whose loads follow from balance by hand; stress over a square patch as in a beam, M / (h^3 / 6) (derived). */
class JointDemandsTest {
  private static final double G = 9.80665;
  private final List<Rock> rocks = new ArrayList<>();
  private final List<Placement> places = new ArrayList<>();
  private final List<JointSpec> joints = new ArrayList<>();
  private Settings settings = Settings.DEFAULT;
  private Shapes shapes;

  private void box(String name, double l, double w, double h, double kg, double x, double y, double z) {
    rocks.add(new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, l, w, h, 1),
        new Rock.Weighed(kg, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false));
  }

  private JointDemands.Result demands(List<List<Integer>> pieces) {
    Tank tank = new Tank(1000, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
    Scene scene = new Scene("joints", tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, joints, settings);
    shapes = Shapes.of(scene, MeshLoader.NONE);
    return JointDemands.of(SceneHeap.of(scene, shapes.placed()), pieces, 2);
  }

  private double drainedN(String rock) {
    RockBody b = shapes.bodies().get(rock);
    return G * (b.dryMassKg() + b.poreWaterKg());
  }

  /**
   * Two bars side by side, joined by their square ends of 50 mm; the far one, 200 mm long, hangs from the near one: shear of
   * its weight, and its weight 100 mm out as a moment.
   */
  @Test
  void aBarHeldOutSideways() {
    box("near", 100, 50, 50, 0.5, 300, 250, 10);
    box("far", 200, 50, 50, 1, 450, 250, 10);
    joints.add(JointSpec.paste("near", "far", Bond.MORTAR, 60));
    JointDemands.Result r = demands(List.of(List.of(0, 1)));
    Demand d = r.joint(0).orElseThrow().lift().orElseThrow();
    double n = drainedN("far");
    assertThat(d.load()).isEqualTo("lifted by near");
    assertThat(d.shearN()).isCloseTo(n, within(1e-3 * n));
    assertThat(d.momentNm()).isCloseTo(0.1 * n, within(1e-3 * n));
    assertThat(d.tensionN()).isCloseTo(0, within(1e-3 * n));
    assertThat(d.twistNm()).isCloseTo(0, within(1e-4 * n));
    double stress = 0.1 * n / (Math.pow(0.05, 3) / 6);
    assertThat(d.use()).isCloseTo(stress / 1e5, within(1e-3));
    // Held by the far one, the near one hangs 50 mm out.
    PieceLift other = r.lifts().stream().filter(l -> l.rock() == 1).findFirst().orElseThrow();
    assertThat(other.use()).isCloseTo(0.05 * drainedN("near") / (Math.pow(0.05, 3) / 6) / 1e5, within(1e-3));
    assertThat(other.holds()).isTrue();
    assertThat(other.joint()).isZero();
  }

  /** What the same patch offers of each kind alone: its area, section modulus and elastic torsion (derived). */
  @Test
  void whatASquarePatchOffers() {
    box("near", 100, 50, 50, 0.5, 300, 250, 10);
    box("far", 200, 50, 50, 1, 450, 250, 10);
    joints.add(JointSpec.paste("near", "far", Bond.PUTTY, 60));
    JointDemand.Offer o = demands(List.of(List.of(0, 1))).joint(0).orElseThrow().offer();
    double area = 0.05 * 0.05;
    assertThat(o.pullN()).isCloseTo(1e5 * area, within(1e-6));
    assertThat(o.shearN()).isCloseTo(1e5 * area, within(1e-6));
    // Weakest about a diagonal: h^3 / 6 over the root of two.
    assertThat(o.momentNm()).isCloseTo(1e5 * Math.pow(0.05, 3) / 6 / Math.sqrt(2), within(1e-6));
    // I_p / r = (h^4 / 6) / (h / root of two).
    assertThat(o.twistNm()).isCloseTo(1e5 * Math.pow(0.05, 3) / 6 * Math.sqrt(2), within(1e-6));
    assertThat(o.rockFirst()).isFalse();
  }

  /** A weak long bar breaks in the hands: told beyond its strength, and as not to be lifted so. */
  @Test
  void whatBreaksInTheHandsIsTold() {
    settings = Settings.DEFAULT.with(Setting.BOND_MORTAR_N_MM2, 0.01);
    box("near", 100, 50, 50, 0.5, 300, 250, 10);
    box("far", 200, 50, 50, 1, 450, 250, 10);
    joints.add(JointSpec.paste("near", "far", Bond.MORTAR, 60));
    JointDemands.Result r = demands(List.of(List.of(0, 1)));
    double use = 0.1 * drainedN("far") / (Math.pow(0.05, 3) / 6) / 1e4;
    assertThat(use).isGreaterThan(1);
    assertThat(r.lifts().get(0).use()).isCloseTo(use, within(1e-2));
    assertThat(r.lifts().get(0).holds()).isFalse();
  }

  /** A rod that is not glued slides out: the upper rock cannot lift the lower, but the lower lifts the upper. */
  @Test
  void aLooseRodLetsGo() {
    box("lower", 100, 100, 100, 1.5, 300, 250, 10);
    box("upper", 100, 100, 100, 1.5, 300, 250, 110);
    joints.add(new JointSpec("lower", "upper", Bond.ROD, 0, 8, 30, false));
    JointDemands.Result r = demands(List.of(List.of(0, 1)));
    assertThat(r.lifts()).extracting(PieceLift::rock).containsExactly(0, 1);
    assertThat(r.lifts().get(0).holds()).isTrue();
    assertThat(r.lifts().get(1).holds()).isFalse();
  }

  /**
   * A light cube on a heavy slab, pushed at 0.9 of its height toward a corner: M = 0.09 F on the diagonal of the square, its
   * submerged weight pressing: (sqrt 2 * 6 M / h^3 - W / A) / strength. The lightest state governs, filled.
   */
  @Test
  void aPushedCube() {
    settings = Settings.DEFAULT.with(Setting.SHAKE_G, 0);
    box("slab", 400, 400, 150, 55, 400, 250, 10);
    box("cube", 100, 100, 100, 1.5, 400, 250, 160);
    joints.add(JointSpec.paste("slab", "cube", Bond.MORTAR, 150));
    JointDemand j = demands(List.of(List.of(0, 1))).joint(0).orElseThrow();
    Demand d = j.place().orElseThrow();
    double weight = 1.5 * G * (1 - SeaWater.densityKgM3(35, 25) / 2780);
    double moment = 20 * 0.09;
    assertThat(d.load()).isEqualTo("a push on cube, filled");
    assertThat(d.momentNm()).isCloseTo(moment, within(0.01 * moment));
    assertThat(d.shearN()).isCloseTo(20, within(0.2));
    assertThat(d.pressN()).isCloseTo(weight, within(0.02 * weight));
    assertThat(d.use()).isCloseTo((Math.sqrt(2) * 6 * moment / 1e-3 - weight / 0.01) / 1e5, within(2e-3));
  }
}
