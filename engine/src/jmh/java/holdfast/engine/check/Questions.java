package holdfast.engine.check;

import holdfast.engine.bonding.TierQuestion;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.StateJudges;
import holdfast.engine.statics.StateJudges.Judged;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.balance.PushBound;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Resting;
import holdfast.engine.work.Parallel;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.DoubleSupplier;
import java.util.function.IntBinaryOperator;
import java.util.stream.IntStream;

/**
 * What the benchmarks ask, each in one call: where an entry of the engine moves, only this changes. In the package of the
 * check, some of whose questions are asked from inside.
 */
public final class Questions {
  /** Both cores, or all there are. */
  public static final int THREADS = CheckOptions.DEFAULT.threads();

  /** Relative width to which the force balance's own margin is enclosed. */
  private static final double BOUND_SHARE = 0.02;

  /** Nanoseconds; what takes longer than this is asked once for a profile. All of it has been asked before, on all cores. */
  private static final long LONG_NS = 1_500_000_000L;

  private Questions() {}

  /** A scene of placed rocks to a heap: solids, pairs, contacts, links. */
  public static SceneHeap heap(Scene scene, List<PlacedRock> placed) {
    return SceneHeap.of(scene, placed);
  }

  public static ContactMap contacts(Scene scene, List<PlacedRock> placed) {
    return ContactFinder.find(SceneSolids.ofPlaced(scene, placed), ContactRules.DEFAULT);
  }

  /** Does it stand filled: the force balance of every separate heap. */
  public static int stands(SceneHeap heap) {
    List<Wrench> loads = heap.weights().loads(State.FILLED);
    int stand = 0;
    for (Heap.Part p : heap.heap().separate()) {
      List<Wrench> dead = p.of(loads);
      stand += new ForceBalance(p.heap(), ForceBalance.typicalN(dead)).stands(dead).match(ok -> 1, falls -> 0, open -> 0);
    }
    return stand;
  }

  /** Does it stay filled: every separate heap comes to rest. */
  public static int stays(SceneHeap heap) {
    List<Wrench> loads = heap.weights().loads(State.FILLED);
    int stay = 0;
    for (Heap.Part p : heap.heap().separate()) {
      List<Wrench> dead = p.of(loads);
      if (new Resting(p.heap(), ForceBalance.typicalN(dead)).under(dead).stays()) stay++;
    }
    return stay;
  }

  /** One push on one rock of a separate heap, to be asked by one thread at a time: filled, along the line through its centre. */
  public record OnePush(PushBound bound, Heap heap, List<Wrench> dead, List<Wrench> live, double capN, int rock, Push push) {
    /** What the force balance allows, enclosed between forces and a mechanism to {@link #BOUND_SHARE}. */
    public Margin enclosed() {
      return bound.margin(live, capN, BOUND_SHARE);
    }

    /** No larger push has forces in balance; not a number where that stays open. */
    public double atMostN() {
      return enclosed().match(Margin.Limited::bound, Margin.Beyond::cap, falls -> 0.0, open -> Double.NaN);
    }
  }

  /** All pushes through centres in one state, rock by rock and round the compass; no judge is made. */
  public static List<OnePush> centrePushes(SceneHeap heap, double capN) {
    List<Wrench> loads = heap.weights().loads(State.FILLED);
    int directions = directions(heap);
    List<List<OnePush>> byRock = new ArrayList<>();
    for (int i = 0; i < heap.rocks().size(); i++) byRock.add(new ArrayList<>());
    for (Heap.Part part : heap.heap().separate()) {
      List<Wrench> dead = part.of(loads);
      PushBound bound = new PushBound(part.heap(), dead);
      for (int rock : part.bodies()) {
        PlacedRock r = heap.rocks().get(rock);
        for (int d = 0; d < directions; d++) {
          Push p = Push.lines(rock, r.lobes(), r.centre(), 360.0 * d / directions, heap.scene().settings()).get(0);
          byRock.get(rock).add(new OnePush(bound, part.heap(), dead, part.of(p.unit(heap.heap())), capN, rock, p));
        }
      }
    }
    return byRock.stream().flatMap(List::stream).toList();
  }

  /** What the force balance allows all those pushes, from nothing: no judge is made. By rock, on all threads. */
  public static double[] centreMargins(SceneHeap heap, double capN) {
    List<Wrench> loads = heap.weights().loads(State.FILLED);
    double[][] found = new double[heap.rocks().size()][];
    for (Heap.Part part : heap.heap().separate()) {
      ThreadLocal<PushBound> own = ThreadLocal.withInitial(() -> new PushBound(part.heap(), part.of(loads)));
      List<double[]> ofPart = Parallel.map(part.bodies(), THREADS, rock -> {
        PlacedRock r = heap.rocks().get(rock);
        List<List<Wrench>> lives = new ArrayList<>();
        for (int d = 0; d < directions(heap); d++) {
          double degrees = 360.0 * d / directions(heap);
          Push p = Push.lines(rock, r.lobes(), r.centre(), degrees, heap.scene().settings()).get(0);
          lives.add(part.of(p.unit(heap.heap())));
        }
        return own.get().margins(lives, capN, BOUND_SHARE).stream().mapToDouble(m -> m.match(
            Margin.Limited::bound, Margin.Beyond::cap, falls -> 0.0, open -> Double.NaN)).toArray();
      });
      for (int k = 0; k < ofPart.size(); k++) found[part.bodies().get(k)] = ofPart.get(k);
    }
    return Arrays.stream(found).flatMapToDouble(Arrays::stream).toArray();
  }

  private static int directions(SceneHeap heap) {
    return (int) Math.round(heap.scene().settings().get(Setting.PUSH_DIRECTIONS));
  }

  /** The verdict: is every margin above the tier, in every direction, on every line, in every state? */
  public static boolean verdict(SceneHeap heap) {
    return TierQuestion.unmet(heap, THREADS).isEmpty();
  }

  /** How many pushes that verdict covers at the tier: those of the states that no lighter one answers for. */
  public static int asked(SceneHeap heap) {
    return count(heap, (lines, presses) -> lines);
  }

  /** For every rock and governing state, a figure made of its push lines from all sides and its presses. */
  private static int count(SceneHeap heap, IntBinaryOperator of) {
    int count = 0;
    for (List<Judged> ofPart : judged(heap)) {
      for (int rock : ofPart.get(0).judge().part().bodies()) {
        PlacedRock r = heap.rocks().get(rock);
        int lines = Push.lines(rock, r.lobes(), r.centre(), 0, heap.scene().settings()).size();
        count += StateJudges.governing(ofPart).size()
            * of.applyAsInt(directions(heap) * lines, Push.presses(rock, r.lobes()).size());
      }
    }
    return count;
  }

  private static List<List<Judged>> judged(SceneHeap heap) {
    return StateJudges.all(heap.heap().separate(), heap.weights().loads(), 1, new Recall());
  }

  /**
   * Where the time of a verdict goes, on one thread, milliseconds; medians of a few where it is short.
   *
   * @param judgesMs the heaps under their own weight in every state, second looks included
   * @param verdictMs all of it
   * @param questions loads that it asks about: pushes at the tier and below it, presses
   * @param solveMs one linear solve of a heap that comes to rest, its equations put together
   */
  public record Profile(double judgesMs, double verdictMs, int questions, double solveMs) {
    /** What one question took. */
    public double questionMs() {
      return (verdictMs - judgesMs) / questions;
    }
  }

  public static Profile profile(SceneHeap heap) {
    double solveMs = median(() -> {
      int solves = 0;
      long start = System.nanoTime();
      for (Heap.Part p : heap.heap().separate()) {
        List<Wrench> dead = p.of(heap.weights().loads(State.FILLED));
        Resting resting = new Resting(p.heap(), ForceBalance.typicalN(dead));
        for (int k = 0; k < 20; k++) resting.under(dead);
        solves += resting.solves();
      }
      return (System.nanoTime() - start) / 1e6 / solves;
    });
    double judgesMs = median(() -> timed(() -> judged(heap)));
    double verdictMs = median(() -> timed(() -> TierQuestion.unmet(heap, 1)));
    // Beside every line from a side one smaller push; see TierQuestion.
    int sides = directions(heap);
    return new Profile(judgesMs, verdictMs, count(heap, (lines, presses) -> lines + sides + presses), solveMs);
  }

  private static double timed(Runnable work) {
    long start = System.nanoTime();
    work.run();
    return (System.nanoTime() - start) / 1e6;
  }

  /** Of three, after one to warm up; where that takes long it is left at one. */
  private static double median(DoubleSupplier once) {
    long start = System.nanoTime();
    double first = once.getAsDouble();
    if (System.nanoTime() - start > LONG_NS) return first;
    double[] all = {once.getAsDouble(), once.getAsDouble(), once.getAsDouble()};
    Arrays.sort(all);
    return all[1];
  }

  /** The least push margin of every rock. */
  public static Object weakest(SceneHeap heap) {
    return pushes(heap, PushStudy::weakest);
  }

  /** Every push rose. */
  public static Object roses(SceneHeap heap) {
    return pushes(heap, PushStudy::rose);
  }

  private static Object pushes(SceneHeap heap, BiFunction<PushStudy, Integer, ?> of) {
    PushStudy pushes = new HeapStudy(heap, THREADS).pushes();
    return Parallel.map(IntStream.range(0, heap.rocks().size()).boxed().toList(), THREADS, rock -> of.apply(pushes, rock));
  }

  /** What is asked again after one rock moved: its contacts, and the verdict of the heaps that changed. */
  public static boolean recheck(Scene scene, List<PlacedRock> placed, Recall recall) {
    return TierQuestion.unmet(recall.heap(scene, placed), THREADS, recall).isEmpty();
  }

  /** The whole check, as the command runs it. */
  public static CheckReport check(Scene scene, Shapes shapes) {
    return Check.run(scene, shapes, CheckOptions.DEFAULT);
  }

  public static Object vary(SceneHeap heap, int count) {
    return Variations.run(heap, count, 1, THREADS, CheckWatch.NONE);
  }
}
