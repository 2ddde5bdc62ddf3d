package holdfast.engine.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;

/** What the figures were taken on. */
final class Machine {
  private Machine() {}

  static String words() {
    return processor() + ", " + Runtime.getRuntime().availableProcessors() + " cores, " + System.getProperty("os.name") + ", "
        + System.getProperty("java.vm.name") + " " + System.getProperty("java.version");
  }

  private static String processor() {
    Path info = Path.of("/proc/cpuinfo");
    if (Files.isReadable(info)) {
      try (Stream<String> lines = Files.lines(info)) {
        Optional<String> model = lines.filter(l -> l.startsWith("model name")).map(l -> l.substring(l.indexOf(':') + 1).strip())
            .findFirst();
        if (model.isPresent()) return model.get();
      } catch (IOException e) {
        return System.getProperty("os.arch"); // only a name
      }
    }
    String windows = System.getenv("PROCESSOR_IDENTIFIER");
    return windows == null ? System.getProperty("os.arch") : windows;
  }
}
