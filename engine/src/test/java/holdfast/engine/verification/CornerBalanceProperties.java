package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.balance.CornerBalance;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.LongRange;

/**
 * What stays is never called impossible, whatever bonds and bare contacts are put beside its own (derived: forces at rest
 * are admissible forces in balance). A failure names the seed that makes its heap.
 */
class CornerBalanceProperties {
  private static final int FEW = 40;
  private static final int MANY = 1500;
  private static final int MOST_ROCKS = 9;

  /** Pulls that a bond is drawn from, N/m2: from next to nothing to a third of usual mortar. */
  private static final double[] STRENGTHS = {500, 5_000, 30_000};

  @Property(tries = FEW, shrinking = ShrinkingMode.OFF)
  void whatStaysIsPossible(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    judged(seed);
  }

  @Property(tries = MANY, shrinking = ShrinkingMode.OFF)
  @Tag("slow")
  void whatStaysIsPossibleInManyHeaps(@ForAll @LongRange(min = 0) long seed) {
    judged(seed);
  }

  private static void judged(long seed) {
    RandomHeap made = RandomHeap.of(seed, MOST_ROCKS);
    Heap bare = made.heap();
    Random r = new Random(~seed);
    double strength = STRENGTHS[r.nextInt(STRENGTHS.length)];
    List<Link> own = new ArrayList<>();
    List<Link> most = new ArrayList<>(bare.links());
    for (Link l : bare.links()) {
      Link bond = l.b() == Heap.GROUND || l.polygon().size() < 3 ? l
          : new Link.Bond(l.a(), l.b(), l.normal(), l.polygon(), 1e-3, strength, strength, 1e6, r.nextBoolean());
      boolean open = bond != l && r.nextBoolean();
      if (open) most.add(bond);
      own.add(open && r.nextBoolean() ? bond : l);
    }
    Heap heap = new Heap(bare.bodies(), own);
    Heap relaxed = new Heap(bare.bodies(), most);
    List<Wrench> dead = RandomHeap.weights(heap);
    List<Wrench> live = made.push(heap, r.nextInt(heap.bodies().size()), Vec3.heading(360 * r.nextDouble()));
    Heap.Part part = heap.part(IntStream.range(0, heap.bodies().size()).boxed().toList());
    PartJudge judge = new PartJudge(part, dead);
    if (!judge.safe()) return;
    double low = 0;
    double high = 60;
    for (int k = 0; k < 8; k++) {
      double middle = (low + high) / 2;
      if (judge.under(live, middle).stays()) low = middle;
      else high = middle;
    }
    assertThat(CornerBalance.impossible(relaxed, sum(dead, live, low))).as("%s N on heap %d", low, seed).isFalse();
  }

  private static List<Wrench> sum(List<Wrench> dead, List<Wrench> live, double factor) {
    return IntStream.range(0, dead.size()).mapToObj(i -> dead.get(i).plus(live.get(i).times(factor))).toList();
  }
}
