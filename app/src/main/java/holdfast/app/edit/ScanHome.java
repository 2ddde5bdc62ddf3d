package holdfast.app.edit;

import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * Scans lie in the folder of the scene's file or below it, and a scene names them from there, so that both can be moved
 * together. A scan from elsewhere is copied; nothing is ever written over.
 */
public final class ScanHome {
  private static final int MOST_NAMES = 1000;

  private ScanHome() {}

  /** The name of a scan as the scene in {@code folder} has it; it is copied there first when it lies elsewhere. */
  public static String nameOf(Path scan, Path folder) throws IOException {
    Path home = folder.toAbsolutePath().normalize();
    Path file = home.resolve(scan).normalize();
    if (file.startsWith(home)) return slashes(home.relativize(file));
    String plain = file.getFileName().toString().replaceAll("[:\\\\]", "-");
    for (int n = 1; n < MOST_NAMES; n++) {
      Path to = home.resolve(n == 1 ? plain : numbered(plain, n));
      if (!Files.exists(to)) copy(file, to);
      if (Files.mismatch(file, to) < 0) return slashes(home.relativize(to));
    }
    throw new IOException("there are too many scans named '" + plain + "' in " + home);
  }

  /** Takes the scans of a scene along to another folder, before its file is saved there. */
  public static void carry(Scene scene, Path from, Path to) throws IOException {
    Path home = to.toAbsolutePath().normalize();
    Path old = from.toAbsolutePath().normalize();
    if (home.equals(old)) return;
    for (Rock r : scene.rocks()) {
      if (!(r.form() instanceof Rock.Mesh m)) continue;
      Path there = home.resolve(m.file());
      Path here = old.resolve(m.file());
      if (!Files.exists(there)) {
        if (there.getParent() != null) Files.createDirectories(there.getParent());
        copy(here, there);
      } else if (Files.mismatch(here, there) >= 0) {
        throw new IOException("there is another scan named '" + m.file() + "' in " + home);
      }
    }
  }

  /** A whole file or none, whatever happens meanwhile. */
  private static void copy(Path from, Path to) throws IOException {
    Path half = to.resolveSibling("." + to.getFileName() + ".part");
    try {
      Files.copy(from, half, StandardCopyOption.REPLACE_EXISTING);
      Files.move(half, to, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(half);
    }
  }

  private static String numbered(String name, int n) {
    int dot = name.lastIndexOf('.');
    return dot < 0 ? name + " " + n : name.substring(0, dot) + " " + n + name.substring(dot);
  }

  private static String slashes(Path p) {
    StringBuilder out = new StringBuilder();
    for (Path part : p) out.append(out.isEmpty() ? "" : "/").append(part);
    return out.toString();
  }
}
