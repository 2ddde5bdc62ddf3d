package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Between a scene, in millimetres, and the bodies of this package. */
public final class SceneBodies {
  private SceneBodies() {}

  /** The placed rocks of a scene, in the order of the placements, with their dry mass. */
  public static List<MotionBody> of(Scene scene, List<RockBody> shapes) {
    Map<String, RockBody> byName = new LinkedHashMap<>();
    for (RockBody b : shapes) byName.put(b.name(), b);
    List<MotionBody> bodies = new ArrayList<>();
    for (Placement p : scene.placements()) {
      RockBody shape = byName.get(p.rock());
      if (shape == null) throw new IllegalArgumentException("no shape was given for rock '" + p.rock() + "'");
      boolean slimy = scene.rock(p.rock()).map(Rock::slimy).orElse(false);
      bodies.add(new MotionBody(p.rock(), slimy ? Surface.SLIMY_ROCK : Surface.ROCK, shape.lobes(),
          shape.dryMassKg(), shape.centre(), shape.inertia(), p.pose()));
    }
    return bodies;
  }

  /** The sketch of a scene as a job for {@link Settle}; {@code fixed} is the tank. */
  public static SettleJob settleJob(Scene scene, List<RockBody> shapes, List<Solid> fixed) {
    Set<String> locked = new LinkedHashSet<>();
    for (Placement p : scene.placements()) if (p.locked()) locked.add(p.rock());
    List<SettleJob.Bonded> bonds = new ArrayList<>();
    for (JointSpec j : scene.joints()) {
      if (j.bond() != JointSpec.Bond.NONE) bonds.add(new SettleJob.Bonded(j.a(), j.b()));
    }
    return new SettleJob(of(scene, shapes), locked, fixed, bonds,
        scene.settings().get(Setting.BOND_REACH_MM) * 1e-3, friction(scene.settings()));
  }

  /**
   * The scene with the rocks where settling left them. Positions keep all their digits: rounding would reopen contacts.
   */
  public static Scene placed(Scene scene, SettleResult.Settled settled) {
    Map<String, SettleResult.Move> moves = new LinkedHashMap<>();
    for (SettleResult.Move m : settled.moves()) moves.put(m.rock(), m);
    List<Placement> next = new ArrayList<>();
    for (Placement p : scene.placements()) {
      SettleResult.Move m = moves.get(p.rock());
      if (m == null || m.locked() || m.pose().equals(p.pose())) {
        next.add(p);
      } else {
        Vec3 at = m.pose().at().times(1e3);
        next.add(new Placement(p.rock(), at, m.pose().turn(), p.locked()));
      }
    }
    return scene.withPlacements(next);
  }

  /** Friction by pair of surfaces as the scene's settings have it; overgrown rock is slippery on anything. */
  public static WorldOptions.Friction friction(Settings settings) {
    return (a, b) -> settings.get(setting(a, b));
  }

  private static Setting setting(Surface a, Surface b) {
    if (a == Surface.SLIMY_ROCK || b == Surface.SLIMY_ROCK) return Setting.FRICTION_SLIMY;
    Surface other = a == Surface.ROCK ? b : a;
    return switch (other) {
      case ROCK, SLIMY_ROCK -> Setting.FRICTION_ROCK_ROCK;
      case GLASS -> a == b || a == Surface.ROCK || b == Surface.ROCK ? Setting.FRICTION_ROCK_GLASS : Setting.FRICTION_GRID_GLASS;
      case GRID, SHEET -> Setting.FRICTION_ROCK_GRID;
      case SAND -> Setting.FRICTION_ROCK_SAND;
    };
  }
}
