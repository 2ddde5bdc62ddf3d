package holdfast.app.view;

import holdfast.model.scene.Scene;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** A test that opens a real window without a display, one at a time, for one person with a folder of their own. */
abstract class OpenedWindow {
  @TempDir
  Path folder;
  WindowDriver d;

  /** The next window of the same person; the one before is closed. */
  final void open(Scene scene, Judge.Work work) {
    close();
    d = new WindowDriver(scene, folder.resolve("user"), work);
  }

  @AfterEach
  void close() {
    if (d != null) d.close();
    d = null;
  }
}
