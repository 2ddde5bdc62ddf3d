package holdfast.engine.build;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

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
  /** Corners of each lobe one after the other, x y z each, and its edges as pairs of corner numbers. */
  private final double[][] corners;
  private final int[][] edges;
  private final double[] weights;
  private final double[][] x;
  private final double[][] y;
  private final double[][] z;
  private final double[] low = new double[2];
  private final double[] high = new double[2];
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
    corners = new double[n][];
    edges = new int[n][];
    weights = new double[n];
    x = new double[n][];
    y = new double[n][];
    z = new double[n][];
    for (int k = 0; k < n; k++) {
      GateBody.Lobe lobe = body.lobes().get(k);
      corners[k] = lobe.corners().stream().flatMapToDouble(p -> DoubleStream.of(p.x(), p.y(), p.z())).toArray();
      edges[k] = lobe.edges().stream().flatMapToInt(e -> IntStream.of(e.from(), e.to())).toArray();
      weights[k] = lobe.weight();
      x[k] = new double[lobe.corners().size()];
      y[k] = new double[x[k].length];
      z[k] = new double[x[k].length];
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
      double[] p = corners[k];
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      double far2 = 0;
      for (int i = 0; i < x[k].length; i++) {
        double a = p[3 * i] - pivot.x();
        double b = p[3 * i + 1] - pivot.y();
        double c = p[3 * i + 2] - pivot.z();
        double r2 = a * a + b * b + c * c;
        double px = m[0] * a + m[1] * b + m[2] * c;
        double py = m[3] * a + m[4] * b + m[5] * c;
        double pz = m[6] * a + m[7] * b + m[8] * c + height;
        x[k][i] = px;
        y[k][i] = py;
        z[k][i] = pz;
        double d = turnRad == 0 ? liftM : liftM + turnRad * Math.sqrt(r2);
        if (pz < -thick + d) {
          if (px - d < underLow[0]) underLow[0] = px - d;
          if (px + d > underHigh[0]) underHigh[0] = px + d;
          if (py - d < underLow[1]) underLow[1] = py - d;
          if (py + d > underHigh[1]) underHigh[1] = py + d;
          if (pz - d < deepest) deepest = pz - d;
        }
        if (r2 > far2) far2 = r2;
        if (pz < least) least = pz;
        if (pz > most) most = pz;
      }
      top = Math.max(top, most);
      bottom = Math.min(bottom, least);
      weight += weights[k];
      weightThrough += weights[k] * Math.max(0, Math.min(1, (-thick / 2 - least) / (most - least)));
      double d = liftM + turnRad * Math.sqrt(far2);
      if (least > d || most < -thick - d) continue;
      if (d > 0) {
        clip(k, -thick - d, d, height);
        d = liftM + turnRad * Math.sqrt(farthest2);
      }
      clip(k, -thick - d, d, height);
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
  private void clip(int k, double from, double to, double height) {
    low[0] = low[1] = Double.POSITIVE_INFINITY;
    high[0] = high[1] = Double.NEGATIVE_INFINITY;
    farthest2 = 0;
    for (int i = 0; i < x[k].length; i++) {
      if (z[k][i] >= from && z[k][i] <= to) take(x[k][i], y[k][i], z[k][i] - height);
    }
    for (int e = 0; e < edges[k].length; e += 2) {
      int a = edges[k][e];
      int b = edges[k][e + 1];
      double za = z[k][a];
      double zb = z[k][b];
      if (za < from != zb < from) cross(k, a, b, (from - za) / (zb - za), height);
      if (za < to != zb < to) cross(k, a, b, (to - za) / (zb - za), height);
    }
  }

  private void cross(int k, int a, int b, double t, double height) {
    take(x[k][a] + t * (x[k][b] - x[k][a]), y[k][a] + t * (y[k][b] - y[k][a]), z[k][a] + t * (z[k][b] - z[k][a]) - height);
  }

  private void take(double px, double py, double up) {
    if (px < low[0]) low[0] = px;
    if (px > high[0]) high[0] = px;
    if (py < low[1]) low[1] = py;
    if (py > high[1]) high[1] = py;
    double r2 = px * px + py * py + up * up;
    if (r2 > farthest2) farthest2 = r2;
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
