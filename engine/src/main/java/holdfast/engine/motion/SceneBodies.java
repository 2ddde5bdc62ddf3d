package holdfast.engine.motion;

import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.Solid.Surface;
import holdfast.engine.contact.TankSolids;
import holdfast.engine.statics.heap.Frictions;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Between a scene, in millimetres, and the bodies of this package. */
public final class SceneBodies {
  private SceneBodies() {}

  /** Metres and radians: a rock that settling moved by less lay where it lies, and its placement keeps every digit. */
  private static final double KEPT_M = 1e-7;

  private static final double KEPT_RAD = 1e-6;

  /** The placed rocks of a scene, in the order of the placements, with their dry mass. */
  public static List<MotionBody> of(Scene scene, Collection<RockBody> shapes) {
    Map<String, RockBody> byName = new LinkedHashMap<>();
    for (RockBody b : shapes) byName.put(b.name(), b);
    List<MotionBody> bodies = new ArrayList<>();
    for (Placement p : scene.placements()) {
      RockBody shape = byName.get(p.rock());
      if (shape == null) throw new IllegalArgumentException("no shape was given for rock '" + p.rock() + "'");
      Surface surface = scene.rock(p.rock()).map(SceneSolids::surface).orElse(Surface.ROCK);
      bodies.add(new MotionBody(p.rock(), surface, shape.lobes(),
          shape.dryMassKg(), shape.centre(), shape.inertia(), p.pose()));
    }
    return bodies;
  }

  /**
   * Everything that does not move: the tank, and the sand where rocks stand on it ({@link SandBed}).
   */
  public static List<Solid> tank(Scene scene, List<MotionBody> bodies) {
    List<Solid> solids = new ArrayList<>(TankSolids.of(scene));
    SandBed.of(scene, bodies).ifPresent(solids::add);
    return solids;
  }

  /** The feet of a rock on sand as the statics find them, outlines from the left; none where it stands on the floor itself. */
  public static List<List<Vec3>> sandFeet(Scene scene, Collection<RockBody> shapes, String rock) {
    SceneHeap heap = SceneHeap.of(scene, placedRocks(scene, shapes));
    List<List<Vec3>> feet = new ArrayList<>();
    for (int k = 0; k < heap.seats().size(); k++) {
      SceneHeap.Seat seat = heap.seats().get(k);
      if (seat.kind() == SceneHeap.Kind.SAND && heap.name(seat.rock()).equals(rock)) feet.add(heap.contactPolygon(k));
    }
    feet.sort(Comparator.comparingDouble(f -> f.stream().mapToDouble(Vec3::x).average().orElse(0)));
    return feet;
  }

  /** The sketch of a scene as a job for {@link Settle}. */
  public static SettleJob settleJob(Scene scene, Collection<RockBody> shapes) {
    Set<String> locked = new LinkedHashSet<>();
    for (Placement p : scene.placements()) if (p.locked()) locked.add(p.rock());
    List<SettleJob.Bonded> bonds = new ArrayList<>();
    for (JointSpec j : scene.joints()) {
      if (j.bond() != JointSpec.Bond.NONE) bonds.add(new SettleJob.Bonded(j.a(), j.b()));
    }
    List<MotionBody> bodies = of(scene, shapes);
    return new SettleJob(bodies, locked, tank(scene, bodies), bonds,
        scene.settings().get(Setting.BOND_REACH_MM) * 1e-3, friction(scene.settings()));
  }

  /**
   * A scene to be played, dry or with the tank full.
   *
   * @param filled the tank is full; otherwise the rocks are dry in air
   */
  public static PlayJob playJob(Scene scene, Collection<RockBody> shapes, boolean filled) {
    List<MotionBody> dry = of(scene, shapes);
    Map<String, RockBody> byName = new LinkedHashMap<>();
    for (RockBody b : shapes) byName.put(b.name(), b);
    Optional<WaterModel> water = filled ? Optional.of(water(scene)) : Optional.empty();
    List<PlayBody> bodies = new ArrayList<>();
    for (MotionBody b : dry) {
      bodies.add(water.map(w -> w.flooded(b, byName.get(b.name()))).orElseGet(() -> PlayBody.dry(b)));
    }
    return new PlayJob(bodies, tank(scene, dry), SceneBonds.of(scene, placedRocks(scene, shapes)),
        PlayJob.PaneFace.of(scene.tank()), water, friction(scene.settings()), PlayJob.STEP_HZ, PlayJob.MOST_S,
        PlayJob.FRAMES_PER_S);
  }

  /** The water of a full tank. */
  public static WaterModel water(Scene scene) {
    return WaterModel.of(SeaWater.densityKgM3(scene.water().salinity(), scene.water().temperatureC()),
        scene.settings().get(Setting.MINERAL_DENSITY), scene.water().levelMm() * 1e-3);
  }

  /**
   * The scene with the rocks where settling left them. Positions keep all their digits: rounding would reopen contacts. What
   * was at rest keeps its placement to the byte.
   */
  public static Scene placed(Scene scene, SettleResult.Settled settled) {
    Map<String, SettleResult.Move> moves = new LinkedHashMap<>();
    for (SettleResult.Move m : settled.moves()) moves.put(m.rock(), m);
    List<Placement> next = new ArrayList<>();
    for (Placement p : scene.placements()) {
      SettleResult.Move m = moves.get(p.rock());
      if (m == null || m.locked() || same(p.pose(), m.pose())) {
        next.add(p);
      } else {
        Vec3 at = m.pose().at().times(1e3);
        next.add(new Placement(p.rock(), at, m.pose().turn(), p.locked()));
      }
    }
    return scene.withPlacements(next);
  }

  private static boolean same(Pose was, Pose now) {
    return now.at().distanceTo(was.at()) < KEPT_M && now.turn().times(was.turn().conjugate()).angleRad() < KEPT_RAD;
  }

  /** Friction by pair of surfaces as the statics take it. */
  public static WorldOptions.Friction friction(Settings settings) {
    return (a, b) -> Frictions.between(a, b, settings);
  }

  private static List<PlacedRock> placedRocks(Scene scene, Collection<RockBody> shapes) {
    List<PlacedRock> placed = new ArrayList<>();
    for (Placement p : scene.placements()) {
      Rock rock = scene.rock(p.rock())
          .orElseThrow(() -> new IllegalArgumentException("no rock of the scene is called '" + p.rock() + "'"));
      RockBody body = shapes.stream().filter(b -> b.name().equals(p.rock())).findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no shape was given for rock '" + p.rock() + "'"));
      placed.add(PlacedRock.of(placed.size(), rock, body, p.pose()));
    }
    return placed;
  }
}
