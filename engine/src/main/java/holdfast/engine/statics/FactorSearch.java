package holdfast.engine.statics;

import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.rest.Rest;
import java.util.OptionalDouble;

/**
 * The largest factor at which one case was seen to stay. What is seen at a glance comes first and is close below; from
 * there it is asked in full a little higher until it falls, and narrowed down from both sides: what falls accelerates
 * about in proportion to what it is overloaded by, so two falls tell where to look next. The answer is always a factor
 * that was tried.
 */
final class FactorSearch {
  private final LoadCase c;
  private final double cap;
  private double low;
  private double high;
  /** What the force balance alone allows; not a number where it was not asked, or allows more. */
  private double bound = Double.NaN;
  /** Whether it was seen not to stay at {@code high}, and whether that was all that could be said. */
  private boolean refused;
  private boolean undecided;
  /** A higher factor that falls too, and the accelerations at both; not a number where none was seen. */
  private double higher = Double.NaN;
  private double fast = Double.NaN;
  private double faster = Double.NaN;
  /** How it gave way at {@code high}. */
  private Mechanism movement;

  /**
   * @param seen a factor at which it was seen to stay, 0 for none
   */
  FactorSearch(LoadCase c, double seen, double cap) {
    this.c = c;
    this.cap = cap;
    low = seen;
    high = cap;
  }

  /**
   * Searches to a width of {@code share} of what is then known to be too much; false where all of the cap is borne.
   *
   * @param guess where a like case gave way; 0 or not a number where none is known
   * @param mark a factor that must not be left in doubt; not a number for none
   */
  boolean limit(double share, double guess, double mark) {
    boolean known = share < Tolerances.BOUND_PAYS && tryBound();
    if (!known) glance(share, guess);
    climb(share);
    if (!refused) return false;
    narrow(share);
    if (low < mark && mark < high) stays(mark);
    return true;
  }

  /** What was seen to be borne. */
  double low() {
    return low;
  }

  /** What the force balance alone allows of it, where that was asked and is a limit. */
  OptionalDouble bound() {
    return Double.isNaN(bound) ? OptionalDouble.empty() : OptionalDouble.of(bound);
  }

  /** An answer is missing. */
  boolean open() {
    return low <= 0 && undecided;
  }

  /** How it gives way above what it bears; null if unseen. */
  Mechanism movement() {
    return movement != null ? movement : justBeyond();
  }

  /** The first movement just above what it bears, not that of a load far too large. */
  private Mechanism justBeyond() {
    for (double beyond : Tolerances.JUST_BEYOND) {
      Rest rest = c.judge().under(c.live(), low * beyond);
      if (rest instanceof Rest.Moves m) return m.mechanism();
      if (rest instanceof Rest.Breaks) return null;
    }
    return null;
  }

  /** Asks in full at a factor. */
  private boolean stays(double factor) {
    Rest rest = c.judge().under(c.live(), factor);
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

  /** By what is seen at a glance: goes from the guess until it lies between two factors, and halves what is left. */
  private void glance(double share, double guess) {
    double not = high;
    double first = guess * (1 - share / 2);
    if (low < first && first < high) {
      boolean bears = c.judge().plainlyBears(c.live(), first);
      if (bears) low = first;
      else not = first;
      boolean up = bears;
      for (double step = share; bears == up; step *= Tolerances.CLIMB) {
        double next = up ? low / (1 - Math.min(step, 0.5)) : not * (1 - Math.min(step, 0.5));
        if (next <= low || next >= not) break;
        bears = c.judge().plainlyBears(c.live(), next);
        if (bears) low = next;
        else not = next;
      }
    }
    while (not - low > share * not) {
      double middle = (low + not) / 2;
      if (c.judge().plainlyBears(c.live(), middle)) low = middle;
      else not = middle;
      if (not < Tolerances.GLANCE_LEAST * cap) return;
    }
  }

  /** Asks at what the force balance allows, and a little below; true when that is the answer. */
  private boolean tryBound() {
    if (!(c.judge().atMostFinely(c.live(), high) instanceof Margin.Limited m) || !(m.bound() < high)) return false;
    bound = m.bound();
    if (stays(m.factor() * (1 - Tolerances.CONFIRM_TOP))) {
      // Above a true bound nothing balances; how it gives way is seen just above.
      high = m.bound() * (1 + Tolerances.CONFIRM_TOP);
      refused = true;
      movement = null;
      return true;
    }
    double below = m.factor() * Tolerances.CONFIRM_FIRST_CUT;
    if (below > low) stays(below);
    return false;
  }

  /** Goes up from what is borne, ever faster, until it falls or the cap is borne. */
  private void climb(double share) {
    for (double up = share; !refused; up *= Tolerances.CLIMB) {
      double next = low > 0 ? low / (1 - Math.min(0.99 * up, 0.5)) : cap * up;
      if (stays(Math.min(next, cap)) && low >= cap) return;
    }
  }

  private void narrow(double share) {
    while (high - low > share * high) {
      double width = share * high;
      double root = high - fast * (higher - high) / (faster - fast);
      boolean told = root > low && root < high && faster > fast;
      double next = !told ? (low + high) / 2
          : root - 0.4 * width > low ? root - 0.4 * width : Math.min((low + high) / 2, low + 0.9 * width);
      if (c.judge().plainlyBears(c.live(), next)) low = next;
      else stays(next);
    }
  }
}
