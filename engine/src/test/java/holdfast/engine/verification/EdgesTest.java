package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckReport.Standing;
import holdfast.engine.check.CheckReport.Verdict;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Scenes at the edge of what numbers bear: a right answer or Undecided, never a crash, never not a number. */
@Timeout(120)
class EdgesTest {
  private final List<Rock> rocks = new ArrayList<>();
  private final List<Placement> places = new ArrayList<>();
  private Settings settings = Settings.DEFAULT.with(Setting.PUSH_DIRECTIONS, 4);
  private double lengthMm = 1000;

  private void box(String name, double l, double w, double h, double x, double y, double z) {
    rocks.add(new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, l, w, h, 1), new Rock.BulkDensity(1.8), 0, false,
        false, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.IDENTITY, false));
  }

  private void points(String name, List<Vec3> pointsMm, Vec3 at) {
    rocks.add(new Rock(name, Rock.Kind.DRY, new Rock.Points(pointsMm), new Rock.BulkDensity(1.8), 0, false, false,
        OptionalDouble.empty()));
    places.add(new Placement(name, at, Quat.IDENTITY, false));
  }

  private CheckReport check() {
    Tank tank = new Tank(lengthMm, 600, 600, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(Side.FRONT),
        List.of(Side.LEFT, Side.RIGHT));
    Scene scene = new Scene("edge", tank, new Floor(Floor.Kind.BARE, 12.7, 0, 0, 0, Optional.empty()), new Scene.Sand(0, 1.5),
        new Scene.Water(450, 35, 25), List.of(), List.of(), rocks, places, List.of(), settings);
    CheckReport r = Check.run(scene, Shapes.of(scene, f -> new MeshResult.Unreadable("none")), new CheckOptions(2, CheckOptions.Pushes.ROSES, 2, 1));
    // Nothing is not a number, whatever the answer.
    r.rocks().forEach(k -> k.rose().forEach(p -> assertThat(p.marginN()).isNotNaN().isGreaterThanOrEqualTo(0)));
    r.states().forEach(s -> assertThat(s.shakeG()).isNotNaN());
    assertThat(r.headline()).doesNotContain("NaN");
    return r;
  }

  private static void standing(CheckReport r, Standing want) {
    assertThat(r.states()).allMatch(s -> s.standing() == want, want.word());
  }

  @Test
  void withoutRocksThereIsNothingToJudge() {
    assertThat(check().verdict()).isEqualTo(Verdict.NOTHING);
  }

  @Test
  void aHeapThatTouchesNothingFalls() {
    box("adrift", 100, 100, 100, 300, 300, 50);
    standing(check(), Standing.FALLS);
  }

  @Test
  void withoutFrictionALevelBlockStaysAndTheLeastPushSlidesIt() {
    settings = settings.with(Setting.FRICTION_ROCK_GLASS, 0).with(Setting.FRICTION_ROCK_ROCK, 0);
    box("block", 100, 100, 60, 300, 300, 0);
    CheckReport r = check();
    standing(r, Standing.STAYS);
    assertThat(r.rocks().get(0).weakest().orElseThrow().marginN()).isLessThan(1e-6);
    assertThat(r.verdict()).isNotEqualTo(Verdict.UNDECIDED);
  }

  @Test
  void frictionOfTwoHoldsUntilItTips() {
    settings = settings.with(Setting.FRICTION_ROCK_GLASS, 2).with(Setting.CONTACT_INSET_MM, 0).with(Setting.PUSH_OFFSET, 0)
        .with(Setting.PUSH_TIER_N, 5);
    box("block", 100, 100, 100, 300, 300, 0);
    CheckReport r = check();
    standing(r, Standing.STAYS);
    // Derived: W b / (2 y), submerged: 1.8 kg (1 - 1023.3 / 2780), y = 90 mm; given to the digits of the density.
    assertThat(r.rocks().get(0).weakest().orElseThrow().marginN())
        .isCloseTo(1.8 * 9.81 * (1 - 1023.34 / 2780) / 1.8, org.assertj.core.api.Assertions.within(1e-3));
  }

  @Test
  void aPebbleOfAMillimetreBesideASlabOfHalfAMetre() {
    box("slab", 500, 300, 100, 400, 300, 0);
    box("pebble", 1, 1, 1, 800, 300, 0);
    standing(check(), Standing.STAYS);
  }

  @Test
  void aPebbleUnderASlab() {
    // The slab rests on a pebble near one end and on a block: masses as a million to one.
    box("block", 60, 200, 1, 250, 300, 0);
    box("pebble", 1, 1, 1, 600, 300, 0);
    box("slab", 500, 300, 100, 420, 300, 1);
    // Its centre lies between the two, drawn in or not, so it stays (derived); stone does not crush here.
    standing(check(), Standing.STAYS);
  }

  @Test
  void aSliver() {
    box("block", 200, 200, 100, 400, 300, 0);
    points("sliver", List.of(new Vec3(-80, -80, 0), new Vec3(80, -80, 0), new Vec3(80, 80, 0), new Vec3(-80, 80, 0),
        new Vec3(-80, -80, 1), new Vec3(80, -80, 1), new Vec3(80, 80, 1), new Vec3(-80, 80, 1)), new Vec3(400, 300, 100));
    standing(check(), Standing.STAYS);
  }

  @Test
  void coplanarAndDuplicatePoints() {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i <= 4; i++) {
      for (int j = 0; j <= 4; j++) {
        for (double z : new double[] {0, 60}) {
          p.add(new Vec3(25 * i - 50, 25 * j - 50, z));
          p.add(new Vec3(25 * i - 50, 25 * j - 50, z + 1e-9));
        }
      }
    }
    points("doubled", p, new Vec3(400, 300, 0));
    standing(check(), Standing.STAYS);
  }

  @Test
  void aRockWedgedBetweenTwoPanesIsNotSafe() {
    lengthMm = 300;
    settings = settings.with(Setting.FRICTION_ROCK_GLASS, 2);
    box("wedged", 300, 100, 100, 150, 300, 200);
    CheckReport r = check();
    assertThat(r.verdict()).isNotEqualTo(Verdict.PASSES);
    assertThat(r.states()).noneMatch(s -> s.standing() == Standing.STAYS);
  }

  @Test
  @Tag("slow")
  @Timeout(900)
  void aHundredAndFiftyRocks() {
    lengthMm = 3000;
    for (int i = 0; i < 150; i++) box("block " + i, 90, 90, 50, 100 + 100 * (i % 25), 100 + 100 * (i / 25 % 3), 50.0 * (i / 75));
    standing(check(), Standing.STAYS);
  }
}
