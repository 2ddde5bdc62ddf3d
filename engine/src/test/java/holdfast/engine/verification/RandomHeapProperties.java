package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.balance.PushBound;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;

/** What must hold of any heap. A failure names the seed that makes its heap. */
class RandomHeapProperties {
  private static final int FEW = 25;
  private static final int MANY = 500;
  private static final int FEW_SETTLED = 4;
  private static final int MANY_SETTLED = 60;
  private static final int MOST_ROCKS = 12;
  private static final double CAP_N = 1000;

  /** Relative; what two ways to the same margin may differ by, since centres of pressure settle from a start that rounding moves. */
  private static final double SAME = 3e-4;

  /**
   * By this factor the force balance may miss its own largest value: every joint of these heaps twists, and the factor is then
   * a local maximum over the centres of pressure. Seen: 5 % low, in about one heap of twenty; always low, never high. Where
   * nothing twists it is exact, and {@link TowerProperties} holds it to that. See {@link BoundUnderTwistTest}.
   */
  private static final double MISSED = 1.1;

  /** Relative width to which a confirmed margin is searched here. */
  private static final double SEARCH = 0.01;

  /** One heap with a push on one of its stones. */
  private record Case(RandomHeap made, int rock, Vec3 direction) {
    /** Laid for seeds from zero, settled for those below. */
    static Case of(long seed) {
      RandomHeap made = seed < 0 ? RandomHeap.settled(seed, MOST_ROCKS) : RandomHeap.of(seed, MOST_ROCKS);
      Random r = new Random(~seed);
      return new Case(made, r.nextInt(made.rocks().size()), Vec3.heading(360 * r.nextDouble()));
    }

    Found judged() {
      return judged(made, direction);
    }

    Found judged(RandomHeap heap, Vec3 d) {
      Heap h = heap.heap();
      List<Wrench> dead = RandomHeap.weights(h);
      List<Wrench> live = heap.push(h, rock, d);
      List<Integer> all = new ArrayList<>();
      for (int i = 0; i < h.bodies().size(); i++) all.add(i);
      PartJudge judge = new PartJudge(h.part(all), dead);
      return new Found(h, dead, live, judge, new ForceBalance(h, ForceBalance.typicalN(dead)).margin(dead, live, CAP_N, 1e-8));
    }
  }

  private record Found(Heap heap, List<Wrench> dead, List<Wrench> live, PartJudge judge, Margin margin) {
    OptionalDouble atMost() {
      return margin.match(l -> OptionalDouble.of(l.factor()), b -> OptionalDouble.of(b.cap()),
          f -> OptionalDouble.of(0), u -> OptionalDouble.empty());
    }

    double confirmed() {
      return judge.safe() ? LoadCase.least(List.of(new LoadCase(State.DRY, judge, live)), CAP_N, SEARCH).factor() : 0;
    }
  }

  private static void same(String what, long seed, Found one, Found other, double scale) {
    if (one.atMost().isEmpty() || other.atMost().isEmpty()) return;
    double a = one.atMost().getAsDouble() * scale;
    double b = other.atMost().getAsDouble();
    if (a >= CAP_N * Math.min(1, scale) || b >= CAP_N) return;
    assertThat(b).as("%s of heap %d", what, seed).isCloseTo(a, within(SAME * Math.max(a, weight(other))));
    if (one.judge.rest() instanceof Rest.Undecided || other.judge.rest() instanceof Rest.Undecided) return;
    assertThat(other.judge.safe()).as("staying, %s of heap %d", what, seed).isEqualTo(one.judge.safe());
    // A step of the search either way, for answers that hang on the last digit.
    assertThat(other.confirmed()).as("confirmed, %s of heap %d", what, seed)
        .isCloseTo(one.confirmed() * scale, within(2.5 * SEARCH * Math.max(a, SAME * weight(other))));
  }

  private static double weight(Found f) {
    return -f.dead.stream().mapToDouble(w -> w.force().z()).sum();
  }

  private static void turned(long seed, double degrees) {
    Case c = Case.of(seed);
    Quat q = Quat.about(Vec3.Z, Math.toRadians(degrees));
    same("turned by " + degrees, seed, c.judged(), c.judged(c.made.placed(q::rotate), q.rotate(c.direction)), 1);
  }

  private static void scaled(long seed, double scale) {
    Case c = Case.of(seed);
    RandomHeap inset = c.made.withInset(0.004);
    same("scaled by " + scale, seed, c.judged(inset, c.direction),
        c.judged(inset.placed(p -> p.times(scale)).withInset(0.004 * scale), c.direction), scale * scale * scale);
  }

  private static void mirrored(long seed) {
    Case c = Case.of(seed);
    Vec3 d = c.direction;
    same("mirror image", seed, c.judged(),
        c.judged(c.made.placed(p -> new Vec3(-p.x(), p.y(), p.z())), new Vec3(-d.x(), d.y(), d.z())), 1);
  }

  private static void moreHolds(long seed, double more) {
    Case c = Case.of(seed);
    Found bare = c.judged();
    Found rough = c.judged(c.made.withFriction(c.made.friction() + more), c.direction);
    notLess("more friction", seed, bare, rough.margin);
    bounded("more friction", seed, bare, rough.heap);
    // A bond beside its bearing; in the place of its bearing it may well hold less.
    List<Link> links = new ArrayList<>(bare.heap.links());
    Link.Bearing b = (Link.Bearing) links.get(Math.floorMod(seed, links.size()));
    links.add(new Link.Bond(b.a(), b.b(), b.normal(), b.polygon(), 1e-3, 1e5, 1e5, 1e6, true));
    Heap bonded = new Heap(bare.heap.bodies(), links);
    notLess("a bond", seed, bare,
        new ForceBalance(bonded, ForceBalance.typicalN(bare.dead)).margin(bare.dead, bare.live, CAP_N, 1e-8));
    bounded("a bond", seed, bare, bonded);
  }

  /** What forces carry is within the bound of a heap that can do more (derived). */
  private static void bounded(String what, long seed, Found bare, Heap more) {
    double carried = new PushBound(bare.heap, bare.dead).coarse(bare.live, CAP_N)
        .match(Margin.Limited::factor, Margin.Beyond::cap, f -> 0.0, u -> 0.0);
    double bound = new PushBound(more, bare.dead).coarse(bare.live, CAP_N)
        .match(Margin.Limited::bound, Margin.Beyond::cap, f -> 0.0, u -> CAP_N);
    assertThat(bound).as("bound, %s on heap %d", what, seed).isGreaterThanOrEqualTo(carried * (1 - 1e-9));
  }

  private static void notLess(String what, long seed, Found bare, Margin after) {
    OptionalDouble more = after.match(l -> OptionalDouble.of(l.factor()), b -> OptionalDouble.of(b.cap()),
        f -> OptionalDouble.of(0), u -> OptionalDouble.empty());
    if (bare.atMost().isEmpty() || more.isEmpty()) return;
    assertThat(more.getAsDouble()).as("%s on heap %d", what, seed)
        .isGreaterThanOrEqualTo(bare.atMost().getAsDouble() / MISSED - SAME * weight(bare));
  }

  private static void margin(long seed) {
    Found f = Case.of(seed).judged();
    if (f.margin instanceof Margin.Limited l) {
      // Forces and mechanism meet.
      assertThat(l.bound() - l.factor()).as("duality of heap %d", seed).isBetween(-1e-6 * weight(f), 1e-6 * Math.max(weight(f), l.factor()));
      double step = 2e-5 * Math.max(l.factor(), weight(f));
      ForceBalance balance = new ForceBalance(f.heap, ForceBalance.typicalN(f.dead));
      // Just under it stands: here are the forces. To ask for a balance anew would be weaker, since where the pressure
      // gathers under twist is searched from the middle of the patches, and not always found.
      admissible(seed, f, l.forces(), sum(f, l.factor()));
      assertThat(balance.stands(sum(f, l.factor() * MISSED + step))).as("over, heap %d", seed).isNotInstanceOf(Balance.Stands.class);
      assertThat(f.confirmed()).as("confirmed of heap %d", seed).isLessThanOrEqualTo(l.factor() * MISSED + step);
    }
    if (f.judge.safe()) {
      // Friction at corners bounds whatever stays.
      double most = f.judge.atMost(f.live, CAP_N).match(Margin.Limited::bound, Margin.Beyond::cap, g -> 0.0, u -> CAP_N);
      assertThat(f.confirmed()).as("confirmed beside its bound, heap %d", seed).isLessThanOrEqualTo(most * (1 + 1e-9));
    }
    if (f.judge.balance() instanceof Balance.Stands s) footed(seed, f, s.forces());
    if (f.judge.rest() instanceof Rest.Stays s) footed(seed, f, s.forces());
  }

  /** In balance, no pull, and shear inside the cone. */
  private static void admissible(long seed, Found f, Forces forces, List<Wrench> loads) {
    for (Wrench w : forces.unbalance(f.heap, loads)) {
      assertThat(w.force().norm()).as("balance of heap %d", seed).isLessThan(1e-5 * weight(f));
      assertThat(w.moment().norm()).as("moments of heap %d", seed).isLessThan(1e-6 * weight(f));
    }
    for (int i = 0; i < forces.links().size(); i++) {
      Forces.LinkForce force = forces.links().get(i);
      double slack = 1e-5 * weight(f);
      assertThat(force.cornersN()).as("pushes of heap %d", seed).allMatch(n -> n >= -slack);
      double friction = ((Link.Bearing) f.heap.links().get(i)).friction();
      assertThat(force.shear().norm()).as("friction of heap %d", seed).isLessThan(friction * force.normalN() + slack);
    }
  }

  private static List<Wrench> sum(Found f, double factor) {
    List<Wrench> out = new ArrayList<>();
    for (int i = 0; i < f.dead.size(); i++) out.add(f.dead.get(i).plus(f.live.get(i).times(factor)));
    return out;
  }

  /** What the ground gives back is the weight. */
  private static void footed(long seed, Found f, Forces forces) {
    Vec3 sum = Vec3.ZERO;
    for (int i = 0; i < forces.links().size(); i++) {
      Link link = f.heap.links().get(i);
      if (link.b() == Heap.GROUND) sum = sum.plus(forces.links().get(i).force(link.normal()));
    }
    assertThat(sum.distanceTo(new Vec3(0, 0, weight(f)))).as("feet of heap %d", seed).isLessThan(1e-6 * weight(f));
  }

  @Property(tries = FEW, shrinking = ShrinkingMode.OFF)
  void turningEverythingAboutTheVerticalChangesNothing(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed, @ForAll @DoubleRange(min = 0, max = 360) double degrees) {
    turned(seed, degrees);
  }

  @Property(tries = FEW, shrinking = ShrinkingMode.OFF)
  void marginsGrowWithTheCubeOfTheScale(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed, @ForAll @DoubleRange(min = 0.3, max = 3) double scale) {
    scaled(seed, scale);
  }

  @Property(tries = FEW, shrinking = ShrinkingMode.OFF)
  void aMirrorImageBearsTheSame(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    mirrored(seed);
  }

  @Property(tries = FEW, shrinking = ShrinkingMode.OFF)
  void moreFrictionOrABondNeverLowersTheForceBalance(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed, @ForAll @DoubleRange(min = 0.01, max = 1) double more) {
    moreHolds(seed, more);
  }

  @Property(tries = FEW, shrinking = ShrinkingMode.OFF)
  void aMarginIsWhereStandingEnds(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    margin(seed);
  }

  private static void all(long seed, long step, double share) {
    turned(seed, 360 * share);
    scaled(seed + step, 0.3 + 2.7 * share);
    mirrored(seed + 2 * step);
    moreHolds(seed + 3 * step, 0.01 + share);
    margin(seed + 4 * step);
  }

  @Property(tries = FEW_SETTLED, shrinking = ShrinkingMode.OFF)
  void allOfItForAFewSettledHeaps(
      @ForAll @LongRange(min = -1_000_000, max = -1) long seed, @ForAll @DoubleRange(min = 0, max = 1) double share) {
    all(seed, 0, share);
  }

  @Property(tries = MANY_SETTLED, shrinking = ShrinkingMode.OFF)
  @Tag("slow")
  void allOfItForManySettledHeaps(
      @ForAll @LongRange(min = -1_000_000, max = -1) long seed, @ForAll @DoubleRange(min = 0, max = 1) double share) {
    all(seed, 0, share);
  }

  @Property(tries = MANY, shrinking = ShrinkingMode.OFF)
  @Tag("slow")
  void allOfItForMany(@ForAll @LongRange(min = 0) long seed, @ForAll @DoubleRange(min = 0, max = 1) double share) {
    all(seed, 1, share);
  }
}
