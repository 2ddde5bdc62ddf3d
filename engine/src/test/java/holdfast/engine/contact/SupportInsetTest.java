package holdfast.engine.contact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expected figures are derived: rectangles and a triangle. */
class SupportInsetTest {
  private static final Quat TURN = Quat.ofDegreesZyx(31, -17, 64);

  private static List<Vec3> flat(double... xy) {
    Vec3[] p = new Vec3[xy.length / 2];
    for (int i = 0; i < p.length; i++) p[i] = TURN.rotate(new Vec3(xy[2 * i], xy[2 * i + 1], 0.3));
    return List.of(p);
  }

  private static List<Vec3> drawnIn(List<Vec3> polygon, double insetM) {
    return SupportInset.drawnIn(polygon, TURN.rotate(Vec3.Z), insetM);
  }

  private static void assertSame(List<Vec3> found, List<Vec3> expected) {
    assertThat(found).hasSameSizeAs(expected);
    for (Vec3 e : expected) {
      assertThat(found.stream().mapToDouble(e::distanceTo).min().orElseThrow()).isCloseTo(0, within(1e-12));
    }
  }

  @Test
  void aSquareOf100LosesFiveOnEachSide() {
    assertSame(drawnIn(flat(0, 0, 0.1, 0, 0.1, 0.1, 0, 0.1), 0.005),
        flat(0.005, 0.005, 0.095, 0.005, 0.095, 0.095, 0.005, 0.095));
  }

  @Test
  void aNarrowStripBecomesItsMiddleLine() {
    // Derived: the long sides stop at the centroid 4 mm in, the short ones go 5 mm.
    assertSame(drawnIn(flat(0, 0, 0.1, 0, 0.1, 0.008, 0, 0.008), 0.005), flat(0.005, 0.004, 0.095, 0.004));
  }

  @Test
  void aSmallPatchBecomesItsCentroid() {
    assertSame(drawnIn(flat(0, 0, 0.003, 0, 0, 0.003), 0.005), flat(0.001, 0.001));
  }

  @Test
  void aTriangleShrinksAboutItsInscribedCircle() {
    // Derived: legs 0.3 and 0.4, hypotenuse 0.5, inradius 0.1; 0.02 inward leaves it 0.8 as large about (0.1, 0.1).
    assertSame(drawnIn(flat(0, 0, 0.3, 0, 0, 0.4), 0.02), flat(0.02, 0.02, 0.26, 0.02, 0.02, 0.34));
  }

  @Test
  void anEdgeIsShortenedAtBothEnds() {
    assertSame(drawnIn(flat(0, 0, 0.1, 0), 0.005), flat(0.005, 0, 0.095, 0));
    assertSame(drawnIn(flat(0, 0, 0.009, 0), 0.005), flat(0.0045, 0));
    assertSame(drawnIn(flat(0.2, 0.1), 0.005), flat(0.2, 0.1));
  }

  @Test
  void noInsetChangesNothing() {
    List<Vec3> p = flat(0, 0, 0.1, 0, 0.1, 0.1);
    assertThat(drawnIn(p, 0)).isEqualTo(p);
  }
}
