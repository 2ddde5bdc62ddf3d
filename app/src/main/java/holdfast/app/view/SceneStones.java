package holdfast.app.view;

import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Shapes the rocks of a scene, and keeps the bodies as long as only their places change. */
public final class SceneStones {
  private final MeshLoader loader;
  private List<Rock> rocks = List.of();
  private Settings settings = Settings.DEFAULT;
  private Scene.Water water = new Scene.Water(0, 0, 0);
  private Map<String, RockBody> bodies = Map.of();
  private List<Shapes.Problem> problems = List.of();
  private Map<String, PlacedRock> inPlace = Map.of();

  public SceneStones(MeshLoader loader) {
    this.loader = loader;
  }

  /** Shapes what has changed since the last call. */
  public void update(Scene scene) {
    if (scene.rocks().equals(rocks) && scene.settings().equals(settings) && scene.water().equals(water)) return;
    Shapes shapes = Shapes.of(scene, loader);
    rocks = scene.rocks();
    settings = scene.settings();
    water = scene.water();
    bodies = shapes.bodies();
    problems = shapes.problems();
  }

  public Tableau tableau(Scene scene) {
    update(scene);
    List<Stone> stones = new ArrayList<>();
    for (Placement p : scene.placements()) {
      RockBody b = bodies.get(p.rock());
      Optional<Rock> rock = scene.rock(p.rock());
      if (b != null && rock.isPresent()) stones.add(new Stone(p.rock(), rock.get().kind(), b.lobes(), b.centre(), p.pose()));
    }
    return new Tableau(scene, stones);
  }

  /** The scene's rocks in place, without shaping them again; who has not moved since the last call is the same object. */
  public Shapes shapes(Scene scene) {
    update(scene);
    List<PlacedRock> placed = new ArrayList<>();
    for (int i = 0; i < scene.placements().size(); i++) {
      Placement p = scene.placements().get(i);
      RockBody b = bodies.get(p.rock());
      if (b == null) continue;
      PlacedRock was = inPlace.get(p.rock());
      Rock rock = scene.rock(p.rock()).orElseThrow();
      boolean same = was != null && was.index() == i && was.body() == b && was.rock().equals(rock) && was.pose().equals(p.pose());
      placed.add(same ? was : PlacedRock.of(i, rock, b, p.pose()));
    }
    inPlace = placed.stream().collect(Collectors.toMap(p -> p.rock().name(), p -> p, (p, q) -> p));
    return new Shapes(bodies, placed, problems);
  }

  public Optional<RockBody> body(String rock) {
    return Optional.ofNullable(bodies.get(rock));
  }

  /** Rocks that could not be shaped, and why. */
  public List<Shapes.Problem> problems() {
    return problems;
  }
}
