package holdfast.engine.bonding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The cheapest set against trying every set there is (derived: brute force). */
class CheapestSetTest {
  private static final CheapestSet.Watch NOBODY = (asked, of, best) -> { };

  private static int mask(BitSet set) {
    return set.stream().map(i -> 1 << i).sum();
  }

  private static double bruteForce(double[] cost, IntPredicate enough) {
    double best = Double.POSITIVE_INFINITY;
    for (int m = 0; m < 1 << cost.length; m++) {
      if (enough.test(m)) best = Math.min(best, total(cost, m));
    }
    return best;
  }

  private static double total(double[] cost, int mask) {
    return IntStream.range(0, cost.length).filter(i -> (mask >> i & 1) != 0).mapToDouble(i -> cost[i]).sum();
  }

  /** Every set has an answer of its own, and a reason refuses just the set that it was found with. */
  private record Arbitrary(boolean[] enough) implements CheapestSet.Questions<Integer> {
    @Override
    public Optional<Integer> refusal(BitSet set) {
      return enough[mask(set)] ? Optional.empty() : Optional.of(mask(set));
    }

    @Override
    public int refusedBy(BitSet set, List<Integer> known) {
      return known.indexOf(mask(set));
    }

    @Override
    public boolean refusedWithAny(BitSet most, Integer known) {
      return false;
    }
  }

  @Test
  void isTheCheapestOfAllSetsEvenWhereMoreDoesNotHelp() {
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      int n = 1 + random.nextInt(8);
      double[] cost = random.doubles(n, 1, 100).toArray();
      boolean[] enough = new boolean[1 << n];
      for (int i = 0; i < enough.length; i++) enough[i] = random.nextInt(4) == 0;
      enough[enough.length - 1] = true;
      CheapestSet.Found found = CheapestSet.of(cost, new Arbitrary(enough), 1 + (int) (seed % 2), NOBODY);
      isLeast("seed " + seed, found, cost, m -> enough[m]);
    }
  }

  private static void isLeast(String what, CheapestSet.Found found, double[] cost, IntPredicate enough) {
    assertThat(found.proven()).as(what).isTrue();
    int set = mask(found.set().orElseThrow());
    assertThat(enough.test(set)).as(what).isTrue();
    assertThat(total(cost, set)).as(what).isCloseTo(bruteForce(cost, enough), within(1e-9));
  }

  /** All together are not enough, and now and then nothing is. */
  @Test
  void isTheCheapestWhereAllTogetherAreNotEnough() {
    int none = 0;
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      int n = 1 + random.nextInt(8);
      double[] cost = random.doubles(n, 1, 100).toArray();
      boolean[] enough = new boolean[1 << n];
      for (int i = 0; i < enough.length - 1; i++) enough[i] = random.nextInt(1 << (1 + seed % 8)) == 0;
      CheapestSet.Found found = CheapestSet.of(cost, new Arbitrary(enough), 1 + (int) (seed % 2), NOBODY);
      if (bruteForce(cost, m -> enough[m]) < Double.POSITIVE_INFINITY) {
        isLeast("seed " + seed, found, cost, m -> enough[m]);
      } else {
        none++;
        assertThat(found).as("seed %d", seed).isEqualTo(new CheapestSet.Found(Optional.empty(), true, found.asked()));
      }
    }
    assertThat(none).isBetween(20, 180);
  }

  /** Nine that are not enough in any choice: more than all sets of eight; the answer is open unless it is proved. */
  @Test
  void wherePerhapsNothingIsEnoughItSaysSo() {
    for (boolean proves : new boolean[] {false, true}) {
      // What is wanted is not among the nine.
      Wanting q = new Wanting(List.of(1 << 9), List.of(List.of()), proves, new int[1]);
      CheapestSet.Found found = CheapestSet.of(IntStream.range(0, 9).mapToDouble(i -> 40).toArray(), q, 1, NOBODY);
      assertThat(found).isEqualTo(new CheapestSet.Found(Optional.empty(), proves, 0));
    }
  }

  /**
   * Reasons of which each wants something of its own; a set that has nothing of it is refused, but for exceptions, which are
   * enough for that reason all the same.
   *
   * @param proves whether a reason without exceptions says so
   */
  private record Wanting(List<Integer> wanted, List<List<Integer>> exceptions, boolean proves, int[] full)
      implements CheapestSet.Questions<Integer> {
    static Wanting drawn(Random random, int n, int most, int exceptions, boolean proves) {
      List<Integer> wanted = new ArrayList<>();
      List<List<Integer>> but = new ArrayList<>();
      for (int k = 0; k < most; k++) {
        wanted.add(IntStream.range(0, 3).map(i -> 1 << random.nextInt(n)).reduce(0, (p, q) -> p | q));
        but.add(IntStream.range(0, random.nextInt(exceptions + 1)).map(i -> random.nextInt(1 << n)).boxed().toList());
      }
      return new Wanting(wanted, but, proves, new int[1]);
    }

    private boolean refuses(int reason, int mask) {
      return (mask & wanted.get(reason)) == 0 && !exceptions.get(reason).contains(mask);
    }

    boolean enough(int mask) {
      return IntStream.range(0, wanted.size()).noneMatch(r -> refuses(r, mask));
    }

    @Override
    public Optional<Integer> refusal(BitSet set) {
      full[0]++;
      return IntStream.range(0, wanted.size()).filter(r -> refuses(r, mask(set))).boxed().findFirst();
    }

    @Override
    public int refusedBy(BitSet set, List<Integer> known) {
      return IntStream.range(0, known.size()).filter(k -> refuses(known.get(k), mask(set))).findFirst().orElse(-1);
    }

    @Override
    public boolean refusedWithAny(BitSet most, Integer known) {
      return proves && exceptions.get(known).isEmpty() && (mask(most) & wanted.get(known)) == 0;
    }
  }

  @Test
  void fourteenAreProvenWithAndWithoutProofs() {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      double[] cost = random.doubles(14, 15, 90).toArray();
      Wanting q = Wanting.drawn(random, 14, 4 + random.nextInt(9), seed % 2 == 0 ? 40 : 0, seed % 3 != 0);
      CheapestSet.Found found = CheapestSet.of(cost, q, 2, NOBODY);
      isLeast("seed " + seed, found, cost, q::enough);
    }
  }

  /** Where a reason proves what it refuses, nothing is left to be asked but what other reasons leave open. */
  @Test
  void whatIsProvedNeedNotBeAsked() {
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      double[] cost = random.doubles(14, 15, 90).toArray();
      Wanting q = Wanting.drawn(random, 14, 8, 0, true);
      CheapestSet.Found found = CheapestSet.of(cost, q, 1, NOBODY);
      assertThat(found.proven()).isTrue();
      assertThat(found.asked()).as("seed %d", seed).isZero();
      // Each is asked in full once for its reason, and all together and the answer once.
      assertThat(q.full[0]).as("seed %d", seed).isLessThanOrEqualTo(8 + 2);
    }
  }

  /** The answer and what it took do not depend on the number of threads. */
  @Test
  void isTheSameOnAnyNumberOfThreads() {
    for (long seed = 1; seed <= 10; seed++) {
      Wanting q = Wanting.drawn(new Random(seed), 12, 9, 30, false);
      double[] cost = new Random(~seed).ints(12, 1, 4).asDoubleStream().toArray();
      CheapestSet.Found one = CheapestSet.of(cost, q, 1, NOBODY);
      assertThat(CheapestSet.of(cost, q, 3, NOBODY)).as("seed %d", seed).isEqualTo(one);
    }
  }

  /** Ten of twenty: more than all sets of fourteen would have to be asked. The set is enough, and said not to be proven. */
  @Test
  void saysSoWhereTooManyWouldHaveToBeAsked() {
    double[] cost = IntStream.range(0, 20).mapToDouble(i -> 40 + 0.001 * i).toArray();
    CheapestSet.Questions<String> ten = new CheapestSet.Questions<>() {
      @Override
      public Optional<String> refusal(BitSet set) {
        return set.cardinality() < 10 ? Optional.of("too few") : Optional.empty();
      }

      @Override
      public int refusedBy(BitSet set, List<String> known) {
        return !known.isEmpty() && set.cardinality() < 10 ? 0 : -1;
      }

      @Override
      public boolean refusedWithAny(BitSet most, String known) {
        return false;
      }
    };
    List<Integer> told = new ArrayList<>();
    CheapestSet.Found found = CheapestSet.of(cost, ten, 1, (asked, of, best) -> told.add(best.cardinality()));
    assertThat(found.proven()).isFalse();
    assertThat(found.set().orElseThrow().cardinality()).isEqualTo(10);
    assertThat(told).startsWith(0, 20).endsWith(10);
  }

  /** An edit in the window interrupts the search: no further question is begun, wherever it was. */
  @Test
  void stopsWhenItsThreadIsInterrupted() {
    for (int after = 1; after < 300; after += 13) {
      Wanting q = Wanting.drawn(new Random(3), 12, 9, 30, false);
      int[] asked = {0};
      int last = after;
      CheapestSet.Questions<Integer> watched = new CheapestSet.Questions<>() {
        private void one() {
          if (++asked[0] == last) Thread.currentThread().interrupt();
        }

        @Override
        public Optional<Integer> refusal(BitSet set) {
          one();
          return q.refusal(set);
        }

        @Override
        public int refusedBy(BitSet set, List<Integer> known) {
          one();
          return q.refusedBy(set, known);
        }

        @Override
        public boolean refusedWithAny(BitSet most, Integer known) {
          return false;
        }
      };
      try {
        assertThatThrownBy(() -> CheapestSet.of(IntStream.range(0, 12).mapToDouble(i -> 40 + i).toArray(), watched, 1, NOBODY))
            .as("after %d", after).isInstanceOf(IllegalStateException.class);
        assertThat(asked[0]).as("after %d", after).isLessThanOrEqualTo(after + 3);
      } finally {
        Thread.interrupted();
      }
    }
  }

  /** Sets to hit drawn at random, with at most 12 elements. */
  @Test
  void hittingSetsAreTheCheapest() {
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      int n = 1 + random.nextInt(12);
      double[] cost = random.doubles(n, 1, 10).toArray();
      List<BitSet> sets = new ArrayList<>();
      for (int k = random.nextInt(10); k > 0; k--) sets.add(BitSet.valueOf(new long[] {1 + random.nextInt((1 << n) - 1)}));
      double least = bruteForce(cost, m -> sets.stream().allMatch(s -> (mask(s) & m) != 0));
      assertThat(total(cost, mask(HittingSet.least(sets, cost)))).as("seed %d", seed).isCloseTo(least, within(1e-9));
    }
  }
}
