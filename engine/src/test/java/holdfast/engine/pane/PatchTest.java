package holdfast.engine.pane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PatchTest {
  private static final Patch KITE = Patch.of(List.of(
      new Point2(0.1, 0), new Point2(0.16, 0.05), new Point2(0.12, 0.11), new Point2(0.05, 0.06)));

  /** Westergaard's rule: 0.325 t for a point, the true radius from half the thickness on (Roark, table 11.4; published). */
  @Test
  void equivalentRadius() {
    assertThat(Patch.equivalentRadiusM(0, 0.01)).isCloseTo(0.00325, within(1e-12));
    assertThat(Patch.equivalentRadiusM(0.004, 0.01)).isCloseTo(Math.sqrt(1.6 * 16e-6 + 1e-4) - 0.00675, within(1e-12));
    assertThat(Patch.equivalentRadiusM(0.006, 0.01)).isEqualTo(0.006);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0005, 0.002, 0.0049})
  void noPatchIsSmallerThanTheRuleLeavesIt(double radius) {
    Patch thick = Patch.disc(0.2, 0.2, radius).forThickness(0.01);
    double expected = Patch.equivalentRadiusM(radius, 0.01);
    assertThat(thick.semiMinorM()).isGreaterThanOrEqualTo(0.325 * 0.01);
    // A 16-gon of the same area stands for the circle: its second moment is 0.4 % larger.
    assertThat(thick.areaM2()).isCloseTo(Math.PI * expected * expected, within(0.01 * Math.PI * expected * expected));
  }

  /** Inside, on a side, on a corner, outside: against sums over a fine net. */
  @ParameterizedTest
  @CsvSource({"0.11, 0.05", "0.1, 0", "0.13, 0.025", "0.3, 0.2", "0.05, 0.01"})
  void logarithmsIntegrateExactly(double x, double y) {
    double[] found = new double[3];
    KITE.logMeans(x, y, found);
    double[] sum = new double[4];
    int n = 1500;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double px = 0.05 + (i + 0.5) * 0.11 / n;
        double py = (j + 0.5) * 0.11 / n;
        if (!inside(KITE.ring(), px, py)) continue;
        double dx = px - x;
        double dy = py - y;
        double r2 = dx * dx + dy * dy;
        sum[0] += 0.5 * Math.log(r2);
        sum[1] += (dx * dx - dy * dy) / r2;
        sum[2] += 2 * dx * dy / r2;
        sum[3]++;
      }
    }
    for (int k = 0; k < 3; k++) assertThat(found[k]).isCloseTo(sum[k] / sum[3], within(2e-3));
  }

  @Test
  void pointsHaveThePatchsMoments() {
    for (double[] points : List.of(KITE.coarse(), KITE.medium(), KITE.fine())) {
      double w = 0;
      double x = 0;
      double xx = 0;
      double exact = 0;
      double[] fine = KITE.fine();
      for (int i = 0; i < fine.length; i += 3) exact += fine[i + 2] * Math.pow(fine[i] - KITE.centre().x(), 2);
      for (int i = 0; i < points.length; i += 3) {
        w += points[i + 2];
        x += points[i + 2] * points[i];
        xx += points[i + 2] * Math.pow(points[i] - KITE.centre().x(), 2);
      }
      assertThat(w).isCloseTo(1, within(1e-12));
      assertThat(x).isCloseTo(KITE.centre().x(), within(1e-12));
      assertThat(xx).isCloseTo(exact, within(1e-12));
    }
  }

  private static boolean inside(List<Point2> ring, double x, double y) {
    for (int i = 0; i < ring.size(); i++) {
      Point2 p = ring.get(i);
      Point2 q = ring.get((i + 1) % ring.size());
      if ((q.x() - p.x()) * (y - p.y()) - (q.y() - p.y()) * (x - p.x()) < 0) return false;
    }
    return true;
  }
}
