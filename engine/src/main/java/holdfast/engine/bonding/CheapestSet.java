package holdfast.engine.bonding;

import holdfast.engine.work.Parallel;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * The least costly set that is enough, if any is, where more need not be better.
 *
 * <p>First a likely answer: each no is widened, by adding what its reason refuses all the same, until nothing more can be
 * added; something outside of that is then needed, likely. The cheapest set that has something outside of every such
 * widened no is asked next, and so on until one is enough (an implicit hitting set). Here it is taken for granted that less of
 * what is refused is refused, so that this alone proves nothing.
 *
 * <p>Then the proof: every set that costs less is asked, each by the reason that likely refuses it, alone; that is a
 * small part of the whole question, and refuses only what the whole refuses. One that bears all known reasons is asked in
 * full. Left out is only what {@link Questions#refusedWithAny} has proved. The first that is enough is the least, and if
 * none is, the likely answer is. Where there are too many to ask, the likely answer is given as not proven least.
 *
 * <p>Where not even all together are enough, fewer may be: first all but one are tried, then, if there are not too many, every
 * set, unless it is proved that none is enough.
 *
 * <p>Answers, and the order in which they are used, do not depend on the number of threads.
 *
 * @param <R> why a set is refused
 * @see <a href="https://doi.org/10.1287/opre.1120.1139">Moreno-Centeno and Karp 2013, The implicit hitting set approach</a>
 */
final class CheapestSet<R> {
  /** Sets that are asked for a proof at most: all of 14 joints. */
  static final int MOST_SETS = 1 << 14;

  /** The same where none is known that is enough, and most likely none is: all of 8 joints. */
  static final int MOST_SETS_IN_VAIN = 1 << 8;

  /** Sets that are asked in full for a proof at most; one takes as long as hundreds that are refused by a known reason. */
  private static final int MOST_FULL = 300;

  /** Likely answers that are tried before joints are taken out one by one. */
  private static final int MOST_TRIES = 100;

  /** Branches of the search for what a proof has to ask. */
  private static final int MOST_BRANCHES = 1 << 21;

  /** Sets asked between two looks at what was learnt; no figure but the work depends on it. */
  private static final int AT_ONCE = 128;

  /** Relative to no cost; costs that differ by less are equal. */
  private static final double SAME_COST = 1e-12;

  /** What can be asked of a set; several threads ask at once, but for the whole question. */
  interface Questions<R> {
    /** The whole question: why the set is not enough, or empty. */
    Optional<R> refusal(BitSet set);

    /** The place of the first of some reasons that refuses the set, -1 for none. Only what is not enough may be refused. */
    int refusedBy(BitSet set, List<R> known);

    /** Whether it is proved that neither {@code most} nor any part of it is enough. A no says nothing. */
    boolean refusedWithAny(BitSet most, R known);
  }

  /** Is told how the search goes on. */
  interface Watch {
    /**
     * @param asked sets asked for the proof
     * @param of how many there are; 0 before that is known
     * @param best the set in hand; nothing where none is known that is enough
     */
    void at(int asked, int of, BitSet best);
  }

  /**
   * @param set empty where none was found that is enough
   * @param proven no cheaper set is enough, or none at all
   * @param asked sets asked for the proof
   */
  record Found(Optional<BitSet> set, boolean proven, int asked) {}

  /** A reason, and a set that it refuses; likely, or for sure, all parts of it too. */
  private record Refused<R>(R by, BitSet within) {}

  private final double[] cost;
  private final int[] cheapestFirst;
  private final Questions<R> questions;
  private final int threads;
  private final Watch watch;
  private final List<Refused<R>> likely = new ArrayList<>();
  private final List<BitSet> proved = new ArrayList<>();
  private final Set<R> reasons = new LinkedHashSet<>();
  private int branches;

  private CheapestSet(double[] cost, Questions<R> questions, int threads, Watch watch) {
    this.cost = cost;
    this.questions = questions;
    this.threads = threads;
    this.watch = watch;
    cheapestFirst = IntStream.range(0, cost.length).boxed().sorted(Comparator.comparingDouble(i -> cost[i]))
        .mapToInt(i -> i).toArray();
  }

  /**
   * @param cost of each, above zero
   */
  static <R> Found of(double[] cost, Questions<R> questions, int threads, Watch watch) {
    return new CheapestSet<>(cost, questions, threads, watch).found();
  }

  private Found found() {
    BitSet all = new BitSet();
    all.set(0, cost.length);
    watch.at(0, 0, new BitSet());
    Optional<R> no = inFull(all);
    if (no.isEmpty()) {
      watch.at(0, 0, all);
      return proven(likelyLeast(all), MOST_SETS);
    }
    if (questions.refusedWithAny(all, no.get())) return new Found(Optional.empty(), true, 0);
    reasons.add(no.get());
    Optional<BitSet> fewer = allButOne(all).map(this::takenOut);
    return proven(fewer.orElse(null), fewer.isPresent() ? MOST_SETS : MOST_SETS_IN_VAIN);
  }

  private Optional<BitSet> allButOne(BitSet all) {
    for (int k = cheapestFirst.length - 1; k >= 0; k--) {
      BitSet set = (BitSet) all.clone();
      set.clear(cheapestFirst[k]);
      Optional<R> no = refusal(set);
      if (no.isEmpty()) return Optional.of(set);
      reasons.add(no.get());
    }
    return Optional.empty();
  }

  // -- a likely answer ----------------------------------------------------------------------------------------------

  private BitSet likelyLeast(BitSet all) {
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      BitSet next = HittingSet.least(likely.stream().map(r -> without(all, r.within)).toList(), cost);
      if (next.equals(all)) return all;
      Optional<R> no = refusal(next);
      if (no.isEmpty()) return next;
      learn(next, no.get());
    }
    return takenOut(all);
  }

  /** What is left when one after the other is taken out, the dearest first, while the rest is enough. */
  private BitSet takenOut(BitSet enough) {
    BitSet left = (BitSet) enough.clone();
    for (int k = cheapestFirst.length - 1; k >= 0; k--) {
      if (!left.get(cheapestFirst[k])) continue;
      left.clear(cheapestFirst[k]);
      Optional<R> no = refusal(left);
      no.ifPresent(reasons::add);
      if (no.isPresent()) left.set(cheapestFirst[k]);
      watch.at(0, 0, left);
    }
    return left;
  }

  /** The whole question, known reasons first. */
  private Optional<R> refusal(BitSet set) {
    List<R> known = List.copyOf(reasons);
    int by = questions.refusedBy(set, known);
    return by >= 0 ? Optional.of(known.get(by)) : inFull(set);
  }

  /** The whole question; none is begun once the thread is interrupted. */
  private Optional<R> inFull(BitSet set) {
    return Parallel.map(List.of(set), 1, questions::refusal).get(0);
  }

  private void learn(BitSet refused, R by) {
    reasons.add(by);
    BitSet within = refused;
    if (questions.refusedWithAny(within, by)) {
      within = widened(within, more -> questions.refusedWithAny(more, by));
      proved.add(within);
    }
    List<R> alone = List.of(by);
    likely.add(new Refused<>(by, widened(within, more -> questions.refusedBy(more, alone) == 0)));
  }

  private BitSet widened(BitSet from, Predicate<BitSet> refused) {
    BitSet out = (BitSet) from.clone();
    for (int i : cheapestFirst) {
      // All together are enough where this is asked.
      if (out.get(i) || out.cardinality() == cost.length - 1) continue;
      out.set(i);
      if (!Parallel.map(List.of(out), 1, refused::test).get(0)) out.clear(i);
    }
    return out;
  }

  // -- its proof ----------------------------------------------------------------------------------------------------

  /**
   * @param best a set that is enough, null for none
   * @param most sets that are asked at most
   */
  private Found proven(BitSet best, int most) {
    List<BitSet> cheaper = new ArrayList<>();
    Optional<BitSet> inHand = Optional.ofNullable(best);
    if (!cheaper(0, new BitSet(), 0, best == null ? Double.POSITIVE_INFINITY : total(best), most, cheaper)) {
      return new Found(inHand, false, 0);
    }
    cheaper.sort(Comparator.comparingDouble(this::total).thenComparing(BitSet::toString));
    int full = 0;
    for (int from = 0; from < cheaper.size(); from += AT_ONCE) {
      watch.at(from, cheaper.size(), inHand.orElse(new BitSet()));
      List<BitSet> some = cheaper.subList(from, Math.min(from + AT_ONCE, cheaper.size()));
      List<Boolean> refused = Parallel.map(some, threads, set -> questions.refusedBy(set, likelyFirst(set)) >= 0);
      List<R> fresh = new ArrayList<>();
      for (int k = 0; k < some.size(); k++) {
        BitSet set = some.get(k);
        if (refused.get(k) || questions.refusedBy(set, fresh) >= 0) continue;
        if (full++ == MOST_FULL) return new Found(inHand, false, from + k);
        Optional<R> no = inFull(set);
        if (no.isEmpty()) return new Found(Optional.of(set), true, from + k);
        fresh.add(no.get());
      }
      reasons.addAll(fresh);
    }
    return new Found(inHand, true, cheaper.size());
  }

  /** What is known to refuse more than the set, then everything else that is known to refuse anything. */
  private List<R> likelyFirst(BitSet set) {
    Set<R> out = new LinkedHashSet<>();
    for (Refused<R> r : likely) if (without(set, r.within).isEmpty()) out.add(r.by);
    out.addAll(reasons);
    return List.copyOf(out);
  }

  /**
   * Gathers all sets that cost less than {@code bound} and are not proved to be refused; false where they are more than
   * {@code mostSets}.
   *
   * @param at place in {@link #cheapestFirst} of the first that is not decided
   */
  private boolean cheaper(int at, BitSet in, double spent, double bound, int mostSets, List<BitSet> out) {
    if (++branches > MOST_BRANCHES) return false;
    BitSet most = (BitSet) in.clone();
    for (int k = at; k < cheapestFirst.length; k++) most.set(cheapestFirst[k]);
    if (proved.stream().anyMatch(p -> without(most, p).isEmpty())) return true;
    boolean fits = at < cheapestFirst.length && spent + cost[cheapestFirst[at]] < bound - SAME_COST;
    if (!fits) {
      // What is left is dearer still.
      if (proved.stream().noneMatch(p -> without(in, p).isEmpty()) && total(in) < bound - SAME_COST) out.add((BitSet) in.clone());
      return out.size() <= mostSets;
    }
    if (!cheaper(at + 1, in, spent, bound, mostSets, out)) return false;
    in.set(cheapestFirst[at]);
    boolean all = cheaper(at + 1, in, spent + cost[cheapestFirst[at]], bound, mostSets, out);
    in.clear(cheapestFirst[at]);
    return all;
  }

  private double total(BitSet set) {
    return set.stream().mapToDouble(i -> cost[i]).sum();
  }

  private static BitSet without(BitSet set, BitSet less) {
    BitSet out = (BitSet) set.clone();
    out.andNot(less);
    return out;
  }
}
