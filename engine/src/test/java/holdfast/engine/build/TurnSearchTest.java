package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import holdfast.engine.build.OpeningFit.Answer;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Bodies of bars, 40 mm wide in their plane and 30 mm thick, in an opening over a large room; what must and what cannot pass is
 * derived beside each.
 */
class TurnSearchTest {
  private static final double W = 0.04;
  private static final double T = 0.03;

  private static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, why -> {
      throw new AssertionError(why);
    });
  }

  private static Hull box(double x0, double x1, double y0, double y1, double z0, double z1) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      p.add(new Vec3((i & 1) == 0 ? x0 : x1, (i >> 1 & 1) == 0 ? y0 : y1, (i >> 2) == 0 ? z0 : z1));
    }
    return hull(p);
  }

  private static List<Hull> ell() {
    return List.of(box(0, 0.3, 0, T, 0, W), box(0, W, 0, T, 0, 0.3));
  }

  /** Part of a ring of outer radius 150 mm, in pieces of 22.5 degrees. */
  private static List<Hull> arc(double degrees) {
    int n = (int) Math.round(degrees / 22.5);
    List<Hull> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      List<Vec3> p = new ArrayList<>();
      for (int k = i; k <= i + 1; k++) {
        double a = Math.toRadians(22.5 * k);
        for (double r : new double[] {0.12, 0.15}) {
          p.add(new Vec3(r * Math.cos(a), 0, r * Math.sin(a)));
          p.add(new Vec3(r * Math.cos(a), T, r * Math.sin(a)));
        }
      }
      out.add(hull(p));
    }
    return out;
  }

  private static Gate gate(double a, double b, double thick, double depth, double length, double width) {
    return new Gate(
        new Gate.Rectangle(length / 2 - a / 2, width / 2 - b / 2, length / 2 + a / 2, width / 2 + b / 2),
        new Gate.Rectangle(0, 0, length, width), thick, depth);
  }

  private static Gate gate(double a, double b, double thick) {
    return gate(a, b, thick, 0.6, 1.2, 0.7);
  }

  private static Answer straight(List<Hull> hulls, double a, double b) {
    return OpeningFit.through(hulls.stream().flatMap(h -> h.corners().stream()).toList(), a, b).answer();
  }

  private static TurnPath found(List<Hull> hulls, Gate gate, int samples) {
    Optional<TurnPath> path = TurnSearch.find(GateBody.of(hulls), gate);
    assertThat(path).isPresent();
    new Replay(hulls, gate).check(path.get(), samples);
    return path.get();
  }

  private static void notFound(List<Hull> hulls, Gate gate) {
    assertThat(TurnSearch.find(GateBody.of(hulls), gate)).isEmpty();
  }

  /**
   * In its plane, with the opening's depth d and a bar of width w: a bar that leans by up to 45 degrees shows at most
   * w / cos 45 + d tan 45 = sqrt 2 w + d, and so does the corner of an L when the opening goes along the line that halves its
   * angle (there even half of d is enough). So an L hooks through an opening of sqrt 2 w + d, 86.6 mm here; a straight lift
   * needs the width of its hull across the open side, (300 + 40) / sqrt 2 = 240 mm (derived).
   */
  @Test
  void anEllHooksThrough() {
    assertThat(straight(ell(), 0.092, 0.034)).isEqualTo(Answer.STUCK);
    TurnPath path = found(ell(), gate(0.092, 0.034, 0.03), 60);

    // The running through does see what is too narrow.
    double less = path.roomM() + 0.005;
    assertThatThrownBy(() -> new Replay(ell(), gate(0.092 - less, 0.034 - less, 0.03)).check(path, 60))
        .isInstanceOf(AssertionError.class).hasMessageContaining("leg");

    // A larger opening does not take the way away: the same one is proved in it, with no less room.
    GateBody body = GateBody.of(ell());
    for (double more : new double[] {0.0001, 0.01, 0.1}) {
      Gate larger = gate(0.092 + more, 0.034 + more / 2, 0.03);
      GateFit fit = new GateFit(body, larger);
      for (int i = 0; i < path.pivots().size(); i++) {
        double room = new GateLeg(path.poses().get(i), path.poses().get(i + 1), path.pivots().get(i), body.centre())
            .proved(fit, path.roomM(), path.roomM());
        assertThat(room).as("leg %d, %f more", i, more).isGreaterThanOrEqualTo(path.roomM());
      }
    }
  }

  /**
   * To get from one arm to the other a line through an L, other than one that cuts both arms, must once stand at 45 degrees to
   * both; every such line has sqrt 2 w in the stone, and one that cuts both arms at the corner has at least twice that
   * (derived). An opening hardly wider across than the L is thick holds it in its plane: none passes below 56.6 mm there.
   */
  @Test
  void noEllHooksThroughLessThanItsCorner() {
    found(ell(), gate(Math.sqrt(2) * W + 0.001 + 0.0025, T + 0.002, 0.001), 60);
    notFound(ell(), gate(Math.sqrt(2) * W - 0.001, T + 0.001, 0.001));
    notFound(ell(), gate(1.1 * W, T + 0.001, 0.001));
  }

  /** Every section of a bar holds a section across it, foreshortened: no side may be less than its least width (derived). */
  @Test
  void noSideLessThanTheBarLetsItPass() {
    notFound(ell(), gate(0.5, T - 0.001, 0.01));
    notFound(ell(), gate(T - 0.001, 0.2, 0.03));
  }

  @Test
  void aUAndAnArcAreThreadedThrough() {
    List<Hull> u = List.of(box(0, 0.3, 0, T, 0, W), box(0, W, 0, T, 0, 0.25), box(0.3 - W, 0.3, 0, T, 0, 0.25));
    assertThat(straight(u, 0.12, 0.06)).isEqualTo(Answer.STUCK);
    found(u, gate(0.12, 0.06, 0.03), 30);
    assertThat(straight(arc(270), 0.1, 0.1)).isEqualTo(Answer.STUCK);
    found(arc(270), gate(0.1, 0.1, 0.03), 8);
  }

  /**
   * The middle of a closed ring once lies in the opening's plane; that plane cuts the ring's along a line through the middle,
   * and on it the ring reaches to 150 mm cos 11.25 degrees at least on both sides: 294 mm, more than the diagonal of
   * 200 by 200 mm, 283 mm (derived). With a gap it passes, see above.
   */
  @Test
  void aClosedRingDoesNot() {
    notFound(arc(360), gate(0.2, 0.2, 0.03));
  }

  /**
   * A regular tetrahedron of edge 1 passes a square hole of side sqrt(1/2) and no smaller one, however it is moved: Itoh,
   * Tanoue and Zamfirescu 2006, J. Geometry 84:119 (published, from memory). A straight passage has the same least side
   * (derived: its shadow along the line through the middles of two opposite edges is that square), so turning gains nothing.
   */
  @Test
  void aTetrahedronGainsNothing() {
    double e = Math.sqrt(0.5);
    List<Hull> tetrahedron =
        List.of(hull(List.of(new Vec3(0, 0, 0), new Vec3(e, e, 0), new Vec3(e, 0, e), new Vec3(0, e, e))));
    found(tetrahedron, gate(e + 0.02, e + 0.02, 0.001, 2, 4, 4), 60);
    notFound(tetrahedron, gate(e - 0.001, e - 0.001, 0.001, 2, 4, 4));
  }

  /**
   * A rod longer than the tank is deep must be leant on its way in. Where the tank's diagonal is shorter than the rod it has no
   * place at all: 0.6, 0.4 and 0.5 m have one of 0.877 m (derived).
   */
  @Test
  void aLongRodIsLeantIn() {
    List<Hull> rod = List.of(box(0, 0.9, 0, 0.05, 0, 0.05));
    found(rod, gate(0.3, 0.15, 0.03, 0.5, 1.4, 0.5), 60);
    notFound(rod, gate(0.3, 0.15, 0.03, 0.5, 0.6, 0.4));
  }

  /** Crooked pieces by chance: whatever is found runs through again, and twice the same, wherever the piece stands. */
  @Test
  void whateverIsFoundRunsThrough() {
    long seed = 11;
    Random random = new Random(seed);
    int passed = 0;
    for (int run = 0; run < 6; run++) {
      List<Hull> hulls = new ArrayList<>();
      Vec3 at = Vec3.ZERO;
      for (int bar = 0; bar < 3; bar++) {
        Quat turn = Quat.ofRotationVector(new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()));
        double length = 0.15 + 0.15 * random.nextDouble();
        hulls.add(box(0, length, -0.02, 0.02, -0.02, 0.02).moved(new Pose(at, turn)));
        at = at.plus(turn.rotate(new Vec3(length, 0, 0)));
      }
      Gate gate = gate(0.1 + 0.06 * random.nextDouble(), 0.08 + 0.04 * random.nextDouble(), 0.02);
      Optional<TurnPath> path = TurnSearch.find(GateBody.of(hulls), gate);
      if (path.isEmpty()) continue;
      passed++;
      new Replay(hulls, gate).check(path.get(), 20);
      List<Hull> shifted = hulls.stream().map(h -> h.moved(new Pose(new Vec3(0.25, 0.5, 0.125), Quat.IDENTITY))).toList();
      assertThat(TurnSearch.find(GateBody.of(shifted), gate)).as("seed %d run %d", seed, run).isEqualTo(path);
    }
    assertThat(passed).as("seed %d", seed).isPositive();
  }
}
