package holdfast.engine.statics.rest;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.model.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What friction at corners can give, held against closed forms (derived). */
class CornerLimitTest {
  private static final double MU = 0.5;

  private static boolean admits(List<Vec3> corners, List<Double> pushes, double shearX, double shearY, double twist) {
    double n = pushes.stream().mapToDouble(p -> p).sum();
    Vec3 at = Vec3.ZERO;
    for (int k = 0; k < corners.size(); k++) at = at.plusTimes(pushes.get(k) / n, corners.get(k));
    return CornerLimit.admits(new Link.Bearing(0, Heap.GROUND, Vec3.Z, corners, MU),
        new Forces.LinkForce(n, new Vec3(shearX, shearY, 0), at, new Vec3(0, 0, twist), pushes));
  }

  /** Two points at distance r, half of the push each, shear across the line: V + T / r up to mu N. */
  @Test
  void anEdgeEvenlyPressed() {
    List<Vec3> ends = List.of(new Vec3(-0.1, 0, 0), new Vec3(0.1, 0, 0));
    for (double share : new double[] {0, 0.3, 0.7, 0.95}) {
      for (double way : new double[] {-1, 1}) {
        double twist = (1 - share) * MU * 10 * 0.1;
        assertThat(admits(ends, List.of(5.0, 5.0), 0, way * share * MU * 10, 0.99 * twist)).as("%s", share).isTrue();
        assertThat(admits(ends, List.of(5.0, 5.0), 0, way * share * MU * 10, 1.02 * twist + 1e-3)).as("%s", share).isFalse();
      }
    }
  }

  /** Shear along the line leaves each end sqrt(1 - V^2) across it: an ellipse. */
  @Test
  void anEdgeShearedAlong() {
    List<Vec3> ends = List.of(new Vec3(-0.1, 0, 0), new Vec3(0.1, 0, 0));
    double twist = Math.sqrt(1 - 0.6 * 0.6) * MU * 10 * 0.1;
    assertThat(admits(ends, List.of(5.0, 5.0), 0.6 * MU * 10, 0, 0.99 * twist)).isTrue();
    assertThat(admits(ends, List.of(5.0, 5.0), 0.6 * MU * 10, 0, 1.01 * twist)).isFalse();
  }

  /**
   * Pressure at one end, 9 to 1: with the whole twist about the centre of pressure each end rubs the other way, so shear of
   * 8/10 of the friction comes with it, across and one way only.
   */
  @Test
  void anEdgePressedAtOneEnd() {
    List<Vec3> ends = List.of(new Vec3(-0.1, 0, 0), new Vec3(0.1, 0, 0));
    // Arms 0.02 and 0.18; both ends at their limit: 9 x 0.02 + 1 x 0.18.
    double twist = MU * (9 * 0.02 + 1 * 0.18);
    assertThat(admits(ends, List.of(9.0, 1.0), 0, -MU * 8, 0.98 * twist)).isTrue();
    assertThat(admits(ends, List.of(9.0, 1.0), 0, 0, 0.98 * twist)).isFalse();
    assertThat(admits(ends, List.of(9.0, 1.0), 0, MU * 8, 0.98 * twist)).isFalse();
    assertThat(admits(ends, List.of(9.0, 1.0), 0, MU * 8, -0.98 * twist)).isTrue();
  }

  /** Four corners of a square: mu N times half the diagonal. */
  @Test
  void aSquareTwisted() {
    List<Vec3> square = List.of(new Vec3(0, 0, 0), new Vec3(0.1, 0, 0), new Vec3(0.1, 0.1, 0), new Vec3(0, 0.1, 0));
    double twist = MU * 40 * 0.1 / Math.sqrt(2);
    assertThat(admits(square, List.of(10.0, 10.0, 10.0, 10.0), 0, 0, 0.99 * twist)).isTrue();
    assertThat(admits(square, List.of(10.0, 10.0, 10.0, 10.0), 0, 0, 1.01 * twist)).isFalse();
    assertThat(admits(square, List.of(10.0, 10.0, 10.0, 10.0), 1, 0, 0.999 * twist)).isTrue();
    assertThat(admits(square, List.of(10.0, 10.0, 10.0, 10.0), 1.01 * MU * 40, 0, 0)).isFalse();
  }
}
