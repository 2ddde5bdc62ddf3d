package holdfast.app.command;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plays a bump. */
@Command(description = {
  "",
  "Plays what a blow, a fish, a pushing arm, the removal of a rock or sand dug from under it does to the heap, until "
      + "everything rests. A picture of what could happen and how hard it lands, not a verdict: holdfast check judges. "
      + "Exit 1 when something falls or a pane is hit.",
  "",
  "  holdfast bump heap.json --rock prow --toward front --impulse 0.5",
  "  holdfast bump heap.json --rock crown --toward 225 --fish \"300 g\" --speed 3 --section fall.png",
  "  holdfast bump heap.json --rock crown --toward left --least",
  "  holdfast bump heap.json --weakest --least --section fall.png",
  "  holdfast bump heap.json --remove \"table slab\"",
  "  holdfast bump heap.json --undermine \"pointed foot\" --frames fall.json",
  ""})
final class BumpCommand extends Subcommand {
  @Parameters(paramLabel = "SCENE", description = "The scene file.")
  private Path scene;

  @Option(names = "--rock", paramLabel = "NAME", description = "The rock that is struck.")
  private String rock;

  @Option(names = "--toward", paramLabel = "SIDE|DEGREES",
      description = "Front, back, left or right; or degrees, 0 to the right and 90 to the back.")
  private String toward;

  @Option(names = "--weakest", description = "Take the rock and the direction that the check finds weakest.")
  private boolean weakest;

  @Option(names = "--impulse", paramLabel = "NS", description = "A blow, in newton seconds.")
  private Double impulse;

  @Option(names = "--fish", paramLabel = "MASS", description = "A fish of this mass runs into the rock and is stopped by it.")
  private String fish;

  @Option(names = "--arm", paramLabel = "N", description = "An arm or a magnet pushes with at most this force.")
  private Double arm;

  @Option(names = "--speed", paramLabel = "M_PER_S",
      description = "Speed of the fish (no default), or that the arm wants (default: 0.1).")
  private Double speed;

  @Option(names = "--stroke", paramLabel = "MM", description = "How far the arm pushes at most. Default: 100.")
  private Double strokeMm;

  @Option(names = "--least", description = "Search for the least blow that makes something fall.")
  private boolean least;

  @Option(names = "--remove", paramLabel = "NAME", description = "Take this rock out and see what falls.")
  private String remove;

  @Option(names = "--undermine", paramLabel = "NAME", description = "Dig the sand from under this rock and see what falls.")
  private String undermine;

  @Option(names = "--foot", paramLabel = "N",
      description = "With --undermine: only under this one of the rock's feet, counted from the left. Default: under all.")
  private Integer foot;

  @Option(names = "--height", paramLabel = "SHARE",
      description = "Height of the blow as a share of the rock's height. Default: the scene's push height.")
  private Double height;

  @Option(names = "--dry", description = "Play it dry, in air. Default: the tank filled.")
  private boolean dry;

  @Option(names = "--frames", paramLabel = "FILE.json",
      description = "Write the poses of all rocks over time, 60 a second: for each x, y, z in mm and the unit quaternion "
          + "w, x, y, z, as the scene's placements have them.")
  private Path frames;

  @Option(names = "--section", paramLabel = "FILE.png",
      description = "Play the blow in its vertical plane too, and draw the fall as a strip.")
  private Path section;

  @Option(names = "--replace", description = Outputs.REPLACE_DRAWN)
  private boolean replace;

  @Override
  protected ExitCode run() throws Exception {
    Map<String, Boolean> ways = new LinkedHashMap<>();
    ways.put("--impulse", impulse != null);
    ways.put("--fish", fish != null);
    ways.put("--arm", arm != null);
    ways.put("--least", least);
    ways.put("--remove", remove != null);
    ways.put("--undermine", undermine != null);
    List<String> given = ways.entrySet().stream().filter(Map.Entry::getValue).map(Map.Entry::getKey).toList();
    if (given.size() != 1) {
      throw new InputProblem("say what happens: one of --impulse, --fish, --arm, --least, --remove or --undermine"
          + (given.isEmpty() ? "." : "; given were " + String.join(" and ", given) + "."),
          "Such as: holdfast bump SCENE --rock NAME --toward front --impulse 0.5");
    }
    boolean struck = remove == null && undermine == null;
    if (weakest && (rock != null || toward != null || !struck)) {
      throw new InputProblem(
          "--weakest chooses the rock and the direction itself: leave out --rock, --toward, --remove and --undermine.");
    }
    if (!struck && (rock != null || toward != null)) {
      throw new InputProblem(given.get(0) + " names its own rock and has no direction: leave out --rock and --toward.");
    }
    if (struck && !weakest && (rock == null || toward == null)) {
      throw new InputProblem((rock == null ? "--rock" : "--toward") + " is missing: which rock is struck, and toward where?");
    }
    if (foot != null && undermine == null) throw new InputProblem("--foot goes with --undermine.");
    if (speed != null && fish == null && arm == null) throw new InputProblem("--speed goes with --fish or --arm.");
    if (strokeMm != null && arm == null) throw new InputProblem("--stroke goes with --arm.");
    if (height != null && !struck) throw new InputProblem("--height goes with a blow or an arm, not with " + given.get(0) + ".");
    if (fish != null && speed == null) throw new InputProblem("--speed is missing: how fast is the fish, in metres a second?");
    if (section != null && (!struck || arm != null)) {
      throw new InputProblem("--section goes with a blow: --impulse, --fish or --least.");
    }
    if (frames != null) Outputs.mayWrite("--frames", frames, Outputs.Kind.FRAMES, replace);
    if (section != null) Outputs.mayWrite("--section", section, Outputs.Kind.PICTURE, replace);
    OptionalDouble share = height == null ? OptionalDouble.empty()
        : OptionalDouble.of(within("--height", height, 0.05, 1, "of the rock's height"));
    BumpRun.Wish wish = new BumpRun.Wish(scene, rock, toward, weakest,
        optional(impulse == null ? null : within("--impulse", impulse, 1e-6, 1000, "N s")),
        optional(fish == null ? null : within("--fish", Measures.massKg("--fish", fish), 1e-4, 50, "kg")),
        optional(arm == null ? null : within("--arm", arm, 0.01, 10_000, "N")),
        optional(speed == null ? null : within("--speed", speed, 1e-3, 30, "m/s")),
        within("--stroke", strokeMm == null ? 100 : strokeMm, 1, 2000, "mm") * 1e-3, least, remove, undermine, foot, share, dry,
        frames, section);
    return new BumpRun(wish, format, units, quiet, console())
        .run(() -> progress(least ? "Searching the least blow" : "Playing the bump"));
  }

  private static OptionalDouble optional(Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private static double within(String what, double value, double lowest, double highest, String unit) {
    return Measures.within(what, value, lowest, highest, unit);
  }
}
