package holdfast.engine.bonding;

import holdfast.engine.contact.PairFit;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.SceneHeap;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Side;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Which joints to fix so that the tier is met at the least cost. Separate heaps are separate searches.
 *
 * <p>Fixing one more joint is not known to help in every case (a bond takes the place of friction), so nothing is cut off by
 * an assumed order. First everything is fixed; from that, joints are taken out one by one, the dearest first, while the
 * tier is still met: a set from which no single joint can go. Then all sets that cost less are asked in order of cost; the
 * first that meets the tier is the cheapest of all, and if none does the set in hand is. Where there are too many to ask,
 * the set in hand is returned as not proven least. Whatever is returned has been asked once more.
 *
 * <p>Sets that do not meet the tier mostly fail by the same load: the loads that refused the last ones are tried first, and
 * only a set that bears these is asked in full. That changes no answer, since each of them is a part of the full question.
 */
public final class JointSearch {
  /** Work for one heap before the search settles for what it has; a set that a remembered load refuses counts one. */
  static final int MOST_WORK = 4000;

  /** The work of a tier question asked in full. */
  private static final int FULL_WORK = 10;

  /** Refusing loads that are remembered. */
  private static final int REMEMBERED = 4;

  /** A joint that shows on a side people look through costs this much more: it only breaks ties. */
  private static final double SEEN_SHARE = 1e-3;

  private JointSearch() {}

  /** What came of the search for one separate heap. */
  public sealed interface Found {
    /**
     * These joints, added to those of the scene, meet the tier.
     *
     * @param least no cheaper set does
     */
    record Enough(List<JointSpec> joints, boolean least) implements Found {}

    /** Not even fixing every joint meets it. */
    record NotEnough(List<String> rocks, String reason, int joints) implements Found {}
  }

  /** Searches every heap that does not meet the tier; empty when all do. */
  public static List<Found> search(SceneHeap scene, int threads) {
    List<Found> out = new ArrayList<>();
    for (Heap.Part part : scene.heap().separate()) {
      List<Integer> rocks = part.bodies();
      if (TierQuestion.unmet(scene, rocks, threads).isEmpty()) continue;
      List<JointSpec> candidates = candidates(scene, rocks);
      Memory memory = new Memory(scene, rocks, threads);
      List<String> names = rocks.stream().map(scene::name).toList();
      if (candidates.isEmpty()) {
        out.add(new Found.NotEnough(names, "there is no joint left to fix", 0));
      } else if (!memory.meets(candidates)) {
        String why = TierQuestion.unmet(scene.withJoints(with(scene, candidates)), rocks, threads).orElse("the tier is not met");
        out.add(new Found.NotEnough(names, why, candidates.size()));
      } else {
        out.add(cheapest(candidates, costs(scene, candidates), memory::refuses, memory::meets));
      }
    }
    return out;
  }

  /** Asks the tier question of sets of joints, and remembers what refused the last ones. */
  private static final class Memory {
    private final SceneHeap scene;
    private final List<Integer> rocks;
    private final int threads;
    private final List<TierQuestion.Refusal> known = new ArrayList<>();

    Memory(SceneHeap scene, List<Integer> rocks, int threads) {
      this.scene = scene;
      this.rocks = rocks;
      this.threads = threads;
    }

    /** One of the remembered loads refuses the set. */
    boolean refuses(List<JointSpec> set) {
      SceneHeap fixed = scene.withJoints(with(scene, set));
      for (TierQuestion.Refusal r : List.copyOf(known)) {
        if (!TierQuestion.refusedAgain(fixed, r)) continue;
        known.remove(r);
        known.add(0, r);
        return true;
      }
      return false;
    }

    /** The full question. */
    boolean meets(List<JointSpec> set) {
      Optional<TierQuestion.Refusal> no = TierQuestion.refusal(scene.withJoints(with(scene, set)), rocks, threads);
      no.ifPresent(r -> {
        known.removeIf(k -> k.kind() == r.kind() && k.state() == r.state() && k.rock() == r.rock());
        known.add(0, r);
        if (known.size() > REMEMBERED) known.remove(REMEMBERED);
      });
      return no.isEmpty();
    }
  }

  /** The cheapest set, every set asked in full. */
  static Found.Enough cheapest(List<JointSpec> candidates, double[] cost, Predicate<List<JointSpec>> meets) {
    return cheapest(candidates, cost, set -> false, meets);
  }

  /**
   * The cheapest set, given that all candidates together meet the tier.
   *
   * @param refused a quick no, only to sets that do not meet it
   */
  static Found.Enough cheapest(
      List<JointSpec> candidates, double[] cost, Predicate<List<JointSpec>> refused, Predicate<List<JointSpec>> meets) {
    BitSet chosen = new BitSet();
    chosen.set(0, candidates.size());
    List<Integer> dearestFirst = new ArrayList<>();
    for (int i = 0; i < candidates.size(); i++) dearestFirst.add(i);
    dearestFirst.sort(Comparator.comparingDouble((Integer i) -> cost[i]).reversed());
    for (int i : dearestFirst) {
      chosen.clear(i);
      List<JointSpec> set = of(candidates, chosen);
      if (refused.test(set) || !meets.test(set)) chosen.set(i);
    }
    double least = total(cost, chosen);
    InOrderOfCost cheaper = new InOrderOfCost(cost);
    boolean proven = true;
    int work = 0;
    for (BitSet set = cheaper.next(); set != null && total(cost, set) < least - 1e-12; set = cheaper.next()) {
      if (++work > MOST_WORK) {
        proven = false;
        break;
      }
      List<JointSpec> joints = of(candidates, set);
      if (refused.test(joints)) continue;
      work += FULL_WORK - 1;
      if (meets.test(joints)) {
        chosen = set;
        break;
      }
    }
    List<JointSpec> joints = of(candidates, chosen);
    if (!meets.test(joints)) throw new IllegalStateException("the same tier question was answered in two ways");
    return new Found.Enough(joints, proven);
  }

  private static double total(double[] cost, BitSet set) {
    return set.stream().mapToDouble(i -> cost[i]).sum();
  }

  private static List<JointSpec> of(List<JointSpec> all, BitSet set) {
    return set.stream().mapToObj(all::get).collect(Collectors.toList());
  }

  /** All subsets, the cheapest first; equal ones in a fixed order. */
  private static final class InOrderOfCost {
    private record Entry(double cost, int last, BitSet set) {}

    private final double[] cost;
    private final Integer[] byCost;
    private final PriorityQueue<Entry> queue = new PriorityQueue<>(
        Comparator.comparingDouble(Entry::cost).thenComparing(e -> e.set.toString()));
    private boolean started;

    InOrderOfCost(double[] cost) {
      this.cost = cost;
      byCost = new Integer[cost.length];
      for (int i = 0; i < cost.length; i++) byCost[i] = i;
      Arrays.sort(byCost, Comparator.comparingDouble(i -> cost[i]));
    }

    /** Each set is reached once: by adding the next dearer joint, or by putting that in the place of the dearest. */
    BitSet next() {
      if (!started) {
        started = true;
        if (cost.length > 0) {
          BitSet first = new BitSet();
          first.set(byCost[0]);
          queue.add(new Entry(cost[byCost[0]], 0, first));
        }
        return new BitSet();
      }
      Entry e = queue.poll();
      if (e == null) return null;
      if (e.last + 1 < byCost.length) {
        BitSet more = (BitSet) e.set.clone();
        more.set(byCost[e.last + 1]);
        queue.add(new Entry(total(cost, more), e.last + 1, more));
        BitSet instead = (BitSet) e.set.clone();
        instead.clear(byCost[e.last]);
        instead.set(byCost[e.last + 1]);
        queue.add(new Entry(total(cost, instead), e.last + 1, instead));
      }
      return e.set;
    }
  }

  /** Every pair of rocks that touch and are not fixed yet, but for those that are to stay removable. */
  static List<JointSpec> candidates(SceneHeap scene, List<Integer> rocks) {
    List<JointSpec> out = new ArrayList<>();
    for (PairFit f : scene.contacts().fits()) {
      if (f.kind() == PairFit.Kind.HOVERS || !rocks.contains(f.a()) || !rocks.contains(f.b())) continue;
      String a = scene.name(f.a());
      String b = scene.name(f.b());
      if (scene.scene().joint(a, b).filter(j -> j.bond() != JointSpec.Bond.NONE).isPresent()) continue;
      if (scene.rocks().get(f.a()).rock().removable() || scene.rocks().get(f.b()).rock().removable()) continue;
      double kg = Math.min(scene.rocks().get(f.a()).body().dryMassKg(), scene.rocks().get(f.b()).body().dryMassKg());
      out.add(JointSpec.paste(a, b, JointSpec.Bond.MORTAR, usualMl(kg)));
    }
    return out;
  }

  /** Mixed mortar, with a little more for a joint that shows on a side people look through. */
  static double[] costs(SceneHeap scene, List<JointSpec> candidates) {
    double[] cost = new double[candidates.size()];
    Vec3 middle = new Vec3(scene.scene().tank().lengthMm(), scene.scene().tank().widthMm(), 0).times(0.5e-3);
    for (int i = 0; i < cost.length; i++) {
      JointSpec j = candidates.get(i);
      Vec3 at = place(scene, j).minus(middle);
      double seen = 0;
      for (Side s : scene.scene().tank().viewedFrom()) seen += Math.max(0, at.dot(s.outward()));
      cost[i] = j.amountMl() * (1 + SEEN_SHARE * seen);
    }
    return cost;
  }

  private static Vec3 place(SceneHeap scene, JointSpec j) {
    for (PairFit f : scene.contacts().fits()) {
      if (f.b() < scene.rocks().size() && j.joins(scene.name(f.a()), scene.name(f.b()))) return f.onA();
    }
    return Vec3.ZERO;
  }

  /** Mixed mortar in a joint by the mass of the smaller rock, millilitres (derived from common practice). */
  public static double usualMl(double smallerKg) {
    return smallerKg < 1 ? 15 : smallerKg < 4 ? 40 : 90;
  }

  private static List<JointSpec> with(SceneHeap scene, List<JointSpec> added) {
    List<JointSpec> all = new ArrayList<>();
    for (JointSpec j : scene.scene().joints()) {
      if (added.stream().noneMatch(n -> n.joins(j.a(), j.b()))) all.add(j);
    }
    all.addAll(added);
    return all;
  }
}
