package holdfast.engine.check;

import holdfast.engine.build.Modules;
import holdfast.engine.check.CheckReport.FootLine;
import holdfast.engine.check.CheckReport.JointLine;
import holdfast.engine.check.CheckReport.PushLine;
import holdfast.engine.check.CheckReport.RockLine;
import holdfast.engine.check.CheckReport.StateLine;
import holdfast.engine.check.HeapStudy.PressFound;
import holdfast.engine.check.HeapStudy.ShakeFound;
import holdfast.engine.check.PushStudy.PushFound;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;

/** The one way in: a scene and its shapes to a report. */
public final class Check {
  /** Findings that say that a question stayed open; they fail, but do not say that the layout does. */
  private static final Set<Code> OPEN = EnumSet.of(Code.UNDECIDED, Code.WEDGED);

  private Check() {}

  /**
   * Checks a scene.
   *
   * @param shapes the scene's rocks, all shaped
   */
  public static CheckReport run(Scene scene, Shapes shapes, CheckOptions options) {
    return run(scene, shapes, options, CheckWatch.NONE, new Recall());
  }

  /**
   * The same, telling {@code watch} how far it has come.
   *
   * @param shapes the scene's rocks, all shaped
   */
  public static CheckReport run(Scene scene, Shapes shapes, CheckOptions options, CheckWatch watch) {
    return run(scene, shapes, options, watch, new Recall());
  }

  /**
   * The same for one who checks again after every edit.
   *
   * @param recall what earlier checks found of heaps that have not changed since, and where this one leaves what it finds;
   *     the report does not depend on it
   */
  public static CheckReport run(Scene scene, Shapes shapes, CheckOptions options, CheckWatch watch, Recall recall) {
    if (!shapes.sound()) throw new IllegalArgumentException("rocks that could not be shaped: " + shapes.problems());
    try {
      return judge(scene, shapes, options, watch, recall);
    } finally {
      recall.ended();
    }
  }

  /**
   * Only whether the heap stands and stays, and whether the rocks lie as drawn; and, where the options ask for the tier, whether
   * it is borne: for one who drags a rock about and wants to know at once. The verdict of a scene with rocks is never better than
   * undecided.
   *
   * @param shapes the scene's rocks, all shaped
   */
  public static CheckReport standing(Scene scene, Shapes shapes, CheckOptions options, CheckWatch watch, Recall recall) {
    if (!shapes.sound()) throw new IllegalArgumentException("rocks that could not be shaped: " + shapes.problems());
    try {
      watch.at(CheckWatch.Stage.STANDING, 0, 0);
      HeapStudy study = new HeapStudy(recall.heap(scene, shapes.placed()), options.threads(), false, recall);
      List<Finding> findings = new ArrayList<>(StandingFindings.of(study));
      if (options.pushes() == CheckOptions.Pushes.TIER) watch.at(CheckWatch.Stage.PUSHES, 0, 0);
      findings.addAll(tier(study, options));
      if (!study.scene().rocks().isEmpty()) findings.add(notAsked("Nothing but whether the heap stands was asked about."));
      findings = ranked(findings);
      CheckReport.Verdict verdict = verdict(study, findings);
      return new CheckReport(scene, verdict, Headline.of(study, verdict, findings, List.of()), findings, states(study, List.of()),
          rocks(study, Pushed.NONE), new SupportStudy(study, options.threads()).joints(), List.of(), List.of(), Optional.empty(),
          Optional.empty(), Cautions.of());
    } finally {
      recall.ended();
    }
  }

  private static List<Finding> tier(HeapStudy study, CheckOptions options) {
    return options.pushes() == CheckOptions.Pushes.TIER ? TierFindings.of(study, options.threads()) : List.of();
  }

  /**
   * The push margins of one rock from every direction, as a check that asks for roses reports them; after a check of the same
   * scene only what that one did not ask is worked out.
   *
   * @param shapes the scene's rocks, all shaped
   * @param rock the name of a rock that has a place; of any other there are none
   * @param recall what checks of the scene found; no round of it ends, since its answers are wanted again after the next edit
   */
  public static List<PushLine> rose(Scene scene, Shapes shapes, String rock, CheckOptions options, Recall recall) {
    SceneHeap heap = recall.heap(scene, shapes.placed());
    HeapStudy study = new HeapStudy(heap, options.threads(), options.exact(), recall);
    return IntStream.range(0, heap.rocks().size()).filter(i -> heap.name(i).equals(rock)).boxed()
        .flatMap(i -> study.pushes().rose(i).stream()).map(Check::line).toList();
  }

  private static Finding notAsked(String what) {
    return Draft.fail(Code.UNDECIDED).about("the heap").say(what, "Run the whole check.");
  }

  private static CheckReport judge(Scene scene, Shapes shapes, CheckOptions options, CheckWatch watch, Recall recall) {
    watch.at(CheckWatch.Stage.STANDING, 0, 0);
    SceneHeap heap = recall.heap(scene, shapes.placed());
    HeapStudy study = new HeapStudy(heap, options.threads(), options.exact(), recall);
    watch.at(CheckWatch.Stage.PUSHES, 0, 0);
    // The three know nothing of each other, and only the pushes fill more than one thread.
    AtomicReference<Pushed> pushes = new AtomicReference<>();
    AtomicReference<Apart> apart = new AtomicReference<>();
    AtomicReference<Supported> supports = new AtomicReference<>();
    List<Runnable> sections = List.of(
        () -> pushes.set(Pushed.of(study, options)),
        () -> apart.set(recall.of(new ApartAsked(scene, shapes.placed()), () -> Apart.of(study, shapes))),
        () -> supports.set(Supported.of(study, options)));
    Parallel.map(sections, options.threads(), section -> {
      section.run();
      return true;
    });
    Pushed pushed = pushes.get();
    Apart other = apart.get();
    List<PushFound> weakest = pushed.weakest;
    List<PressFound> presses = pushed.presses;
    List<ShakeFound> shakes = pushed.shakes;
    List<Finding> findings = new ArrayList<>();
    findings.addAll(StandingFindings.of(study));
    if (!options.pushed() && !heap.rocks().isEmpty()) {
      findings.add(notAsked("Pushes, presses, shaking and what is dug or lifted away were not asked about."));
    }
    findings.addAll(tier(study, options));
    findings.addAll(pushed.findings);
    findings.addAll(supports.get().findings);
    findings.addAll(other.room.findings());
    findings.addAll(other.pane.findings());
    findings.addAll(other.handling);
    if (options.pushed()) watch.at(CheckWatch.Stage.JOINTS, 0, 0);
    findings.addAll(options.pushed()
        ? BondingFindings.of(study, findings, options.threads(), watch) : BondingFindings.weakRock(scene));
    Optional<VariationsResult> variations = options.variations() == 0 || heap.rocks().isEmpty()
        ? Optional.empty()
        : Optional.of(Variations.run(heap, options.variations(), options.seed(), options.threads(), watch));
    variations.map(Variations::findings).ifPresent(findings::addAll);

    findings = ranked(findings);
    CheckReport.Verdict verdict = verdict(study, findings);
    return new CheckReport(
        scene, verdict,
        Headline.of(study, verdict, findings, weakest) + variations.map(v -> " " + Variations.words(v)).orElse(""), findings,
        states(study, shakes), rocks(study, pushed), supports.get().joints, other.pane.feet(), other.room.lines(),
        other.pane.report(), variations, Cautions.of());
  }

  /**
   * What was pushed, pressed and shaken.
   *
   * @param roses of every rock; empty where they are not asked for
   */
  private record Pushed(
      List<PushFound> weakest, List<List<PushFound>> roses, List<PressFound> presses, List<ShakeFound> shakes,
      List<Finding> findings) {
    static final Pushed NONE = new Pushed(List.of(), List.of(), List.of(), List.of(), List.of());

    static Pushed of(HeapStudy study, CheckOptions options) {
      if (!options.pushed()) return NONE;
      List<Integer> rocks = IntStream.range(0, study.scene().rocks().size()).boxed().toList();
      List<PushFound> weakest = Parallel.map(rocks, options.threads(), study.pushes()::weakest);
      List<PressFound> presses = study.presses();
      List<ShakeFound> shakes = study.shakes();
      List<Finding> findings = new PushFindings(study).of(weakest, presses, shakes, options.threads());
      List<List<PushFound>> roses = options.pushes() == CheckOptions.Pushes.ROSES
          ? Parallel.map(rocks, options.threads(), study.pushes()::rose) : List.of();
      return new Pushed(weakest, roses, presses, shakes, findings);
    }
  }

  /** What each support is worth. */
  private record Supported(List<Finding> findings, List<JointLine> joints) {
    static Supported of(HeapStudy study, CheckOptions options) {
      SupportStudy support = new SupportStudy(study, options.threads());
      return new Supported(options.pushed() ? support.findings() : support.seen(), support.joints());
    }
  }

  /** All that {@link Apart} depends on: whoever asks for room first and for pushes then need not wait for it twice. */
  private record ApartAsked(Scene scene, List<PlacedRock> placed) {}

  /** What does not depend on pushes: room, pane and handling. */
  private record Apart(RoomFindings room, PaneStudy pane, List<Finding> handling) {
    static Apart of(HeapStudy study, Shapes shapes) {
      List<Modules.Module> modules = HandlingFindings.modules(study.scene(), study.recall());
      List<Finding> handling = new ArrayList<>(HandlingFindings.of(
          study.scene(), r -> study.of(r).stream().allMatch(PartJudge::safe), modules, study.recall()));
      handling.addAll(LiftFindings.of(study.scene(), modules));
      return new Apart(RoomFindings.of(study.scene().scene(), shapes), PaneStudy.of(study), handling);
    }
  }

  /** Worst first, then in the order of the codes, then as they were found. */
  private static List<Finding> ranked(List<Finding> findings) {
    List<Finding> sorted = new ArrayList<>(findings);
    sorted.sort(Comparator.comparing(Finding::severity).thenComparing(Finding::code));
    return sorted;
  }

  private static CheckReport.Verdict verdict(HeapStudy study, List<Finding> findings) {
    boolean fails = findings.stream().anyMatch(f -> f.severity() == Severity.FAIL && !OPEN.contains(f.code()));
    boolean open = findings.stream().anyMatch(f -> f.severity() == Severity.FAIL && OPEN.contains(f.code()));
    if (fails) return CheckReport.Verdict.FAILS;
    if (open) return CheckReport.Verdict.UNDECIDED;
    return study.scene().rocks().isEmpty() ? CheckReport.Verdict.NOTHING : CheckReport.Verdict.PASSES;
  }

  private static List<StateLine> states(HeapStudy study, List<ShakeFound> shakes) {
    List<StateLine> out = new ArrayList<>();
    for (int i = 0; i < study.states().size(); i++) {
      State state = study.states().get(i);
      ShakeFound s = shakes.isEmpty() ? new ShakeFound(state, 0, 0, 0, true, Optional.empty()) : shakes.get(i);
      Optional<Mechanism> collapse = study.standing(state) == CheckReport.Standing.STAYS ? s.mechanism() : study.collapse(state);
      out.add(new StateLine(state, study.standing(state), s.marginG(), s.atMostG(), s.degrees(), collapse));
    }
    return out;
  }

  private static List<RockLine> rocks(HeapStudy study, Pushed pushed) {
    List<RockLine> out = new ArrayList<>();
    for (int i = 0; i < study.scene().rocks().size(); i++) {
      PlacedRock r = study.scene().rocks().get(i);
      List<PushLine> rose = pushed.roses.isEmpty() ? List.of() : pushed.roses.get(i).stream().map(Check::line).toList();
      Optional<PushLine> weakest = pushed.weakest.isEmpty() ? Optional.empty() : Optional.of(line(pushed.weakest.get(i)));
      out.add(new RockLine(r.rock().name(), r.rock().kind().word(), r.body().dryMassKg(), study.scene().weights().submergedN(i),
          r.reach(Vec3.Z) * 1e3, rose, weakest, pushed.presses.isEmpty() ? 0 : pushed.presses.get(i).marginN()));
    }
    return out;
  }

  private static PushLine line(PushFound p) {
    return new PushLine(p.degrees(), p.marginN(), p.atMostN().stream().filter(Double::isFinite).findFirst(),
        p.unlimited(), p.movement(), p.state());
  }
}
