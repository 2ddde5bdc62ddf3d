package holdfast.engine.statics;

import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Movement;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import java.util.List;
import java.util.Optional;

/**
 * A live load on one separate heap in one state.
 *
 * @param state the state whose weights are the dead load
 * @param judge the heap under its weight
 * @param live the load per unit of factor
 */
public record LoadCase(State state, PartJudge judge, List<Wrench> live) {
  /** Relative width to which a factor is searched where no finer one is asked for. */
  public static final double SEARCH_SHARE = 0.025;

  /**
   * The least factor of several cases that was seen to be borne and stayed under.
   *
   * @param factor never above what staying confirmed in every case
   * @param governing the case that governs
   * @param movement how the governing case gives way, when that was seen
   * @param settled false where an answer is missing: the factor is then what was confirmed all the same
   */
  public record Least(double factor, LoadCase governing, Optional<Mechanism> movement, boolean settled) {

    /** How it gives way first; what was not seen counts as the graver. */
    public Movement kind() {
      return movement.map(m -> Movement.of(governing.judge.heap(), m)).orElse(Movement.TOPPLES);
    }

    /**
     * What the force balance alone allows of the governing case, up to {@code cap}: no larger factor has forces in balance,
     * so none stays. Not a number where it is open.
     */
    public double atMost(double cap) {
      Margin margin = governing.judge.atMostFinely(governing.live, cap);
      return margin.match(l -> Math.min(l.bound(), cap), Margin.Beyond::cap, f -> 0.0, u -> Double.NaN);
    }
  }

  /**
   * The least case among those that bear less than {@code tier} and then topple: each is asked for its own first movement,
   * since a slide on one line or in one state says nothing of the others.
   */
  public static Optional<Least> toppling(List<LoadCase> cases, double tier, double share) {
    Least worst = null;
    for (LoadCase c : cases) {
      Least own = largest(List.of(c), tier, share, tier);
      if (own.factor() >= tier || own.kind() == Movement.SLIDES) continue;
      if (worst == null || own.factor() < worst.factor()) worst = own;
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
    Least found = largest(cases, cap, share, mark);
    for (LoadCase c : cases) {
      if (cases.stream().filter(o -> o.judge == c.judge).findFirst().orElseThrow() != c) continue;
      for (double part : Tolerances.ON_THE_WAY) {
        double at = part * found.factor;
        if (at > 0 && c.judge.refuses(c.live, at).isPresent()) found = largest(List.of(c), at, share, mark);
      }
    }
    return found;
  }

  /**
   * The share of a load that is asked beside the whole one where each of many directions has a question of its own: a load
   * grows from nothing, and what holds at its end need not hold on the way. Neighbouring directions have different ones.
   */
  public static double onTheWay(int direction) {
    return Tolerances.ON_THE_WAY[Math.floorMod(direction, Tolerances.ON_THE_WAY.length)];
  }

  private static Least largest(List<LoadCase> cases, double cap, double share, double mark) {
    LoadCase governing = cases.get(0);
    double best = cap;
    Mechanism movement = null;
    boolean settled = true;
    for (LoadCase c : cases) {
      if (!c.judge.safe()) {
        movement = c.judge.rest() instanceof Rest.Moves m ? m.mechanism() : null;
        return new Least(0, c, Optional.ofNullable(movement), c.judge.balance() instanceof Balance.Falls);
      }
      if (c.judge.plainlyBears(c.live, best)) continue;
      Search search = new Search(c, best);
      // What another case came down to is close to what this one bears; the cap is far from it and is asked last.
      if (best < cap && search.bearsAll()) continue;
      search.glance(share);
      if (share < Tolerances.BOUND_PAYS) search.tryBound();
      search.climb(share);
      if (!search.refused) continue;
      search.narrow(share);
      search.decide(mark);
      governing = c;
      movement = search.movement != null ? search.movement : justBeyond(c, search.low);
      settled &= search.low > 0 || !search.undecided;
      best = search.low;
      if (best <= 0) break;
    }
    return new Least(best, governing, Optional.ofNullable(movement), settled);
  }

  /** How a case gives way just above what it bears: the first movement, not that of a push far too large. Null if unseen. */
  private static Mechanism justBeyond(LoadCase c, double factor) {
    for (double beyond : Tolerances.JUST_BEYOND) {
      Rest rest = c.judge.under(c.live, factor * beyond);
      if (rest instanceof Rest.Moves m) return m.mechanism();
      if (rest instanceof Rest.Breaks) return null;
    }
    return null;
  }

  /**
   * The largest factor at which one case was seen to stay. What is seen at a glance comes first and is close below; from
   * there it is asked in full a little higher until it falls, and narrowed down from both sides: what falls accelerates
   * about in proportion to what it is overloaded by, so two falls tell where to look next. The answer is always a factor
   * that was tried.
   */
  private static final class Search {
    private final LoadCase c;
    private final double cap;
    private double low;
    private double high;
    /** Whether it was seen not to stay at {@code high}, and whether that was all that could be said. */
    private boolean refused;
    private boolean undecided;
    /** A higher factor that falls too, and the accelerations at both; not a number where none was seen. */
    private double higher = Double.NaN;
    private double fast = Double.NaN;
    private double faster = Double.NaN;
    /** How it gave way at {@code high}. */
    private Mechanism movement;

    Search(LoadCase c, double cap) {
      this.c = c;
      this.cap = cap;
      high = cap;
    }

    /** Asks in full at a factor. */
    private boolean stays(double factor) {
      Rest rest = c.judge.under(c.live, factor);
      if (rest.stays()) {
        low = factor;
        return true;
      }
      if (refused) {
        higher = high;
        faster = fast;
      }
      refused = true;
      undecided = rest instanceof Rest.Undecided;
      high = factor;
      fast = rest instanceof Rest.Moves m ? m.accelerationG() : Double.NaN;
      movement = rest instanceof Rest.Moves m ? m.mechanism() : null;
      return false;
    }

    boolean bearsAll() {
      return stays(cap);
    }

    /** Halves what is left by what is seen at a glance. */
    void glance(double share) {
      double not = high;
      while (not - low > share * not) {
        double middle = (low + not) / 2;
        if (c.judge.plainlyBears(c.live, middle)) low = middle;
        else not = middle;
        if (not < Tolerances.GLANCE_LEAST * cap) return;
      }
    }

    /** Asks at what the force balance allows, and a little below. */
    void tryBound() {
      if (!(c.judge.atMostFinely(c.live, high) instanceof Margin.Limited m) || !(m.bound() < high)) return;
      if (stays(m.factor() * (1 - Tolerances.CONFIRM_TOP))) {
        // Above a true bound nothing balances; how it gives way is seen just above.
        high = m.bound() * (1 + Tolerances.CONFIRM_TOP);
        refused = true;
        movement = null;
      } else {
        stays(m.factor() * Tolerances.CONFIRM_FIRST_CUT);
      }
    }

    /** Goes up from what is borne, ever faster, until it falls or the cap is borne. */
    void climb(double share) {
      for (double up = share; !refused; up *= Tolerances.CLIMB) {
        double next = low > 0 ? low / (1 - Math.min(0.99 * up, 0.5)) : cap * up;
        if (stays(Math.min(next, cap)) && low >= cap) return;
      }
    }

    void decide(double mark) {
      if (low < mark && mark < high) stays(mark);
    }

    void narrow(double share) {
      while (high - low > share * high) {
        double width = share * high;
        double root = high - fast * (higher - high) / (faster - fast);
        boolean told = root > low && root < high && faster > fast;
        double next = !told ? (low + high) / 2
            : root - 0.4 * width > low ? root - 0.4 * width : Math.min((low + high) / 2, low + 0.9 * width);
        if (c.judge.plainlyBears(c.live, next)) low = next;
        else stays(next);
      }
    }
  }
}
