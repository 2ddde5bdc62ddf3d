package holdfast.engine.contact;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;

/** A scene as bodies in place: the placed rocks in the order of the placements, then the fixed parts of the tank. */
public final class SceneSolids {
  private SceneSolids() {}

  /** The rocks as they are placed, then {@link TankSolids}. */
  public static List<Solid> of(Scene scene, List<PlacedRock> placed) {
    List<Solid> solids = new ArrayList<>(rocks(placed));
    solids.addAll(TankSolids.of(scene));
    return List.copyOf(solids);
  }

  /** Only the rocks, in the order given. */
  public static List<Solid> rocks(List<PlacedRock> placed) {
    return placed.stream().map(p -> new Solid(p.rock().name(), surface(p.rock()), false, p.lobes())).toList();
  }

  /** What the outside of a rock is: living or overgrown rock is slimy. */
  public static Surface surface(Rock rock) {
    return rock.slimy() || rock.kind() == Rock.Kind.LIVE ? Surface.SLIMY_ROCK : Surface.ROCK;
  }
}
