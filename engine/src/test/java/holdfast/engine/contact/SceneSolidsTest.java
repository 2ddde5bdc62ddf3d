package holdfast.engine.contact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.RockBody;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Expected figures are derived from the boxes of the scene. */
class SceneSolidsTest {
  private static final Tank TANK = new Tank(600, 300, 360, 6, 8, Tank.BottomSupport.FULL, false, false,
      List.of(), List.of(Side.FRONT), List.of());

  private static Rock rock(String name, Rock.Kind kind, boolean slimy) {
    return new Rock(name, kind, new Rock.Measured(Rock.Look.BOX, 100, 100, 100, 1), new Rock.Weighed(2, Rock.Weighing.DRY,
        OptionalDouble.empty()), 0, slimy, false, OptionalDouble.empty());
  }

  /** The placed rocks of a scene, each a cube of 100 mm about its own origin. */
  private static List<Solid> solids(Scene scene) {
    Hull box = Bodies.box(0.1, 0.1, 0.1);
    List<RockBody> bodies = scene.rocks().stream()
        .map(r -> new RockBody(r.name(), List.of(box), Polyhedra.massProperties(box), 2, 0, 0)).toList();
    return SceneSolids.of(scene, bodies);
  }

  private static Scene scene(Floor floor, List<Rock> rocks, Placement... placements) {
    Scene.Device device = new Scene.Device("overflow", new Vec3(500, 200, 0), new Vec3(100, 100, 300), 75);
    return new Scene("test", TANK, floor, Scene.Sand.DEFAULT, new Scene.Water(330, 35, 25), List.of(device), List.of(),
        rocks, List.of(placements), List.of(), Settings.DEFAULT);
  }

  private static Placement at(String rock, double x, double y, double z) {
    return new Placement(rock, new Vec3(x, y, z), Quat.IDENTITY, false);
  }

  @Test
  void aRockStandsOnTheGridAndNotOnTheGlassUnderIt() {
    Scene s = scene(Floor.DEFAULT, List.of(rock("block", Rock.Kind.DRY, false)), at("block", 300, 150, 60));
    List<Solid> solids = solids(s);
    ContactMap map = ContactFinder.find(solids, ContactRules.DEFAULT);
    assertThat(map.contacts()).hasSize(1);
    assertThat(solids.get(map.contacts().get(0).b()).name()).isEqualTo(TankSolids.GRID);
    assertThat(map.contacts().get(0).normal().z()).isCloseTo(1, within(1e-12));
    assertThat(map.contacts().get(0).areaM2()).isCloseTo(0.01, within(1e-12));
  }

  @Test
  void besideTheGridTheBottomPaneIsBare() {
    Floor part = new Floor(Floor.Kind.GRID, 12.7, 1.5, 10, 0, Optional.of(new Floor.Extent(0, 0, 200, 300)));
    Scene s = scene(part, List.of(rock("block", Rock.Kind.DRY, false)), at("block", 400, 150, 50));
    List<Solid> solids = solids(s);
    Contact c = ContactFinder.find(solids, ContactRules.DEFAULT).contacts().get(0);
    assertThat(solids.get(c.b()).surface()).isEqualTo(Surface.GLASS);
    assertThat(solids.get(c.b()).name()).isEqualTo(TankSolids.BOTTOM);
  }

  @Test
  void aRockInTheCornerTouchesBothPanes() {
    Floor bare = new Floor(Floor.Kind.BARE, 12.7, 1.5, 0, 0, Optional.empty());
    Scene s = scene(bare, List.of(rock("block", Rock.Kind.DRY, false)), at("block", 50, 250, 50));
    List<Solid> solids = solids(s);
    ContactMap map = ContactFinder.find(solids, ContactRules.DEFAULT);
    assertThat(map.contacts()).extracting(c -> solids.get(c.b()).name()).containsExactly("bottom pane", "back pane", "left pane");
    // Each pane pushes inward.
    assertThat(map.contacts().get(1).normal().minus(Side.BACK.outward().negated()).norm()).isLessThan(1e-12);
    assertThat(map.contacts().get(2).normal().minus(Side.LEFT.outward().negated()).norm()).isLessThan(1e-12);
  }

  @Test
  void rocksComeFirstInTheOrderOfThePlacements() {
    Scene s = scene(Floor.DEFAULT,
        List.of(rock("one", Rock.Kind.DRY, true), rock("two", Rock.Kind.LIVE, false), rock("three", Rock.Kind.CAST, false)),
        at("three", 100, 100, 60), at("one", 300, 100, 60), at("two", 450, 100, 60));
    List<Solid> solids = solids(s);
    assertThat(solids).extracting(Solid::name).containsExactly("three", "one", "two", "bottom pane", "floor grid",
        "front pane", "right pane", "back pane", "left pane", "overflow");
    assertThat(solids).extracting(Solid::surface).startsWith(Surface.ROCK, Surface.SLIMY_ROCK, Surface.SLIMY_ROCK);
    assertThat(solids.subList(3, 10)).allMatch(Solid::fixed);
  }

  @Test
  void aSketchSunkIntoAPaneIsPushedBackIntoTheTank() {
    Scene s = scene(Floor.DEFAULT, List.of(rock("block", Rock.Kind.DRY, false)), at("block", 300, 47, 62.4));
    List<Solid> solids = solids(s);
    ContactMap map = ContactFinder.find(solids, ContactRules.DEFAULT);
    PairFit overlap = map.fits(PairFit.Kind.OVERLAPS).get(0);
    assertThat(solids.get(overlap.b()).name()).isEqualTo("front pane");
    assertThat(overlap.distanceM()).isCloseTo(-0.003, within(1e-12));
    assertThat(overlap.normal().y()).isCloseTo(1, within(1e-12));
    // Derived: the grid's top is at 10 mm, the block's bottom at 62.4 - 50.
    PairFit hover = map.fits(PairFit.Kind.HOVERS).get(0);
    assertThat(hover.distanceM()).isCloseTo(0.0024, within(1e-12));
  }
}
