package holdfast.app.command;

import holdfast.app.report.Json;
import holdfast.app.view.PanePicture;
import holdfast.app.view.PictureMaker;
import holdfast.app.view.Pngs;
import holdfast.app.view.ScenePictures;
import holdfast.app.view.draw.Camera;
import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.pane.PaneReport;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A picture of a scene, drawn without a display. */
@Command(description = {
  "",
  "Draws the tank and its rocks as a PNG. No display is needed; OpenGL 3.3 is, in software if need be.",
  "From the front, the left and above, lengths can be compared and a scale is drawn.",
  "--of pane draws the stress in the bottom pane in plan instead, without OpenGL.",
  "",
  "  holdfast picture heap.json -o heap.png",
  "  holdfast picture heap.json -o plan.png --view top --names --size 1600x1000",
  "  holdfast picture heap.json --of pane -o pane.png",
  ""})
final class PictureCommand extends Subcommand {
  private static final Pattern SIZE = Pattern.compile("(\\d{1,5})\\s*[x×]\\s*(\\d{1,5})");
  private static final int LEAST = 160;
  private static final int MOST = 8192;

  @Parameters(paramLabel = "SCENE", description = "The scene file.")
  private Path scene;

  @Option(names = {"-o", "--output"}, required = true, paramLabel = "FILE.png", description = "Where to write the picture.")
  private Path output;

  @Option(names = "--replace", description = Outputs.REPLACE_DRAWN)
  private boolean replace;

  @Option(names = "--of", paramLabel = "tank|pane", description = "Of what. Default: tank.")
  private String of = "tank";

  @Option(names = "--view", paramLabel = "front|left|top|corner", description = "From where. Default: corner.")
  private String view;

  @Option(names = "--size", paramLabel = "WxH", description = "Width and height in pixels, each 160 to 8192. Default: 1280x800.")
  private String size = "1280x800";

  @Option(names = "--names", description = "Write the rocks' names on them, of those that are seen.")
  private boolean names;

  @Override
  protected ExitCode run() throws IOException {
    PictureMaker.Wish wish = wish();
    Outputs.mayWrite("-o", output, Outputs.Kind.PICTURE, replace);
    Scene s = Inputs.scene(scene);
    if (ofPane()) return pane(s, wish);
    Path folder = scene.toAbsolutePath().getParent();
    ScenePictures.Result result;
    try (Progress p = progress("starting the graphics")) {
      p.now("drawing " + scene);
      result = ScenePictures.draw(s, folder, List.of(wish));
    }
    if (result instanceof ScenePictures.Result.NoGraphics none) {
      console().say(none.reason(), List.of("Everything but pictures and the viewport works without it, holdfast check for one."));
      return ExitCode.OURS;
    }
    ScenePictures.Result.Drawn drawn = (ScenePictures.Result.Drawn) result;
    if (!drawn.problems().isEmpty()) {
      throw new InputProblem(scene + ": not every rock can be shaped.", drawn.problems());
    }
    Pngs.save(output, drawn.pictures().get(0));
    if (format == Format.JSON) print(Json.text(told(wish)));
    else if (!quiet) print("Wrote " + output + ": " + wish.width() + " × " + wish.height() + " pixels, "
        + wish.view().word() + ".\n");
    return ExitCode.FINE;
  }

  private boolean ofPane() {
    return Choice.of("--of", of, Of.values(), Of::word) == Of.PANE;
  }

  /** What is drawn. */
  private enum Of {
    TANK, PANE;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** The stress map of the bottom pane: the check's own loads, a finer net. */
  private ExitCode pane(Scene s, PictureMaker.Wish wish) throws IOException {
    Shapes shapes = Inputs.shapes(s, scene);
    Optional<PaneReport> report;
    try (Progress p = progress("weighing the feet")) {
      CheckOptions usual = CheckOptions.DEFAULT;
      report = Check.run(s, shapes, new CheckOptions(usual.threads(), CheckOptions.Pushes.NONE, 0, usual.seed())).pane();
    }
    if (report.isEmpty()) {
      console().say("The forces on the feet could not be decided, so the bottom pane cannot be drawn.",
          List.of("holdfast check " + scene + " says why."));
      return ExitCode.FAILS;
    }
    Pngs.save(output, PanePicture.draw(s, report.get(), wish.width(), wish.height(), units));
    if (format == Format.JSON) print(Json.text(told(wish)));
    else if (!quiet) print("Wrote " + output + ": " + wish.width() + " × " + wish.height() + " pixels, bottom pane.\n");
    return ExitCode.FINE;
  }

  private PictureMaker.Wish wish() {
    Camera.View from = view == null ? Camera.View.CORNER : Choice.of("--view", view, Camera.View.values(), Camera.View::word);
    if (ofPane() && (view != null || names)) {
      throw new InputProblem(
          (view != null ? "--view" : "--names") + " goes with a picture of the tank: the pane is drawn in plan.");
    }
    Matcher m = SIZE.matcher(size.strip());
    if (!m.matches()) {
      throw new InputProblem("--size must be two numbers with an x between them, such as 1280x800, was '" + size + "'.");
    }
    int width = Integer.parseInt(m.group(1));
    int height = Integer.parseInt(m.group(2));
    if (Math.min(width, height) < LEAST || Math.max(width, height) > MOST) {
      throw new InputProblem("--size: width and height must be from " + LEAST + " to " + MOST + ", was '" + size + "'.");
    }
    return new PictureMaker.Wish(from, width, height, units, names);
  }

  private Map<String, Object> told(PictureMaker.Wish wish) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("format", "holdfast-picture/1");
    m.put("file", output.toString());
    m.put("of", ofPane() ? "pane" : "tank");
    m.put("view", ofPane() ? "plan" : wish.view().word());
    m.put("width_px", wish.width());
    m.put("height_px", wish.height());
    return m;
  }
}
