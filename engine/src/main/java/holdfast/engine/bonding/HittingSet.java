package holdfast.engine.bonding;

import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The least costly set that has something in common with each of some sets: branch and bound, on the elements of a set that
 * is not hit yet. What is left costs at least the cheapest element of each of some sets that share none.
 */
final class HittingSet {
  /** Branches after which the best set in hand is taken; it then need not be the least. */
  private static final int MOST_BRANCHES = 100_000;

  private final List<BitSet> sets;
  private final double[] cost;
  private BitSet best;
  private double bestCost = Double.POSITIVE_INFINITY;
  private int branches;

  private HittingSet(List<BitSet> sets, double[] cost) {
    this.sets = sets;
    this.cost = cost;
  }

  /**
   * @param sets what is to be hit, none of them empty
   * @param cost of every element, above zero
   */
  static BitSet least(List<BitSet> sets, double[] cost) {
    HittingSet h = new HittingSet(sets, cost);
    h.branch(new BitSet(), new BitSet(), 0);
    return h.best;
  }

  private void branch(BitSet chosen, BitSet forbidden, double spent) {
    if (best != null && ++branches > MOST_BRANCHES) return;
    BitSet smallest = null;
    BitSet counted = new BitSet();
    double more = 0;
    for (BitSet s : sets) {
      if (s.intersects(chosen)) continue;
      BitSet open = (BitSet) s.clone();
      open.andNot(forbidden);
      if (open.isEmpty()) return;
      if (smallest == null || open.cardinality() < smallest.cardinality()) smallest = open;
      if (open.intersects(counted)) continue;
      counted.or(open);
      more += open.stream().mapToDouble(i -> cost[i]).min().orElseThrow();
    }
    if (!(spent + more < bestCost)) return;
    if (smallest == null) {
      best = (BitSet) chosen.clone();
      bestCost = spent;
      return;
    }
    BitSet without = (BitSet) forbidden.clone();
    int[] cheapestFirst = IntStream.of(smallest.stream().toArray()).boxed()
        .sorted((i, j) -> Double.compare(cost[i], cost[j])).mapToInt(i -> i).toArray();
    for (int i : cheapestFirst) {
      chosen.set(i);
      branch(chosen, without, spent + cost[i]);
      chosen.clear(i);
      without.set(i);
    }
  }
}
