package holdfast.app.command;

import holdfast.app.view.Viewport;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** The viewport. */
@Command(description = {
  "",
  "Opens a window on a scene: set rocks down, drag and turn them, see at once whether the heap stands and why not, bump it, "
      + "save the scene. Without a scene it offers common tanks and a worked example. F1 lists every key.",
  "",
  "  holdfast view",
  "  holdfast view heap.json",
  ""})
final class ViewCommand extends Subcommand {
  @Parameters(paramLabel = "SCENE", arity = "0..1", description = "The scene file to open.")
  private Path scene;

  @Override
  protected ExitCode run() {
    Optional<Path> file = Optional.ofNullable(scene);
    Optional<String> trouble = Viewport.open(file, file.map(Inputs::scene), units);
    if (trouble.isEmpty()) return ExitCode.FINE;
    console().say(trouble.get(), List.of("holdfast check and every other command work without a window;",
        "holdfast picture draws a scene without a display."));
    return ExitCode.OURS;
  }
}
