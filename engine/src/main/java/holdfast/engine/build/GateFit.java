package holdfast.engine.build;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.Arrays;

/**
 * How much room a body has in a gate, in one pose or over all poses near it.
 *
 * <p>Sideways the body may be anywhere, so what counts along each of the two sides is the stretch of places at which it fits:
 * from the farthest that its parts within the opening's depth, and its parts under it, must be to the right to how far they
 * may be at most. Its length is the room; without walls close by it is the opening's side less the width of what is in the
 * opening. The body is the union of its lobes, each clipped by itself.
 *
 * <p>Asked with a movement, the answer holds for every pose that differs from the given one by a lift of the pivot of up to
 * {@code liftM} and a turn about it of up to {@code turnRad}. A point of the body at a distance r from the pivot then moves by
 * no more than d = liftM + turnRad r, as a turn by an angle moves it by a chord of at most angle times r. Whatever is within
 * the opening's depth in any of these poses is, in the given one, within that depth widened by d on both sides; and sideways it
 * is within d of where it is there. So each lobe is clipped to the widened depth with its own greatest d, then once more with
 * the d of what is left (the greatest distance over a convex body is at a corner), and the box round it is widened by d. If
 * the stretch that remains is not empty, one place of it serves for all these poses. Two such stretches of poses that share a
 * pose are joined there by a straight shift sideways, as the places at which one pose fits are an interval.
 *
 * <p>Not for several threads.
 */
final class GateFit {
  private final GateBody body;
  private final Gate gate;
  private final double[][] x;
  private final double[][] y;
  private final double[][] z;
  private double[] low = new double[2];
  private double[] high = new double[2];
  private double farthest2;
  private final double[] inLow = new double[2];
  private final double[] inHigh = new double[2];
  private final double[] underLow = new double[2];
  private final double[] underHigh = new double[2];
  private int poses;

  /** The last pose: share of the body that is through, and whether some of it is in the opening's depth. */
  private double through;
  private double top;
  private double bottom;

  GateFit(GateBody body, Gate gate) {
    this.body = body;
    this.gate = gate;
    int n = body.lobes().size();
    x = new double[n][];
    y = new double[n][];
    z = new double[n][];
    for (int i = 0; i < n; i++) {
      int m = body.lobes().get(i).corners().size();
      x[i] = new double[m];
      y[i] = new double[m];
      z[i] = new double[m];
    }
  }

  /** Room in one pose, metres; below nought it does not fit. */
  double room(GatePose p) {
    return room(p.turn(), body.centre(), p.heightM(), 0, 0);
  }

  /** Room over all poses near one, metres, a lower bound; {@code height} is the pivot's. */
  double room(Quat turn, Vec3 pivot, double height, double liftM, double turnRad) {
    poses++;
    Arrays.fill(inLow, Double.POSITIVE_INFINITY);
    Arrays.fill(inHigh, Double.NEGATIVE_INFINITY);
    Arrays.fill(underLow, Double.POSITIVE_INFINITY);
    Arrays.fill(underHigh, Double.NEGATIVE_INFINITY);
    top = Double.NEGATIVE_INFINITY;
    bottom = Double.POSITIVE_INFINITY;
    double weight = 0;
    double weightThrough = 0;
    double deepest = Double.POSITIVE_INFINITY;
    double thick = gate.thicknessM();
    double[] m = matrix(turn);
    for (int k = 0; k < x.length; k++) {
      GateBody.Lobe lobe = body.lobes().get(k);
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      double far2 = 0;
      for (int i = 0; i < x[k].length; i++) {
        Vec3 p = lobe.corners().get(i);
        double a = p.x() - pivot.x();
        double b = p.y() - pivot.y();
        double c = p.z() - pivot.z();
        double r2 = a * a + b * b + c * c;
        double px = m[0] * a + m[1] * b + m[2] * c;
        double py = m[3] * a + m[4] * b + m[5] * c;
        double pz = m[6] * a + m[7] * b + m[8] * c + height;
        x[k][i] = px;
        y[k][i] = py;
        z[k][i] = pz;
        double d = liftM + turnRad * Math.sqrt(r2);
        if (pz < -thick + d) {
          underLow[0] = Math.min(underLow[0], px - d);
          underHigh[0] = Math.max(underHigh[0], px + d);
          underLow[1] = Math.min(underLow[1], py - d);
          underHigh[1] = Math.max(underHigh[1], py + d);
          deepest = Math.min(deepest, pz - d);
        }
        far2 = Math.max(far2, r2);
        least = Math.min(least, pz);
        most = Math.max(most, pz);
      }
      top = Math.max(top, most);
      bottom = Math.min(bottom, least);
      weight += lobe.weight();
      weightThrough += lobe.weight() * Math.max(0, Math.min(1, (-thick / 2 - least) / (most - least)));
      double d = liftM + turnRad * Math.sqrt(far2);
      if (least > d || most < -thick - d) continue;
      if (d > 0) {
        clip(k, lobe, -thick - d, d, height);
        d = liftM + turnRad * Math.sqrt(farthest2);
      }
      clip(k, lobe, -thick - d, d, height);
      for (int side = 0; side < 2; side++) {
        inLow[side] = Math.min(inLow[side], low[side] - d);
        inHigh[side] = Math.max(inHigh[side], high[side] + d);
      }
    }
    through = weight > 0 ? weightThrough / weight : 0;
    double room = Math.min(
        stretch(0, gate.opening().x0(), gate.opening().x1(), gate.room().x0(), gate.room().x1()),
        stretch(1, gate.opening().y0(), gate.opening().y1(), gate.room().y0(), gate.room().y1()));
    return deepest < -gate.depthM() ? Math.min(room, deepest + gate.depthM()) : room;
  }

  private double stretch(int side, double open0, double open1, double room0, double room1) {
    double from = Math.max(open0 - inLow[side], room0 - underLow[side]);
    double to = Math.min(open1 - inHigh[side], room1 - underHigh[side]);
    return from == Double.NEGATIVE_INFINITY ? Double.POSITIVE_INFINITY : to - from;
  }

  /** The box round what lies between two heights of one lobe, and its greatest distance from the pivot. */
  private void clip(int k, GateBody.Lobe lobe, double from, double to, double height) {
    low[0] = low[1] = Double.POSITIVE_INFINITY;
    high[0] = high[1] = Double.NEGATIVE_INFINITY;
    farthest2 = 0;
    for (int i = 0; i < x[k].length; i++) {
      if (z[k][i] >= from && z[k][i] <= to) take(x[k][i], y[k][i], z[k][i] - height);
    }
    for (GateBody.Edge e : lobe.edges()) {
      double za = z[k][e.from()];
      double zb = z[k][e.to()];
      if (za < from != zb < from) cross(k, e, (from - za) / (zb - za), height);
      if (za < to != zb < to) cross(k, e, (to - za) / (zb - za), height);
    }
  }

  private void cross(int k, GateBody.Edge e, double t, double height) {
    take(x[k][e.from()] + t * (x[k][e.to()] - x[k][e.from()]), y[k][e.from()] + t * (y[k][e.to()] - y[k][e.from()]),
        z[k][e.from()] + t * (z[k][e.to()] - z[k][e.from()]) - height);
  }

  private void take(double px, double py, double up) {
    low[0] = Math.min(low[0], px);
    high[0] = Math.max(high[0], px);
    low[1] = Math.min(low[1], py);
    high[1] = Math.max(high[1], py);
    farthest2 = Math.max(farthest2, px * px + py * py + up * up);
  }

  private static double[] matrix(Quat q) {
    double w = q.w();
    double x = q.x();
    double y = q.y();
    double z = q.z();
    return new double[] {
        1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y),
        2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x),
        2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)};
  }

  /** Of the last pose: the share of the body that is through, from 0 to 1. */
  double through() {
    return through;
  }

  /** Of the last pose: height of its highest point above the rim, metres. */
  double top() {
    return top;
  }

  double bottom() {
    return bottom;
  }

  /** Of the last pose asked without a movement and about the centre: the point of the body in the middle of the opening. */
  Vec3 pivotOf(GatePose p) {
    boolean none = inLow[0] == Double.POSITIVE_INFINITY;
    Vec3 at = none ? new Vec3(0, 0, 0)
        : new Vec3((inLow[0] + inHigh[0]) / 2, (inLow[1] + inHigh[1]) / 2, -gate.thicknessM() / 2 - p.heightM());
    return p.turn().conjugate().rotate(at).plus(body.centre());
  }

  /** Of the last pose: where the pivot may be sideways, the middle of the places at which the body fits; NaN when it is free. */
  double[] middle() {
    return new double[] {
        middle(0, gate.opening().x0(), gate.opening().x1(), gate.room().x0(), gate.room().x1()),
        middle(1, gate.opening().y0(), gate.opening().y1(), gate.room().y0(), gate.room().y1())};
  }

  private double middle(int side, double open0, double open1, double room0, double room1) {
    double from = Math.max(open0 - inLow[side], room0 - underLow[side]);
    double to = Math.min(open1 - inHigh[side], room1 - underHigh[side]);
    return from == Double.NEGATIVE_INFINITY ? Double.NaN : (from + to) / 2;
  }

  /** Poses looked at so far. */
  int poses() {
    return poses;
  }

  GateBody body() {
    return body;
  }

  Gate gate() {
    return gate;
  }
}
