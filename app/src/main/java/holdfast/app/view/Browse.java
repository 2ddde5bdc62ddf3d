package holdfast.app.view;

import java.nio.file.Path;
import java.util.Optional;
import org.lwjgl.PointerBuffer;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.util.nfd.NFDFilterItem;
import org.lwjgl.util.nfd.NativeFileDialog;

/** The system's own file dialog, where there is one; a path can always be typed instead. */
final class Browse {
  private static Boolean there;

  private Browse() {}

  static boolean available() {
    if (there == null) {
      try {
        there = NativeFileDialog.NFD_Init() == NativeFileDialog.NFD_OKAY;
      } catch (LinkageError | RuntimeException e) {
        // No dialog library on this system.
        there = false;
      }
    }
    return there;
  }

  static Optional<Path> open() {
    return open("Scenes", "json");
  }

  static Optional<Path> scan() {
    return open("Scans", "obj,ply,stl,glb");
  }

  private static Optional<Path> open(String what, String endings) {
    try (MemoryStack stack = MemoryStack.stackPush()) {
      PointerBuffer out = stack.mallocPointer(1);
      NFDFilterItem.Buffer filter = NFDFilterItem.malloc(1, stack);
      filter.get(0).name(stack.UTF8(what)).spec(stack.UTF8(endings));
      if (NativeFileDialog.NFD_OpenDialog(out, filter, (CharSequence) null) != NativeFileDialog.NFD_OKAY) return Optional.empty();
      Path p = Path.of(out.getStringUTF8(0));
      NativeFileDialog.NFD_FreePath(out.get(0));
      return Optional.of(p);
    }
  }
}
