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
   * @param governing the case that governs
   * @param movement how the governing case gives way, when that was seen
   * @param settled false where an answer is missing: the factor is then what was confirmed all the same
   */
  public record Least(double factor, LoadCase governing, Optional<Mechanism> movement, boolean settled) {

    /** How it gives way first; what was not seen counts as the graver. */
    public Movement kind() {
      return movement.map(m -> Movement.of(governing.judge.heap(), m)).orElse(Movement.TOPPLES);
    }

    /** What the force balance alone allows of the governing case, up to {@code cap}; not a number where it is open. */
    public double atMost(double cap) {
      Margin margin = governing.judge.atMost(governing.live, cap);
      return margin.match(Margin.Limited::factor, Margin.Beyond::cap, f -> 0.0, u -> Double.NaN);
    }
  }

  /**
   * The least case among those that bear less than {@code tier} and then topple: each is asked for its own first movement,
   * since a slide on one line or in one state says nothing of the others.
   */
  public static Optional<Least> toppling(List<LoadCase> cases, double tier, double share) {
    Least worst = null;
    for (LoadCase c : cases) {
      // A topple often shows well before the figure does; only the fine search is believed that it slides.
      Least own = least(List.of(c), tier, Math.max(share, Tolerances.MOVEMENT_SHARE), tier);
      if (own.factor() < tier && own.kind() == Movement.SLIDES) own = least(List.of(c), tier, share, tier);
      if (own.factor() >= tier || own.kind() == Movement.SLIDES) continue;
      if (worst == null || own.factor() < worst.factor()) worst = own;
    }
    if (worst == null || share >= Tolerances.MOVEMENT_SHARE) return Optional.ofNullable(worst);
    Least fine = least(List.of(worst.governing()), tier, share, tier);
    return Optional.of(new Least(fine.factor(), fine.governing(), worst.movement(), fine.settled()));
  }

  /**
   * Searches the cases for the least factor, up to {@code cap}. Each case must be seen to stay at the least factor found so
   * far: the forces it comes to rest with are admissible forces in balance, so nothing else need be asked. One that does
   * not is searched below it. No order between cases is assumed.
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
    LoadCase governing = cases.get(0);
    double best = cap;
    Mechanism movement = null;
    boolean settled = true;
    for (LoadCase c : cases) {
      Optional<Rest> refused = c.judge.refuses(c.live, best);
      if (refused.isEmpty()) continue;
      governing = c;
      movement = refused.get() instanceof Rest.Moves m ? m.mechanism() : null;
      if (!c.judge.safe()) return new Least(0, c, Optional.ofNullable(movement), c.judge.balance() instanceof Balance.Falls);
      Search search = new Search(c, best, refused.get());
      if (share < Tolerances.BOUND_PAYS) search.tryBound();
      search.narrow(share);
      search.decide(mark);
      movement = search.movement != null ? search.movement : justBeyond(c, search.low);
      settled &= search.low > 0 || !(refused.get() instanceof Rest.Undecided);
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
   * The largest factor at which one case was seen to stay: what was tried is narrowed down from both sides. What falls
   * accelerates about in proportion to what it is overloaded by, so two falls tell where to look next; the answer is
   * always a factor that was tried.
   */
  private static final class Search {
    private final LoadCase c;
    private double low;
    private double high;
    /** A higher factor that falls too, and the accelerations at both; not a number where none was seen. */
    private double higher = Double.NaN;
    private double fast;
    private double faster = Double.NaN;
    /** How it gave way at {@code high}. */
    private Mechanism movement;

    Search(LoadCase c, double high, Rest refused) {
      this.c = c;
      this.high = high;
      note(refused);
    }

    private void note(Rest refused) {
      fast = refused instanceof Rest.Moves m ? m.accelerationG() : Double.NaN;
      movement = refused instanceof Rest.Moves m ? m.mechanism() : null;
    }

    private boolean stays(double factor) {
      Optional<Rest> refused = c.judge.refuses(c.live, factor);
      if (refused.isEmpty()) {
        low = factor;
        return true;
      }
      higher = high;
      faster = fast;
      high = factor;
      note(refused.get());
      return false;
    }

    /** Asks at what the force balance allows, and a little below. */
    void tryBound() {
      double bound = c.judge.atMost(c.live, high).match(Margin.Limited::factor, Margin.Beyond::cap, f -> high,
          u -> u.near() > 0 ? Tolerances.HINT * u.near() : high);
      if (bound < high && stays(bound * (1 - Tolerances.CONFIRM_TOP))) {
        // Above a true bound nothing balances; how it gives way is seen just above.
        high = Math.min(high, bound * (1 + Tolerances.CONFIRM_TOP));
        movement = null;
      } else if (bound * Tolerances.CONFIRM_FIRST_CUT < high) {
        stays(bound * Tolerances.CONFIRM_FIRST_CUT);
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
        if (!told) stays((low + high) / 2);
        else if (root - 0.4 * width > low) stays(root - 0.4 * width);
        else stays(Math.min((low + high) / 2, low + 0.9 * width));
      }
    }
  }
}
