package holdfast.engine.statics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A solid box 100 x 100 x 200 mm of 2 kg/L on a bare floor, friction 0.6, supports not drawn in, pushed through its
 * centre line at 0.9 of its height. It tips about an edge at W b / (2 y) (derived: moments about the edge).
 */
class OneBoxTest {
  private static final double B = 0.1;
  private static final double H = 0.2;
  private static final double W = 4 * 9.81;
  private static final double Y = 0.9 * H;

  private static Heap box(double friction) {
    List<Vec3> foot = List.of(
        new Vec3(-B / 2, -B / 2, 0), new Vec3(B / 2, -B / 2, 0), new Vec3(B / 2, B / 2, 0), new Vec3(-B / 2, B / 2, 0));
    return new Heap(
        List.of(new Heap.Body("box", new Vec3(0, 0, H / 2), H, 4)),
        List.of(new Link.Bearing(0, Heap.GROUND, Vec3.Z, foot, friction)));
  }

  private static Margin.Limited push(double friction, double degrees) {
    Vec3 d = Vec3.heading(degrees);
    List<Wrench> dead = List.of(new Wrench(new Vec3(0, 0, -W), Vec3.ZERO));
    List<Wrench> live = List.of(Wrench.of(d, new Vec3(0, 0, Y), new Vec3(0, 0, H / 2)));
    return (Margin.Limited) new ForceBalance(box(friction), W).margin(dead, live, 1000, 1e-6);
  }

  @Test
  void tipsAboutItsEdgeInTheFourFaceDirections() {
    for (int degrees : new int[] {0, 90, 180, 270}) {
      // derived: W b / (2 y) = 10.9 N
      assertThat(push(0.6, degrees).factor()).as("%d degrees", degrees).isCloseTo(W * B / (2 * Y), within(1e-6));
    }
  }

  @Test
  void tipsAboutItsCornerAcrossTheDiagonal() {
    // derived: on the diagonal the arm is b / sqrt 2, but friction need not hold the line; at 45 degrees the corner carries all.
    assertThat(push(0.6, 45).factor()).isCloseTo(W * B * Math.sqrt(2) / (2 * Y), within(1e-6));
    // derived: at 22.5 degrees the far edge is at b / 2 / cos 22.5 along the push
    assertThat(push(0.6, 22.5).factor()).isCloseTo(W * B / (2 * Math.cos(Math.PI / 8)) / Y, within(1e-6));
  }

  @Test
  void slidesWhenFrictionGivesWayFirst() {
    // derived: mu W
    assertThat(push(0.1, 30).factor()).isCloseTo(0.1 * W, within(1e-6));
  }

  @Test
  void twistOfASquareFace() {
    List<Wrench> dead = List.of(new Wrench(new Vec3(0, 0, -W), Vec3.ZERO));
    List<Wrench> live = List.of(new Wrench(Vec3.ZERO, Vec3.Z));
    Margin.Limited m = (Margin.Limited) new ForceBalance(box(0.5), W).margin(dead, live, 1000, 1e-6);
    // derived: mean distance of a square from its centre, 0.382598 a
    assertThat(m.factor()).isCloseTo(0.382598 * 0.5 * W * B, within(1e-6));
  }

  @Test
  void standsAndItsFootCarriesItsWeight() {
    List<Wrench> dead = List.of(new Wrench(new Vec3(0, 0, -W), Vec3.ZERO));
    ForceBalance balance = new ForceBalance(box(0.6), W);
    assertThat(balance.stands(dead)).isInstanceOf(Balance.Stands.class);
    ForceBalance.Range range = balance.range(dead, List.of(0));
    assertThat(range.leastN()).isCloseTo(W, within(1e-6));
    assertThat(range.mostN()).isCloseTo(W, within(1e-6));
  }

  @Test
  void fallsWhenItsCentreIsPastTheEdge() {
    Heap heap = new Heap(
        List.of(new Heap.Body("box", new Vec3(B / 2 + 0.001, 0, H / 2), H, 4)), box(0.6).links());
    List<Wrench> dead = List.of(new Wrench(new Vec3(0, 0, -W), Vec3.ZERO));
    Balance b = new ForceBalance(heap, W).stands(dead);
    assertThat(b).isInstanceOf(Balance.Falls.class);
    assertThat(((Balance.Falls) b).mechanism().power(dead)).isPositive();
  }
}
