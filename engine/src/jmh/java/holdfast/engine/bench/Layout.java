package holdfast.engine.bench;

import holdfast.engine.SceneBuilders.Family;
import holdfast.engine.check.Questions;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** What is asked about, by name: a family and a number of rocks such as {@code pile 30}, or a scene that is shipped. */
record Layout(String name, Scene scene, Shapes shapes) {
  private static final long SEED = 1;

  static final List<String> SHIPPED = List.of("nano", "cube", "islands", "peninsula", "display");

  static String of(Family family, int rocks) {
    return family.name().toLowerCase(Locale.ROOT) + " " + rocks;
  }

  static Layout of(String name) {
    int space = name.indexOf(' ');
    Scene scene = space < 0 ? shipped(name)
        : Family.valueOf(name.substring(0, space).toUpperCase(Locale.ROOT)).of(Integer.parseInt(name.substring(space + 1)), SEED);
    return new Layout(name, scene, Shapes.of(scene, MeshLoader.NONE));
  }

  private static Scene shipped(String name) {
    for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
      Path file = at.resolve("scenes").resolve(name + ".json");
      if (Files.exists(file)) return SceneReader.read(file).match(s -> s, p -> {
        throw new IllegalStateException(p.toString());
      });
    }
    throw new IllegalStateException("no scene '" + name + "'");
  }

  List<PlacedRock> placed() {
    return shapes.placed();
  }

  int rocks() {
    return placed().size();
  }

  SceneHeap heap() {
    return Questions.heap(scene, placed());
  }
}
