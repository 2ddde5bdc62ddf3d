package holdfast.app.command;

import holdfast.app.report.Json;
import holdfast.app.report.Quantity;
import holdfast.app.report.Table;
import holdfast.app.report.Units;
import holdfast.model.io.NewScene;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneNames;
import holdfast.model.io.SceneWriter;
import holdfast.model.io.TankSize;
import holdfast.model.io.TankSizes;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.scene.UsualGlass;
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
import picocli.CommandLine.Parameters;

/** Writes the scene of an empty tank. */
@Command(description = {
  "",
  "Writes the scene of an empty tank, ready for rocks. Sizes are outside the glass, as tanks are sold, unless you say "
      + "--inside.",
  "",
  "  holdfast new --size \"90x45x45 cm\" -o tank.json",
  "  holdfast new --size \"884x434x440 mm\" --inside --side-glass 8 --bottom-glass 10 -o tank.json",
  "  holdfast new --sizes",
  ""})
final class NewCommand extends Subcommand {
  @Option(names = "--size", paramLabel = "SIZE",
      description = "Length (left to right), width (front to back) and height, with their unit.")
  private String size;

  @Parameters(arity = "0..*", paramLabel = "SIZE", description = "The size may also stand by itself: 90x45x45 cm.")
  private List<String> words = List.of();

  @Option(names = "--inside", description = "The size was measured inside the glass.")
  private boolean inside;

  @Option(names = "--sizes", description = "List common sizes, with what such a tank measures inside.")
  private boolean sizes;

  @Option(names = "--side-glass", paramLabel = "MM", description = "Thickness of the side panes. Measure it.")
  private String sideGlass;

  @Option(names = "--bottom-glass", paramLabel = "MM", description = "Thickness of the bottom pane. Measure it.")
  private String bottomGlass;

  @Option(names = "--support", paramLabel = "edges|full|unknown",
      description = "What carries the bottom pane: its edges (a framed tank), a full deck with foam, or not known (the default, "
          + "unless the size is one of those that come with a frame).")
  private String support;

  @Option(names = "--viewed-from", paramLabel = "SIDES", split = ",",
      description = "The sides people look through: front, right, back, left. Default: front.")
  private List<String> viewedFrom = List.of("front");

  @Option(names = "--name", paramLabel = "WORDS", description = "A title for the scene.")
  private String name = "new tank";

  @Option(names = {"-o", "--output"}, paramLabel = "FILE.json",
      description = "Where to write it; without it, to standard output.")
  private Path output;

  @Option(names = "--replace", description = Outputs.REPLACE_SCENE)
  private boolean replace;

  @Override
  protected ExitCode run() throws IOException {
    if (sizes) {
      print(format == Format.JSON ? sizesJson() : sizesText());
      return ExitCode.FINE;
    }
    if (size != null && !words.isEmpty()) {
      throw new InputProblem("two sizes: '" + size + "' and '" + String.join(" ", words) + "'.", "Leave one of them out.");
    }
    if (size == null && !words.isEmpty()) size = String.join(" ", words);
    if (size == null) {
      throw new InputProblem("the size of the tank is missing.", "Such as 90x45x45 cm; --sizes lists common ones.");
    }
    if (!SceneNames.isTitle(name)) throw Inputs.noName("--name", name, SceneNames.longestTitle());
    if (output != null) Outputs.mayWrite("-o", output, Outputs.Kind.SCENE, replace);
    List<Double> typed = Measures.sizeMm("--size", size);
    boolean assumed = sideGlass == null || bottomGlass == null;
    double usual = inside ? UsualGlass.forInsideMm(typed.get(0), typed.get(1), typed.get(2))
        : UsualGlass.forOutsideMm(typed.get(0), typed.get(1), typed.get(2));
    double side = glass("--side-glass", sideGlass, usual);
    double bottom = glass("--bottom-glass", bottomGlass, usual);
    double length = inRange("--size, inside length", typed.get(0) - (inside ? 0 : 2 * side), 50, 10_000);
    double width = inRange("--size, inside width", typed.get(1) - (inside ? 0 : 2 * side), 50, 10_000);
    double height = inRange("--size, inside height", typed.get(2) - (inside ? 0 : bottom), 50, 3000);
    Tank tank = new Tank(length, width, height, side, bottom, support(), false, false, List.of(), sides(), List.of());
    Scene scene = NewScene.of(name, tank);
    double level = scene.water().levelMm();
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
          + " is assumed, usual for a tank of this size.",
          List.of("Measure yours and say --side-glass and --bottom-glass; the maker of the tank has the last word."));
    }
    return ExitCode.FINE;
  }

  private String told(Tank t, double level) {
    double litres = t.lengthMm() * t.widthMm() * level * 1e-6;
    return "Wrote " + output + ": " + box(t.lengthMm(), t.widthMm(), t.heightMm()) + " " + units.sign(Quantity.LENGTH)
        + " inside, sides " + units.brief(Quantity.LENGTH, t.sideGlassMm()) + ", bottom "
        + units.brief(Quantity.LENGTH, t.bottomGlassMm()) + ", water at " + units.brief(Quantity.LENGTH, level) + " ("
        + units.text(Quantity.VOLUME, litres, RoundingMode.HALF_EVEN) + " without rock and sand).\n"
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

  private String box(double lengthMm, double widthMm, double heightMm) {
    return units.briefNumber(Quantity.LENGTH, lengthMm) + " × " + units.briefNumber(Quantity.LENGTH, widthMm) + " × "
        + units.briefNumber(Quantity.LENGTH, heightMm);
  }

  private static double glass(String option, String typed, double usualMm) {
    return typed == null ? usualMm : inRange(option, Measures.lengthMm(option, typed), 2, 100);
  }

  private Tank.BottomSupport support() {
    if (support != null) return Choice.of("--support", support, Tank.BottomSupport.values(), Tank.BottomSupport::word);
    return inside ? Tank.BottomSupport.UNKNOWN
        : TankSizes.named(size).map(TankSize::support).orElse(Tank.BottomSupport.UNKNOWN);
  }

  private String sizesText() {
    Table t = new Table().words("size").figures("inside " + units.sign(Quantity.LENGTH)).figures("glass")
        .figures("water " + units.sign(Quantity.VOLUME)).words("bottom carried by");
    for (TankSize s : TankSizes.all()) {
      t.row(s.name(), box(s.lengthMm(), s.widthMm(), s.heightMm()), units.briefNumber(Quantity.LENGTH, s.glassMm()),
          units.number(Quantity.VOLUME, s.litres(), RoundingMode.HALF_EVEN), s.support().word());
    }
    return t.render(100) + "  Glass as such a tank usually has it. Measure yours.\n";
  }

  private static String sizesJson() {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", "holdfast-sizes/1");
    root.put("sizes", TankSizes.all().stream().map(s -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("name", s.name());
      m.put("inside_mm", List.of(s.lengthMm(), s.widthMm(), s.heightMm()));
      m.put("glass_mm", s.glassMm());
      m.put("water_l", s.litres());
      m.put("support", s.support().word());
      return m;
    }).toList());
    return Json.text(root);
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
