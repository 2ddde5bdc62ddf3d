package holdfast.engine.build;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.Solid;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Works out how a scene is built: the order of the bench and the order in the tank, each an order of {@link BuildOrder}.
 *
 * <p>Pieces that are joined on the bench are judged by the judge of their rocks, with the joints of the bench set.
 */
final class BuildPlanner {
  private final Scene scene;
  private final List<String> rocks;
  private final Supports supports;
  private final List<Modules.Module> modules;
  private final List<Integer> moduleOf;
  private final Stander stander;
  private final int mostQuestions;

  BuildPlanner(
      Scene scene, List<RockBody> bodies, List<Solid> solids, List<Contact> contacts, Stander stander, int mostQuestions) {
    this.scene = scene;
    this.stander = stander;
    this.mostQuestions = mostQuestions;
    rocks = scene.placements().stream().map(Placement::rock).toList();
    supports = Supports.of(solids, rocks.size(), contacts);
    modules = Modules.of(scene, bodies);
    moduleOf = rocks.stream().map(this::moduleOf).toList();
  }

  private int moduleOf(String rock) {
    return IntStream.range(0, modules.size()).filter(m -> modules.get(m).rocks().contains(rock)).findFirst().orElse(-1);
  }

  /**
   * The plan.
   *
   * @param sandFeet rocks that bear on sand in the finished heap
   */
  BuildPlan planned(Set<Integer> sandFeet) {
    Set<Integer> only = new TreeSet<>(sandFeet);
    only.removeIf(r -> !supports.below().get(r).isEmpty());
    BuildPlan plan = plan(only);
    // What also leans on rock is tried without the sand first; where that stays open, the sand goes in for it too.
    boolean whole = plan.order().complete() && plan.carry().map(c -> c.order().complete()).orElse(true);
    return whole || only.size() == sandFeet.size() ? plan : plan(sandFeet);
  }

  /** The plan; without anything set after filling where the rest would not stay while the water rises. */
  private BuildPlan plan(Set<Integer> onSand) {
    BuildPlan plan = plan(onSand, true);
    return plan.wetFrom() == plan.tankOrder().stages().size() || staysWhileFilling(plan) ? plan : plan(onSand, false);
  }

  private boolean staysWhileFilling(BuildPlan plan) {
    Set<Integer> there = new TreeSet<>();
    Set<Integer> set = new TreeSet<>(plan.carry().isPresent() ? onBench() : Set.of());
    for (BuildOrder.Stage s : plan.tankOrder().stages().subList(0, plan.wetFrom())) {
      there.addAll(plan.carry().isPresent() ? plan.rocksOf(s.rock()) : List.of(s.rock()));
      set.addAll(s.joints());
    }
    Stander judge = there.stream().anyMatch(plan.onSand()::contains) ? stander.withSand() : stander;
    return judge.filling().stays(there, set);
  }

  private BuildPlan plan(Set<Integer> onSand, boolean wetLast) {
    boolean bench = modules.stream().anyMatch(m -> m.rocks().size() > 1);
    List<Set<Integer>> single = IntStream.range(0, rocks.size()).<Set<Integer>>mapToObj(Set::of).toList();
    List<Set<Integer>> pieces = modules.stream()
        .<Set<Integer>>map(m -> new TreeSet<>(m.rocks().stream().map(rocks::indexOf).toList())).toList();
    Supports between = between(pieces);
    List<List<Integer>> locked = locked(between);
    between = without(between, locked);
    List<Boolean> wetPieces = wetLast ? wet(pieces, between) : pieces.stream().map(p -> false).toList();
    List<Boolean> wet = moduleOf.stream().map(wetPieces::get).toList();
    Set<Integer> later = new TreeSet<>();
    for (int r = 0; r < rocks.size() && bench; r++) if (wet.get(r) && pieces.get(moduleOf.get(r)).size() == 1) later.add(r);
    List<BuildOrder.Joint> made = joints(bench ? JointSpec.MadeIn.BENCH : JointSpec.MadeIn.TANK, false);
    BuildOrder.Order order = BuildOrder.search(
        new BuildOrder.Task(supports, made, ranks(single, supports, onSand, wet), moduleOf, onSand, later,
            bench ? Set.of() : numbers(wet)), stander, mostQuestions);
    if (!bench) {
      int from = wetFrom(order, wet);
      return new BuildPlan(rocks, supports, modules, order, Batches.of(scene, order.stages(), living(single), from),
          Optional.empty(), onSand, from);
    }
    // On the bench only those living rocks stay dry for long that are fixed there.
    List<Boolean> fixedLiving = IntStream.range(0, rocks.size())
        .mapToObj(r -> living(Set.of(r)) && modules.get(moduleOf.get(r)).rocks().size() > 1).toList();
    Batches batches = Batches.of(scene, order.stages(), fixedLiving, order.stages().size());

    Set<Integer> sandPieces = new TreeSet<>();
    for (int r : onSand) sandPieces.add(moduleOf.get(r));
    BuildOrder.Order in = BuildOrder.search(
        new BuildOrder.Task(between, joints(JointSpec.MadeIn.TANK, true), ranks(pieces, between, sandPieces, wetPieces),
            IntStream.range(0, pieces.size()).boxed().toList(), sandPieces, Set.of(), numbers(wetPieces)),
        new Pieces(pieces, onBench(), stander), mostQuestions);
    int from = wetFrom(in, wetPieces);
    BuildPlan.Carry carry = new BuildPlan.Carry(in, Batches.of(scene, in.stages(), living(pieces), from), locked);
    return new BuildPlan(rocks, supports, modules, order, batches, Optional.of(carry), onSand, from);
  }

  private static Set<Integer> numbers(List<Boolean> which) {
    Set<Integer> out = new TreeSet<>();
    for (int i = 0; i < which.size(); i++) if (which.get(i)) out.add(i);
    return out;
  }

  /** Numbers of the joints that have set before anything goes into the tank. */
  private Set<Integer> onBench() {
    Set<Integer> out = new TreeSet<>();
    joints(JointSpec.MadeIn.BENCH, false).forEach(j -> out.add(j.number()));
    return out;
  }

  private List<BuildOrder.Joint> joints(JointSpec.MadeIn where, boolean pieces) {
    List<BuildOrder.Joint> out = new ArrayList<>();
    for (int j = 0; j < scene.joints().size(); j++) {
      JointSpec s = scene.joints().get(j);
      int a = rocks.indexOf(s.a());
      int b = rocks.indexOf(s.b());
      if (!s.bonded() || s.madeIn() != where || a < 0 || b < 0) continue;
      out.add(pieces ? new BuildOrder.Joint(j, moduleOf.get(a), moduleOf.get(b)) : new BuildOrder.Joint(j, a, b));
    }
    return out;
  }

  private boolean living(Set<Integer> of) {
    return of.stream().anyMatch(
        r -> scene.rock(rocks.get(r)).map(k -> k.kind() == Rock.Kind.LIVE).orElse(false));
  }

  private List<Boolean> living(List<Set<Integer>> units) {
    return units.stream().map(this::living).toList();
  }

  private Supports between(List<Set<Integer>> pieces) {
    List<Set<Integer>> below = new ArrayList<>();
    Set<Integer> base = new TreeSet<>();
    List<Double> bottom = new ArrayList<>();
    for (int m = 0; m < pieces.size(); m++) {
      Set<Integer> under = new TreeSet<>();
      for (int r : pieces.get(m)) {
        for (int s : supports.below().get(r)) if (moduleOf.get(s) != m) under.add(moduleOf.get(s));
        if (supports.base().contains(r)) base.add(m);
      }
      below.add(under);
      bottom.add(pieces.get(m).stream().mapToDouble(supports.bottomM()::get).min().orElse(0));
    }
    return new Supports(below, base, bottom);
  }

  private static List<List<Integer>> locked(Supports between) {
    List<List<Integer>> out = new ArrayList<>();
    for (int a = 0; a < between.rocks(); a++) {
      for (int b : between.below().get(a)) if (b > a && between.below().get(b).contains(a)) out.add(List.of(a, b));
    }
    return out;
  }

  /** The supports but for those of pieces that rest on each other: either may come first, the judge has the word. */
  private static Supports without(Supports between, List<List<Integer>> locked) {
    List<Set<Integer>> below = new ArrayList<>();
    for (Set<Integer> b : between.below()) below.add(new TreeSet<>(b));
    for (List<Integer> pair : locked) {
      below.get(pair.get(0)).remove(pair.get(1));
      below.get(pair.get(1)).remove(pair.get(0));
    }
    return new Supports(below, between.base(), between.bottomM());
  }

  /** What stands on the floor, then what stands on sand, then what lives, then what can be set after filling. */
  private List<Integer> ranks(List<Set<Integer>> units, Supports on, Set<Integer> onSand, List<Boolean> wet) {
    List<Integer> out = new ArrayList<>();
    for (int u = 0; u < units.size(); u++) {
      out.add(wet.get(u) ? 3 : living(units.get(u)) ? 2 : restsOn(on, u, onSand, new TreeSet<>()) ? 1 : 0);
    }
    return out;
  }

  private static boolean restsOn(Supports on, int unit, Set<Integer> what, Set<Integer> seen) {
    if (what.contains(unit)) return true;
    if (!seen.add(unit)) return false;
    return on.below().get(unit).stream().anyMatch(b -> restsOn(on, b, what, seen));
  }

  /**
   * Living pieces that can be set under water: all of it lives, its joints in the tank are of what sets under water
   * (putty, gel), and what rests on it can wait as well.
   */
  private List<Boolean> wet(List<Set<Integer>> units, Supports on) {
    List<Boolean> out = new ArrayList<>();
    for (Set<Integer> unit : units) {
      boolean lives = unit.stream().allMatch(r -> living(Set.of(r)));
      boolean sets = scene.joints().stream()
          .filter(j -> j.bonded() && j.madeIn() == JointSpec.MadeIn.TANK)
          .filter(j -> unit.contains(rocks.indexOf(j.a())) || unit.contains(rocks.indexOf(j.b())))
          .allMatch(j -> j.bond() == JointSpec.Bond.PUTTY || j.bond() == JointSpec.Bond.GEL);
      out.add(lives && sets);
    }
    for (boolean changed = true; changed;) {
      changed = false;
      for (int u = 0; u < units.size(); u++) {
        if (out.get(u)) continue;
        for (int b : on.below().get(u)) changed |= out.set(b, false);
      }
    }
    return out;
  }

  private static int wetFrom(BuildOrder.Order order, List<Boolean> wet) {
    int from = order.stages().size();
    while (from > 0 && wet.get(order.stages().get(from - 1).rock())) from--;
    return from;
  }

  /** Judges pieces by the judge of their rocks, with the joints of the bench set. */
  private record Pieces(List<Set<Integer>> pieces, Set<Integer> onBench, Stander rocks) implements Stander {
    @Override
    public boolean stays(Set<Integer> placed, Set<Integer> cured) {
      Set<Integer> all = new TreeSet<>();
      for (int p : placed) all.addAll(pieces.get(p));
      Set<Integer> set = new TreeSet<>(onBench);
      set.addAll(cured);
      return rocks.stays(all, set);
    }

    @Override
    public Stander withSand() {
      return new Pieces(pieces, onBench, rocks.withSand());
    }

    @Override
    public Stander filled() {
      return new Pieces(pieces, onBench, rocks.filled());
    }

    @Override
    public Stander filling() {
      return new Pieces(pieces, onBench, rocks.filling());
    }
  }
}
