package holdfast.app.command;

import holdfast.app.report.SettleText;
import holdfast.engine.motion.SceneBodies;
import holdfast.engine.motion.Settle;
import holdfast.engine.motion.SettleResult;
import holdfast.model.io.SceneFiles;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Brings a sketch to rest. */
@Command(description = {
  "",
  "Brings a rough sketch to rest: parts rocks that overlap, lets those down that hover, and closes every contact, moving "
      + "no rock more than that takes. Rocks that are bonded and touch move as one; locked rocks stay. Exit 1 when the heap "
      + "does not come to rest.",
  "",
  "  holdfast settle sketch.json -o settled.json",
  ""})
final class SettleCommand extends Subcommand {
  @Parameters(paramLabel = "SCENE", description = "The sketch.")
  private Path input;

  @Option(names = {"-o", "--output"}, paramLabel = "FILE",
      description = "Where to write the settled scene; without it nothing is written, only told.")
  private Path output;

  @Option(names = "--replace", description = "Write over a file that is already there.")
  private boolean replace;

  @Override
  protected ExitCode run() throws IOException {
    Scene scene = Inputs.scene(input);
    if (output != null) Inputs.mustNotBeThere(output, replace);
    Shapes shapes = Inputs.shapes(scene, input);
    SettleResult result = telling("Settling", () -> Settle.settle(SceneBodies.settleJob(scene, shapes.bodies().values())));
    if (result instanceof SettleResult.NotDone none) {
      console().say("cannot settle: " + none.reason() + ".", List.of());
      return ExitCode.OURS;
    }
    SettleResult.Settled settled = (SettleResult.Settled) result;
    if (output != null) SceneFiles.save(output, SceneBodies.placed(scene, settled));
    switch (format) {
      case JSON -> print(SettleText.json(settled, input.toString(), Optional.ofNullable(output).map(Path::toString)));
      case TEXT -> print(quiet ? SettleText.verdict(settled, units)
          : SettleText.of(settled, units) + (output == null ? "" : "Wrote " + output + ".\n"));
    }
    return SettleText.rests(settled) ? ExitCode.FINE : ExitCode.FAILS;
  }
}
