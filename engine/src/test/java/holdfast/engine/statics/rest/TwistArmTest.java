package holdfast.engine.statics.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.heap.Patch;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Variable;

/** The twist that pushes give beside a shear, held against closed forms (derived) and a linear program of a general library. */
class TwistArmTest {
  private static final double ENOUGH = 10;
  /** Of the reach: the gap that is taken off and the trace that the centre is drawn in by. */
  private static final double NEAR = 5e-6;

  private static Patch line(double lengthM) {
    return new Patch(Vec3.Z, List.of(new Vec3(-lengthM / 2, 0, 0), new Vec3(lengthM / 2, 0, 0)));
  }

  /** A shear in x and y as the patch's own axes have it. */
  private static double most(Patch p, double u, double v, Vec3 shear, double way) {
    return new TwistArm(p).most(u, v, shear.dot(p.first), shear.dot(p.second), way, ENOUGH, 0);
  }

  /**
   * A bar L with e of its push at the right end. Shear V across it: the left end gives f, the right g, f + g = V, |f| up to
   * 1 - e, |g| up to e, and T = L (g - e V); the greatest g is the lesser of e and V + 1 - e.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0", "0.5, 0.4", "0.1, 0", "0.1, 0.5", "0.1, -0.5", "0.1, 0.75", "0.1, -0.95", "0.02, 0.9", "0.02, -0.9"})
  void acrossABar(double e, double shear) {
    double length = 0.2;
    Patch p = line(length);
    Vec3 centre = new Vec3((e - 0.5) * length, 0, 0);
    double expected = length * (Math.min(e, shear + 1 - e) - e * shear);
    double got = most(p, centre.dot(p.first), centre.dot(p.second), new Vec3(0, shear, 0), 1);
    assertThat(got).isCloseTo(expected, within(NEAR * length)).isLessThanOrEqualTo(expected + 2e-6 * length);
  }

  /** The same with shear along the bar: each end gives t across it and what is left along; e is the lesser end. */
  @ParameterizedTest
  @CsvSource({"0.5, 0.6", "0.5, 0.95", "0.1, 0.3", "0.1, 0.85"})
  void alongABar(double e, double shear) {
    double length = 0.2;
    Patch p = line(length);
    Vec3 centre = new Vec3((e - 0.5) * length, 0, 0);
    double low = 0;
    double high = e;
    for (int i = 0; i < 60; i++) {
      double t = (low + high) / 2;
      if (Math.sqrt((1 - e) * (1 - e) - t * t) + Math.sqrt(e * e - t * t) >= shear) low = t;
      else high = t;
    }
    double got = most(p, centre.dot(p.first), centre.dot(p.second), new Vec3(shear, 0, 0), 1);
    assertThat(got).isCloseTo(low * length, within(NEAR * length));
  }

  /** A square pressed about its middle: from the corners mu N times half the diagonal, the same either way. */
  @Test
  void aSquareAboutItsMiddle() {
    Patch p = new Patch(Vec3.Z, List.of(new Vec3(-1, -1, 0), new Vec3(1, -1, 0), new Vec3(1, 1, 0), new Vec3(-1, 1, 0)));
    for (double way : new double[] {-1, 1}) {
      assertThat(most(p, 0, 0, Vec3.ZERO, way)).isCloseTo(Math.sqrt(2), within(2 * NEAR));
    }
  }

  /** Any patch, pressure and shear: between linear programs with a pyramid inside and one round each friction cone. */
  @Test
  void aLinearProgramFindsTheSame() {
    Random r = new Random(5);
    for (int t = 0; t < 60; t++) {
      int m = 3 + r.nextInt(5);
      List<Vec3> corners = new ArrayList<>();
      double wide = 0.002 + 0.05 * r.nextDouble();
      for (int k = 0; k < m; k++) {
        double turn = 2 * Math.PI * (k + 0.8 * r.nextDouble()) / m;
        corners.add(new Vec3(0.05 * Math.cos(turn), wide * Math.sin(turn), 0));
      }
      Patch p = new Patch(Vec3.Z, corners);
      double[] push = new double[m];
      double total = 0;
      for (int k = 0; k < m; k++) total += push[k] = r.nextInt(3) == 0 ? 0.05 : r.nextDouble();
      double u = 0;
      double v = 0;
      for (int k = 0; k < m; k++) {
        u += push[k] / total * p.u[k];
        v += push[k] / total * p.v[k];
      }
      double shear = 0.98 * r.nextDouble();
      double way = 2 * Math.PI * r.nextDouble();
      double s1 = shear * Math.cos(way);
      double s2 = shear * Math.sin(way);
      double got = new TwistArm(p).most(u, v, s1, s2, 1, ENOUGH, 0);
      double slack = NEAR * p.reachM();
      assertThat(got).as("patch %d", t).isBetween(
          linear(p, u, v, s1, s2, 1) - slack, linear(p, u, v, s1, s2, 1 / Math.cos(Math.PI / EDGES)) + slack);
      // What is seen at a glance is never more than that.
      double glance = TwistArm.glance(p.u, p.v, push, 0, s1, s2);
      assertThat(glance * Math.sqrt(1 - shear * shear)).as("patch %d", t).isLessThanOrEqualTo(got + slack);
    }
  }

  private static final int EDGES = 128;

  private static double linear(Patch p, double u, double v, double s1, double s2, double round) {
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    Expression sum = model.addExpression("sum").level(1);
    Expression first = model.addExpression("first").level(0);
    Expression second = model.addExpression("second").level(0);
    Expression shear1 = model.addExpression("shear 1").level(s1);
    Expression shear2 = model.addExpression("shear 2").level(s2);
    double reach = p.reachM();
    for (int k = 0; k < p.u.length; k++) {
      double x = (p.u[k] - u) / reach;
      double y = (p.v[k] - v) / reach;
      for (int e = 0; e < EDGES; e++) {
        double f1 = round * Math.cos(2 * Math.PI * e / EDGES);
        double f2 = round * Math.sin(2 * Math.PI * e / EDGES);
        Variable share = model.addVariable("force " + k + " " + e).lower(0).weight(x * f2 - y * f1);
        sum.set(share, 1);
        first.set(share, x);
        second.set(share, y);
        shear1.set(share, f1);
        shear2.set(share, f2);
      }
    }
    return model.maximise().getValue() * reach;
  }
}
