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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
  "--drop lets one rock down at a spot instead, straight down to its first touch and then to rest; --steadiest tries it on its "
      + "broad faces, turned round and at spots beside, and takes the rest that is hardest to tip. Exit 1 when it shifts others.",
  "",
  "  holdfast settle sketch.json -o settled.json",
  "  holdfast settle heap.json --drop crown --at 420,210 --turned 30 -o next.json",
  "  holdfast settle heap.json --drop crown --at 420,210 --steadiest -o next.json",
  ""})
final class SettleCommand extends Subcommand {
  private static final Pattern SPOT = Pattern.compile("(-?\\d+(?:\\.\\d+)?)\\s*,\\s*(-?\\d+(?:\\.\\d+)?)");

  @Parameters(paramLabel = "SCENE", description = "The sketch.")
  private Path input;

  @Option(names = {"-o", "--output"}, paramLabel = "FILE.json",
      description = "Where to write the settled scene; without it nothing is written, only told.")
  private Path output;

  @Option(names = "--replace", description = Outputs.REPLACE_SCENE)
  private boolean replace;

  @Option(names = "--drop", paramLabel = "NAME", description = "Let this rock down, placed already or not yet.")
  private String drop;

  @Option(names = "--at", paramLabel = "X,Y",
      description = "With --drop: where its centre of mass is to be, mm from the inner front-left corner.")
  private String at;

  @Option(names = "--turned", paramLabel = "DEGREES",
      description = "With --drop: turned round by this first, leftwise as seen from above.")
  private Double turned;

  @Option(names = "--steadiest", description = "With --drop: try several ways to lay it and take the steadiest.")
  private boolean steadiest;

  @Override
  protected ExitCode run() throws IOException {
    if (drop == null && (at != null || turned != null || steadiest)) {
      throw new InputProblem((at != null ? "--at" : turned != null ? "--turned" : "--steadiest") + " goes with --drop.");
    }
    if (drop != null) return drop();
    Scene scene = Inputs.scene(input);
    if (output != null) Outputs.mayWrite("-o", output, Outputs.Kind.SCENE, replace);
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

  private ExitCode drop() throws IOException {
    if (at == null) throw new InputProblem("--at is missing: where is " + drop + " let down?", "Such as: --at 420,210");
    if (steadiest && turned != null) throw new InputProblem("--steadiest turns it itself: leave out --turned.");
    Matcher m = SPOT.matcher(at.strip());
    if (!m.matches()) {
      throw new InputProblem("--at must be two lengths in mm with a comma between them, such as 420,210, was '" + at + "'.");
    }
    if (output != null) Outputs.mayWrite("-o", output, Outputs.Kind.SCENE, replace);
    if (turned != null) Measures.within("--turned", turned, -360, 360, "degrees");
    DropRun.Wish wish = new DropRun.Wish(input, drop, Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2)),
        turned == null ? 0 : turned, steadiest, output);
    return new DropRun(wish, format, units, quiet, console()).run(() -> progress(steadiest ? "Trying rests" : "Letting it down"));
  }
}
