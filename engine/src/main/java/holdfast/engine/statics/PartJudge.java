package holdfast.engine.statics;

import java.util.List;
import java.util.Optional;

/**
 * One separate heap in one state: whether it stands and stays, and what more it bears. What it found under its own weight
 * can be shared between threads; the methods that answer for more load are for one thread at a time.
 */
public final class PartJudge {
  private final Heap.Part part;
  private final Heap heap;
  private final List<Wrench> dead;
  private final double typicalN;
  private final Balance balance;
  private final Rest rest;
  private final ThreadLocal<PartJudge> copies = ThreadLocal.withInitial(() -> new PartJudge(this));
  private ForceBalance forces;
  private PushBound bound;
  private Resting resting;
  private Superposition quick;
  private boolean quickTried;

  /** Judges one part of a heap under its share of {@code whole}, the weights of the whole heap's bodies. */
  public PartJudge(Heap.Part part, List<Wrench> whole) {
    this.part = part;
    heap = part.heap();
    dead = part.of(whole);
    typicalN = ForceBalance.typicalN(dead);
    forces = new ForceBalance(heap, typicalN);
    balance = forces.stands(dead);
    resting = new Resting(heap, typicalN);
    rest = balance instanceof Balance.Falls ? null : confirmed(resting.under(dead));
  }

  private Rest confirmed(Rest first) {
    return StiffnessCheck.confirmed(heap, typicalN, dead, CornerCheck.confirmed(heap, typicalN, dead, first));
  }

  private PartJudge(Heap.Part part, List<Wrench> whole, Resting of) {
    this.part = part;
    heap = part.heap();
    dead = part.of(whole);
    typicalN = ForceBalance.typicalN(dead);
    resting = of;
    rest = resting.under(dead);
    balance = rest instanceof Rest.Stays s ? new Balance.Stands(s.forces()) : new Balance.Undecided("it was not asked about");
  }

  /**
   * A quick judgement that asks staying alone, and that without a second look: where it says no, to its own weight or to more
   * load, the whole judgement says no too; where it says yes, the whole one may not.
   */
  public static PartJudge resting(Heap.Part part, List<Wrench> whole) {
    return new PartJudge(part, whole, new Resting(part.heap(), ForceBalance.typicalN(part.of(whole))));
  }

  private PartJudge(PartJudge of) {
    part = of.part;
    heap = of.heap;
    dead = of.dead;
    typicalN = of.typicalN;
    balance = of.balance;
    rest = of.rest;
  }

  /** The same judgement for use by the thread that asks, made ready once: that costs as much as many answers. */
  public PartJudge forThread() {
    return copies.get();
  }

  public Heap.Part part() {
    return part;
  }

  public Heap heap() {
    return heap;
  }

  public List<Wrench> dead() {
    return dead;
  }

  public Balance balance() {
    return balance;
  }

  /** What staying came to; a fall when the forces have no balance to begin with. */
  public Rest rest() {
    return rest != null ? rest : new Rest.Moves(((Balance.Falls) balance).mechanism(), Double.NaN);
  }

  /**
   * Whether this judgement makes {@code heavier} needless for any live load that does not depend on the state: its dead
   * load is this one's times a factor of one or more. Every force in a heap without bonds scales with its loads, so its
   * margins are then this one's times that factor; with bonds only equal loads will do.
   */
  public boolean covers(PartJudge heavier) {
    double factor = Double.NaN;
    for (int i = 0; i < dead.size() && Double.isNaN(factor); i++) {
      double n = dead.get(i).force().norm();
      if (n > 0) factor = heavier.dead.get(i).force().norm() / n;
    }
    boolean bonded = heap.links().stream().anyMatch(l -> !(l instanceof Link.Bearing));
    if (!(factor >= 1 - Tolerances.PROPORTIONAL) || bonded && factor > 1 + Tolerances.PROPORTIONAL) return false;
    for (int i = 0; i < dead.size(); i++) {
      Wrench off = heavier.dead.get(i).plus(dead.get(i).times(-factor));
      double size = heavier.dead.get(i).force().norm();
      double arm = heap.bodies().get(i).sizeM();
      if (off.force().norm() > Tolerances.PROPORTIONAL * size || off.moment().norm() > Tolerances.PROPORTIONAL * size * arm) {
        return false;
      }
    }
    return true;
  }

  /** It stands and stays: both, or it is not safe. */
  public boolean safe() {
    return balance instanceof Balance.Stands && rest instanceof Rest.Stays;
  }

  /**
   * What the force balance alone allows of a live load, up to {@code cap}, with friction at the corners of every contact: a
   * true bound of what stays, enclosed to one part in a hundred. A heap whose own weight has no balance falls.
   */
  public Margin atMost(List<Wrench> live, double cap) {
    return atMost(live, cap, Tolerances.BOUND_COARSE);
  }

  /** The same to one part in a million. */
  Margin atMostFinely(List<Wrench> live, double cap) {
    return atMost(live, cap, Tolerances.BOUND_FINE);
  }

  /** The same, forces and mechanism no farther apart than {@code share} of the bound. */
  public Margin atMost(List<Wrench> live, double cap, double share) {
    return balance instanceof Balance.Falls f ? new Margin.Falls(f.mechanism()) : bound().margin(live, cap, share);
  }

  private PushBound bound() {
    if (bound == null) bound = new PushBound(heap, dead);
    return bound;
  }

  /** Least and most force in some links together. */
  public ForceBalance.Range range(List<Integer> links) {
    if (forces == null) forces = new ForceBalance(heap, typicalN);
    return forces.range(dead, links);
  }

  /**
   * Empty when it is seen to stay with {@code factor} times {@code live} on top, else what it does; quicker than
   * {@link #under}.
   */
  public Optional<Rest> refuses(List<Wrench> live, double factor) {
    if (plainlyBears(live, factor)) return Optional.empty();
    Rest r = under(live, factor);
    return r.stays() ? Optional.empty() : Optional.of(r);
  }

  /** Whether it is seen at a glance to stay with {@code factor} times {@code live} on top; a no says nothing. */
  boolean plainlyBears(List<Wrench> live, double factor) {
    if (!(rest instanceof Rest.Stays s)) return false;
    if (!quickTried) {
      if (resting == null) resting = new Resting(heap, typicalN);
      quick = resting.superposition(s.state(), dead).orElse(null);
      quickTried = true;
    }
    return quick != null && quick.bears(live, factor);
  }

  /** Whether it stays when {@code factor} times {@code live} comes on top. */
  public Rest under(List<Wrench> live, double factor) {
    if (!(rest instanceof Rest.Stays s)) return rest();
    if (resting == null) resting = new Resting(heap, typicalN);
    return resting.then(s.state(), ForceBalance.sum(dead, live, factor));
  }
}
