package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

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
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Boxes whose supports are not drawn in, pushed on their middles from four sides; a plate of 100 x 100 x 30 mm on a base. */
class PushFindingsTest {
  private static final Tank TANK =
      new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());

  private static Rock box(String name, double l, double w, double h) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, l, w, h, 1), new Rock.BulkDensity(1.8), 0, false, false,
        OptionalDouble.empty());
  }

  /** The finding about the plate's slide, its middle so far from the base's along x and y. */
  private static Finding slide(double x, double y) {
    Settings settings = Settings.DEFAULT.with(Setting.CONTACT_INSET_MM, 0).with(Setting.PUSH_DIRECTIONS, 4)
        .with(Setting.PUSH_OFFSET, 0);
    return check(List.of(box("base", 200, 200, 100), box("plate", 100, 100, 30)),
        List.of(at("base", 0, 0, 10), at("plate", x, y, 110)), settings).findings().stream()
        .filter(f -> f.code() == Code.SLIDES && f.about().contains("plate")).findFirst().orElseThrow();
  }

  private static Placement at(String rock, double x, double y, double z) {
    return new Placement(rock, new Vec3(300 + x, 250 + y, z), Quat.IDENTITY, false);
  }

  private static CheckReport check(List<Rock> rocks, List<Placement> places, Settings settings) {
    return check(rocks, places, List.of(), settings);
  }

  private static CheckReport check(List<Rock> rocks, List<Placement> places, List<JointSpec> joints, Settings settings) {
    Scene s = new Scene("boxes", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(450, 35, 25), List.of(), List.of(),
        rocks, places, joints, settings);
    return Check.run(s, Shapes.of(s, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.WEAKEST, 0, 1));
  }

  /**
   * Pushed at 27 mm it slides, at 0.6 of its weight, before it goes over an edge that is 18 mm ahead of its middle (18 / 27 is
   * more than 0.6), and 20 mm further on its middle is 2 mm beyond that edge: it falls (derived). From the other three sides
   * it takes as much and stays, so that which of the four is weakest is a matter of rounding: all four edges are tried.
   */
  @ParameterizedTest
  @CsvSource({"-82, 0, left", "82, 0, right", "0, -82, front", "0, 82, back"})
  void aRockThatSlidesOffOnOneSideFails(double x, double y, String toward) {
    Finding f = slide(x, y);
    assertThat(f.severity()).isEqualTo(Severity.FAIL);
    assertThat(f.sentence()).contains("toward the " + toward + "; moved 20 mm that way, the heap no longer stands");
  }

  /** With 25 mm to the edge its middle is still 5 mm within it. */
  @Test
  void aRockThatStaysOnAfterItsSlideIsWarnedOf() {
    Finding f = slide(-75, 0);
    assertThat(f.severity()).isEqualTo(Severity.WARN);
    assertThat(f.sentence()).contains("the heap still stands");
  }

  /**
   * A box of 100 x 100 x 300 mm and 5.4 kg weighs 5.4 x 9.81 x (1 - 1023.343 / 2780) = 33.47 N under water (definition; sea
   * water of 35 and 25 degrees, UNESCO 44, published) and tips, pushed at 270 mm, at 33.47 x 50 / 270 = 6.20 N (moments about
   * its edge, derived): below a tier of 6.25 N it fails, below one of 6.15 N it does not.
   */
  @ParameterizedTest
  @CsvSource({"6.25, true", "6.15, false"})
  void aToppleBelowTheTierFails(double tier, boolean fails) {
    Settings settings = Settings.DEFAULT.with(Setting.CONTACT_INSET_MM, 0).with(Setting.PUSH_DIRECTIONS, 4)
        .with(Setting.PUSH_OFFSET, 0).with(Setting.PUSH_TIER_N, tier);
    List<Finding> found = check(List.of(box("tall", 100, 100, 300)), List.of(at("tall", 0, 0, 10)), settings).findings();
    assertThat(found.stream().filter(f -> f.code() == Code.TOPPLES).map(Finding::severity).toList())
        .isEqualTo(fails ? List.of(Severity.FAIL) : List.of());
  }

  /** A rock that has no place is not judged, and the verdict says so. */
  @Test
  void aRockWithoutAPlaceIsNamed() {
    Settings settings = Settings.DEFAULT.with(Setting.PUSH_DIRECTIONS, 4).with(Setting.PUSH_TIER_N, 2);
    List<Rock> rocks = List.of(box("base", 200, 200, 100), box("spare", 100, 100, 30));
    assertThat(check(rocks, List.of(at("base", 0, 0, 10)), settings).headline()).endsWith("Not placed, and not judged: spare.");
    assertThat(check(rocks.subList(0, 1), List.of(at("base", 0, 0, 10)), settings).headline()).doesNotContain("Not placed");
  }

  private static final Settings FOUR_SIDES = Settings.DEFAULT.with(Setting.CONTACT_INSET_MM, 0).with(Setting.PUSH_DIRECTIONS, 4)
      .with(Setting.PUSH_OFFSET, 0);

  private static List<Finding> of(CheckReport report, Code code, Severity severity) {
    return report.findings().stream().filter(f -> f.code() == code && f.severity() == severity).toList();
  }

  /** The joints that a report tells to fix, in the mortar that it names. */
  private static List<JointSpec> told(CheckReport report) {
    return of(report, Code.NEEDS_BOND, Severity.FAIL).stream()
        .map(f -> JointSpec.paste(f.about().get(0), f.about().get(1), JointSpec.Bond.MORTAR, 40)).toList();
  }

  /** What the report tells to fix is fixed, and the check asked again: no slide ends in a fall, nor is any joint wanted. */
  private static void isMendedByItsJoints(List<Rock> rocks, List<Placement> places, Settings settings) {
    CheckReport before = check(rocks, places, settings);
    assertThat(of(before, Code.SLIDES, Severity.FAIL)).isNotEmpty();
    assertThat(of(before, Code.TOPPLES, Severity.FAIL)).as("only slides are in question").isEmpty();
    List<JointSpec> joints = told(before);
    assertThat(joints).isNotEmpty();
    CheckReport after = check(rocks, places, joints, settings);
    assertThat(after.findings()).noneMatch(f -> f.severity() == Severity.FAIL
        && List.of(Code.SLIDES, Code.TOPPLES, Code.PRESSED, Code.SHAKES, Code.FALLS, Code.NEEDS_BOND).contains(f.code()));
  }

  /** The plate that slides off its base is fixed to it; then both go together. */
  @Test
  void aRockThatSlidesOffIsFixedToWhatItStandsOn() {
    isMendedByItsJoints(List.of(box("base", 200, 200, 100), box("plate", 100, 100, 30)),
        List.of(at("base", 0, 0, 10), at("plate", -82, 0, 110)), FOUR_SIDES.with(Setting.PUSH_TIER_N, 4));
  }

  /** Two legs under a span that rests on 15 mm of each: one that slides 20 mm away lets it down. None is fixed to the floor. */
  @Test
  void aLegThatSlidesFromUnderItsSpanIsFixedToIt() {
    List<Rock> rocks = List.of(box("left", 100, 160, 80), box("right", 100, 160, 80), box("span", 130, 160, 40));
    List<Placement> places = List.of(at("left", -100, 0, 10), at("right", 100, 0, 10), at("span", 0, 0, 90));
    CheckReport before = check(rocks, places, FOUR_SIDES.with(Setting.PUSH_TIER_N, 10));
    assertThat(of(before, Code.SLIDES, Severity.FAIL)).anySatisfy(f -> {
      assertThat(f.about()).containsExactly("left");
      assertThat(f.remedy()).startsWith("Fix the joints that are told to need fixing, or move left");
    });
    isMendedByItsJoints(rocks, places, FOUR_SIDES.with(Setting.PUSH_TIER_N, 10));
  }

  /** One that is to stay removable is not fixed; where it has more than its slide to the edge, it is mended. */
  @Test
  void aRemovableRockThatSlidesOffIsMovedIn() {
    Rock plate = new Rock("plate", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 100, 100, 30, 1), new Rock.BulkDensity(1.8), 0,
        false, true, OptionalDouble.empty());
    List<Rock> rocks = List.of(box("base", 200, 200, 100), plate);
    CheckReport before = check(rocks, List.of(at("base", 0, 0, 10), at("plate", -82, 0, 110)), FOUR_SIDES);
    assertThat(of(before, Code.SLIDES, Severity.FAIL)).singleElement().satisfies(f -> assertThat(f.remedy()).isEqualTo(
        "Move plate, or what rests on it, so that all is still carried when it has gone 20 mm that way."));
    assertThat(of(before, Code.NEEDS_BOND, Severity.NOTE)).singleElement().satisfies(f ->
        assertThat(f.sentence()).endsWith("there is no joint left to fix."));
    CheckReport after = check(rocks, List.of(at("base", 0, 0, 10), at("plate", -75, 0, 110)), FOUR_SIDES);
    assertThat(of(after, Code.SLIDES, Severity.FAIL)).isEmpty();
  }

  /**
   * The removable plate slides off the base; the tall box beside it goes over before it slides (50 mm wide and pushed at 135
   * mm: 25/135 of its weight, moments about its edge, derived; friction is more) and is held by a joint. What is told of the
   * joint leaves out the slide, and says so.
   */
  @Test
  void aJointThatLeavesASlideIsNotSaidToMeetTheTier() {
    Rock plate = new Rock("plate", Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, 60, 100, 30, 1), new Rock.BulkDensity(1.8), 0,
        false, true, OptionalDouble.empty());
    CheckReport report = check(List.of(box("base", 200, 200, 100), box("tall", 50, 50, 150), plate),
        List.of(at("base", 0, 0, 10), at("tall", 60, 0, 110), at("plate", -81, 0, 110)), FOUR_SIDES.with(Setting.PUSH_TIER_N, 2));
    assertThat(of(report, Code.TOPPLES, Severity.FAIL)).singleElement().satisfies(f -> assertThat(f.about()).contains("tall"));
    assertThat(of(report, Code.NEEDS_BOND, Severity.FAIL)).singleElement().satisfies(f -> {
      assertThat(f.about()).containsExactlyInAnyOrder("base", "tall");
      assertThat(f.sentence()).contains("this joint alone meets the tier but for a slide that ends in a fall");
    });
    assertThat(of(report, Code.NEEDS_BOND, Severity.NOTE)).singleElement().satisfies(f ->
        assertThat(f.sentence()).startsWith("Fixing joints alone does not mend a slide in the heap of"));
  }
}
