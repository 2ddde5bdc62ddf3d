package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What happens when one support is gone. What must fall follows from where the weight lies (derived). */
class SupportStudyTest {
  private static final double SAND_MM = 40;

  private static Rock rock(String name, Rock.Form form) {
    return new Rock(name, Rock.Kind.DRY, form, new Rock.BulkDensity(1.8), 0, false, false, OptionalDouble.empty());
  }

  private static Rock box(String name, double l, double w, double h) {
    return rock(name, new Rock.Measured(Rock.Look.BOX, l, w, h, 1));
  }

  /** A slab of 240 x 100 x 40 mm on legs of 40 x 100 x 50 mm, whose middles are so far from its own. */
  private static Rock table(double... legs) {
    List<List<Vec3>> lobes = new ArrayList<>();
    lobes.add(corners(-120, 120, 40, 80));
    for (double x : legs) lobes.add(corners(x - 20, x + 20, 0, 50));
    return rock("table", new Rock.Lobes(lobes));
  }

  private static List<Vec3> corners(double x0, double x1, double z0, double z1) {
    List<Vec3> out = new ArrayList<>();
    for (double x : new double[] {x0, x1}) {
      for (double y : new double[] {-50, 50}) {
        for (double z : new double[] {z0, z1}) out.add(new Vec3(x, y, z));
      }
    }
    return out;
  }

  private static List<Code> codes(double sandMm, List<Rock> rocks, List<Placement> places, List<JointSpec> joints) {
    return findings(sandMm, rocks, places, joints, List.of(Side.BACK)).stream().map(Finding::code).toList();
  }

  private static List<Finding> findings(
      double sandMm, List<Rock> rocks, List<Placement> places, List<JointSpec> joints, List<Side> mayTouch) {
    Tank tank = new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), mayTouch);
    Scene s = new Scene("supports", tank, Floor.DEFAULT, new Scene.Sand(sandMm, 1.5), new Scene.Water(450, 35, 25), List.of(),
        List.of(), rocks, places, joints, Settings.DEFAULT);
    HeapStudy study = new HeapStudy(SceneHeap.of(s, Shapes.of(s, MeshLoader.NONE).placed()), 1);
    assertThat(StandingFindings.of(study)).as("it stands with all its supports").isEmpty();
    return new SupportStudy(study, 1).findings();
  }

  private static Placement at(String rock, double x, double y, double z) {
    return new Placement(rock, new Vec3(x, y, z), Quat.IDENTITY, false);
  }

  /** On two legs the middle of the table is over neither: dig one free and it goes down. */
  @Test
  void aTableOnTwoLegsFallsWhenOneIsDugFree() {
    List<Code> found = codes(SAND_MM, List.of(table(-100, 100)), List.of(at("table", 300, 250, SAND_MM)), List.of());
    assertThat(found).contains(Code.UNDERMINED, Code.ON_SAND).doesNotContain(Code.SAND_ONLY);
  }

  /** With a third leg under its middle any one may go, but not all. */
  @Test
  void aTableOnThreeLegsIsKeptUpBySandAlone() {
    List<Code> found = codes(SAND_MM, List.of(table(-100, 0, 100)), List.of(at("table", 300, 250, SAND_MM)), List.of());
    assertThat(found).contains(Code.SAND_ONLY, Code.ON_SAND).doesNotContain(Code.UNDERMINED);
  }

  /** The same table on the floor panel itself, with sand round its legs, has nothing to fear. */
  @Test
  void whatStandsOnTheFloorIsNotUndermined() {
    List<Code> found = codes(SAND_MM, List.of(table(-100, 100)), List.of(at("table", 300, 250, 10)), List.of());
    assertThat(found).doesNotContain(Code.SAND_ONLY, Code.UNDERMINED, Code.ON_SAND);
  }

  /**
   * A plate of 250 x 30 mm leans at 15 degrees on the back pane, which it may touch. Its middle is 125 sin 15 - 15 cos 15 = 18
   * mm behind the edge that it stands on, so that the pane carries 18 / 241 of its weight, and without the pane it goes over.
   */
  @Test
  void aPlateThatLeansNeedsItsPane() {
    double lean = Math.toRadians(15);
    double sin = Math.sin(lean);
    double cos = Math.cos(lean);
    Vec3 place = new Vec3(300, 500 - 15 * cos - 250 * sin, 10 + 15 * sin);
    Placement leaning = new Placement("plate", place, Quat.about(Vec3.X, -lean), false);
    // Panes bear without friction: what leans where it may does not need the pane's, and is told all the same.
    assertThat(findings(0, List.of(box("plate", 200, 30, 250)), List.of(leaning), List.of(), List.of(Side.BACK)))
        .filteredOn(f -> f.code() == Code.NEEDS_PANE).extracting(Finding::severity).containsExactly(Severity.WARN);
    assertThat(findings(0, List.of(box("plate", 200, 30, 250)), List.of(leaning), List.of(), List.of(Side.LEFT)))
        .filteredOn(f -> f.code() == Code.NEEDS_PANE).extracting(Finding::severity).containsExactly(Severity.FAIL);
    assertThat(codes(0, List.of(box("plate", 200, 100, 100)), List.of(at("plate", 300, 450, 10)), List.of()))
        .as("a block that only touches it").doesNotContain(Code.NEEDS_PANE);
  }

  /** The middle of the plank is 20 mm beyond the edge of its base: only the mortar holds it; 20 mm within it, it lies there. */
  @Test
  void aPlankThatOnlyItsMortarHoldsIsTold() {
    List<Rock> rocks = List.of(box("base", 200, 200, 100), box("plank", 300, 100, 30));
    List<JointSpec> joint = List.of(JointSpec.paste("base", "plank", JointSpec.Bond.MORTAR, 90));
    assertThat(codes(0, rocks, List.of(at("base", 250, 250, 10), at("plank", 370, 250, 110)), joint)).contains(Code.SINGLE_BOND);
    assertThat(codes(0, rocks, List.of(at("base", 250, 250, 10), at("plank", 330, 250, 110)), joint))
        .doesNotContain(Code.SINGLE_BOND);
  }
}
