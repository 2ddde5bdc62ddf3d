package holdfast.engine.bonding;

import holdfast.engine.statics.Gravity;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.Parallel;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Push;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.SceneHeap;
import holdfast.engine.statics.State;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
  /** Relative width to which a factor is searched to see the first movement. */
  private static final double SEARCH_SHARE = 0.025;

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
    directions = (int) Math.round(settings.get(Setting.PUSH_DIRECTIONS));
  }

  /** The first reason why the tier is not met by the heaps of some rocks, in words; empty when it is met. */
  public static Optional<String> unmet(SceneHeap scene, Collection<Integer> rocks, int threads) {
    return refusal(scene, rocks, threads).map(Refusal::words);
  }

  /** What was asked when the tier was not met. */
  enum Kind { STAYING, SHAKING, PUSHING }

  /**
   * The first no to a tier question.
   *
   * @param rock pushed or pressed, or, for staying and shaking, one of the heap
   */
  record Refusal(Kind kind, State state, int rock, String words) {}

  static Optional<Refusal> refusal(SceneHeap scene, Collection<Integer> rocks, int threads) {
    return new TierQuestion(scene, threads, new Recall()).unmet(rocks);
  }

  /** Whether other joints meet the same no: that one part of the tier question alone. */
  static boolean refusedAgain(SceneHeap scene, Refusal known) {
    TierQuestion q = new TierQuestion(scene, 1, new Recall());
    for (Heap.Part part : scene.heap().separate()) {
      if (!part.bodies().contains(known.rock)) continue;
      PartJudge judge = new PartJudge(part, scene.weights().loads(known.state));
      if (!judge.safe()) return true;
      return switch (known.kind) {
        case STAYING -> false;
        case SHAKING -> q.shaken(known.state, judge).isPresent();
        case PUSHING -> q.pushed(known.state, judge, known.rock).isPresent();
      };
    }
    return false;
  }

  /** The same of the whole scene. */
  public static Optional<String> unmet(SceneHeap scene, int threads) {
    return unmet(scene, IntStream.range(0, scene.rocks().size()).boxed().toList(), threads);
  }

  /** The same for one who asks again after every edit: what is known of heaps that have not changed is not asked anew. */
  public static Optional<String> unmet(SceneHeap scene, int threads, Recall recall) {
    try {
      return new TierQuestion(scene, threads, recall)
          .unmet(IntStream.range(0, scene.rocks().size()).boxed().toList()).map(Refusal::words);
    } finally {
      recall.ended();
    }
  }

  private record Judged(State state, PartJudge judge) {}

  private Optional<Refusal> unmet(Collection<Integer> rocks) {
    List<Heap.Part> parts = scene.heap().separate().stream()
        .filter(p -> p.bodies().stream().anyMatch(rocks::contains)).toList();
    List<Judged> judged = new ArrayList<>();
    for (Heap.Part part : parts) {
      List<Judged> own = new ArrayList<>();
      for (State s : scene.weights().states()) {
        PartJudge j = recall.judge(part, scene.weights().loads(s));
        if (!j.safe()) {
          return Optional.of(new Refusal(Kind.STAYING, s, part.bodies().get(0),
              part.heap().bodies().get(0).name() + " and what it bears on do not stay, " + s.words()));
        }
        own.add(new Judged(s, j));
      }
      own.sort(Comparator.comparingDouble(k -> k.judge.dead().stream().mapToDouble(w -> w.force().norm()).sum()));
      judged.addAll(own);
    }
    List<Supplier<Optional<Refusal>>> questions = new ArrayList<>();
    for (Judged j : judged) {
      int first = j.judge.part().bodies().get(0);
      questions.add(() -> shaken(j.state, j.judge).map(w -> new Refusal(Kind.SHAKING, j.state, first, w)));
    }
    for (Judged j : governing(judged)) {
      j.judge.part().bodies().stream()
          .sorted(Comparator.comparingDouble((Integer r) -> scene.rocks().get(r).reach(Vec3.Z)).reversed())
          .forEach(r -> questions.add(
              () -> pushed(j.state, j.judge, r).map(w -> new Refusal(Kind.PUSHING, j.state, r, w))));
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

  /** Those that no other's judgement covers; pushes are the same in every state. */
  private static List<Judged> governing(List<Judged> all) {
    List<Judged> out = new ArrayList<>();
    for (Judged j : all) {
      if (out.stream().noneMatch(o -> o.judge.part() == j.judge.part() && o.judge.covers(j.judge))) out.add(j);
    }
    return out;
  }

  /** A question about one heap in one state: all that the answer depends on. */
  private record Asked(State state, PartJudge judge, List<Push> pushes, List<Double> kg, double limit) {}

  private Optional<String> pushed(State state, PartJudge judge, int rock) {
    PlacedRock r = scene.rocks().get(rock);
    List<Push> sideways = new ArrayList<>();
    for (int d = 0; d < directions; d++) {
      sideways.addAll(Push.lines(rock, r.lobes(), r.centre(), 360.0 * d / directions, settings));
    }
    List<Push> all = new ArrayList<>(sideways);
    all.addAll(Push.presses(rock, r.lobes()));
    return recall.of(new Asked(state, judge, all, List.of(), settings.get(Setting.PUSH_TIER_N)), () -> {
      PartJudge own = judge.forThread();
      for (int k = 0; k < all.size(); k++) {
        if (!goesOver(state, own, all.get(k))) continue;
        return Optional.of(scene.name(rock) + (k < sideways.size() ? " topples when pushed, " : " tips when pressed down, ")
            + state.words());
      }
      return Optional.empty();
    });
  }

  private Optional<String> shaken(State state, PartJudge judge) {
    List<Double> kg = judge.part().of(scene.weights().shakingKg(state));
    double limit = settings.get(Setting.SHAKE_G);
    if (limit == 0) return Optional.empty();
    return recall.of(new Asked(state, judge, List.of(), kg, limit), () -> {
      PartJudge own = judge.forThread();
      for (int d = 0; d < directions; d++) {
        Vec3 along = Vec3.heading(360.0 * d / directions);
        List<Wrench> live = kg.stream().map(m -> new Wrench(along.times(m * Gravity.G), Vec3.ZERO)).toList();
        if (own.refuses(live, limit).isPresent()) {
          return Optional.of("the heap of " + judge.heap().bodies().get(0).name() + " gives way when shaken, " + state.words());
        }
      }
      return Optional.empty();
    });
  }

  /** Whether the tier's force is not borne, in any way but by sliding. */
  private boolean goesOver(State state, PartJudge judge, Push push) {
    LoadCase c = new LoadCase(state, judge, judge.part().of(push.unit(scene.heap())));
    return LoadCase.toppling(List.of(c), settings.get(Setting.PUSH_TIER_N), SEARCH_SHARE).isPresent();
  }
}
