package holdfast.engine.statics.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Gravity;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Bounds of pushes in closed form, all derived: moments about an edge, and friction times weight. */
class PushBoundTest {
  private static final double CAP = 1000;
  private static final double B = 0.1;
  private static final double H = 0.2;
  private static final double W = 40;
  private static final double FINE = 2e-6;

  private static final class Make {
    final List<Heap.Body> bodies = new ArrayList<>();
    final List<Link> links = new ArrayList<>();
    final List<Wrench> dead = new ArrayList<>();

    Make body(double x, double z, double sizeM, double weightN) {
      bodies.add(new Heap.Body("body " + bodies.size(), new Vec3(x, 0, z), sizeM, weightN / Gravity.G));
      dead.add(new Wrench(new Vec3(0, 0, -weightN), Vec3.ZERO));
      return this;
    }

    Make bearing(int a, int b, Vec3 normal, double friction, Vec3... at) {
      links.add(new Link.Bearing(a, b, normal, List.of(at), friction));
      return this;
    }

    Make level(int a, int b, double friction, double z, double x0, double x1, double y) {
      return bearing(a, b, Vec3.Z, friction, new Vec3(x0, -y, z), new Vec3(x1, -y, z), new Vec3(x1, y, z), new Vec3(x0, y, z));
    }

    Heap heap() {
      return new Heap(bodies, links);
    }

    Margin pushed(int body, Vec3 at, Vec3 direction) {
      return new PushBound(heap(), dead).fine(live(body, at, direction), CAP);
    }

    List<Wrench> live(int body, Vec3 at, Vec3 direction) {
      Wrench[] live = new Wrench[bodies.size()];
      Arrays.fill(live, Wrench.ZERO);
      live[body] = Wrench.of(direction, at, bodies.get(body).centre());
      return List.of(live);
    }
  }

  private static Make box(double friction) {
    return new Make().body(0, H / 2, H, W).level(0, Heap.GROUND, friction, 0, -B / 2, B / 2, B / 2);
  }

  private static void is(Margin m, double expected) {
    assertThat(m).isInstanceOf(Margin.Limited.class);
    Margin.Limited l = (Margin.Limited) m;
    assertThat(l.factor()).isCloseTo(expected, within(FINE * Math.max(expected, W * 1e-3)));
    assertThat(l.bound()).isCloseTo(expected, within(FINE * Math.max(expected, W * 1e-3)));
    assertThat(l.bound()).isGreaterThanOrEqualTo(expected * (1 - 1e-9));
    assertThat(l.factor()).isLessThanOrEqualTo(expected * (1 + 1e-9));
  }

  @Test
  void aBoxTipsAboutItsEdgeOrSlides() {
    double y = 0.9 * H;
    for (int degrees : new int[] {0, 90, 180, 270}) {
      is(box(0.6).pushed(0, new Vec3(0, 0, y), Vec3.heading(degrees)), W * B / (2 * y));
      // A push below mu = b / 2h slides it.
      is(box(0.2).pushed(0, new Vec3(0, 0, y), Vec3.heading(degrees)), 0.2 * W);
    }
    // Across the diagonal it tips about a corner, b / sqrt 2 away.
    is(box(0.6).pushed(0, new Vec3(0, 0, y), Vec3.heading(45)), W * B * Math.sqrt(2) / (2 * y));
    is(box(0.15).pushed(0, new Vec3(0, 0, y), Vec3.heading(45)), 0.15 * W);
  }

  /**
   * Derived: it tips about an edge at W b / 2 over y times the push's part across it, the larger of two. A smooth pane at one
   * side takes that part of a push toward it.
   */
  @Test
  void aBoxPushedRoundTipsAboutEachEdge() {
    double y = 0.9 * H;
    int sides = 24;
    Make m = box(0.9);
    Make held = box(0.9).bearing(0, Heap.GROUND, Vec3.X.negated(), 0,
        new Vec3(B / 2, -B / 2, 0.01), new Vec3(B / 2, B / 2, 0.01), new Vec3(B / 2, -B / 2, H), new Vec3(B / 2, B / 2, H));
    List<List<Wrench>> lives = new ArrayList<>();
    for (int d = 0; d < sides; d++) lives.add(m.live(0, new Vec3(0, 0, y), Vec3.heading(360.0 * d / sides)));
    List<Margin> free = new PushBound(m.heap(), m.dead).margins(lives, CAP, Tolerances.BOUND_FINE);
    List<Margin> beside = new PushBound(held.heap(), held.dead).margins(lives, CAP, Tolerances.BOUND_FINE);
    for (int d = 0; d < sides; d++) {
      Vec3 way = Vec3.heading(360.0 * d / sides);
      is(free.get(d), W * B / (2 * y * Math.max(Math.abs(way.x()), Math.abs(way.y()))));
      if (d == 0) assertThat(beside.get(d)).isInstanceOf(Margin.Beyond.class);
      else is(beside.get(d), W * B / (2 * y * Math.max(-way.x(), Math.abs(way.y()))));
    }
  }

  @Test
  void aBoxTwistedTurnsOnItsCorners() {
    Make m = box(0.5);
    List<Wrench> live = List.of(new Wrench(Vec3.ZERO, Vec3.Z));
    // All the weight on corners b / sqrt 2 from the middle, each dragged across its own arm.
    is(new PushBound(m.heap(), m.dead).fine(live, CAP), 0.5 * W * B / Math.sqrt(2));
  }

  @Test
  void withoutFrictionNothingIsBorneSideways() {
    Margin m = box(0).pushed(0, new Vec3(0, 0, 0.9 * H), Vec3.X);
    assertThat(((Margin.Limited) m).factor()).isBetween(0.0, 1e-6 * W);
    assertThat(((Margin.Limited) m).bound()).isBetween(0.0, 1e-6 * W);
  }

  @Test
  void aBridgeOnTwoFeetBearsWhatEachFootBears() {
    // Feet 60 mm wide, 400 mm apart; pushed along at height 0.3 m of 0.4: it tips about the outer edge of one.
    Make m = new Make().body(0, 0.2, 0.5, W)
        .level(0, Heap.GROUND, 2, 0, -0.23, -0.17, 0.05).level(0, Heap.GROUND, 2, 0, 0.17, 0.23, 0.05);
    is(m.pushed(0, new Vec3(0, 0, 0.3), Vec3.X), W * 0.23 / 0.3);
    is(m.pushed(0, new Vec3(0, 0, 0.3), Vec3.Y), W * 0.05 / 0.3);
  }

  @Test
  void aStackOfTwoGivesWayAtTheWeakerJoint() {
    Make m = new Make().body(0, 0.1, 0.2, W).body(0, 0.3, 0.2, W / 4)
        .level(0, Heap.GROUND, 0.5, 0, -0.1, 0.1, 0.1).level(1, 0, 0.5, 0.2, -0.05, 0.05, 0.05);
    // The upper one tips about its own edge: W/4 0.05 / 0.1, less than 0.5 W/4.
    Vec3 high = new Vec3(0, 0, 0.35);
    is(m.pushed(1, high, Vec3.X), W / 4 * 0.05 / 0.15);
    // Pushed low, it slides.
    is(m.pushed(1, new Vec3(0, 0, 0.21), Vec3.X), 0.5 * W / 4);
    // The lower one carries the upper along: 0.5 of both weights, or about the floor's edge.
    is(m.pushed(0, new Vec3(0, 0, 0.15), Vec3.X), 0.5 * 1.25 * W);
    is(m.pushed(0, new Vec3(0, 0, 0.19), Vec3.Y), 0.5 * 1.25 * W);
  }

  @Test
  void aPlankOnTwoSupportsSlidesAlongAndTurnsAskew() {
    // Points at both ends on fixed supports; each carries half the weight.
    double l = 0.4;
    double mu = 0.3;
    Make m = new Make().body(0, 0.02, l, W)
        .bearing(0, Heap.GROUND, Vec3.Z, mu, new Vec3(-l / 2, 0, 0)).bearing(0, Heap.GROUND, Vec3.Z, mu, new Vec3(l / 2, 0, 0));
    // Along, at the height of the supports: both give mu W / 2.
    is(m.pushed(0, Vec3.ZERO, Vec3.X), mu * W);
    // Across at one end it turns about the other: that end gives its half alone.
    is(m.pushed(0, new Vec3(l / 2, 0, 0), Vec3.Y), mu * W / 2);
    // Across a quarter of the way in: about the far end, mu W/2 l = P 3/4 l.
    is(m.pushed(0, new Vec3(l / 4, 0, 0), Vec3.Y), mu * W / 2 / 0.75);
  }

  @Test
  void whatIsHeldByAWallOrLocksHasNoLimit() {
    Make held = box(0.5).bearing(0, Heap.GROUND, Vec3.X.negated(), 0.5,
        new Vec3(B / 2, -B / 2, 0.01), new Vec3(B / 2, B / 2, 0.01), new Vec3(B / 2, 0, H));
    Vec3 middle = new Vec3(0, 0, H / 2);
    assertThat(held.pushed(0, middle, Vec3.X)).isInstanceOf(Margin.Beyond.class);
    // Between two walls it may squeeze as it likes and then bears a lift, 2 mu squeeze.
    Make locked = held.bearing(0, Heap.GROUND, Vec3.X, 0.5,
        new Vec3(-B / 2, -B / 2, 0.01), new Vec3(-B / 2, B / 2, 0.01), new Vec3(-B / 2, 0, H));
    Margin lifted = locked.pushed(0, middle, Vec3.Z);
    assertThat(lifted).isInstanceOf(Margin.Beyond.class);
    Forces f = ((Margin.Beyond) lifted).forces();
    List<Wrench> loads = ForceBalance.sum(locked.dead, locked.live(0, middle, Vec3.Z), CAP);
    assertThat(f.unbalance(locked.heap(), loads).get(0).force().norm()).isLessThan(1e-6 * CAP);
  }

  @Test
  void aLoadThatDoesNothingHasNoLimitAndAFallIsAFall() {
    Make m = box(0.5);
    assertThat(new PushBound(m.heap(), m.dead).fine(List.of(Wrench.ZERO), CAP)).isInstanceOf(Margin.Beyond.class);
    assertThat(m.pushed(0, new Vec3(0, 0, H), Vec3.Z.negated())).isInstanceOf(Margin.Beyond.class);
    Make over = new Make().body(B / 2 + 0.001, H / 2, H, W).level(0, Heap.GROUND, 0.5, 0, -B / 2, B / 2, B / 2);
    Margin falls = over.pushed(0, new Vec3(0, 0, H), Vec3.X);
    assertThat(falls).isInstanceOf(Margin.Falls.class);
    assertThat(((Margin.Falls) falls).mechanism().power(over.dead)).isPositive();
    // On the very brink: the centre above the edge, nothing to spare.
    Make brink = new Make().body(B / 2, H / 2, H, W).level(0, Heap.GROUND, 0.5, 0, -B / 2, B / 2, B / 2);
    Margin none = brink.pushed(0, new Vec3(B / 2, 0, H), Vec3.X);
    assertThat(none.match(Margin.Limited::factor, b -> CAP, f -> 0.0, u -> 0.0)).isLessThan(1e-4 * W);
    Make bare = new Make().body(0, 0, H, W);
    assertThat(bare.pushed(0, Vec3.ZERO, Vec3.X)).isInstanceOf(Margin.Falls.class);
  }

  @Test
  void aBondAddsItsStrengthAndARodItsSection() {
    // Pulled straight up: the weight and the bond's tension over its area.
    Make m = new Make().body(0, H / 2, H, W);
    List<Vec3> foot = List.of(
        new Vec3(-B / 2, -B / 2, 0), new Vec3(B / 2, -B / 2, 0), new Vec3(B / 2, B / 2, 0), new Vec3(-B / 2, B / 2, 0));
    m.links.add(new Link.Bond(0, Heap.GROUND, Vec3.Z, foot, B * B, 5e3, 3e3, 1e6, true));
    is(m.pushed(0, new Vec3(0, 0, H), Vec3.Z), W + 5e3 * B * B);
    // Sheared at the joint: its shear alone.
    is(m.pushed(0, Vec3.ZERO, Vec3.X), 3e3 * B * B);
    // Tilted: stress W / A at rest, M / (b^3 / 6) from the push, until the tension is met.
    is(m.pushed(0, new Vec3(0, 0, H), Vec3.X), (5e3 + W / (B * B)) * B * B * B / 6 / H);
    Make r = box(0.5);
    r.links.add(new Link.Rod(0, Heap.GROUND, Vec3.Z, Vec3.ZERO, 0.006, 30, 2, 70));
    is(r.pushed(0, new Vec3(0, 0, H), Vec3.Z), W + 70);
    // Along the floor: friction under the weight and what the rod can press on by its pull, and the rod's shear.
    is(r.pushed(0, Vec3.ZERO, Vec3.X), 0.5 * (W + 70) + 30);
  }

  @Test
  void shakingPushesEveryBodyAtOnce() {
    Make m = new Make().body(0, 0.1, 0.2, W).body(0, 0.3, 0.2, W)
        .level(0, Heap.GROUND, 0.6, 0, -0.1, 0.1, 0.1).level(1, 0, 0.6, 0.2, -0.1, 0.1, 0.1);
    List<Wrench> live = m.dead.stream().map(w -> new Wrench(Vec3.X.times(w.force().norm()), Vec3.ZERO)).toList();
    // As one block 0.2 wide, 0.4 high: b / h.
    is(new PushBound(m.heap(), m.dead).fine(live, CAP), 0.5);
  }

  @Test
  void theSameQuestionHasTheSameAnswerWhateverWasAskedBefore() {
    Make m = new Make().body(0, 0.1, 0.2, W).body(0.01, 0.3, 0.2, W / 4)
        .level(0, Heap.GROUND, 0.5, 0, -0.1, 0.1, 0.1).level(1, 0, 0.5, 0.2, -0.05, 0.05, 0.05);
    PushBound one = new PushBound(m.heap(), m.dead);
    Margin first = one.coarse(m.live(1, new Vec3(0, 0, 0.35), Vec3.X), CAP);
    one.coarse(m.live(0, new Vec3(0, 0, 0.1), Vec3.Y), CAP);
    assertThat(one.coarse(m.live(1, new Vec3(0, 0, 0.35), Vec3.X), CAP)).isEqualTo(first);
  }
}
