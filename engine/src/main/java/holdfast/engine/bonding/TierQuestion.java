package holdfast.engine.bonding;

import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.StateJudges;
import holdfast.engine.statics.StateJudges.Judged;
import holdfast.engine.statics.TierPushes;
import holdfast.engine.statics.balance.CornerBalance;
import holdfast.engine.statics.heap.Gravity;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * The tier question: does a heap stay in every state, and does every rock bear the tier's push from every side on every
 * line, the tier's press on its rim, and the shaking asked for, without anything going over? It stops at the first no.
 * A rock that only slides is no reason for a bond.
 *
 * <p>What is likeliest to fail is asked first: staying, shaking, then the highest rocks in the lightest states.
 */
public final class TierQuestion {
  private final SceneHeap scene;
  private final Settings settings;
  private final int threads;
  private final int directions;
  private final Recall recall;

  private TierQuestion(SceneHeap scene, int threads, Recall recall) {
    this.scene = scene;
    this.threads = threads;
    this.recall = recall;
    settings = scene.scene().settings();
    directions = Push.sides(settings);
  }

  /** The first reason why the tier is not met by the heaps of some rocks, in words; empty when it is met. */
  public static Optional<String> unmet(SceneHeap scene, Collection<Integer> rocks, int threads) {
    return refusal(scene, rocks, threads).map(Refusal::words);
  }

  /** What was asked when the tier was not met; sliding is a push, too, under which a rock slides so that something falls. */
  public enum Kind { STAYING, SHAKING, PUSHING, SLIDING }

  /**
   * The first no to a tier question.
   *
   * @param rock pushed or pressed, or, for staying and shaking, one of the heap
   * @param at where it is pushed, metres; zero for staying, shaking and sliding
   * @param way which way it is pushed or shaken; zero for staying
   * @param share of the load that is asked for, at which it is refused: 1 or less
   */
  public record Refusal(Kind kind, State state, int rock, Vec3 at, Vec3 way, double share, String words) {}

  static Optional<Refusal> refusal(SceneHeap scene, Collection<Integer> rocks, int threads) {
    return new TierQuestion(scene, threads, new Recall()).unmet(rocks);
  }

  /** The same, and what slides lead to where nothing else refuses. */
  static Optional<Refusal> refusal(SceneHeap scene, Collection<Integer> rocks, int threads, Slides slides) {
    return refusal(scene, rocks, threads).or(() -> slides.first(scene, rocks).map(s -> new Refusal(Kind.SLIDING, s.state(),
        s.rock(), Vec3.ZERO, s.way(), 1, scene.name(s.rock()) + " slides when pushed and then something falls, "
            + s.state().words())));
  }

  /**
   * The first of some known refusals that other joints meet too, by its place; -1 for none. Each is one part of the whole
   * question, so a heap that meets one does not meet the tier; one that meets none may still not.
   */
  static int refusedBy(SceneHeap scene, List<Refusal> known, Slides slides) {
    TierQuestion q = new TierQuestion(scene, 1, new Recall());
    List<Heap.Part> parts = scene.heap().separate();
    Map<List<Object>, PartJudge> judged = new HashMap<>();
    for (int k = 0; k < known.size(); k++) {
      Refusal r = known.get(k);
      Heap.Part part = holding(parts, r.rock);
      List<Wrench> loads = scene.weights().loads(r.state);
      PartJudge judge = judged.computeIfAbsent(List.of(r.state, part.bodies()), s -> PartJudge.resting(part, loads));
      if (!judge.safe()) return k;
      boolean no = switch (r.kind) {
        case STAYING -> !new PartJudge(part, loads).safe();
        case SHAKING -> q.shakenOff(r.state, judge, r.way, r.share);
        case PUSHING -> q.goesOver(r.state, judge, new Push(r.rock, r.at, r.way), r.share);
        case SLIDING -> slides.falls(scene, r.rock);
      };
      if (no) return k;
    }
    return -1;
  }

  /**
   * Whether it is proved that a known refusal refuses every choice among some joints: with none of them, with all, and with
   * any of them. For staying and shaking only: there, what stays has forces in balance, and no choice has more forces at
   * hand than all these joints with all their bare contacts beside them ({@link CornerBalance}). Of a push no more is known
   * than that it is not borne, and a rock that slides under it is no reason for a bond; whether it slides before it goes
   * over follows no proved order.
   *
   * @param bare the scene with none of these joints fixed
   * @param all the scene with all of them fixed
   */
  static boolean refusedWithAny(SceneHeap bare, SceneHeap all, Refusal known) {
    if (known.kind == Kind.PUSHING || known.kind == Kind.SLIDING) return false;
    Set<Link> links = new LinkedHashSet<>(all.heap().links());
    bare.heap().links().stream().filter(Link.Bearing.class::isInstance).forEach(links::add);
    Heap.Part part = holding(new Heap(all.heap().bodies(), List.copyOf(links)).separate(), known.rock);
    List<Wrench> loads = new ArrayList<>(part.of(all.weights().loads(known.state)));
    if (known.kind == Kind.SHAKING) {
      List<Wrench> live = shaking(part.of(all.weights().shakingKg(known.state)), known.way);
      double limit = all.scene().settings().get(Setting.SHAKE_G);
      for (int i = 0; i < live.size(); i++) loads.set(i, loads.get(i).plus(live.get(i).times(known.share * limit)));
    }
    return CornerBalance.impossible(part.heap(), loads);
  }

  private static Heap.Part holding(List<Heap.Part> parts, int rock) {
    return parts.stream().filter(p -> p.bodies().contains(rock)).findFirst().orElseThrow();
  }

  /** The same of the whole scene. */
  public static Optional<String> unmet(SceneHeap scene, int threads) {
    return unmet(scene, IntStream.range(0, scene.rocks().size()).boxed().toList(), threads);
  }

  /** The same for one who asks again after every edit: what is known of heaps that have not changed is not asked anew. */
  public static Optional<String> unmet(SceneHeap scene, int threads, Recall recall) {
    try {
      return first(scene, threads, recall).map(Refusal::words);
    } finally {
      recall.ended();
    }
  }

  /** The first no of the whole scene; the round of {@code recall} goes on. */
  public static Optional<Refusal> first(SceneHeap scene, int threads, Recall recall) {
    return new TierQuestion(scene, threads, recall).unmet(IntStream.range(0, scene.rocks().size()).boxed().toList());
  }

  private Optional<Refusal> unmet(Collection<Integer> rocks) {
    List<Heap.Part> parts = scene.heap().separate().stream()
        .filter(p -> p.bodies().stream().anyMatch(rocks::contains)).toList();
    List<List<Judged>> judged = StateJudges.toFirstUnsafe(parts, scene.weights().loads(), threads, recall);
    List<Supplier<Optional<Refusal>>> questions = new ArrayList<>();
    for (List<Judged> ofPart : judged) {
      for (Judged j : ofPart) {
        int first = j.judge().part().bodies().get(0);
        if (!j.judge().safe()) {
          return Optional.of(new Refusal(Kind.STAYING, j.state(), first, Vec3.ZERO, Vec3.ZERO, 1,
              scene.name(first) + " and what it bears on do not stay, " + j.state().words()));
        }
        questions.add(() -> shaken(j.state(), j.judge())
            .map(no -> new Refusal(Kind.SHAKING, j.state(), first, Vec3.ZERO, no.way, no.share, no.words)));
      }
    }
    for (List<Judged> ofPart : judged) {
      for (Judged j : StateJudges.governing(ofPart)) {
        j.judge().part().bodies().stream()
            .sorted(Comparator.comparingDouble((Integer r) -> scene.rocks().get(r).reach(Vec3.Z)).reversed())
            .forEach(r -> questions.add(() -> pushed(j.state(), j.judge(), r)
                .map(no -> new Refusal(Kind.PUSHING, j.state(), r, no.at, no.way, no.share, no.words))));
      }
    }
    // The first refusal in their order counts, whoever finds one first; what comes after a known one need not be asked.
    AtomicInteger refused = new AtomicInteger(Integer.MAX_VALUE);
    List<Optional<Refusal>> answers = Parallel.map(IntStream.range(0, questions.size()).boxed().toList(), threads, k -> {
      if (k > refused.get()) return Optional.empty();
      Optional<Refusal> no = questions.get(k).get();
      if (no.isPresent()) refused.accumulateAndGet(k, Math::min);
      return no;
    });
    return answers.stream().flatMap(Optional::stream).findFirst();
  }

  /** A question about one heap in one state: all that the answer depends on. */
  private record Asked(State state, PartJudge judge, List<Push> pushes, List<Double> kg, double limit) {}

  /** A no: where, which way and at which share of the load it was asked, and its words. */
  private record No(Vec3 at, Vec3 way, double share, String words) {}

  private Optional<No> pushed(State state, PartJudge judge, int rock) {
    PlacedRock r = scene.rocks().get(rock);
    TierPushes sideways = TierPushes.on(rock, r, settings);
    List<Push> presses = Push.presses(rock, r.lobes());
    List<Push> all = new ArrayList<>(sideways.sideways());
    all.addAll(presses);
    double tier = settings.get(Setting.PUSH_TIER_N);
    return recall.of(new Asked(state, judge, all, List.of(), tier), () -> {
      PartJudge own = judge.forThread();
      Optional<TierPushes.Refused> no = sideways.firstToTip(state, own, scene.heap(), tier);
      if (no.isPresent()) {
        Push p = no.get().push();
        return Optional.of(
            new No(p.at(), p.direction(), no.get().share(), scene.name(rock) + " topples when pushed, " + state.words()));
      }
      for (Push p : presses) {
        if (!goesOver(state, own, p, 1)) continue;
        return Optional.of(new No(p.at(), p.direction(), 1, scene.name(rock) + " tips when pressed down, " + state.words()));
      }
      return Optional.empty();
    });
  }

  private Optional<No> shaken(State state, PartJudge judge) {
    List<Double> kg = judge.part().of(scene.weights().shakingKg(state));
    double limit = settings.get(Setting.SHAKE_G);
    if (limit == 0) return Optional.empty();
    return recall.of(new Asked(state, judge, List.of(), kg, limit), () -> {
      PartJudge own = judge.forThread();
      for (int d = 0; d < directions; d++) {
        Vec3 along = Vec3.heading(360.0 * d / directions);
        for (double share : new double[] {1, LoadCase.onTheWay(d)}) {
          if (!shakenOff(state, own, along, share)) continue;
          return Optional.of(new No(Vec3.ZERO, along, share,
              "the heap of " + judge.heap().bodies().get(0).name() + " gives way when shaken, " + state.words()));
        }
      }
      return Optional.empty();
    });
  }

  private boolean shakenOff(State state, PartJudge judge, Vec3 along, double share) {
    List<Wrench> live = shaking(judge.part().of(scene.weights().shakingKg(state)), along);
    return judge.refuses(live, share * settings.get(Setting.SHAKE_G)).isPresent();
  }

  private static List<Wrench> shaking(List<Double> kg, Vec3 along) {
    return kg.stream().map(m -> new Wrench(along.times(m * Gravity.G), Vec3.ZERO)).toList();
  }

  /** Whether a share of the tier's force is not borne, in any way but by sliding. */
  private boolean goesOver(State state, PartJudge judge, Push push, double share) {
    return TierPushes.tips(state, judge, scene.heap(), push, share * settings.get(Setting.PUSH_TIER_N));
  }
}
