package holdfast.app.command;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** One run of the command in this process, as a shell would see it. */
public record Run(int exit, String out, String err) {

  /** Runs {@code holdfast} with these arguments, nothing being a terminal. */
  public static Run holdfast(String... args) {
    return holdfast(Map.of(), args);
  }

  static Run holdfast(Map<String, String> environment, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console = new Console(out, err, false, false, environment);
    int exit = console.finish(new Launcher(console).run(args));
    return new Run(exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
