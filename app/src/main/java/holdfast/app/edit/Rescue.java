package holdfast.app.edit;

import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Optional;

/**
 * A side copy of unsaved work, in case the program or the machine stops. It lies beside the scene's file; work that has
 * no file yet lies in the user's folder. Written whole or not at all; gone after a save or a proper end.
 */
public final class Rescue {
  private final Path side;

  private Rescue(Path side) {
    this.side = side;
  }

  public static Rescue beside(Path sceneFile) {
    Path f = sceneFile.toAbsolutePath();
    return new Rescue(f.resolveSibling("." + f.getFileName() + ".unsaved"));
  }

  public static Rescue untitled(Path userFolder) {
    return new Rescue(userFolder.resolve("untitled.unsaved"));
  }

  /** Where the copy lies. */
  public Path file() {
    return side;
  }

  public void keep(Scene scene) throws IOException {
    Files.createDirectories(side.getParent());
    SceneFiles.save(side, scene);
  }

  /** Work that was not saved, and when it was last kept. */
  public record Found(Scene scene, FileTime when) {}

  /** What an earlier run left, if it can be read. */
  public Optional<Found> found() {
    if (!Files.isRegularFile(side)) return Optional.empty();
    try {
      FileTime when = Files.getLastModifiedTime(side);
      return SceneReader.read(side).match(s -> Optional.of(new Found(s, when)), refused -> Optional.empty());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  public void discard() throws IOException {
    Files.deleteIfExists(side);
  }
}
