package holdfast.engine.statics;

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

  /**
   * The least factor of several cases that was seen to be borne and stayed under.
   *
   * @param factor never above what staying confirmed in every case
   * @param atMost the least that the force balance allows in the cases that do not stay under the cap
   * @param governing the case that governs
   * @param movement how the governing case gives way, when that was seen
   * @param settled false where an answer is missing: the factor is then what was confirmed all the same
   */
  public record Least(double factor, double atMost, LoadCase governing, Optional<Mechanism> movement, boolean settled) {
    /** What the movement is; one that was not seen counts as toppling. */
    public Movement kind() {
      return movement.map(m -> Movement.of(governing.judge.heap(), m)).orElse(Movement.TOPPLES);
    }
  }

  /**
   * The least factor below {@code tier} at which something goes over in any of the cases, each asked by itself: a slide in one
   * case does not keep another from toppling under more. Empty when every case bears the tier or begins by sliding.
   *
   * @param share as for {@link #least}
   */
  public static Optional<Least> toppling(List<LoadCase> cases, double tier, double share) {
    Least worst = null;
    for (LoadCase c : cases) {
      Least own = least(List.of(c), tier, share);
      if (own.factor() >= tier || own.kind() == Movement.SLIDES) continue;
      if (worst == null || own.factor() < worst.factor()) worst = own;
    }
    return Optional.ofNullable(worst);
  }

  /**
   * Searches the cases for the least factor, up to {@code cap}. Each case must be seen to stay at the least factor found so
   * far: the forces it comes to rest with are admissible forces in balance, so nothing else need be asked. One that does
   * not is asked for the bound of its force balance, and searched below it. No order between cases, or between balance
   * and staying, is assumed.
   *
   * @param share width to which a factor that staying lowers is searched, as a share of the bound
   */
  public static Least least(List<LoadCase> cases, double cap, double share) {
    LoadCase governing = cases.get(0);
    double best = cap;
    double atMost = cap;
    Mechanism movement = null;
    boolean settled = true;
    for (LoadCase c : cases) {
      Rest rest = c.judge.under(c.live, best);
      if (rest.stays()) continue;
      governing = c;
      movement = rest instanceof Rest.Moves m ? m.mechanism() : null;
      if (!c.judge.safe()) return new Least(0, 0, c, Optional.ofNullable(movement), c.judge.balance() instanceof Balance.Falls);
      Margin margin = c.judge.atMost(c.live, cap);
      // Without a bound the search goes on below what was found: what it confirms comes with forces in balance.
      double top = best;
      double bound = margin.match(l -> l.factor(), b -> b.cap(), f -> 0.0,
          u -> u.near() > 0 ? Math.min(top, Tolerances.HINT * u.near()) : top);
      atMost = Math.min(atMost, bound);
      Search found = Search.below(c, Math.min(bound, best), bound < best, share);
      movement = found.movement != null ? found.movement : justBeyond(c, found.factor);
      double low = found.factor;
      settled &= low > 0 || !(rest instanceof Rest.Undecided);
      best = low;
      if (best <= 0) break;
    }
    return new Least(best, atMost, governing, Optional.ofNullable(movement), settled);
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

  /** The largest factor below a bound at which one case was seen to stay, and how it gave way just above that. */
  private record Search(double factor, Mechanism movement) {

    /** Tries the bound itself when that is new, then a little below it, then halves what is left. */
    static Search below(LoadCase c, double bound, boolean tryBound, double share) {
      double low = 0;
      double high = bound;
      Mechanism movement = null;
      double next = tryBound ? bound * (1 - Tolerances.CONFIRM_TOP) : bound * Tolerances.CONFIRM_FIRST_CUT;
      boolean top = tryBound;
      while (high - low > share * bound) {
        Rest r = c.judge.under(c.live, next);
        if (r.stays()) {
          if (top) return new Search(next, movement);
          low = next;
        } else {
          high = next;
          if (r instanceof Rest.Moves m) movement = m.mechanism();
        }
        next = top ? bound * Tolerances.CONFIRM_FIRST_CUT : (low + high) / 2;
        top = false;
      }
      return new Search(low, movement);
    }
  }
}
