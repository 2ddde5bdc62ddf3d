package holdfast.app.command;

import holdfast.app.report.Json;
import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneWriter;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.io.IOException;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes the scene of an empty tank. */
@Command(description = {
  "",
  "Writes the scene of an empty tank, ready for rocks. Sizes are taken inside the glass unless you say --outside.",
  "",
  "  holdfast new --size \"90x45x45 cm\" -o tank.json",
  "  holdfast new --size \"36x18x16 in\" --outside --side-glass 8 --bottom-glass 10 -o tank.json",
  ""})
final class NewCommand extends Subcommand {
  @Option(names = "--size", required = true, paramLabel = "SIZE",
      description = "Length (left to right), width (front to back) and height, with their unit.")
  private String size;

  @Option(names = "--outside", description = "The size was measured outside the glass.")
  private boolean outside;

  @Option(names = "--side-glass", paramLabel = "MM", description = "Thickness of the side panes. Measure it.")
  private String sideGlass;

  @Option(names = "--bottom-glass", paramLabel = "MM", description = "Thickness of the bottom pane. Measure it.")
  private String bottomGlass;

  @Option(names = "--support", paramLabel = "edges|full|unknown",
      description = "What carries the bottom pane: its edges (a framed tank), a full deck with foam, or not known (the default).")
  private String support = "unknown";

  @Option(names = "--viewed-from", paramLabel = "SIDES", split = ",",
      description = "The sides people look through: front, right, back, left. Default: front.")
  private List<String> viewedFrom = List.of("front");

  @Option(names = "--name", paramLabel = "WORDS", description = "A title for the scene.")
  private String name = "new tank";

  @Option(names = {"-o", "--output"}, paramLabel = "FILE", description = "Where to write it; without it, to standard output.")
  private Path output;

  @Option(names = "--replace", description = "Write over a file that is already there.")
  private boolean replace;

  @Override
  protected ExitCode run() throws IOException {
    if (output != null) Inputs.mustNotBeThere(output, replace);
    List<Double> typed = Measures.sizeMm("--size", size);
    boolean assumed = sideGlass == null || bottomGlass == null;
    double usual = UsualGlass.thicknessMm(typed.get(0), typed.get(2));
    double side = sideGlass == null ? usual : inRange("--side-glass", Measures.lengthMm("--side-glass", sideGlass), 2, 100);
    double bottom = bottomGlass == null ? usual : inRange("--bottom-glass", Measures.lengthMm("--bottom-glass", bottomGlass), 2, 100);
    double length = inRange("--size, inside length", typed.get(0) - (outside ? 2 * side : 0), 50, 10_000);
    double width = inRange("--size, inside width", typed.get(1) - (outside ? 2 * side : 0), 50, 10_000);
    double height = inRange("--size, inside height", typed.get(2) - (outside ? bottom : 0), 50, 3000);
    Tank tank = new Tank(length, width, height, side, bottom, Choice.of("--support", support, Tank.BottomSupport.values(), Tank.BottomSupport::word), false, false, List.of(), sides(), List.of());
    // The trade fills to about 25 mm below the rim.
    double level = height - 25;
    Scene scene = new Scene(name, tank, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(level, 35, 25),
        List.of(), List.of(), List.of(), List.of(), List.of(), Settings.DEFAULT);
    if (output == null) {
      print(SceneWriter.write(scene));
    } else {
      SceneFiles.save(output, scene);
      if (format == Format.JSON) {
        print(Json.text(summary(tank, level, assumed)));
      } else if (!quiet) {
        print(told(tank, level));
      }
    }
    if (assumed) {
      console().say("the glass was not measured: " + units.brief(Quantity.LENGTH, usual)
          + " is assumed, usual for a tank of this length and height.",
          List.of("Measure yours and say --side-glass and --bottom-glass; the maker of the tank has the last word."));
    }
    return ExitCode.FINE;
  }

  private String told(Tank t, double level) {
    double litres = t.lengthMm() * t.widthMm() * level * 1e-6;
    return "Wrote " + output + ": " + units.briefNumber(Quantity.LENGTH, t.lengthMm()) + " × " + units.briefNumber(Quantity.LENGTH, t.widthMm()) + " × " + units.briefNumber(Quantity.LENGTH, t.heightMm()) + " "
        + units.sign(Quantity.LENGTH) + " inside, sides " + units.brief(Quantity.LENGTH, t.sideGlassMm()) + ", bottom " + units.brief(Quantity.LENGTH, t.bottomGlassMm())
        + ", water at " + units.brief(Quantity.LENGTH, level) + " (" + units.text(Quantity.VOLUME, litres, RoundingMode.HALF_EVEN) + " without rock and sand).\n"
        + "Next: describe your rocks (holdfast rock --help), place them, then: holdfast check " + output + "\n";
  }

  private Map<String, Object> summary(Tank t, double level, boolean assumed) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("format", "holdfast-new/1");
    m.put("file", output.toString());
    m.put("length_mm", t.lengthMm());
    m.put("width_mm", t.widthMm());
    m.put("height_mm", t.heightMm());
    m.put("side_glass_mm", t.sideGlassMm());
    m.put("bottom_glass_mm", t.bottomGlassMm());
    m.put("glass_assumed", assumed);
    m.put("water_level_mm", level);
    return m;
  }

  private List<Side> sides() {
    Set<Side> sides = new LinkedHashSet<>();
    for (String word : viewedFrom) {
      sides.add(Choice.of("--viewed-from", word, Side.values(), Side::word));
    }
    return Arrays.stream(Side.values()).filter(sides::contains).toList();
  }

  private static double inRange(String what, double mm, double least, double most) {
    if (mm >= least && mm <= most) return mm;
    throw new InputProblem(what + " must be from " + (int) least + " to " + (int) most + " mm, was "
        + Units.plain(mm) + " mm.");
  }
}
