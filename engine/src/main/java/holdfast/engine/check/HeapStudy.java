package holdfast.engine.check;

import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.StateJudges;
import holdfast.engine.statics.StateJudges.Judged;
import holdfast.engine.statics.heap.Gravity;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Twist;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All questions that the statics are asked about one scene: does every separate heap stand and stay in each state, how
 * hard a push does each rock take ({@link PushStudy}), how hard a press, how much shaking.
 */
final class HeapStudy {
  /** Pressing is looked for up to this many tiers. */
  private static final double PRESS_TIERS = 2;

  /** Shaking is looked for up to this many g. */
  private static final double SHAKE_CAP_G = 1;

  private final SceneHeap scene;
  private final Settings settings;
  private final int threads;
  private final PushStudy pushes;
  private final Recall recall;
  private final List<State> states;
  private final Map<State, List<Wrench>> loads;
  private final Map<State, List<PartJudge>> judges = new EnumMap<>(State.class);
  private final int[] partOf;

  HeapStudy(SceneHeap scene, int threads) {
    this(scene, threads, false, new Recall());
  }

  /**
   * @param recall what earlier studies of the scene found
   */
  HeapStudy(SceneHeap scene, int threads, boolean exact, Recall recall) {
    this.recall = recall;
    pushes = new PushStudy(this, exact);
    this.scene = scene;
    this.threads = threads;
    settings = scene.scene().settings();
    states = scene.weights().states();
    List<Heap.Part> parts = scene.heap().separate();
    partOf = new int[scene.rocks().size()];
    for (int p = 0; p < parts.size(); p++) {
      for (int b : parts.get(p).bodies()) partOf[b] = p;
    }
    loads = scene.weights().loads();
    for (State s : states) judges.put(s, new ArrayList<>());
    for (List<Judged> ofPart : StateJudges.all(parts, loads, threads, recall)) {
      for (Judged j : ofPart) judges.get(j.state()).add(j.judge());
    }
  }

  SceneHeap scene() {
    return scene;
  }

  List<State> states() {
    return states;
  }

  /** The weights of all rocks in a state. */
  List<Wrench> loads(State state) {
    return loads.get(state);
  }

  /** The separate heaps of a state, each judged under its weight. */
  List<PartJudge> judges(State state) {
    return judges.get(state);
  }

  PartJudge judge(State state, int rock) {
    return judges.get(state).get(partOf[rock]);
  }

  /** A separate heap of this scene, or of one that differs somewhere, judged under its share of {@code whole}. */
  PartJudge judged(Heap.Part part, State state, List<Wrench> whole) {
    return own(part, state, part.of(whole)).orElseGet(() -> new PartJudge(part, whole));
  }

  /** Whether such a heap stays; quicker than {@link #judged}. */
  boolean stays(Heap.Part part, State state, List<Wrench> whole) {
    List<Wrench> dead = part.of(whole);
    return own(part, state, dead).map(PartJudge::safe)
        .orElseGet(() -> recall.of(new Elsewhere(part, dead), () -> PartJudge.staying(part, whole).safe()));
  }

  /** A heap of a scene that differs somewhere, and what it was asked under. */
  private record Elsewhere(Heap.Part part, List<Wrench> dead) {}

  /** The judgement of this scene's own heap, if it is the one that is asked about and weighs as much. */
  private Optional<PartJudge> own(Heap.Part part, State state, List<Wrench> dead) {
    PartJudge own = judge(state, part.bodies().get(0));
    return own.part().equals(part) && own.dead().equals(dead) ? Optional.of(own) : Optional.empty();
  }

  /** The judgements of the heap that holds a rock, in every state: equal means that nothing of that heap has changed. */
  List<PartJudge> of(int rock) {
    return states.stream().map(s -> judge(s, rock)).toList();
  }

  /** Whether the heap that holds a rock stays in every state. */
  boolean safeUnderWeight(int rock) {
    return of(rock).stream().allMatch(PartJudge::safe);
  }

  Recall recall() {
    return recall;
  }

  double tier() {
    return settings.get(Setting.PUSH_TIER_N);
  }

  /** How the whole scene fares under its weight in one state: the worst of its heaps. */
  CheckReport.Standing standing(State state) {
    CheckReport.Standing worst = CheckReport.Standing.STAYS;
    for (PartJudge j : judges(state)) {
      CheckReport.Standing s = standing(j);
      if (s.ordinal() > worst.ordinal()) worst = s;
    }
    return worst;
  }

  /** How the worst of the heaps that do not stay in a state begins to move under its weight, when that was seen. */
  Optional<Mechanism> collapse(State state) {
    for (PartJudge j : judges(state)) {
      if (standing(j) == standing(state) && j.rest() instanceof Rest.Moves m) return Optional.of(whole(j.part(), m.mechanism()));
    }
    return Optional.empty();
  }

  static CheckReport.Standing standing(PartJudge j) {
    return j.balance().match(
        ok -> j.rest().match(
            s -> CheckReport.Standing.STAYS, m -> CheckReport.Standing.SQUEEZED,
            b -> CheckReport.Standing.FALLS, u -> CheckReport.Standing.UNDECIDED),
        falls -> CheckReport.Standing.FALLS,
        undecided -> j.rest() instanceof Rest.Moves ? CheckReport.Standing.FALLS : CheckReport.Standing.UNDECIDED);
  }

  /** How hard a push each rock takes. */
  PushStudy pushes() {
    return pushes;
  }

  /** A part's mechanism as one of the whole scene. */
  Mechanism whole(Heap.Part part, Mechanism m) {
    Twist[] all = new Twist[scene.rocks().size()];
    Arrays.fill(all, Twist.ZERO);
    for (int k = 0; k < part.bodies().size(); k++) all[part.bodies().get(k)] = m.twists().get(k);
    return new Mechanism(List.of(all));
  }

  /** Pushes on one rock in the states that can govern them, those that no other state's judgement covers; for this thread. */
  List<LoadCase> cases(int rock, List<Push> pushes) {
    List<Judged> all = states.stream().map(s -> new Judged(s, judge(s, rock))).toList();
    List<LoadCase> out = new ArrayList<>();
    for (Judged j : StateJudges.governing(all)) {
      PartJudge own = j.judge().forThread();
      for (Push p : pushes) out.add(new LoadCase(j.state(), own, own.part().of(p.unit(scene.heap()))));
    }
    return out;
  }

  /** What a downward press does to one rock; the movement is that of all rocks of the scene, when it was seen. */
  record PressFound(double marginN, State state, boolean settled, Optional<Mechanism> mechanism) {}

  /** The least downward press on an outermost point of each rock that tips something, up to {@link #pressCap}. */
  List<PressFound> presses() {
    List<Integer> rocks = new ArrayList<>();
    for (int i = 0; i < scene.rocks().size(); i++) rocks.add(i);
    return Parallel.map(rocks, threads, rock -> {
      List<Push> lines = Push.presses(rock, scene.rocks().get(rock).lobes());
      return recall.of(new PressAsked(states, of(rock), lines, scene.rocks().size(), tier()), () -> press(rock, lines));
    });
  }

  /** All that the answer depends on. Equal states share a judge and not their name. */
  private record PressAsked(List<State> states, List<PartJudge> judges, List<Push> presses, int rocks, double tier) {}

  private PressFound press(int rock, List<Push> lines) {
    LoadCase.Least least = LoadCase.least(cases(rock, lines), pressCap(), LoadCase.SEARCH_SHARE, tier());
    return new PressFound(least.factor(), least.governing().state(), least.settled(),
        least.movement().map(m -> whole(least.governing().judge().part(), m)));
  }

  double pressCap() {
    return PRESS_TIERS * tier();
  }

  // -- shaking ------------------------------------------------------------------------------------------------------

  /** Shaking in one state: the least margin over directions and heaps, in g. */
  record ShakeFound(
      State state, double marginG, double atMostG, double degrees, boolean settled, Optional<Mechanism> mechanism) {}

  List<ShakeFound> shakes() {
    return Parallel.map(states, threads, state -> recall.of(new ShakeAsked(state, judges(state),
        scene.weights().shakingKg(state), directions(), settings.get(Setting.SHAKE_G)), () -> shake(state)));
  }

  private record ShakeAsked(State state, List<PartJudge> judges, List<Double> kg, int directions, double limitG) {}

  private int directions() {
    return Push.sides(settings);
  }

  private ShakeFound shake(State state) {
    if (scene.rocks().isEmpty()) return new ShakeFound(state, SHAKE_CAP_G, SHAKE_CAP_G, 0, true, Optional.empty());
    int directions = directions();
    List<Double> kg = scene.weights().shakingKg(state);
    List<LoadCase> cases = new ArrayList<>();
    List<Double> degrees = new ArrayList<>();
    for (PartJudge judge : judges(state)) {
      PartJudge own = judge.forThread();
      for (int d = 0; d < directions; d++) {
        Vec3 along = Vec3.heading(360.0 * d / directions);
        List<Wrench> live = judge.part().bodies().stream()
            .map(b -> new Wrench(along.times(kg.get(b) * Gravity.G), Vec3.ZERO)).toList();
        cases.add(new LoadCase(state, own, live));
        degrees.add(360.0 * d / directions);
      }
    }
    LoadCase.Least least = LoadCase.least(cases, SHAKE_CAP_G, LoadCase.SEARCH_SHARE, settings.get(Setting.SHAKE_G));
    int which = cases.indexOf(least.governing());
    return new ShakeFound(state, least.factor(), least.atMost(SHAKE_CAP_G), degrees.get(Math.max(0, which)), least.settled(),
        least.movement().map(m -> whole(least.governing().judge().part(), m)));
  }
}
