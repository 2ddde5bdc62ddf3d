package holdfast.model.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Finds the project's {@code scenes} folder from wherever a test is run. */
public final class SceneFolder {
  private SceneFolder() {}

  public static Path path() {
    for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
      if (Files.isDirectory(at.resolve("scenes")) && Files.exists(at.resolve("pom.xml"))) {
        return at.resolve("scenes");
      }
    }
    throw new IllegalStateException("no folder 'scenes' above " + Path.of("").toAbsolutePath());
  }

  /** The scene files, without the schema and without anything that is no scene, in the order of their names. */
  public static List<Path> scenes() throws IOException {
    try (var files = Files.walk(path())) {
      return files
          .filter(f -> f.toString().endsWith(".json") && !f.toString().endsWith(".schema.json"))
          .filter(SceneFolder::isScene)
          .sorted()
          .toList();
    }
  }

  private static boolean isScene(Path file) {
    try {
      return Files.readString(file).contains("\"" + SceneKeys.FORMAT_NAME + "\"");
    } catch (IOException e) {
      throw new IllegalStateException("can't read " + file, e);
    }
  }
}
