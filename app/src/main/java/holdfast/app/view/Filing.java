package holdfast.app.view;

import holdfast.app.edit.Document;
import holdfast.app.edit.FileMark;
import holdfast.app.edit.RecentScenes;
import holdfast.app.edit.Rescue;
import holdfast.app.edit.ScanHome;
import holdfast.model.io.ReadResult;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The scene's file: reading, saving, side copies of unsaved work, and the notice that somebody else has changed it. */
final class Filing {
  private static final long KEEP_EVERY_NANOS = 2_000_000_000L;
  private static final long LOOK_EVERY_NANOS = 3_000_000_000L;

  private final Path userFolder;
  private final RecentScenes recent;
  private Optional<Path> file = Optional.empty();
  private Optional<FileMark> mark = Optional.empty();
  private Rescue rescue;
  private long keptRevision;
  private long lastKept;
  private long lastLook;
  private boolean changedOutside;

  Filing(Path userFolder) {
    this.userFolder = userFolder;
    recent = new RecentScenes(userFolder);
    rescue = Rescue.untitled(userFolder);
  }

  Path userFolder() {
    return userFolder;
  }

  Optional<Path> file() {
    return file;
  }

  List<Path> recent() {
    return recent.list();
  }

  /** The folder that meshes of the scene lie in. */
  Path folder() {
    return file.map(f -> f.toAbsolutePath().getParent()).orElse(Path.of("").toAbsolutePath());
  }

  /** Reads a scene; the file becomes the one that is worked on only through {@link #adopt}. */
  ReadResult<Scene> read(Path path) {
    return SceneReader.read(path);
  }

  /** From now on this is the file; empty for a scene that has none yet. */
  void adopt(Optional<Path> path) throws IOException {
    file = path;
    mark = path.flatMap(FileMark::of);
    rescue = path.map(Rescue::beside).orElseGet(() -> Rescue.untitled(userFolder));
    keptRevision = 0;
    changedOutside = false;
    if (path.isPresent()) recent.opened(path.get());
  }

  /** Unsaved work of an earlier run on this file. */
  Optional<Rescue.Found> found() {
    return rescue.found();
  }

  /** Saves; a file that somebody else has changed is left alone unless {@code over}. */
  boolean save(Document document, boolean over) throws IOException {
    Path f = file.orElseThrow();
    if (!over && mark.isPresent() && mark.get().changed()) {
      changedOutside = true;
      return false;
    }
    SceneFiles.save(f, document.scene());
    document.markSaved();
    mark = FileMark.of(f);
    changedOutside = false;
    rescue.discard();
    recent.opened(f);
    return true;
  }

  void saveAs(Path path, Document document) throws IOException {
    Rescue old = rescue;
    ScanHome.carry(document.scene(), folder(), path.toAbsolutePath().getParent());
    SceneFiles.save(path, document.scene());
    document.markSaved();
    adopt(Optional.of(path));
    old.discard();
    rescue.discard();
  }

  /** Keeps a side copy now and then, and looks whether the file was changed; true when there is something to show. */
  boolean tick(Document document, long now) throws IOException {
    if (document.unsaved() && document.revision() != keptRevision && now - lastKept > KEEP_EVERY_NANOS) keep(document, now);
    if (now - lastLook < LOOK_EVERY_NANOS) return false;
    lastLook = now;
    boolean before = changedOutside;
    changedOutside = mark.isPresent() && mark.get().changed();
    return changedOutside != before;
  }

  /** Keeps a side copy at once. */
  void keep(Document document, long now) throws IOException {
    rescue.keep(document.scene());
    keptRevision = document.revision();
    lastKept = now;
  }

  boolean changedOutside() {
    return changedOutside;
  }

  /** The work is not wanted, or is in the file: the side copy goes. */
  void forget() throws IOException {
    rescue.discard();
  }
}
