package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.heap.Twist;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A finding about a movement carries it. What it must be is derived by hand for single boxes. */
class FindingMechanismTest {
  private static final Tank TANK = new Tank(600, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());

  private static Rock box(String name, double l, double w, double h) {
    return new Rock(name, Rock.Kind.DRY, new Rock.Measured(Rock.Look.BOX, l, w, h, 1), new Rock.BulkDensity(1.8), 0, false, false,
        OptionalDouble.empty());
  }

  private static CheckReport check(List<Rock> rocks, List<Placement> places) {
    return check(rocks, places, Map.of());
  }

  private static CheckReport check(List<Rock> rocks, List<Placement> places, Map<Setting, Double> figures) {
    Map<Setting, Double> given = new EnumMap<>(Setting.class);
    given.putAll(figures);
    given.put(Setting.CONTACT_INSET_MM, 0.0);
    given.put(Setting.PUSH_DIRECTIONS, 4.0);
    Scene s = new Scene("boxes", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(450, 35, 25), List.of(), List.of(), rocks,
        places, List.of(), new Settings(given));
    return Check.run(s, Shapes.of(s, MeshLoader.NONE), new CheckOptions(1, CheckOptions.Pushes.WEAKEST, 0, 1));
  }

  private static Placement at(String rock, double x, double z) {
    return new Placement(rock, new Vec3(x, 250, z), Quat.IDENTITY, false);
  }

  /**
   * A box of 100 x 100 x 300 mm pushed at 0.9 of its height goes over its lower edge before it slides, since 50 / 270 is
   * below the friction of rock on louvre, 0.35: the edge ahead stays where it is. The low box beside it stays as it is.
   */
  @Test
  void aTallBoxGoesOverItsEdge() {
    CheckReport r = check(List.of(box("low", 200, 200, 60), box("tall", 100, 100, 300)), List.of(at("low", 150, 10), at("tall", 400, 10)));
    Finding f = r.findings().stream().filter(x -> x.code() == Code.TOPPLES && x.about().contains("tall")).findFirst().orElseThrow();
    List<Twist> twists = f.mechanism().orElseThrow().twists();
    assertThat(twists).hasSize(2);
    assertThat(twists.get(0).velocity().norm() + twists.get(0).spin().norm()).isCloseTo(0, within(1e-9));
    Twist t = twists.get(1);
    Vec3 centre = new Vec3(0.4, 0.25, 0.16);
    Vec3 ahead = new Vec3(t.velocity().x(), t.velocity().y(), 0).unit();
    Vec3 edge = centre.plusTimes(0.05, ahead).plusTimes(-0.15, Vec3.Z);
    assertThat(t.at(edge, centre).norm()).as("speed of the edge, the fastest point at 1").isCloseTo(0, within(0.02));
    assertThat(t.spin().dot(Vec3.Z.cross(ahead))).as("it tilts the way it goes").isPositive();
  }

  /** A plank whose centre lies 60 mm beyond the edge of what carries it goes down ahead and up behind; nothing pushes it. */
  @Test
  void anOverhangingPlankFallsByItself() {
    CheckReport r = check(List.of(box("base", 160, 120, 100), box("plank", 300, 100, 30)), List.of(at("base", 200, 10), at("plank", 340, 110)));
    Finding f = r.findings().stream().filter(x -> x.code() == Code.FALLS).findFirst().orElseThrow();
    assertThat(f.about()).startsWith("plank");
    Twist t = f.mechanism().orElseThrow().twists().get(1);
    Vec3 centre = new Vec3(0.34, 0.25, 0.125);
    assertThat(t.velocity().z()).as("its centre sinks").isNegative();
    assertThat(t.at(new Vec3(0.49, 0.25, 0.125), centre).z()).as("the far end sinks faster").isLessThan(t.velocity().z());
    assertThat(t.at(new Vec3(0.19, 0.25, 0.125), centre).z()).as("the near end rises").isPositive();
  }

  /** What does not move has nothing to show. */
  @Test
  void findingsAboutRoomCarryNone() {
    CheckReport r = check(List.of(box("low", 200, 200, 60)), List.of(at("low", 110, 10)));
    assertThat(r.findings()).filteredOn(f -> f.code() == Code.GAP).isNotEmpty().allSatisfy(f -> assertThat(f.mechanism()).isEmpty());
  }

  /**
   * Every state carries how it first moves. Shaken, the box of 100 x 100 x 300 mm goes over its lower edge at 1/3 g, before
   * anything slides at 0.35 g (derived; dry, where nothing but its own mass shakes).
   */
  @Test
  void everyStateCarriesItsFirstMovement() {
    CheckReport r = check(List.of(box("low", 200, 200, 60), box("tall", 100, 100, 300)), List.of(at("low", 150, 10), at("tall", 400, 10)));
    assertThat(r.states()).isNotEmpty().allMatch(s -> s.collapse().isPresent());
    CheckReport.StateLine dry = r.states().get(0);
    assertThat(dry.shakeG()).isBetween(0.97 / 3, 1 / 3.0);
    assertThat(dry.shakeAtMostG()).isCloseTo(1 / 3.0, within(1e-4));
    Twist low = dry.collapse().orElseThrow().twists().get(0);
    assertThat(low.velocity().norm() + low.spin().norm()).isCloseTo(0, within(1e-9));
    Twist tall = dry.collapse().orElseThrow().twists().get(1);
    Vec3 ahead = new Vec3(tall.velocity().x(), tall.velocity().y(), 0).unit();
    Vec3 atEdge = tall.velocity().plus(tall.spin().cross(ahead.times(0.05).plusTimes(-0.15, Vec3.Z)));
    assertThat(atEdge.norm()).isLessThan(0.02);
  }

  /**
   * The tall box goes over at 1/3 g of what shakes against what holds it. Filled, 1 - 1.0233 / 2.78 of its weight holds it,
   * and the water in its pores shakes with it, (1 - 1.8 / 2.78) 1.0233 / 1.8 of its mass (derived from design 4a): 0.1755 g.
   * A hair above that it is found, with that movement; the low box stays.
   */
  @Test
  void aShakenHeapShowsWhatGoesOver() {
    List<Rock> rocks = List.of(box("low", 200, 200, 60), box("tall", 100, 100, 300));
    List<Placement> places = List.of(at("low", 150, 10), at("tall", 400, 10));
    CheckReport r = check(rocks, places, Map.of(Setting.SHAKE_G, 0.18));
    Finding f = r.findings().stream().filter(x -> x.code() == Code.SHAKES).findFirst().orElseThrow();
    assertThat(f.figure().orElseThrow()).isBetween(0.97 * 0.1755, 0.1756);
    List<Twist> twists = f.mechanism().orElseThrow().twists();
    assertThat(twists.get(0).velocity().norm() + twists.get(0).spin().norm()).isCloseTo(0, within(1e-9));
    Vec3 ahead = new Vec3(twists.get(1).velocity().x(), twists.get(1).velocity().y(), 0).unit();
    Vec3 centre = new Vec3(0.4, 0.25, 0.16);
    Vec3 edge = centre.plusTimes(0.05, ahead).plusTimes(-0.15, Vec3.Z);
    assertThat(twists.get(1).at(edge, centre).norm()).isLessThan(0.02);
    assertThat(check(rocks, places, Map.of(Setting.SHAKE_G, 0.17)).findings()).noneMatch(x -> x.code() == Code.SHAKES);
  }

  /**
   * A plank of 300 mm across a base of 160 mm tips about the base's edge when one end is pressed down: moments about that
   * edge give press x 70 mm = weight x 80 mm. Weight under water: 300 x 100 x 30 mm of 1.8 kg/l, pores flooded (design,
   * 4a), 1.62 kg (1 - 1.0233 / 2.78) g, about 10 N, so 11 to 12 N are borne.
   */
  @Test
  void aPlankPressedOnItsEndTips() {
    CheckReport r = check(List.of(box("base", 160, 120, 100), box("plank", 300, 100, 30)), List.of(at("base", 300, 10), at("plank", 300, 110)));
    Finding f = r.findings().stream().filter(x -> x.code() == Code.PRESSED && x.about().contains("plank")).findFirst().orElseThrow();
    assertThat(f.figure().orElseThrow()).isBetween(11.0, 11.6);
    List<Twist> twists = f.mechanism().orElseThrow().twists();
    assertThat(twists.get(0).velocity().norm() + twists.get(0).spin().norm()).as("the base stays").isLessThan(0.02);
    Twist t = twists.get(1);
    Vec3 centre = new Vec3(0.3, 0.25, 0.125);
    double side = Math.signum(t.at(new Vec3(0.15, 0.25, 0.125), centre).z());
    Vec3 edge = new Vec3(0.3 + side * 0.08, 0.25, 0.11);
    assertThat(Math.abs(t.at(edge, centre).z())).as("the edge it tips about").isLessThan(0.02);
    assertThat(t.at(new Vec3(0.3 + side * 0.15, 0.25, 0.11), centre).z()).as("the pressed end sinks").isNegative();
    assertThat(t.at(new Vec3(0.3 - side * 0.15, 0.25, 0.11), centre).z()).as("the other rises").isPositive();
  }

  /** The overhanging plank under a weight on its near end: without that weight it falls, and only the plank moves then. */
  @Test
  void aRockLiftedOutShowsWhatItKeptDown() {
    CheckReport r = check(List.of(box("base", 160, 120, 100), box("plank", 300, 100, 30), box("weight", 100, 100, 100)),
        List.of(at("base", 200, 10), at("plank", 320, 110), at("weight", 220, 140)));
    Finding f = r.findings().stream().filter(x -> x.code() == Code.LIFTED && x.about().get(0).equals("weight")).findFirst().orElseThrow();
    List<Twist> twists = f.mechanism().orElseThrow().twists();
    assertThat(twists.get(2)).as("what is out does not move").isEqualTo(Twist.ZERO);
    assertThat(twists.get(1).at(new Vec3(0.47, 0.25, 0.125), new Vec3(0.32, 0.25, 0.125)).z()).as("the far end sinks").isNegative();
  }
}
