package holdfast.app.command;

import holdfast.app.report.Units;
import holdfast.app.report.sheet.Sheet;
import holdfast.app.report.sheet.SheetContent;
import holdfast.app.report.sheet.SheetJson;
import holdfast.engine.bonding.JointDemands;
import holdfast.engine.build.StageJudge;
import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.io.SceneFiles;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The day's work on paper. */
@Command(description = {
  "",
  "Writes the build sheet of a scene as a PDF: plan and elevations, joints with what they are asked for, batches of cement, "
      + "the order of building and of carrying in as pictures, what to buy, the days around it, cautions, and the footprint at "
      + "full size to lay in the tank. The scene is checked on the way and the verdict stands on page 1. With --format json the "
      + "same content goes to standard output. A rock whose name the sheet's font cannot write is called by its number in the "
      + "scene, which page 1 says.",
  "",
  "  holdfast sheet heap.json -o heap.pdf",
  "  holdfast sheet heap.json -o heap.pdf --paper letter --units us",
  "  holdfast sheet heap.json --format json",
  ""})
final class SheetCommand extends Subcommand {
  @Parameters(paramLabel = "SCENE", description = "The scene file.")
  private Path scene;

  @Option(names = {"-o", "--output"}, paramLabel = "FILE.pdf",
      description = "Where to write the sheet; may be left out with --format json.")
  private Path output;

  @Option(names = "--replace", description = Outputs.REPLACE_DRAWN)
  private boolean replace;

  @Option(names = "--paper", paramLabel = "a4|letter", description = "Default: a4, or letter with --units us.")
  private String paper;

  @Option(names = "--no-footprint", description = "Without the pages at full size.")
  private boolean noFootprint;

  @Override
  protected ExitCode run() throws IOException {
    Sheet.Paper size = paper();
    if (output == null && format != Format.JSON) throw new InputProblem("name the file to write with -o FILE.pdf.");
    if (output != null) Outputs.mayWrite("-o", output, Outputs.Kind.SHEET, replace);
    Scene s = Inputs.scene(scene);
    Shapes shapes = Inputs.shapes(s, scene);
    SheetContent content;
    try (Progress p = progress("checking " + scene)) {
      CheckReport check = Check.run(s, shapes, CheckOptions.DEFAULT, p.watching("checking " + scene));
      p.now("finding an order of building");
      content = SheetContent.of(s, shapes, Optional.of(check), new StageJudge(s, shapes.placed()),
          (plan, pieces) -> {
            p.now("working out what the joints are asked for");
            return JointDemands.of(SceneHeap.of(s, shapes.placed()), pieces, CheckOptions.DEFAULT.threads());
          });
      p.now("drawing the sheet");
      if (output != null) SceneFiles.saveBytes(output, Sheet.pdf(content, size, units, !noFootprint));
    }
    if (output != null && !quiet) Sheet.calledOtherwise(content).ifPresent(note -> console().say(note, List.of()));
    if (format == Format.JSON) print(SheetJson.of(content));
    else if (!quiet) print("Wrote " + output + ". " + units.prose(content.check().orElseThrow().headline()) + "\n");
    return content.check().orElseThrow().fails() ? ExitCode.FAILS : ExitCode.FINE;
  }

  private Sheet.Paper paper() {
    if (paper == null) return units == Units.US ? Sheet.Paper.LETTER : Sheet.Paper.A4;
    return switch (paper.toLowerCase(Locale.ROOT)) {
      case "a4" -> Sheet.Paper.A4;
      case "letter" -> Sheet.Paper.LETTER;
      default -> throw new InputProblem("--paper must be a4 or letter, was '" + paper + "'.");
    };
  }
}
