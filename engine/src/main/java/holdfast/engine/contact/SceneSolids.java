package holdfast.engine.contact;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A scene as bodies in place: the placed rocks in the order of the placements, then the fixed parts of the tank. */
public final class SceneSolids {
  private SceneSolids() {}

  /** Rocks where their placements put them, then {@link TankSolids}. */
  public static List<Solid> of(Scene scene, List<RockBody> shapes) {
    List<Solid> solids = new ArrayList<>(rocks(scene, shapes));
    solids.addAll(TankSolids.of(scene));
    return List.copyOf(solids);
  }

  /** Only the placed rocks, in the order of the placements; {@code shapes} in any order, one for each placed rock. */
  public static List<Solid> rocks(Scene scene, List<RockBody> shapes) {
    Map<String, RockBody> byName = new LinkedHashMap<>();
    for (RockBody b : shapes) byName.put(b.name(), b);
    List<Solid> rocks = new ArrayList<>();
    for (Placement p : scene.placements()) {
      RockBody body = byName.get(p.rock());
      if (body == null) throw new IllegalArgumentException("no shape was given for rock '" + p.rock() + "'");
      Surface surface = scene.rock(p.rock()).map(SceneSolids::surface).orElse(Surface.ROCK);
      Pose pose = p.pose();
      List<Hull> lobes = body.lobes().stream().map(h -> h.moved(pose)).toList();
      rocks.add(new Solid(p.rock(), surface, false, lobes));
    }
    return List.copyOf(rocks);
  }

  /** What the outside of a rock is: living or overgrown rock is slimy. */
  public static Surface surface(Rock rock) {
    return rock.slimy() || rock.kind() == Rock.Kind.LIVE ? Surface.SLIMY_ROCK : Surface.ROCK;
  }
}
