package holdfast.engine.contact;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;

/** A scene as bodies in place: the placed rocks in the order of the placements, then the fixed parts of the tank. */
public final class SceneSolids {
  private SceneSolids() {}

  /** The placed rocks, then {@link TankSolids}; {@code shapes} in any order, one for each placed rock. */
  public static List<Solid> of(Scene scene, List<RockBody> shapes) {
    List<PlacedRock> placed = new ArrayList<>();
    for (Placement p : scene.placements()) {
      RockBody body = shapes.stream().filter(s -> s.name().equals(p.rock())).findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no shape was given for rock '" + p.rock() + "'"));
      Rock rock = scene.rock(p.rock())
          .orElseThrow(() -> new IllegalArgumentException("no rock of the scene is called '" + p.rock() + "'"));
      placed.add(PlacedRock.of(placed.size(), rock, body, p.pose()));
    }
    return ofPlaced(scene, placed);
  }

  /** The rocks as they are placed, then {@link TankSolids}. */
  public static List<Solid> ofPlaced(Scene scene, List<PlacedRock> placed) {
    List<Solid> solids = new ArrayList<>(rocks(placed));
    solids.addAll(TankSolids.of(scene));
    return List.copyOf(solids);
  }

  /** Only the rocks, in the order given. */
  public static List<Solid> rocks(List<PlacedRock> placed) {
    return placed.stream().map(SceneSolids::rock).toList();
  }

  /** One rock. */
  public static Solid rock(PlacedRock placed) {
    return new Solid(placed.rock().name(), surface(placed.rock()), false, placed.lobes());
  }

  /** What the outside of a rock is: living or overgrown rock is slimy. */
  public static Surface surface(Rock rock) {
    return rock.slimy() || rock.kind() == Rock.Kind.LIVE ? Surface.SLIMY_ROCK : Surface.ROCK;
  }
}
