package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Finding;
import holdfast.engine.motion.Bump;
import holdfast.engine.motion.Disturbance;
import holdfast.engine.motion.PlayJob;
import holdfast.engine.motion.PlayResult;
import holdfast.engine.motion.SceneBodies;
import holdfast.engine.motion.SectionBump;
import holdfast.engine.motion.SectionResult;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.RockBody;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Plays bumps and first movements in the engine, off the drawing thread, and shows them. */
final class Player {
  private static final double FALL_SPEED = 0.35;
  private static final double BUMP_SPEED = 0.6;
  private static final double MOST_S = 4;
  private final Workbench bench;
  private Optional<Playback> playback = Optional.empty();
  private Optional<FirstMovement> first = Optional.empty();
  private Optional<SectionStrip> section = Optional.empty();
  private Optional<Finding> played = Optional.empty();
  private long revision;

  Player(Workbench bench) {
    this.bench = bench;
  }

  boolean playing() {
    return playback.isPresent() || first.isPresent();
  }

  boolean moving() {
    return playing();
  }

  /** The first movement on show. */
  Optional<FirstMovement> first() {
    return first;
  }

  /** Ends what is over, or belongs to an older scene; starts the movement of a finding that was opened. */
  boolean tick(long now) {
    boolean had = playing();
    if (revision != bench.document().revision()) {
      stop();
      section = Optional.empty();
    }
    if (first.filter(f -> f.over(now)).isPresent()) first = Optional.empty();
    if (playback.filter(p -> p.over(now)).isPresent()) playback = Optional.empty();
    Optional<Finding> open = bench.opened();
    if (!open.equals(played)) {
      played = open;
      stop();
      open.filter(f -> SceneMarksChoice.moves(f.code())).ifPresent(this::begin);
    }
    return had != playing();
  }

  private void stop() {
    playback = Optional.empty();
    first = Optional.empty();
  }

  Object state(long now) {
    if (first.isPresent()) return List.of(first.get().startNanos(), first.get().frame(now));
    return playback.map(p -> List.of(p.startNanos(), p.frame(now), (int) (10 * p.shownS(now)))).orElse(List.of());
  }

  Tableau on(Tableau t, long now) {
    if (first.isPresent()) return first.get().on(t, now);
    return playback.map(p -> p.on(t, now)).orElse(t);
  }

  /**
   * Shows how the heap of the scene as it is now begins to move, without the rock that is {@code out}; the mechanism has a
   * twist for each placement.
   */
  void show(Mechanism mechanism, String words, Optional<String> out) {
    stop();
    revision = bench.document().revision();
    List<String> rocks = bench.scene().placements().stream().map(p -> p.rock()).toList();
    first = Optional.of(new FirstMovement(rocks, mechanism, bench.now(), words, out));
  }

  /** The line above what is played, and the arrows of a first movement; {@code rest} is the scene before it. */
  void draw(Brush brush, Projector eye, Tableau rest, long now) {
    first.ifPresent(f -> f.draw(brush, eye, rest, bench.units()));
    playback.ifPresent(p -> brush.tag(eye.width() / 2.0, 26 * brush.scale(),
        p.words() + ", " + Scale.number(p.shownS(now), 1) + " s, shown at " + Scale.number(100 * p.speed(), 0)
        + " % of its speed",
        Style.LABEL, Palette.INK, Palette.PANEL.solid(0.92)));
  }

  /** Shows the mechanism that the finding carries; where none was seen, the engine plays a push that lets it fall. */
  private void begin(Finding f) {
    Optional<Mechanism> seen = f.mechanism().filter(m -> m.twists().size() == bench.scene().placements().size());
    if (seen.isPresent()) show(seen.get(), MovementWords.of(f, bench.units()), MovementWords.out(f));
    else if (SceneMarksChoice.playable(f.code())) movement(f);
  }

  /** The first movement of what a finding says falls: a slow arm at the height of the push, a little above the margin. */
  private void movement(Finding f) {
    Optional<Stone> stone = f.about().stream().findFirst().flatMap(bench::stone);
    if (stone.isEmpty()) return;
    Stone s = stone.get();
    Optional<CheckReport.PushLine> weakest = bench.report()
        .flatMap(r -> r.rocks().stream().filter(l -> l.name().equals(s.name())).findFirst())
        .flatMap(CheckReport.RockLine::weakest);
    Disturbance d = weakest.<Disturbance>map(w -> {
      double height = s.low().z() + bench.scene().settings().get(Setting.PUSH_HEIGHT) * (s.high().z() - s.low().z());
      Vec3 at = new Vec3(s.centreInTank().x(), s.centreInTank().y(), height);
      double force = Math.max(w.marginN() * 1.15 + 0.5, bench.scene().settings().get(Setting.PUSH_TIER_N));
      return new Disturbance.Arm(s.name(), at, Vec3.heading(w.degrees()), 0.08, force, 0.15, 2.5);
    }).orElseGet(Disturbance.Nothing::new);
    play(d, FALL_SPEED, weakest.map(w -> "pushed with " + Scale.force(
        bench.scene().settings().get(Setting.PUSH_TIER_N), bench.units())).orElse("left alone"), false);
  }

  void bump(Hands.Pulled p) {
    if (p.impulseNs().norm() < 0.005) return;
    Disturbance.Blow blow = new Disturbance.Blow(p.rock(), p.at(), p.impulseNs());
    play(blow, BUMP_SPEED, BumpWords.inWords(p.impulseNs().norm(), bench.units()), true);
  }

  private record Shown(PlayResult motion, Optional<SectionResult> section) {}

  private void play(Disturbance d, double speed, String words, boolean tell) {
    Scene scene = bench.scene();
    long asked = bench.document().revision();
    List<RockBody> bodies = List.copyOf(bench.stones().shapes(scene).bodies().values());
    List<String> names = scene.placements().stream().map(q -> q.rock()).toList();
    bench.chores().start(() -> {
      PlayJob job = SceneBodies.playJob(scene, bodies, true).withMostS(MOST_S).withFrames(30);
      Optional<SectionResult> cut = d instanceof Disturbance.Blow b ? Optional.of(SectionBump.play(job, b)) : Optional.empty();
      return new Shown(Bump.play(job, d), cut);
    }, shown -> {
      if (asked != bench.document().revision()) return;
      revision = asked;
      section = shown.section.flatMap(r -> r.match(p -> Optional.of(new SectionStrip(p, bench.now())), none -> Optional.empty()));
      shown.motion.match(p -> {
        playback = Optional.of(new Playback(names, p.frames(), speed, bench.now(), words));
        if (tell) bench.tell(outcome(p), p.anyFell() ? SeverityLook.WARN : SeverityLook.NOTE);
        return null;
      }, none -> {
        bench.tell(none.reason(), SeverityLook.WARN);
        return null;
      });
    }, why -> bench.tell("It could not be played: " + why, SeverityLook.WARN));
  }

  /** What happened, in a line; said to be a picture and no verdict. */
  static String outcome(PlayResult.Played p) {
    List<String> fell = p.outcomes().stream().filter(o -> o.fate() == PlayResult.Fate.FELL)
        .map(PlayResult.Outcome::rock).toList();
    List<String> moved = p.outcomes().stream().filter(o -> o.fate() == PlayResult.Fate.SHIFTED)
        .map(PlayResult.Outcome::rock).toList();
    String what = !fell.isEmpty() ? fell.stream().collect(Collectors.joining(", ")) + " fell"
        : !moved.isEmpty() ? moved.stream().collect(Collectors.joining(", ")) + " shifted" : "everything stayed";
    String glass = p.hits().isEmpty()
        ? "" : ", and " + p.hits().get(0).rock() + " struck the " + p.hits().get(0).side().word() + " pane";
    return "Played: " + what + glass + ". A picture of what would happen; the verdict is at the right.";
  }

  void panel(Layout at, Ui ui) {
    section.ifPresent(s -> s.draw(at, ui, bench.now(), BUMP_SPEED));
  }

  boolean hasSection() {
    return section.isPresent();
  }
}
