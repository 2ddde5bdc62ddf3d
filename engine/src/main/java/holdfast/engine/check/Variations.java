package holdfast.engine.check;

import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Recall;
import holdfast.engine.statics.StateJudges;
import holdfast.engine.statics.StateJudges.Judged;
import holdfast.engine.statics.TierPushes;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Twist;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.work.Parallel;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * The same layout with what its owner can only guess guessed otherwise: friction (one factor for all, since it is the same
 * water and slime), mass of each rock, its centre of mass, where along a patch a contact bears and how it faces. Poses are
 * kept, since moving them would only open the contacts; bonds are kept. Every variation is asked whether it stays in every
 * state, and if so whether every rock bears the tier's push, and what comes before it, without going over; the first no ends
 * it.
 *
 * <p>Ranges are those of the settings, drawn evenly. Variation {@code k} of a seed is the same on any number of threads.
 */
final class Variations {
  private final SceneHeap scene;
  private final Settings settings;
  private final Map<State, List<Wrench>> loads;
  private final IntFunction<TierPushes> asked;

  private Variations(SceneHeap scene, IntFunction<TierPushes> asked) {
    this.scene = scene;
    this.asked = asked;
    settings = scene.scene().settings();
    loads = scene.weights().loads();
  }

  /** How one variation fared; {@code weak} is the rock that gave way first. */
  private record Outcome(boolean stands, boolean passes, Optional<String> weak) {}

  /** Tries {@code count} variations. */
  static VariationsResult run(SceneHeap scene, int count, long seed, int threads, CheckWatch watch) {
    return run(scene, count, seed, threads, watch,
        rock -> TierPushes.on(rock, scene.rocks().get(rock), scene.scene().settings()));
  }

  /** The same with other pushes on each rock than its tier asks for. */
  static VariationsResult run(
      SceneHeap scene, int count, long seed, int threads, CheckWatch watch, IntFunction<TierPushes> asked) {
    Variations v = new Variations(scene, asked);
    AtomicInteger done = new AtomicInteger();
    watch.at(CheckWatch.Stage.VARIATIONS, 0, count);
    List<Outcome> all = Parallel.map(LongStream.range(0, count).boxed().toList(), threads, k -> {
      Outcome o = v.one(new SplittableRandom(mixed(seed, k)));
      watch.at(CheckWatch.Stage.VARIATIONS, done.incrementAndGet(), count);
      return o;
    });
    Map<String, Integer> weak = new LinkedHashMap<>();
    for (int i = 0; i < scene.rocks().size(); i++) weak.put(scene.name(i), 0);
    for (Outcome o : all) o.weak.ifPresent(w -> weak.merge(w, 1, Integer::sum));
    List<VariationsResult.Weak> order = new ArrayList<>();
    weak.forEach((rock, times) -> {
      if (times > 0) order.add(new VariationsResult.Weak(rock, times));
    });
    order.sort(Comparator.comparingInt(VariationsResult.Weak::times).reversed());
    return new VariationsResult(count, seed, (int) all.stream().filter(Outcome::stands).count(),
        (int) all.stream().filter(Outcome::passes).count(), order);
  }

  private static long mixed(long seed, long k) {
    return new SplittableRandom(seed).nextLong() + 0x9E3779B97F4A7C15L * (k + 1);
  }

  private Outcome one(SplittableRandom random) {
    Heap heap = scene.heap();
    double friction = 1 + range(random, settings.get(Setting.VARY_FRICTION));
    double[] mass = new double[heap.bodies().size()];
    List<Heap.Body> bodies = new ArrayList<>();
    for (int i = 0; i < mass.length; i++) {
      mass[i] = 1 + range(random, settings.get(Setting.VARY_DENSITY));
      Heap.Body b = heap.bodies().get(i);
      double off = settings.get(Setting.VARY_CENTRE) * b.sizeM();
      Vec3 shift = new Vec3(range(random, off), range(random, off), range(random, off));
      bodies.add(new Heap.Body(b.name(), b.centre().plus(shift), b.sizeM(), b.massKg() * mass[i]));
    }
    List<Link> links = new ArrayList<>();
    for (Link l : heap.links()) links.add(l instanceof Link.Bearing b ? varied(b, friction, random) : l);
    return judge(new Heap(bodies, links), mass);
  }

  private Link varied(Link.Bearing b, double friction, SplittableRandom random) {
    double most = settings.get(Setting.VARY_CONTACT_MM) * 1e-3;
    Vec3 u = b.normal().anyPerpendicular();
    Vec3 v = b.normal().cross(u);
    Vec3 shift = u.times(range(random, most)).plusTimes(range(random, most), v);
    double about = Math.PI * random.nextDouble();
    Quat lean = Quat.about(u.times(Math.cos(about)).plusTimes(Math.sin(about), v),
        Math.toRadians(range(random, settings.get(Setting.VARY_NORMAL_DEG))));
    Vec3 middle = Vec3.ZERO;
    for (Vec3 p : b.polygon()) middle = middle.plusTimes(1.0 / b.polygon().size(), p);
    List<Vec3> polygon = new ArrayList<>();
    for (Vec3 p : b.polygon()) polygon.add(middle.plus(shift).plus(lean.rotate(p.minus(middle))));
    return new Link.Bearing(b.a(), b.b(), lean.rotate(b.normal()).unit(), polygon, b.friction() * friction);
  }

  private static double range(SplittableRandom random, double half) {
    return half * (2 * random.nextDouble() - 1);
  }

  private Outcome judge(Heap heap, double[] mass) {
    Map<State, List<Wrench>> varied = new EnumMap<>(State.class);
    loads.forEach((state, whole) -> varied.put(state,
        IntStream.range(0, mass.length).mapToObj(i -> whole.get(i).times(mass[i])).toList()));
    List<List<Judged>> judged = StateJudges.toFirstUnsafe(heap.separate(), varied, 1, new Recall());
    for (List<Judged> ofPart : judged) {
      for (Judged j : ofPart) {
        if (!j.judge().safe()) return new Outcome(false, false, Optional.of(weakest(j.judge().heap(), j.judge().rest())));
      }
    }
    for (List<Judged> ofPart : judged) {
      for (Judged j : StateJudges.governing(ofPart)) {
        for (int rock : j.judge().part().bodies()) {
          if (goesOver(j.judge(), heap, rock)) return new Outcome(true, false, Optional.of(scene.name(rock)));
        }
      }
    }
    return new Outcome(true, true, Optional.empty());
  }

  /** The rock that moves fastest; the first of the heap where no movement was seen. */
  private static String weakest(Heap heap, Rest rest) {
    if (!(rest instanceof Rest.Moves m)) return heap.bodies().get(0).name();
    int best = 0;
    for (int i = 1; i < heap.bodies().size(); i++) if (speed(heap, m.mechanism(), i) > speed(heap, m.mechanism(), best)) best = i;
    return heap.bodies().get(best).name();
  }

  private static double speed(Heap heap, Mechanism m, int i) {
    Twist t = m.twists().get(i);
    return t.velocity().norm() + t.spin().norm() * heap.bodies().get(i).sizeM() / 2;
  }

  /** Whether the tier's push from some side, or a part of it on the way, tips something; a rock that slides is not counted. */
  private boolean goesOver(PartJudge judge, Heap heap, int rock) {
    return asked.apply(rock).firstToTip(State.FILLED, judge, heap, settings.get(Setting.PUSH_TIER_N)).isPresent();
  }

  /** What the variations have to say; nothing when all stand and pass. */
  static List<Finding> findings(VariationsResult v) {
    if (v.passes() == v.count()) return List.of();
    String weak = v.weak().isEmpty() ? "" : "; " + v.weak().get(0).rock() + " is the weak one";
    // Friction and mass are as likely off by so much as not: what a few of them do not bear is told before building.
    int good = v.stands() < v.count() ? v.stands() : v.passes();
    return List.of(Draft.warn(Code.VARIES).about(v.weak().stream().map(VariationsResult.Weak::rock).toList())
        .figure(100.0 * good / v.count(), 100, "% of variations")
        .say(Draft.text("It stands in %d and bears the push in %d of %d variations of friction, mass, centre and contacts%s.",
            v.stands(), v.passes(), v.count(), weak),
            v.weak().isEmpty() ? "" : "Give " + v.weak().get(0).rock() + " a broader seat or fix it to what it bears on."));
  }

  /** One sentence for the verdict. */
  static String words(VariationsResult v) {
    String weak = v.weak().isEmpty() ? "" : Draft.text("; %s is the weak one", v.weak().get(0).rock());
    return Draft.text("Stands in %d of %d variations, bears the push in %d%s.", v.stands(), v.count(), v.passes(), weak);
  }
}
