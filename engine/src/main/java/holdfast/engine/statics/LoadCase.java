package holdfast.engine.statics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A live load on one separate heap in one state, with what the force balance allows of it.
 *
 * @param state the state whose weights are the dead load
 * @param judge the heap under its weight
 * @param live the load per unit of factor
 * @param atMost the factor that the force balance allows, at most the cap that was asked for
 * @param settled the force balance gave an answer
 */
public record LoadCase(State state, PartJudge judge, List<Wrench> live, double atMost, boolean settled) {

  /** Asks the force balance. */
  public static LoadCase of(State state, PartJudge judge, List<Wrench> live, double cap) {
    if (!judge.safe()) return new LoadCase(state, judge, live, 0, judge.balance() instanceof Balance.Falls);
    Margin m = judge.atMost(live, cap);
    double most = m.match(l -> l.factor(), b -> b.cap(), f -> 0.0, u -> 0.0);
    return new LoadCase(state, judge, live, Math.min(most, cap), !(m instanceof Margin.Undecided));
  }

  /** The same case for use by another thread. */
  LoadCase forThread() {
    return new LoadCase(state, judge.forThread(), live, atMost, settled);
  }

  /**
   * The least factor of several cases that was seen to be borne and stayed under.
   *
   * @param factor never above what staying confirmed in any case
   * @param atMost the least that the force balance allows
   * @param governing the case that governs
   * @param movement how the governing case gives way, when that was seen
   * @param settled false where an answer is missing: the factor is then what was confirmed all the same
   */
  public record Least(double factor, double atMost, LoadCase governing, Optional<Mechanism> movement, boolean settled) {}

  /**
   * Searches the cases from the one with the least bound upward. Each must be seen to stay at the least factor found so
   * far, or lowers it; no order between balance and staying is assumed.
   *
   * @param cap factors are not looked for beyond it
   * @param share relative width to which a factor that is lowered is searched
   */
  public static Least least(List<LoadCase> cases, double cap, double share) {
    List<LoadCase> sorted = new ArrayList<>(cases);
    sorted.sort(Comparator.comparingDouble(LoadCase::atMost));
    LoadCase governing = sorted.get(0);
    double bound = governing.atMost();
    double best = bound >= cap ? cap : bound * (1 - Tolerances.CONFIRM_TOP);
    Mechanism movement = null;
    boolean settled = true;
    for (LoadCase c : sorted) {
      settled &= c.settled();
      if (best <= 0) break;
      Rest rest = c.judge().under(c.live(), best);
      if (rest.stays()) continue;
      governing = c;
      if (rest instanceof Rest.Moves m) movement = m.mechanism();
      double low = 0;
      double high = best;
      double next = best * Tolerances.CONFIRM_FIRST_CUT;
      while (high - low > share * bound) {
        Rest r = c.judge().under(c.live(), next);
        if (r.stays()) {
          low = next;
        } else {
          high = next;
          if (r instanceof Rest.Moves m) movement = m.mechanism();
        }
        next = (low + high) / 2;
      }
      best = low;
      settled &= low > 0 || !(rest instanceof Rest.Undecided);
    }
    if (movement == null && best < cap && governing.judge().safe()) {
      Rest beyond = governing.judge().under(governing.live(), bound * Tolerances.BEYOND);
      if (beyond instanceof Rest.Moves m) movement = m.mechanism();
    }
    return new Least(Math.max(0, best), bound, governing, Optional.ofNullable(movement), settled);
  }
}
