package holdfast.engine.check;

import static holdfast.engine.check.Draft.text;

import holdfast.engine.check.CheckReport.JointLine;
import holdfast.engine.contact.Contact;
import holdfast.engine.contact.PairFit;
import holdfast.engine.contact.TankSolids;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.heap.BondUse;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.SceneHeap.Kind;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.work.Parallel;
import holdfast.model.scene.JointSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;

/**
 * What each support is worth: the heap is judged again without one foot on sand, without one rock, without one bond,
 * without the panes. Also the lines of the joints, and small rocks under big ones.
 */
final class SupportStudy {
  /** A rock this many times heavier than the one that alone carries it is remarked on. */
  private static final double BIG_ON_SMALL = 1.5;

  /** No rock is taken out. Not -1: that stands for the ground. */
  private static final int NO_ROCK = Integer.MIN_VALUE;

  private final HeapStudy study;
  private final SceneHeap scene;
  private final int threads;
  private final boolean safe;

  SupportStudy(HeapStudy study, int threads) {
    this.study = study;
    this.threads = threads;
    scene = study.scene();
    safe = study.states().stream().allMatch(s -> study.judges(s).stream().allMatch(PartJudge::safe));
  }

  /** What is seen at a glance, without judging any heap again. */
  List<Finding> seen() {
    List<Finding> out = new ArrayList<>(bigOnSmall());
    onSand(out);
    return out;
  }

  List<Finding> findings() {
    List<Finding> out = seen();
    if (!safe) return out;
    undermined(out);
    lifted(out);
    singleBonds(out);
    neededPanes(out);
    return out;
  }

  /** What first falls in a heap with only some of its links, in the first state in which it does, and how when it was seen. */
  private record Fallen(State state, List<String> rocks, Optional<Mechanism> mechanism) {}

  private Optional<Fallen> without(Heap heap, IntPredicate keptLink, int rockOut) {
    List<Link> links = new ArrayList<>();
    for (int i = 0; i < heap.links().size(); i++) {
      Link l = heap.links().get(i);
      if (keptLink.test(i) && l.a() != rockOut && l.b() != rockOut) links.add(l);
    }
    Heap rest = new Heap(heap.bodies(), links);
    for (State s : study.states()) {
      List<Wrench> loads = scene.weights().loads(s);
      for (Heap.Part p : rest.separate()) {
        if (p.bodies().size() == 1 && p.bodies().get(0) == rockOut) continue;
        PartJudge j = study.judged(p, s, loads);
        if (j.safe()) continue;
        Mechanism m = j.rest() instanceof Rest.Moves moves ? moves.mechanism() : null;
        return Optional.of(new Fallen(s, m == null
            ? p.heap().bodies().stream().map(Heap.Body::name).toList() : StandingFindings.movers(p.heap(), m),
            Optional.ofNullable(m).map(seen -> study.whole(p, seen))));
      }
    }
    return Optional.empty();
  }

  private void onSand(List<Finding> out) {
    for (int i = 0; i < scene.seats().size(); i++) {
      if (scene.seats().get(i).kind() != Kind.SAND) continue;
      String rock = scene.name(scene.seats().get(i).rock());
      out.add(Draft.warn(Code.ON_SAND).about(rock).say(
          text("%s rests on sand, which animals dig and currents wash away.", rock),
          text("Stand %s on the floor itself, and lay the sand round it.", rock)));
    }
  }

  private void undermined(List<Finding> out) {
    List<Integer> sand = new ArrayList<>();
    for (int i = 0; i < scene.seats().size(); i++) if (scene.seats().get(i).kind() == Kind.SAND) sand.add(i);
    if (sand.isEmpty()) return;
    boolean any = false;
    for (int foot : sand) {
      Optional<Fallen> fallen = without(scene.heap(), i -> i != foot, NO_ROCK);
      if (fallen.isEmpty()) continue;
      any = true;
      String rock = scene.name(scene.seats().get(foot).rock());
      out.add(Draft.fail(Code.UNDERMINED).about(rock).in(fallen.get().state()).moving(fallen.get().mechanism()).say(
          text("When the sand under %s is dug away, %s.", rock, fall(fallen.get().rocks())),
          text("Stand %s on the floor itself before the sand goes in.", rock)));
    }
    if (!any) {
      without(scene.heap(), i -> !sand.contains(i), NO_ROCK).ifPresent(f -> out.add(
          Draft.fail(Code.SAND_ONLY).about(f.rocks()).in(f.state()).moving(f.mechanism()).say(
              text("With all sand dug away, %s.", fall(f.rocks())), "Give the heap a foot on the floor itself.")));
    }
  }

  /** A rock taken out of its heap. */
  private record Lifted(List<State> states, List<PartJudge> heap, int rock, int rocks) {}

  private void lifted(List<Finding> out) {
    List<Integer> rocks = new ArrayList<>();
    for (int i = 0; i < scene.rocks().size(); i++) rocks.add(i);
    List<Optional<Fallen>> found = Parallel.map(rocks, threads, r -> study.recall().of(
        new Lifted(study.states(), study.of(r), r, rocks.size()), () -> without(scene.heap(), i -> true, r)));
    for (int r : rocks) {
      found.get(r).ifPresent(f -> out.add(Draft.note(Code.LIFTED).about(scene.name(r)).about(f.rocks()).in(f.state())
          .moving(f.mechanism()).say(
          text("With %s lifted out, %s.", scene.name(r), fall(f.rocks())),
          text("Take %s off before %s.", Draft.names(f.rocks()), scene.name(r)))));
    }
  }

  private void singleBonds(List<Finding> out) {
    for (JointSpec j : scene.scene().joints()) {
      if (j.bond() == JointSpec.Bond.NONE) continue;
      List<JointSpec> rest = scene.scene().joints().stream().filter(o -> o != j).toList();
      SceneHeap broken = scene.withJoints(rest);
      for (State s : study.states()) {
        List<Wrench> loads = broken.weights().loads(s);
        Optional<PartJudge> bad = broken.heap().separate().stream()
            .map(p -> study.judged(p, s, loads)).filter(p -> !p.safe()).findFirst();
        if (bad.isEmpty()) continue;
        Optional<Mechanism> how = bad.filter(p -> p.rest() instanceof Rest.Moves)
            .map(p -> study.whole(p.part(), ((Rest.Moves) p.rest()).mechanism()));
        out.add(Draft.warn(Code.SINGLE_BOND).about(j.a(), j.b()).in(s).moving(how).say(
            text("If the bond between %s and %s gives way, the heap falls: it hangs on that one bond.", j.a(), j.b()),
            "Add a rod or a second joint, or a rest from below."));
        break;
      }
    }
  }

  private void neededPanes(List<Finding> out) {
    if (scene.seats().stream().noneMatch(s -> s.kind() == Kind.PANE)) return;
    Set<String> allowed = scene.scene().tank().mayTouch().stream().map(TankSolids::pane).collect(Collectors.toSet());
    Optional<Fallen> not = without(scene.heap(), i -> !onPane(i) || allowed.contains(scene.seats().get(i).other()), NO_ROCK);
    // Panes bear without friction here, so that what leans where it may does not need the pane's.
    Optional<Fallen> fallen = not.isPresent() ? not : without(scene.heap(), i -> !onPane(i), NO_ROCK);
    fallen.ifPresent(f -> out.add(
        (not.isPresent() ? Draft.fail(Code.NEEDS_PANE) : Draft.warn(Code.NEEDS_PANE))
            .about(f.rocks()).in(f.state()).moving(f.mechanism()).say(
            text("Without the pane it leans on, %s: the glass holds it up%s.", fall(f.rocks()),
                not.isPresent() ? "" : ", which the scene allows; what a side pane bears is not worked out"),
            text("Give %s a stand of its own, clear of the glass.", f.rocks().get(0)))));
  }

  private boolean onPane(int link) {
    return scene.seats().get(link).kind() == Kind.PANE;
  }

  private static String fall(List<String> rocks) {
    return Draft.names(rocks) + (rocks.size() == 1 ? " falls" : " fall");
  }

  private List<Finding> bigOnSmall() {
    List<Finding> out = new ArrayList<>();
    for (int i = 0; i < scene.rocks().size(); i++) {
      int rock = i;
      List<Integer> under = scene.contacts().contacts().stream()
          .filter(c -> c.a() == rock && c.normal().z() > 0.5 || c.b() == rock && c.normal().z() < -0.5)
          .map(c -> c.a() == rock ? c.b() : c.a()).distinct().toList();
      if (under.size() != 1 || under.get(0) >= scene.rocks().size()) continue;
      double own = scene.rocks().get(i).body().dryMassKg();
      double below = scene.rocks().get(under.get(0)).body().dryMassKg();
      if (own > BIG_ON_SMALL * below) {
        out.add(Draft.warn(Code.BIG_ON_SMALL).about(scene.name(i), scene.name(under.get(0))).figure(own, below, "kg").say(
            text("%s (%.1f kg) stands on %s (%.1f kg) alone: big on small.", scene.name(i), own, scene.name(under.get(0)), below),
            "Put the bigger rock below."));
      }
    }
    return out;
  }

  /** One line a pair of rocks that bear on each other. */
  List<JointLine> joints() {
    Map<Long, List<Contact>> pairs = new LinkedHashMap<>();
    for (Contact c : scene.contacts().contacts()) {
      if (c.b() < scene.rocks().size()) pairs.computeIfAbsent(key(c.a(), c.b()), k -> new ArrayList<>()).add(c);
    }
    Map<Long, Double> distance = new LinkedHashMap<>();
    for (PairFit f : scene.contacts().fits()) distance.put(key(f.a(), f.b()), f.distanceM());
    List<JointLine> out = new ArrayList<>();
    pairs.forEach((k, list) -> {
      String a = scene.name(list.get(0).a());
      String b = scene.name(list.get(0).b());
      JointSpec.Bond bond = scene.scene().joint(a, b).map(JointSpec::bond).orElse(JointSpec.Bond.NONE);
      double area = list.stream().mapToDouble(Contact::areaM2).sum() * 1e6;
      out.add(new JointLine(a, b, list.size(), area, distance.get(k) * 1e3, bond, use(list.get(0).a(), list.get(0).b())));
    });
    return out;
  }

  private long key(int a, int b) {
    return (long) a * scene.solids().size() + b;
  }

  /** The largest part of a bond's strength that the weight calls on in any state in which the heap stays. */
  private double use(int a, int b) {
    double most = 0;
    for (State s : study.states()) {
      PartJudge j = study.judge(s, a);
      if (!(j.rest() instanceof Rest.Stays stays)) continue;
      for (int k = 0; k < j.part().links().size(); k++) {
        Link whole = scene.heap().links().get(j.part().links().get(k));
        if (Math.min(whole.a(), whole.b()) != a || Math.max(whole.a(), whole.b()) != b) continue;
        most = Math.max(most, BondUse.of(j.heap().links().get(k), stays.forces().links().get(k)));
      }
    }
    return most;
  }
}
