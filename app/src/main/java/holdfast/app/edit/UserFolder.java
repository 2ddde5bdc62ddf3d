package holdfast.app.edit;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where this system keeps a program's own files for one user. */
public final class UserFolder {
  private UserFolder() {}

  /** The folder of this user; it need not exist yet. */
  public static Path ofThisUser() {
    return of(System.getProperty("os.name", ""), Path.of(System.getProperty("user.home", ".")), System.getenv());
  }

  /** By the custom of each system: the application data folder, the library folder, or the XDG base directory for state. */
  static Path of(String system, Path home, Map<String, String> environment) {
    String s = system.toLowerCase(Locale.ROOT);
    String told = environment.getOrDefault("HOLDFAST_HOME", "");
    if (!told.isBlank()) return Path.of(told);
    if (s.contains("win")) {
      String data = environment.getOrDefault("APPDATA", "");
      return (data.isBlank() ? home.resolve("AppData").resolve("Roaming") : Path.of(data)).resolve("Holdfast");
    }
    if (s.contains("mac")) return home.resolve("Library").resolve("Application Support").resolve("Holdfast");
    String state = environment.getOrDefault("XDG_STATE_HOME", "");
    return (state.isBlank() ? home.resolve(".local").resolve("state") : Path.of(state)).resolve("holdfast");
  }
}
