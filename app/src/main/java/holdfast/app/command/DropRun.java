package holdfast.app.command;

import holdfast.app.report.DropText;
import holdfast.app.report.Units;
import holdfast.engine.motion.Drop;
import holdfast.engine.motion.FootMargin;
import holdfast.engine.motion.SceneBodies;
import holdfast.engine.motion.SettleJob;
import holdfast.engine.motion.SteadyRest;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneFiles;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Lets one rock down at a spot, or looks for its steadiest rest there. Apart from {@link SettleCommand} so that help loads no
 * engine.
 */
final class DropRun {
  private final Wish wish;
  private final Format format;
  private final Units units;
  private final boolean quiet;
  private final Console console;

  /** What was asked for; {@code output} may be null. */
  record Wish(Path input, String rock, double xMm, double yMm, double turnedDeg, boolean steadiest, Path output) {}

  DropRun(Wish wish, Format format, Units units, boolean quiet, Console console) {
    this.wish = wish;
    this.format = format;
    this.units = units;
    this.quiet = quiet;
    this.console = console;
  }

  ExitCode run(Supplier<Progress> progress) throws IOException {
    Scene scene = withRock(Inputs.scene(wish.input));
    Shapes shapes = Inputs.shapes(scene, wish.input);
    if (!(wish.xMm >= 0 && wish.xMm <= scene.tank().lengthMm() && wish.yMm >= 0 && wish.yMm <= scene.tank().widthMm())) {
      throw new InputProblem("--at must lie in the tank, x from 0 to " + Units.plain(scene.tank().lengthMm())
          + " and y from 0 to " + Units.plain(scene.tank().widthMm()) + " mm, was " + Units.plain(wish.xMm) + ","
          + Units.plain(wish.yMm) + ".");
    }
    SettleJob job = SceneBodies.settleJob(scene, shapes.bodies().values());
    if (job.locked().contains(wish.rock)) throw new InputProblem("'" + wish.rock + "' is locked: it stays where it is.");
    Vec3 spot = new Vec3(wish.xMm, wish.yMm, 0).times(1e-3);
    List<SteadyRest.Candidate> rests;
    try (Progress p = progress.get()) {
      if (wish.steadiest) {
        FootMargin rank = new FootMargin(scene.settings().get(Setting.PUSH_HEIGHT), FootMargin.DEFAULT.weightN());
        rests = SteadyRest.near(job, wish.rock, spot, SteadyRest.Tries.DEFAULT, rank.of(job.fixed()));
        if (rests.isEmpty()) return nowhere("it finds no rest near there that leaves the others alone");
      } else {
        Quat held = scene.placements().stream().filter(q -> q.rock().equals(wish.rock)).findFirst().orElseThrow().turn();
        Quat turn = Quat.about(Vec3.Z, Math.toRadians(wish.turnedDeg)).times(held).unit();
        Drop.Dropped dropped = Drop.drop(job, wish.rock, spot, turn);
        if (dropped instanceof Drop.Dropped.Failed f) return nowhere(f.reason());
        Drop.Dropped.Lies lies = (Drop.Dropped.Lies) dropped;
        rests = List.of(new SteadyRest.Candidate(lies.pose(), Double.NaN, lies.rolledM(), lies.disturbedM(), lies.heap()));
      }
    }
    SteadyRest.Candidate best = rests.get(0);
    if (wish.output != null) SceneFiles.save(wish.output, SceneBodies.placed(scene, best.heap()));
    DropText text = new DropText(wish.rock, rests, units);
    String written = wish.output == null ? "" : "Wrote " + wish.output + ".\n";
    switch (format) {
      case JSON -> console.out().print(
          text.json(wish.input.toString(), wish.xMm, wish.yMm, Optional.ofNullable(wish.output).map(Path::toString)));
      case TEXT -> console.out().print(quiet ? text.verdict() : text.full() + written);
    }
    return text.leavesOthersAlone() ? ExitCode.FINE : ExitCode.FAILS;
  }

  /** The scene with the rock placed, at no matter what spot, if it was not yet. */
  private Scene withRock(Scene scene) {
    List<String> names = scene.rocks().stream().map(Rock::name).toList();
    if (!names.contains(wish.rock)) {
      throw new InputProblem("there is no rock '" + wish.rock + "' in this scene.",
          Nearest.to(wish.rock, names).map(n -> "Did you mean '" + n + "'?")
              .orElse("Its rocks are: " + String.join(", ", names) + "."));
    }
    if (scene.placements().stream().anyMatch(p -> p.rock().equals(wish.rock))) return scene;
    List<Placement> placements = new ArrayList<>(scene.placements());
    placements.add(new Placement(wish.rock, Vec3.ZERO, Pose.IDENTITY.turn(), false));
    return scene.withPlacements(placements);
  }

  private ExitCode nowhere(String reason) {
    console.say(wish.rock + " cannot be let down there: " + reason + ".", List.of());
    return ExitCode.FAILS;
  }
}
