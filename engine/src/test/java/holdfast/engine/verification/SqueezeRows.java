package holdfast.engine.verification;

import holdfast.engine.statics.LooseBlocksSolver.Answer;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.verification.Row.Grade;
import holdfast.engine.verification.Row.Source;
import holdfast.model.geom.Vec3;
import holdfast.model.io.LooseBlocks;
import java.util.ArrayList;
import java.util.List;

/** Cases in which forces may balance though the heap does not stay: squeeze that nothing creates. */
final class SqueezeRows {
  private static final String GROUP = "Balance is not enough";
  private static final Source SQUEEZE = new Source(GROUP,
      "the faces do not close as the block drops, so no force arises; balance exists for friction >= tan(90 - face angle). "
          + "The effect: Kao et al. 2022, doi 10.1016/j.cad.2022.103216", Grade.DERIVED);
  private static final Source GROOVE = new Source(GROUP,
      "V groove, faces at theta: slides beyond atan(mu / cos theta); balance up to "
          + "atan(mu / (cos theta sqrt(1 - mu^2 tan^2 theta))), at every tilt once mu tan theta >= 1", Grade.DERIVED);
  private static final Source WEDGE = new Source(GROUP,
      "two planes dipping 40 toward 130 and 60 toward 220: normal forces from balance across the line of intersection "
          + "(37.058 toward 155.848), then tan phi; balance: the least over all admissible forces", Grade.DERIVED);

  private SqueezeRows() {}

  static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    rows.add(SQUEEZE.verdict("block between two upright faces, friction 0.8", "balance yes, stays no", Blocks.words(squeezed())));
    rows.add(SQUEEZE.verdict("trapezoid hung between faces at 60 degrees, friction 0.50", "balance no, stays no",
        Blocks.words(hung(0.50))));
    rows.add(SQUEEZE.verdict("trapezoid hung between faces at 60 degrees, friction 0.65", "balance yes, stays no",
        Blocks.words(hung(0.65))));
    rows.add(groove(30, 43, "balance yes, stays yes"));
    rows.add(groove(30, 46, "balance yes, stays no"));
    rows.add(groove(30, 50, "balance no, stays no"));
    rows.add(groove(60, 58, "balance yes, stays yes"));
    rows.add(groove(60, 62, "balance yes, stays no"));
    double mu = 0.84;
    double theta = Math.toRadians(30);
    double stays = Blocks.turning(20, 47, 1e-4, d -> Blocks.solve(groove(30, d)).stays() != Answer.NO);
    rows.add(GROOVE.figure("groove of 30 degrees, slides beyond, degrees",
        Math.toDegrees(Math.atan(mu / Math.cos(theta))), stays, 1e-3, "solver tolerance, search to 1e-4"));
    double balance = Blocks.turning(45, 50, 1e-4, d -> Blocks.solve(groove(30, d)).equilibrium() == Answer.YES);
    rows.add(GROOVE.figure("groove of 30 degrees, no balance beyond, degrees",
        Math.toDegrees(Math.atan(mu / (Math.cos(theta) * Math.sqrt(1 - Math.pow(mu * Math.tan(theta), 2))))), balance, 1e-3,
        "solver tolerance, search to 1e-4"));
    rows.add(WEDGE.figure("two-plane wedge, stays down to a friction angle of, degrees", 33.357,
        Blocks.turning(31, 40, 1e-4, phi -> wedge(phi).judge().stays() == Answer.YES), 2e-3,
        "a nudge takes away all but a trace of the shear across the way"));
    rows.add(WEDGE.figure("two-plane wedge, balance down to a friction angle of, degrees", 31.074,
        Blocks.turning(25, 40, 1e-4, phi -> wedge(phi).judge().equilibrium() == Answer.YES), 1e-3, "digits of the expected value"));
    return rows;
  }

  private static LooseBlocks squeezed() {
    return new Blocks().box("left", true, -0.6, -0.5, -0.3, 0.3, -0.1, 1.1).box("right", true, 0.5, 0.6, -0.3, 0.3, -0.1, 1.1)
        .box("block", false, -0.5, 0.5, -0.25, 0.25, 0.3, 0.7).heap("squeezed", 0.8);
  }

  /** Legs lean over the block: 0.8 m wide at its top, 0.4 m high, faces at 60 degrees. */
  private static LooseBlocks hung(double friction) {
    double cot = 1 / Math.tan(Math.toRadians(60));
    double high = 0.4 - 0.3 * cot;
    double low = 0.4 + 0.7 * cot;
    double out = low + 0.4;
    return new Blocks().prism("left", true, -0.3, 0.3, -high, 0.7, -low, -0.3, -out, -0.3, -out, 0.7)
        .prism("right", true, -0.3, 0.3, high, 0.7, low, -0.3, out, -0.3, out, 0.7)
        .prism("block", false, -0.25, 0.25, -0.4, 0.4, 0.4, 0.4, 0.4 + 0.4 * cot, 0, -0.4 - 0.4 * cot, 0)
        .heap("hung", friction);
  }

  private static Row groove(double theta, double tilt, String expected) {
    return GROOVE.verdict(
        String.format(java.util.Locale.ROOT, "groove of %.0f degrees, friction 0.84, tilted %.0f degrees", theta, tilt),
        expected, Blocks.words(groove(theta, tilt)));
  }

  /** A triangular prism in a V groove along y, the whole tilted about x. */
  private static LooseBlocks groove(double theta, double tilt) {
    double t = Math.tan(Math.toRadians(theta));
    return new Blocks().turned(Vec3.X, tilt).prism("left", true, -3, 3, 0, 0, -1, t, -1, -0.3, 0, -0.3)
        .prism("right", true, -3, 3, 0, 0, 1, t, 1, -0.3, 0, -0.3)
        .prism("wedge", false, -2, 2, 0, 0, 0.5, 0.5 * t, -0.5, 0.5 * t).heap("groove", 0.84);
  }

  /**
   * The wedge as one body on two large patches just beneath its centre, so that it can only slide. North is y; a dip
   * direction is measured from north toward east.
   */
  private static Fixtures wedge(double phiDegrees) {
    Fixtures f = new Fixtures();
    int body = f.body("wedge", Vec3.ZERO, 1, 1000);
    double[][] planes = {{40, 130}, {60, 220}};
    for (double[] p : planes) {
      double dip = Math.toRadians(p[0]);
      double toward = Math.toRadians(p[1]);
      Vec3 n = new Vec3(Math.sin(dip) * Math.sin(toward), Math.sin(dip) * Math.cos(toward), Math.cos(dip));
      Vec3 u = n.anyPerpendicular();
      Vec3 v = n.cross(u);
      Vec3 c = n.times(-0.05);
      f.bearing(body, Heap.GROUND, n, Math.tan(Math.toRadians(phiDegrees)),
          c.plusTimes(-1, u).plusTimes(-1, v), c.plusTimes(1, u).plusTimes(-1, v),
          c.plusTimes(1, u).plusTimes(1, v), c.plusTimes(-1, u).plusTimes(1, v));
    }
    return f;
  }
}
