package holdfast.engine.statics;

import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A live load on one separate heap in one state.
 *
 * @param state the state whose weights are the dead load
 * @param judge the heap under its weight
 * @param live the load per unit of factor
 */
public record LoadCase(State state, PartJudge judge, List<Wrench> live) {
  /** Relative width to which a factor is searched where no finer one is asked for. */
  public static final double SEARCH_SHARE = 0.02;

  /**
   * The least factor of several cases that was seen to be borne and stayed under.
   *
   * @param factor never above what staying confirmed in every case
   * @param governing the case that governs
   * @param movement how the governing case gives way, when that was seen
   * @param settled false where an answer is missing: the factor is then what was confirmed all the same
   * @param bound what the force balance alone allows of the governing case, where that was asked on the way
   */
  public record Least(
      double factor, LoadCase governing, Optional<Mechanism> movement, boolean settled, OptionalDouble bound) {

    /** How it gives way first; what was not seen counts as the graver. */
    public Movement kind() {
      return movement.map(m -> Movement.of(governing.judge.heap(), m)).orElse(Movement.TOPPLES);
    }

    /**
     * What the force balance alone allows of the governing case, up to {@code cap}: no larger factor has forces in balance,
     * so none stays. Not a number where it is open.
     */
    public double atMost(double cap) {
      if (bound.isPresent()) return Math.min(bound.getAsDouble(), cap);
      Margin margin = governing.judge.atMostFinely(governing.live, cap);
      return margin.match(l -> Math.min(l.bound(), cap), Margin.Beyond::cap, f -> 0.0, u -> Double.NaN);
    }
  }

  /**
   * The least case among those that bear less than {@code tier} and then topple: each is asked for its own first movement,
   * since a slide on one line or in one state says nothing of the others.
   */
  public static Optional<Least> toppling(List<LoadCase> cases, double tier, double share) {
    return toppling(cases, new double[cases.size()], -1, 0, tier, share, tier);
  }

  /**
   * The same of cases that all were seen to bear {@code floor}, for less than {@code cap}.
   *
   * @param guess for every case where a like one gave way, in multiples of the floor, 0 where that is not known; where this
   *     one does is put in its place
   * @param but a case that need not be asked: it gives way at {@code floor}, and slides; -1 for none
   * @param mark the factor that a verdict hangs on
   */
  public static Optional<Least> toppling(
      List<LoadCase> cases, double[] guess, int but, double floor, double cap, double share, double mark) {
    Least worst = null;
    for (int k = 0; k < cases.size(); k++) {
      double less = worst == null ? cap : worst.factor;
      Least own = k == but ? null : largest(List.of(new Seen(cases.get(k), floor, guess[k] * floor)), less, share, mark);
      if (own == null || own.factor < less) guess[k] = own == null ? 1 : own.factor / floor;
      if (own != null && own.factor < less && own.kind() != Movement.SLIDES) worst = own;
    }
    return Optional.ofNullable(worst);
  }

  /**
   * Searches the cases for the least factor, up to {@code cap}. Each case must be seen to stay at the least factor found so
   * far: the forces it comes to rest with are admissible forces in balance, so nothing else need be asked. One that does
   * not is searched below it. No order between cases is assumed.
   *
   * <p>Nor is a load borne that would not be borne on the way there: a small push may let something slip that a larger one
   * holds again. Shares of the least factor ({@link Tolerances#ON_THE_WAY}) are asked too, of one case a judgement; what is
   * not borne there is searched below. A sample and no proof.
   *
   * @param share width to which a factor is searched, as a share of what is then known to be too much; where it is finer than
   *     {@link Tolerances#BOUND_PAYS} the bound of the force balance is asked first, since it is often the answer
   */
  public static Least least(List<LoadCase> cases, double cap, double share) {
    return least(cases, cap, share, Double.NaN);
  }

  /**
   * The same, with a factor that must not be left in doubt by the width of the search.
   *
   * @param mark the factor that a verdict hangs on; not a number for none
   */
  public static Least least(List<LoadCase> cases, double cap, double share, double mark) {
    return least(cases, 0, cap, share, mark);
  }

  /**
   * The same of cases that are known to bear something.
   *
   * @param floor what all of them were seen to bear, and its shares on the way; nothing below it is asked, and the least is
   *     never below it
   */
  public static Least least(List<LoadCase> cases, double floor, double cap, double share, double mark) {
    return onTheWay(largest(seen(cases, floor), cap, share, mark), List.of(cases), floor, share, mark);
  }

  /**
   * The least factor of cases from many sides, for who wants to know nothing more of any side than that it bears as much.
   * Which case is likely the weakest is seen at a glance; that one is searched, and every other that was not seen to stay at as
   * much or more is asked whether it stays at what was found. One that does not is searched in its turn. What {@link #least}
   * asks on the way is asked from every side.
   *
   * @param sides the cases of each side
   */
  public static Least weakest(List<List<LoadCase>> sides, double cap, double share, double mark) {
    List<LoadCase> all = sides.stream().flatMap(List::stream).toList();
    Optional<LoadCase> fallen = all.stream().filter(c -> !c.judge.safe()).findFirst();
    if (fallen.isPresent()) return largest(seen(List.of(fallen.get()), 0), cap, share, mark);
    return onTheWay(largest(glanced(all, cap), cap, share, mark), sides, 0, share, mark);
  }

  /** Asks from every side for the shares on the way to the least that was found, and all for what is less than that then. */
  private static Least onTheWay(Least least, List<List<LoadCase>> sides, double floor, double share, double mark) {
    Least found = least;
    for (boolean again = true; again;) {
      again = false;
      for (List<LoadCase> side : sides) {
        for (LoadCase c : firstOfJudges(side)) {
          for (double part : Tolerances.ON_THE_WAY) {
            double at = part * found.factor;
            if (at <= floor || c.judge.refuses(c.live, at).isEmpty()) continue;
            found = largest(seen(List.of(c), floor), at, share, mark);
            again = true;
          }
        }
      }
      if (!again) break;
      List<LoadCase> all = sides.stream().flatMap(List::stream).toList();
      Least other = largest(seen(all, floor), found.factor, share, mark);
      if (other.factor < found.factor) found = other;
    }
    return found;
  }

  /** A case, what it was seen to bear, and where it likely gives way; 0 where that is not known. */
  private record Seen(LoadCase c, double factor, double guess) {}

  private static List<Seen> seen(List<LoadCase> cases, double factor) {
    return cases.stream().map(c -> new Seen(c, factor, 0)).toList();
  }

  /**
   * Cases with what each was seen to bear at a glance, the least first. Nothing closer than the usual width is sought of the
   * least, nor of any other how much more than clear of that it bears: it need then not be asked at what the least comes to.
   */
  private static List<Seen> glanced(List<LoadCase> cases, double cap) {
    List<Seen> out = new ArrayList<>();
    double least = cap;
    double clear = cap;
    for (LoadCase c : cases) {
      if (c.judge.plainlyBears(c.live, clear)) {
        out.add(new Seen(c, clear, 0));
        continue;
      }
      if (least == clear || !c.judge.plainlyBears(c.live, least)) {
        double not = least;
        least = 0;
        while (not - least > SEARCH_SHARE * not && not > Tolerances.GLANCE_LEAST * cap) {
          double middle = (least + not) / 2;
          if (c.judge.plainlyBears(c.live, middle)) least = middle;
          else not = middle;
        }
        clear = Math.min(not * Tolerances.GLANCE_CLEAR, cap);
      }
      out.add(new Seen(c, least, 0));
    }
    out.sort(Comparator.comparingDouble(Seen::factor));
    return out;
  }

  /** Of several cases the first of each judgement. */
  private static List<LoadCase> firstOfJudges(List<LoadCase> cases) {
    return cases.stream().filter(c -> cases.stream().filter(o -> o.judge == c.judge).findFirst().orElseThrow() == c).toList();
  }

  /**
   * The share of a load that is asked beside the whole one where each of many directions has a question of its own: a load
   * grows from nothing, and what holds at its end need not hold on the way. Neighbouring directions have different ones.
   */
  public static double onTheWay(int direction) {
    return Tolerances.ON_THE_WAY[Math.floorMod(direction, Tolerances.ON_THE_WAY.length)];
  }

  private static Least largest(List<Seen> cases, double cap, double share, double mark) {
    LoadCase governing = cases.get(0).c;
    double best = cap;
    Mechanism movement = null;
    boolean settled = true;
    OptionalDouble bound = OptionalDouble.empty();
    for (Seen seen : cases) {
      LoadCase c = seen.c;
      if (!c.judge.safe()) {
        movement = c.judge.rest() instanceof Rest.Moves m ? m.mechanism() : null;
        return new Least(0, c, Optional.ofNullable(movement), c.judge.balance() instanceof Balance.Falls,
            OptionalDouble.empty());
      }
      if (seen.factor >= best || c.judge.plainlyBears(c.live, best)) continue;
      FactorSearch search = new FactorSearch(c, seen.factor, best);
      // What another case came down to is close to what this one bears; the cap is far from it and is asked last.
      if (best < cap && search.bearsAll()) continue;
      if (!search.limit(share, seen.guess, mark)) continue;
      governing = c;
      movement = search.movement();
      settled &= !search.open();
      bound = search.bound();
      best = search.low();
      if (best <= 0) break;
    }
    return new Least(best, governing, Optional.ofNullable(movement), settled, bound);
  }
}
