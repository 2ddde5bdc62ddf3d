package holdfast.engine.verification;

import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.verification.Row.Grade;
import holdfast.engine.verification.Row.Source;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** A face that is twisted. */
final class TwistRows {
  private static final Source SQUARE = new Source("Twisted face",
      "uniform pressure: torsion mu N times the mean distance from the centre, 0.382598 of the side", Grade.DERIVED);
  private static final Source ECCENTRIC = new Source("Twisted face",
      "mean distance of the face from the centre of pressure, summed over 4 million cells in the test", Grade.DERIVED);
  private static final Source CORNERS = new Source("Twisted face",
      "pushes at the four corners with that centre of pressure, a family of one parameter: the greatest moment of their "
          + "friction; the lesser of this and the mean distance counts", Grade.DERIVED);
  private static final Source NO_SHEAR = new Source("Twisted face",
      "friction of the corners' own pushes that leaves no shear: its greatest moment is the least over all points q of the sum "
          + "of mu n |x - q| (duality), sought on a grid; no pressure on the face gives more", Grade.DERIVED);
  private static final Source LEVER = new Source("Twisted face",
      "a bar as slim as a line bears at its ends, so each end takes its share of the push by the lever rule, up to mu times its "
          + "share of the weight; no pressure on the face gives more", Grade.DERIVED);
  private static final double A = 0.1;
  private static final double N = 40;
  private static final double MU = 0.5;

  private TwistRows() {}

  static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    rows.add(SQUARE.figure("square face a, load at its centre, torsion over mu N a", 0.382598, torsion(0, 0), 1e-6,
        "digits of the expected value"));
    double[][] places = {{0.2, 0}, {0.25, 0.1}};
    for (double[] p : places) {
      rows.add(ECCENTRIC.figure("square face a, load at (" + p[0] + ", " + p[1] + ") a from its centre, torsion over mu N a",
          meanDistance(p[0], p[1]), torsion(p[0], p[1]), 1e-5, "cells of the sum"));
    }
    rows.add(CORNERS.figure("square face a, load at (0.3, 0.3) a from its centre, torsion over mu N a",
        Math.min(meanDistance(0.3, 0.3), cornersAlone(0.3, 0.3)), torsion(0.3, 0.3), 1e-5, "solver tolerance"));
    for (double off : new double[] {0.3, 0.4, 0.45}) {
      rows.add(NO_SHEAR.figure("bar L by L/100 on its face, weight " + off
          + " L from the middle, couple that it stays under over mu N L", noShear(off), staysUnderCouple(off),
          2e-4, "the four corners stand for all points"));
    }
    for (double[] p : new double[][] {{0.4, 0.3}, {0.4, 0}, {0.2, -0.1}, {0.45, 0.44}}) {
      double light = (0.5 - p[0]) / (0.5 - p[1]);
      double heavy = (0.5 + p[0]) / (0.5 + p[1]);
      rows.add(LEVER.figure("bar L by L/10000 on its face, weight " + p[0] + " L from the middle, pushed across " + p[1]
          + " L from the middle, push that it stays under over mu N", Math.min(light, heavy), staysUnderPush(p[0], p[1]),
          2e-3, "its breadth"));
    }
    return rows;
  }

  private static final double SLIM = 0.01;
  /** So slim that an end by itself bears no twist worth the name. */
  private static final double LINE = 1e-4;

  /** The couple that a slim bar stays under when its weight acts {@code off} lengths from the middle, over mu N L. */
  private static double staysUnderCouple(double off) {
    return staysUnder(SLIM, off, new Wrench(Vec3.ZERO, Vec3.Z)) / (MU * N * A);
  }

  /** The same for a push across it at the floor, {@code at} lengths from the middle, over mu N. */
  private static double staysUnderPush(double off, double at) {
    return staysUnder(LINE, off, Wrench.of(Vec3.Y, new Vec3(at * A, 0, 0), new Vec3(off * A, 0, LINE * A / 10))) / (MU * N);
  }

  private static double staysUnder(double slim, double off, Wrench live) {
    Fixtures f = new Fixtures();
    int bar = f.body("bar", new Vec3(off * A, 0, slim * A / 10), A, N);
    f.bearing(bar, Heap.GROUND, Vec3.Z, MU, new Vec3(-A / 2, -slim * A / 2, 0), new Vec3(A / 2, -slim * A / 2, 0),
        new Vec3(A / 2, slim * A / 2, 0), new Vec3(-A / 2, slim * A / 2, 0));
    PartJudge judge = new PartJudge(f.heap().separate().get(0), f.dead());
    return LoadCase.least(List.of(new LoadCase(State.DRY, judge, List.of(live))), 1000, 1e-5).factor();
  }

  private static double noShear(double off) {
    double[] x = {-0.5, 0.5, 0.5, -0.5};
    double[] y = {-SLIM / 2, -SLIM / 2, SLIM / 2, SLIM / 2};
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= 4000; i++) {
      for (int j = 0; j <= 40; j++) {
        double sum = 0;
        for (int k = 0; k < 4; k++) {
          sum += (0.25 + Math.signum(x[k]) * off / 2) * Math.hypot(x[k] - (i / 4000.0 - 0.5), y[k] - SLIM * (j / 40.0 - 0.5));
        }
        least = Math.min(least, sum);
      }
    }
    return least;
  }

  /** Greatest friction moment of pushes at the corners of a unit square that gather at (u, v). */
  private static double cornersAlone(double u, double v) {
    double[] x = {0.5, 0.5, -0.5, -0.5};
    double[] y = {0.5, -0.5, 0.5, -0.5};
    double[] sign = {1, -1, -1, 1};
    double best = 0;
    int steps = 1_000_000;
    for (int k = 0; k <= steps; k++) {
      double e = -0.25 + 0.5 * k / steps;
      double sum = 0;
      boolean pushes = true;
      for (int i = 0; i < 4; i++) {
        double n = (0.5 + Math.signum(x[i]) * u) * (0.5 + Math.signum(y[i]) * v) + sign[i] * e;
        pushes &= n >= -1e-12;
        sum += n * Math.hypot(x[i] - u, y[i] - v);
      }
      if (pushes) best = Math.max(best, sum);
    }
    return best;
  }

  /** Torsion that a square face bears when the weight on it acts at (u, v) sides from its centre. */
  private static double torsion(double u, double v) {
    Fixtures f = new Fixtures();
    Vec3 centre = new Vec3(u * A, v * A, A);
    int box = f.body("box", centre, 2 * A, N);
    f.bearing(box, Heap.GROUND, Vec3.Z, MU, new Vec3(-A / 2, -A / 2, 0), new Vec3(A / 2, -A / 2, 0),
        new Vec3(A / 2, A / 2, 0), new Vec3(-A / 2, A / 2, 0));
    Margin m = new ForceBalance(f.heap(), N).margin(f.dead(), List.of(new Wrench(Vec3.ZERO, Vec3.Z)), 1000, 1e-6);
    return m.match(l -> l.factor() / (MU * N * A), b -> Double.NaN, x -> Double.NaN, x -> Double.NaN);
  }

  private static double meanDistance(double u, double v) {
    int n = 2000;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) sum += Math.hypot((i + 0.5) / n - 0.5 - u, (j + 0.5) / n - 0.5 - v);
    }
    return sum / n / n;
  }
}
