package holdfast.engine.verification;

import holdfast.engine.statics.LooseBlocksSolver.Answer;
import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.verification.Row.Grade;
import holdfast.engine.verification.Row.Source;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** Logs and balls on exact points, and the arch. */
final class RoundRows {
  private static final Source LOGS = new Source("Round stones",
      "three logs: friction between logs 2 - sqrt 3, on the ground (2 - sqrt 3) / 3", Grade.DERIVED);
  private static final Source BALLS = new Source("Round stones",
      "a ball on three: friction between balls sqrt 3 - sqrt 2, on the ground a quarter of it", Grade.DERIVED);
  private static final Source ARCH = new Source("Semicircular arch",
      "exact sector weights, radial joints, recomputed by an independent linear program", Grade.DERIVED);
  private static final Source ARCH_LIMIT = new Source("Semicircular arch",
      "Milankovitch 1907 as in Makris & Alexakis 2013: t / R = 0.1075 for very many stones", Grade.PUBLISHED);
  private static final double PLENTY = 2;

  /** So much that no joint slides; more changes no answer, and costs digits. */
  private static final double NO_SLIDING = 1;

  private RoundRows() {}

  static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    double s3 = Math.sqrt(3);
    double log = 2 - s3;
    double ball = s3 - Math.sqrt(2);
    String why = "search to 1e-6, solver tolerance";
    rows.add(LOGS.figure("three logs, friction needed between them", log, needed(mu -> logs(mu, PLENTY)), 1e-5, why));
    rows.add(LOGS.figure("three logs, friction needed on the ground", log / 3, needed(mu -> logs(PLENTY, mu)), 1e-5, why));
    rows.add(BALLS.figure("3 + 1 balls, friction needed between them", ball, needed(mu -> balls(mu, PLENTY)), 1e-5, why));
    rows.add(BALLS.figure("3 + 1 balls, friction needed on the ground", ball / 4, needed(mu -> balls(PLENTY, mu)), 1e-5, why));

    double sixteen = thickness(16);
    double sixty = thickness(60);
    rows.add(ARCH.figure("least thickness, 16 stones, t / R", 0.107237, sixteen, 2e-6, "digits of the expected value"));
    rows.add(ARCH.figure("least thickness, 60 stones, t / R", 0.10746, sixty, 1e-5, "digits of the expected value"));
    rows.add(ARCH_LIMIT.figure("least thickness, 60 stones, against the limit of many, t / R", 0.1075, sixty, 1e-4,
        "digits of the expected value, 60 stones"));
    double[][] friction = {{0.12, 0.38166}, {0.15, 0.35169}, {0.2, 0.30921}, {0.3, 0.30921}};
    for (double[] f : friction) {
      double ours = Blocks.turning(0.1, 1, 1e-6, mu -> stands(arch(120, f[0], mu)));
      rows.add(ARCH.figure("least friction, 120 stones, t / R = " + f[0], f[1], ours, 5e-5,
          "digits of the expected value; just above the limit we are undecided"));
    }
    return rows;
  }

  private interface Rubbing {
    Fixtures with(double friction);
  }

  /** The least friction with which the heap stays. */
  private static double needed(Rubbing r) {
    return Blocks.turning(0.01, 1, 1e-6, mu -> r.with(mu).judge().stays() == Answer.YES);
  }

  /** Two logs apart by nothing and a third on them; each line contact by its two ends. */
  private static Fixtures logs(double stone, double ground) {
    Fixtures f = new Fixtures();
    double r = 0.05;
    double half = 0.1;
    int a = f.body("left", new Vec3(-r, 0, r), 4 * r, 10);
    int b = f.body("right", new Vec3(r, 0, r), 4 * r, 10);
    int c = f.body("top", new Vec3(0, 0, r + r * Math.sqrt(3)), 4 * r, 10);
    for (int i : new int[] {a, b}) {
      Vec3 at = f.heap().bodies().get(i).centre();
      f.bearing(i, Heap.GROUND, Vec3.Z, ground, new Vec3(at.x(), -half, 0), new Vec3(at.x(), half, 0));
      Vec3 n = f.heap().bodies().get(c).centre().minus(at).unit();
      Vec3 touch = at.plusTimes(r, n);
      f.bearing(c, i, n, stone, touch.plusTimes(-half, Vec3.Y), touch.plusTimes(half, Vec3.Y));
    }
    return f;
  }

  /** Three balls on the ground just touching, and one in the hollow. */
  private static Fixtures balls(double stone, double ground) {
    Fixtures f = new Fixtures();
    double r = 0.05;
    for (int k = 0; k < 3; k++) {
      f.body("ball " + k, Vec3.heading(120.0 * k).times(2 * r / Math.sqrt(3)).plusTimes(r, Vec3.Z), 2 * r, 10);
    }
    int top = f.body("top", new Vec3(0, 0, r + r * Math.sqrt(8.0 / 3)), 2 * r, 10);
    for (int k = 0; k < 3; k++) f.touch(k, Heap.GROUND, r, ground).touch(top, k, r, stone);
    return f;
  }

  private static double thickness(int stones) {
    return Blocks.turning(0.09, 0.13, 1e-7, t -> stands(arch(stones, t, NO_SLIDING)));
  }

  private static boolean stands(Fixtures f) {
    return new ForceBalance(f.heap(), ForceBalance.typicalN(f.dead())).stands(f.dead()) instanceof Balance.Stands;
  }

  /** Equal stones of a half ring of mean radius 1 m and depth 0.5 m, between two fixed springings. */
  private static Fixtures arch(int n, double thickness, double friction) {
    Fixtures f = new Fixtures();
    double in = 1 - thickness / 2;
    double out = 1 + thickness / 2;
    double half = Math.PI / n / 2;
    double area = half * (out * out - in * in);
    // Centroid of a sector of a ring: 2 sin a (ro^3 - ri^3) / (3 a (ro^2 - ri^2)).
    double centre = 2 * Math.sin(half) * (out * out * out - in * in * in) / (3 * half * (out * out - in * in));
    for (int i = 0; i < n; i++) {
      double at = (2 * i + 1) * half;
      f.body("stone " + i, new Vec3(centre * Math.cos(at), 0, centre * Math.sin(at)), thickness + 2 * half, 1000 * area);
    }
    for (int i = 0; i <= n; i++) {
      double at = 2 * i * half;
      Vec3 radial = new Vec3(Math.cos(at), 0, Math.sin(at));
      Vec3 along = new Vec3(-Math.sin(at), 0, Math.cos(at));
      Vec3 p = radial.times(in);
      Vec3 q = radial.times(out);
      Vec3 w = Vec3.Y.times(0.25);
      // Stone i begins at joint i; the joint before it pushes it on.
      int a = i < n ? i : n - 1;
      int b = i == 0 || i == n ? Heap.GROUND : i - 1;
      Vec3 normal = i < n ? along : along.negated();
      if (i < n) f.bearing(a, b, normal, friction, p.minus(w), p.plus(w), q.plus(w), q.minus(w));
      else f.bearing(a, b, normal, friction, p.minus(w), q.minus(w), q.plus(w), p.plus(w));
    }
    return f;
  }
}
