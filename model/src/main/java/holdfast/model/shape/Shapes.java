package holdfast.model.shape;

import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All rocks of a scene, shaped and placed.
 *
 * @param bodies every rock that could be shaped, by name, in the scene's order, placed or not
 * @param placed the placed ones, in the order of the scene's placements
 * @param problems what could not be shaped, in the scene's order
 */
public record Shapes(Map<String, RockBody> bodies, List<PlacedRock> placed, List<Problem> problems) {
  /** Bodies of the last few hundred rocks: an edit of one rock does not shape the others again. */
  private static final Cache CACHE = new Cache(400);

  /** One rock that could not be shaped; {@code rockIndex} counts the scene's rocks from 0. */
  public record Problem(int rockIndex, String rock, String reason) {}

  public Shapes {
    bodies = Collections.unmodifiableMap(new LinkedHashMap<>(bodies));
    placed = List.copyOf(placed);
    problems = List.copyOf(problems);
  }

  public boolean sound() {
    return problems.isEmpty();
  }

  public Optional<PlacedRock> placed(String rock) {
    return placed.stream().filter(p -> p.rock().name().equals(rock)).findFirst();
  }

  /** Shapes every rock of the scene and places those that have a placement. Meshes are loaded anew each time. */
  public static Shapes of(Scene scene, MeshLoader loader) {
    double water = SeaWater.densityKgM3(scene.water().salinity(), scene.water().temperatureC());
    Map<String, RockBody> bodies = new LinkedHashMap<>();
    Map<String, Rock> rocks = new LinkedHashMap<>();
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < scene.rocks().size(); i++) {
      Rock rock = scene.rocks().get(i);
      int index = i;
      rocks.putIfAbsent(rock.name(), rock);
      shape(rock, scene, water, loader).match(
          body -> bodies.putIfAbsent(rock.name(), body) == null,
          why -> problems.add(new Problem(index, rock.name(), why)));
    }
    List<PlacedRock> placed = new ArrayList<>();
    for (int i = 0; i < scene.placements().size(); i++) {
      Placement p = scene.placements().get(i);
      RockBody body = bodies.get(p.rock());
      if (body != null) placed.add(PlacedRock.of(i, rocks.get(p.rock()), body, p.pose()));
    }
    return new Shapes(bodies, placed, problems);
  }

  private static ShapeResult shape(Rock rock, Scene scene, double water, MeshLoader loader) {
    // A mesh file may have changed on disk since.
    if (rock.form() instanceof Rock.Mesh) return RockShapes.body(rock, scene.settings(), water, loader);
    Key key = new Key(rock, scene.settings().get(Setting.MINERAL_DENSITY), scene.settings().get(Setting.DAMP_SHARE), water);
    ShapeResult known = CACHE.get(key);
    if (known != null) return known;
    ShapeResult made = RockShapes.body(rock, scene.settings(), water, loader);
    CACHE.put(key, made);
    return made;
  }

  /** Everything that a body depends on. */
  private record Key(Rock rock, double mineral, double damp, double water) {}

  /** The most recently used results. Safe for several threads; what it holds never changes what comes out. */
  private static final class Cache {
    private final Map<Key, ShapeResult> results;

    Cache(int most) {
      results = new LinkedHashMap<>(64, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, ShapeResult> eldest) {
          return size() > most;
        }
      };
    }

    synchronized ShapeResult get(Key key) {
      return results.get(key);
    }

    synchronized void put(Key key, ShapeResult result) {
      results.put(key, result);
    }
  }
}
