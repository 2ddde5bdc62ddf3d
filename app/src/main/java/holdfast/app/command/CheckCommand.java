package holdfast.app.command;

import holdfast.app.report.JsonReport;
import holdfast.app.report.TextReport;
import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckOptions.Pushes;
import holdfast.engine.check.CheckReport;
import holdfast.model.scene.Scene;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The main job: a scene in, findings out. */
@Command(description = {
  "",
  "Says whether the rocks of a scene stand, how hard a push each bears, which joints to fix, what is too close to the "
      + "glass, how the floor is loaded, and what to do about it. Exit 1 when anything fails or could not be decided.",
  "",
  "  holdfast check scenes/cube.json",
  "  holdfast check scenes/cube.json --units us",
  ""})
final class CheckCommand extends Subcommand {
  private static final int MOST_THREADS = 256;
  private static final int MOST_VARIATIONS = 100_000;

  @Parameters(paramLabel = "SCENE", description = "The scene file.")
  private Path file;

  @Option(names = "--threads", paramLabel = "N",
      description = "How many at once; the report is the same. Default: one a processor.")
  private Integer threads;

  @Option(names = "--vary", paramLabel = "N",
      description = "Also try so many variations of friction, mass, centre and contact. Default: none.")
  private int variations;

  @Option(names = "--seed", paramLabel = "N", description = "Seed of the variations. Default: 1.")
  private long seed = 1;

  @Option(names = "--exact",
      description = "Search push margins to a ten-thousandth. Default: to 2 %%, each rock's weakest to 0.4 %%.")
  private boolean exact;

  @Override
  protected ExitCode run() {
    CheckOptions options = options();
    Scene scene = Inputs.scene(file);
    CheckReport report;
    try (Progress p = progress("Checking " + file.getFileName())) {
      report = Check.run(scene, Inputs.shapes(scene, file), options, p.watching("Checking " + file.getFileName()));
    }
    print(switch (format) {
      case JSON -> JsonReport.of(report);
      case TEXT -> quiet ? TextReport.verdict(report, units, console().colour())
          : TextReport.of(report, units, console().colour());
    });
    return report.fails() ? ExitCode.FAILS : ExitCode.FINE;
  }

  private CheckOptions options() {
    int count = threads == null ? CheckOptions.DEFAULT.threads() : threads;
    if (count < 1 || count > MOST_THREADS) {
      throw new InputProblem("--threads must be from 1 to " + MOST_THREADS + ", was " + count + ".");
    }
    if (variations < 0 || variations > MOST_VARIATIONS) {
      throw new InputProblem("--vary must be from 0 to " + MOST_VARIATIONS + ", was " + variations + ".");
    }
    return new CheckOptions(count, format == Format.JSON ? Pushes.ROSES : Pushes.WEAKEST, variations, seed, exact);
  }
}
