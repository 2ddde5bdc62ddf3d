package holdfast.engine.statics.balance;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is called impossible, a little to either side of closed forms (derived). It may miss some, up to two parts in a hundred. */
class CornerBalanceTest {
  private static final double A = 0.1;
  private static final double W = 20;
  private static final Heap.Body CUBE = new Heap.Body("cube", new Vec3(0, 0, A / 2), Math.sqrt(3) * A, 2);

  private static List<Vec3> square(double half, double z) {
    return List.of(new Vec3(-half, -half, z), new Vec3(half, -half, z), new Vec3(half, half, z), new Vec3(-half, half, z));
  }

  private static List<Wrench> pushed(double n, double height) {
    Wrench push = Wrench.of(Vec3.X.times(n), new Vec3(0, 0, height), CUBE.centre());
    return List.of(new Wrench(new Vec3(0, 0, -W), Vec3.ZERO).plus(push));
  }

  private static boolean impossible(Link link, List<Wrench> loads) {
    return CornerBalance.impossible(new Heap(List.of(CUBE), List.of(link)), loads);
  }

  /** A cube goes over its edge at W a / (2 h), and slides at mu W. */
  @Test
  void aCubeOnTheFloor() {
    Link foot = new Link.Bearing(0, Heap.GROUND, Vec3.Z, square(A / 2, 0), 0.6);
    double over = W * A / 2 / 0.09;
    assertThat(impossible(foot, pushed(0.995 * over, 0.09))).isFalse();
    assertThat(impossible(foot, pushed(1.005 * over, 0.09))).isTrue();
    assertThat(impossible(foot, pushed(0.995 * 0.6 * W, 0.01))).isFalse();
    assertThat(impossible(foot, pushed(1.03 * 0.6 * W, 0.01))).isTrue();
  }

  /** A cube held by one face to a wall: its weight at a / 2 against the bending strength s a^3 / 6. */
  @Test
  void aCubeGluedToAWall() {
    List<Vec3> face = new ArrayList<>();
    for (Vec3 p : square(A / 2, 0)) face.add(new Vec3(-A / 2, p.x(), A / 2 + p.y()));
    double s = W * A / 2 / (A * A * A / 6);
    for (double share : new double[] {0.97, 1.02}) {
      Link bond = new Link.Bond(0, Heap.GROUND, Vec3.X, face, A * A, share * s, 1e9, 1e9, true);
      assertThat(impossible(bond, pushed(0, 0))).as("%s of the strength", share).isEqualTo(share < 1);
    }
  }

  /** A rod's own section, W a / 2 again; pull it has none, but it pushes. */
  @Test
  void aCubeOnARod() {
    Vec3 at = new Vec3(-A / 2, 0, A / 2);
    assertThat(impossible(new Link.Rod(0, Heap.GROUND, Vec3.X, at, 0.01, 2 * W, 0.97 * W * A / 2, 0), pushed(0, 0))).isTrue();
    assertThat(impossible(new Link.Rod(0, Heap.GROUND, Vec3.X, at, 0.01, 2 * W, 1.02 * W * A / 2, 0), pushed(0, 0))).isFalse();
    assertThat(impossible(new Link.Rod(0, Heap.GROUND, Vec3.X, at, 0.01, 2 * W, W * A, 0), pushed(-30, A / 2))).isFalse();
    assertThat(impossible(new Link.Rod(0, Heap.GROUND, Vec3.X, at, 0.01, 2 * W, W * A, 0), pushed(30, A / 2))).isTrue();
  }
}
