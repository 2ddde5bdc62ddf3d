package holdfast.app.command;

import holdfast.app.report.BumpText;
import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.app.view.FallPicture;
import holdfast.app.view.Pngs;
import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport;
import holdfast.engine.motion.Bump;
import holdfast.engine.motion.Disturbance;
import holdfast.engine.motion.LeastBlow;
import holdfast.engine.motion.MotionBody;
import holdfast.engine.motion.PlayJob;
import holdfast.engine.motion.PlayResult;
import holdfast.engine.motion.PushPoint;
import holdfast.engine.motion.SceneBodies;
import holdfast.engine.motion.SectionBump;
import holdfast.engine.motion.SectionResult;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneFiles;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Side;
import holdfast.model.shape.Shapes;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;

/** One bump as it was asked for: read, played, told. Apart from {@link BumpCommand} so that help loads no engine. */
final class BumpRun {
  /** Metres a second that an arm wants unless told otherwise. */
  private static final double ARM_M_S = 0.1;

  /** Seconds that an arm pushes at most. */
  private static final double ARM_S = 2;

  /** How close the search brackets the least blow. */
  private static final double LEAST_SHARE = 0.02;

  private Wish wish;
  private final Format format;
  private final Units units;
  private final boolean quiet;
  private final Console console;

  /** What was asked for; names, {@code foot}, {@code frames} and {@code section} may be null. */
  record Wish(
      Path scene, String rock, String toward, boolean weakest, OptionalDouble impulseNs, OptionalDouble fishKg,
      OptionalDouble armN,
      OptionalDouble speedMS, double strokeM, boolean least, String remove, String undermine, Integer foot,
      OptionalDouble heightShare, boolean dry, Path frames, Path section) {

    /** The rock that it acts on. */
    String about() {
      return remove != null ? remove : undermine != null ? undermine : rock;
    }

    boolean strikes() {
      return remove == null && undermine == null;
    }

    /** The same with the rock and the direction chosen. */
    Wish struck(String name, double degrees) {
      return new Wish(scene, name, Units.plain(degrees), false, impulseNs, fishKg, armN, speedMS, strokeM, least, remove,
          undermine, foot, heightShare, dry, frames, section);
    }
  }

  BumpRun(Wish wish, Format format, Units units, boolean quiet, Console console) {
    this.wish = wish;
    this.format = format;
    this.units = units;
    this.quiet = quiet;
    this.console = console;
  }

  ExitCode run(Supplier<Progress> progress) throws IOException {
    Scene scene = Inputs.scene(wish.scene);
    Shapes shapes = Inputs.shapes(scene, wish.scene);
    if (wish.weakest) wish = weakest(scene, shapes, progress);
    PlayJob job = SceneBodies.playJob(scene, shapes.bodies().values(), !wish.dry)
        .withFrames(wish.frames != null ? PlayJob.FRAMES_PER_S : 0);
    MotionBody struck = body(job, wish.about());
    Vec3 toward = wish.strikes() ? direction(wish.toward) : Vec3.ZERO;
    double share = wish.heightShare.orElse(scene.settings().get(Setting.PUSH_HEIGHT));
    Vec3 at = PushPoint.of(struck, share);
    Optional<LeastBlow.Found.Between> least = Optional.empty();
    PlayResult result;
    Disturbance disturbance;
    try (Progress p = progress.get()) {
      if (wish.least) {
        LeastBlow.Found found = LeastBlow.find(job, struck.name(), at, toward, LEAST_SHARE);
        if (found instanceof LeastBlow.Found.NotPlayed n) return cannot(n.reason());
        if (found instanceof LeastBlow.Found.None none) {
          if (format == Format.JSON) {
            Disturbance most = new Disturbance.Blow(struck.name(), at, toward.times(none.mostNs()));
            console.out().print(BumpText.jsonNoneFalls(told(most, share), none.mostNs()));
            return ExitCode.FINE;
          }
          console.out().print("Nothing falls up to " + units.text(Quantity.IMPULSE, none.mostNs(), RoundingMode.DOWN)
              + " on " + struck.name() + ".\n");
          return ExitCode.FINE;
        }
        least = Optional.of((LeastBlow.Found.Between) found);
        disturbance = new Disturbance.Blow(struck.name(), at, toward.times(least.get().fallsNs()));
        result = least.get().fall();
      } else {
        disturbance = wish.undermine != null ? undermining(scene, shapes) : disturbance(struck.name(), at, toward);
        result = Bump.play(job, disturbance);
      }
    }
    if (result instanceof PlayResult.NotPlayed n) return cannot(n.reason());
    PlayResult.Played played = (PlayResult.Played) result;
    if (wish.frames != null) SceneFiles.saveText(wish.frames, BumpText.frames(played, wish.scene.toString()));
    String sectionLine = wish.section == null ? "" : section(job, (Disturbance.Blow) disturbance);
    if (format == Format.JSON) {
      console.out().print(BumpText.json(played, told(disturbance, share), scene.settings(), least));
    } else if (quiet) {
      console.out().print(BumpText.verdict(played, units));
    } else {
      console.out().print(BumpText.of(played, what(disturbance, share), scene.settings(), least, units) + sectionLine
          + (wish.frames == null ? "" : "Wrote " + wish.frames + ": " + played.frames().size() + " frames.\n"));
    }
    return played.anyFell() || !played.hits().isEmpty() ? ExitCode.FAILS : ExitCode.FINE;
  }

  /** The rock and the direction with the least push margin of all; which comes first where several share it. */
  private Wish weakest(Scene scene, Shapes shapes, Supplier<Progress> progress) {
    CheckReport report;
    try (Progress p = progress.get()) {
      p.now("Looking for the weakest push");
      report = Check.run(scene, shapes, CheckOptions.DEFAULT);
    }
    CheckReport.RockLine least = null;
    for (CheckReport.RockLine line : report.rocks()) {
      if (line.weakest().isEmpty()) continue;
      if (least == null || line.weakest().get().marginN() < least.weakest().orElseThrow().marginN()) least = line;
    }
    if (least == null) throw new InputProblem("no rock of this scene can be pushed: none is placed.");
    return wish.struck(least.name(), least.weakest().orElseThrow().degrees());
  }

  private Disturbance undermining(Scene scene, Shapes shapes) {
    List<List<Vec3>> feet = SceneBodies.sandFeet(scene, shapes.bodies().values(), wish.undermine);
    if (feet.isEmpty()) {
      throw new InputProblem("no foot of '" + wish.undermine + "' stands on sand: there is nothing to dig from under it.",
          "It bears on the floor itself or on other rocks.");
    }
    if (wish.foot == null) return new Disturbance.Undermining(wish.undermine, feet);
    if (wish.foot < 1 || wish.foot > feet.size()) {
      throw new InputProblem("--foot must be " + (feet.size() == 1 ? "1: '" + wish.undermine + "' has one foot on sand"
          : "from 1 to " + feet.size() + ", the feet of '" + wish.undermine + "' on sand") + ", was " + wish.foot + ".");
    }
    return new Disturbance.Undermining(wish.undermine, List.of(feet.get(wish.foot - 1)));
  }

  private ExitCode cannot(String reason) {
    console.say("cannot play it: " + reason + ".", List.of());
    return ExitCode.OURS;
  }

  private Disturbance disturbance(String rock, Vec3 at, Vec3 toward) {
    if (wish.remove != null) return new Disturbance.Removal(rock);
    if (wish.impulseNs.isPresent()) return new Disturbance.Blow(rock, at, toward.times(wish.impulseNs.getAsDouble()));
    if (wish.fishKg.isPresent()) return Disturbance.fish(rock, at, toward, wish.fishKg.getAsDouble(), wish.speedMS.orElseThrow());
    return new Disturbance.Arm(rock, at, toward, wish.speedMS.orElse(ARM_M_S), wish.armN.orElseThrow(), wish.strokeM, ARM_S);
  }

  private static MotionBody body(PlayJob job, String name) {
    List<String> names = job.bodies().stream().map(b -> b.name()).toList();
    if (names.isEmpty()) throw new InputProblem("no rock is placed in this scene.");
    if (!names.contains(name)) {
      throw new InputProblem("there is no placed rock '" + name + "'.",
          Nearest.to(name, names).map(n -> "Did you mean '" + n + "'?").orElse("Placed are: " + String.join(", ", names) + "."));
    }
    return job.bodies().get(names.indexOf(name)).body();
  }

  private static Vec3 direction(String word) {
    String typed = word.strip().toLowerCase(Locale.ROOT);
    Optional<Side> side = Arrays.stream(Side.values()).filter(s -> s.word().equals(typed)).findFirst();
    if (side.isPresent()) return side.get().outward();
    try {
      double degrees = Double.parseDouble(word.strip());
      if (degrees >= -360 && degrees <= 360) return Vec3.heading(degrees);
    } catch (NumberFormatException e) {
      // Told below.
    }
    throw new InputProblem("--toward must be front, back, left, right or degrees from -360 to 360, was '" + word + "'.");
  }

  // -- the section --------------------------------------------------------------------------------------------------

  private String section(PlayJob job, Disturbance.Blow blow) throws IOException {
    SectionResult result = SectionBump.play(job.withFrames(PlayJob.FRAMES_PER_S), blow);
    if (result instanceof SectionResult.NotPlayed n) return "No section: " + n.reason() + ".\n";
    SectionResult.Played played = (SectionResult.Played) result;
    String title = "Section through " + blow.rock() + ": "
        + units.text(Quantity.IMPULSE, blow.impulseNs().norm(), RoundingMode.HALF_EVEN) + " toward " + towardWords()
        + (wish.dry ? ", dry" : ", tank filled");
    BufferedImage strip = FallPicture.draw(played, blow.rock(), 0, blow.at().z(), title, units);
    Pngs.save(wish.section, strip);
    String end = played.anyFell() ? "something falls" : "nothing falls";
    int broken = played.broken().size();
    if (broken > 0) end += ", and " + (broken == 1 ? "a bond breaks" : broken + " bonds break");
    return "Wrote " + wish.section + ": in this section " + end + ".\n" + (played.representative()
        ? "  The heap is a prism across it, so the section shows the heap.\n"
        : "  It is one slice of the heap and no more:\n  - " + String.join("\n  - ", played.doubts()) + "\n");
  }

  // -- words --------------------------------------------------------------------------------------------------------

  private String towardWords() {
    String w = wish.toward.strip().toLowerCase(Locale.ROOT);
    return Character.isDigit(w.charAt(0)) || w.startsWith("-") ? w + "°" : "the " + w;
  }

  private String what(Disturbance d, double share) {
    String state = wish.dry ? " (dry)" : " (tank filled)";
    if (d instanceof Disturbance.Removal r) return r.rock() + " is taken out" + state + ".";
    if (d instanceof Disturbance.Undermining u) {
      return "The sand is dug from under " + (wish.foot == null ? "" : "foot " + wish.foot + " of ") + u.rock() + state + ".";
    }
    String where = " toward " + towardWords() + ", at " + Units.plain(share) + " of its height" + state + ".";
    if (d instanceof Disturbance.Arm a) {
      return a.rock() + " is pushed with up to " + units.text(Quantity.FORCE, a.forceN(), RoundingMode.HALF_EVEN) + where;
    }
    Disturbance.Blow b = (Disturbance.Blow) d;
    String blow = units.text(Quantity.IMPULSE, b.impulseNs().norm(), wish.least ? RoundingMode.DOWN : RoundingMode.HALF_EVEN);
    String by = wish.fishKg.isPresent()
        ? " by a fish of " + units.text(Quantity.MASS, wish.fishKg.getAsDouble(), RoundingMode.HALF_EVEN) + " at "
            + Units.plain(wish.speedMS.orElseThrow()) + " m/s, " + blow + ","
        : " with " + blow;
    return b.rock() + " is struck" + by + where;
  }

  private Map<String, Object> told(Disturbance d, double share) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("scene", wish.scene.toString());
    m.put("state", wish.dry ? "dry" : "filled");
    m.put("rock", d.rock());
    if (d instanceof Disturbance.Removal) {
      m.put("removed", true);
      return m;
    }
    if (d instanceof Disturbance.Undermining u) {
      m.put("undermined", true);
      m.put("foot", wish.foot);
      m.put("feet", u.feet().size());
      return m;
    }
    m.put("toward", wish.toward);
    m.put("height_share", share);
    if (d instanceof Disturbance.Arm a) {
      m.put("arm_n", a.forceN());
      m.put("arm_m_s", a.speedMS());
      m.put("stroke_mm", a.strokeM() * 1e3);
    } else if (d instanceof Disturbance.Blow b) {
      m.put("impulse_ns", b.impulseNs().norm());
      wish.fishKg.ifPresent(kg -> m.put("fish_kg", kg));
    }
    return m;
  }
}
