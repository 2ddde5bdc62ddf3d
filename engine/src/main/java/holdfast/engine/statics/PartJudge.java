package holdfast.engine.statics;

import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.balance.PushBound;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.CornerCheck;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.statics.rest.Resting;
import holdfast.engine.statics.rest.StiffnessCheck;
import holdfast.engine.statics.rest.Superposition;
import holdfast.engine.work.Parallel;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One separate heap in one state: whether it stands and stays, and what more it bears. What it found under its own weight
 * can be shared between threads; the methods that answer for more load are for one thread at a time. Where the thread is
 * interrupted there is no answer but an {@link IllegalStateException}, soon.
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

  /**
   * Judges one part of a heap under its share of {@code whole}, the weights of the whole heap's bodies. Forces that it comes to
   * rest with show that it stands; where it does not come to rest it is asked whether any forces balance the weights.
   */
  public PartJudge(Heap.Part part, List<Wrench> whole) {
    this(part, whole, true, true);
  }

  private Rest confirmed(Rest first) {
    return StiffnessCheck.confirmed(heap, typicalN, dead, CornerCheck.confirmed(heap, typicalN, dead, first));
  }

  private PartJudge(Heap.Part part, List<Wrench> whole, boolean looksAgain, boolean asksBalance) {
    this.part = part;
    heap = part.heap();
    dead = part.of(whole);
    typicalN = ForceBalance.typicalN(dead);
    resting = new Resting(heap, typicalN);
    Rest first = resting.under(dead);
    rest = looksAgain ? confirmed(first) : first;
    Balance seen = rest instanceof Rest.Stays s ? ForceBalance.checked(heap, dead, s.forces())
        : new Balance.Undecided("it was not asked about");
    balance = asksBalance && !(seen instanceof Balance.Stands) ? new ForceBalance(heap, typicalN).stands(dead) : seen;
  }

  /**
   * A quick judgement that asks staying alone, and that without a second look: where it says no, to its own weight or to more
   * load, the whole judgement says no too; where it says yes, the whole one may not.
   */
  public static PartJudge resting(Heap.Part part, List<Wrench> whole) {
    return new PartJudge(part, whole, false, false);
  }

  /**
   * A judgement that asks staying alone, with every second look. The forces that it comes to rest with are in balance and
   * within their limits, so of a heap that stays the whole judgement finds no other; of one that does not it tells less.
   */
  public static PartJudge staying(Heap.Part part, List<Wrench> whole) {
    return new PartJudge(part, whole, true, false);
  }

  private PartJudge(PartJudge of, List<Wrench> dead, double factor) {
    part = of.part;
    heap = of.heap;
    this.dead = dead;
    typicalN = ForceBalance.typicalN(dead);
    balance = of.balance instanceof Balance.Stands s ? new Balance.Stands(s.forces().times(factor)) : of.balance;
    rest = of.rest instanceof Rest.Stays s ? new Rest.Stays(s.forces().times(factor), s.state()) : of.rest;
  }

  /**
   * The judgement of the same heap under weights in proportion to these, from this one: in a heap without bonds every force
   * scales with its loads, and nothing is asked anew. Empty where {@code whole} is not in proportion or the heap has bonds.
   */
  Optional<PartJudge> scaled(List<Wrench> whole) {
    List<Wrench> other = part.of(whole);
    double factor = scale(heap, dead, other);
    return factor > 0 ? Optional.of(new PartJudge(this, other, factor)) : Optional.empty();
  }

  /** Whether what a heap does under {@code base} says what it does under {@code load}: in proportion, and without bonds. */
  public static boolean scales(Heap heap, List<Wrench> base, List<Wrench> load) {
    return scale(heap, base, load) > 0;
  }

  private static double scale(Heap heap, List<Wrench> base, List<Wrench> load) {
    return heap.bonded() ? Double.NaN : proportion(heap, base, load);
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

  /** How much all of it weighs, newtons. */
  double deadN() {
    return dead.stream().mapToDouble(w -> w.force().norm()).sum();
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
    return balance instanceof Balance.Falls f ? new Rest.Moves(f.mechanism(), Double.NaN) : rest;
  }

  /**
   * Whether this judgement makes {@code heavier} needless for any live load that does not depend on the state: its dead
   * load is this one's times a factor of one or more. Every force in a heap without bonds scales with its loads, so its
   * margins are then this one's times that factor; with bonds only equal loads will do.
   */
  public boolean covers(PartJudge heavier) {
    double factor = proportion(heap, dead, heavier.dead);
    return factor >= 1 - Tolerances.PROPORTIONAL && (!heap.bonded() || factor <= 1 + Tolerances.PROPORTIONAL);
  }

  /** How many times {@code base} a load is, body by body; not a number where it is no multiple of it. */
  private static double proportion(Heap heap, List<Wrench> base, List<Wrench> load) {
    double factor = Double.NaN;
    for (int i = 0; i < base.size() && Double.isNaN(factor); i++) {
      double n = base.get(i).force().norm();
      if (n > 0) factor = load.get(i).force().norm() / n;
    }
    for (int i = 0; i < base.size(); i++) {
      Wrench off = load.get(i).plus(base.get(i).times(-factor));
      double size = load.get(i).force().norm();
      double arm = heap.bodies().get(i).sizeM();
      double most = Tolerances.PROPORTIONAL * size;
      // Not a number, where nothing weighs anything, fails too.
      if (!(off.force().norm() <= most && off.moment().norm() <= most * arm)) return Double.NaN;
    }
    return factor;
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
    return bounded(b -> b.coarse(live, cap));
  }

  /** The same to 5e-8 of the bound. */
  public Margin atMostFinely(List<Wrench> live, double cap) {
    return bounded(b -> b.fine(live, cap));
  }

  /** The same, forces and mechanism no farther apart than {@code share} of the bound. */
  public Margin atMost(List<Wrench> live, double cap, double share) {
    return bounded(b -> b.margin(live, cap, share));
  }

  private Margin bounded(Function<PushBound, Margin> question) {
    Parallel.stopIfInterrupted();
    return balance instanceof Balance.Falls f ? new Margin.Falls(f.mechanism()) : question.apply(bound());
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
    Parallel.stopIfInterrupted();
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
