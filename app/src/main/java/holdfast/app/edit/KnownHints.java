package holdfast.app.edit;

import holdfast.model.io.SceneFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;

/** Which hints a person needs no more: one word a line in a file of the user's folder, kept from start to start. */
public final class KnownHints {
  private final Path store;

  public KnownHints(Path userFolder) {
    store = userFolder.resolve("hints.txt");
  }

  /** The words that were kept; none when there is no file or it cannot be read: a hint too many does no harm. */
  public Set<String> words() {
    Set<String> out = new LinkedHashSet<>();
    try {
      if (!Files.isRegularFile(store)) return out;
      Files.readAllLines(store).stream().map(String::strip).filter(w -> !w.isEmpty()).forEach(out::add);
    } catch (IOException e) {
      return out;
    }
    return out;
  }

  public void keep(Set<String> words) throws IOException {
    Files.createDirectories(store.getParent());
    SceneFiles.saveText(store, String.join("\n", words) + "\n");
  }
}
