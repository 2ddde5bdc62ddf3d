package holdfast.app.edit;

import holdfast.model.io.SceneFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The scenes that were open lately, the latest first: one path a line in a file of the user's folder. */
public final class RecentScenes {
  private static final int MOST = 8;
  private final Path store;

  public RecentScenes(Path userFolder) {
    store = userFolder.resolve("recent.txt");
  }

  /** Those that are still there. */
  public List<Path> list() {
    List<Path> out = new ArrayList<>();
    try {
      if (!Files.isRegularFile(store)) return out;
      for (String line : Files.readAllLines(store)) {
        if (!line.isBlank() && Files.isRegularFile(Path.of(line.strip()))) out.add(Path.of(line.strip()));
      }
    } catch (IOException | java.nio.file.InvalidPathException e) {
      // A list that cannot be read is as good as none: it is only a convenience.
      return out;
    }
    return out;
  }

  /** Puts a scene at the head of the list. */
  public void opened(Path scene) throws IOException {
    List<Path> all = new ArrayList<>(list());
    Path p = scene.toAbsolutePath().normalize();
    all.remove(p);
    all.add(0, p);
    StringBuilder text = new StringBuilder();
    for (Path one : all.subList(0, Math.min(MOST, all.size()))) text.append(one).append('\n');
    Files.createDirectories(store.getParent());
    SceneFiles.saveText(store, text.toString());
  }
}
