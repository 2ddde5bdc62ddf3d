package holdfast.engine.statics.balance;

import java.util.Arrays;

/**
 * A point inside all cones of {@link CornerCones}, and a step from it: forces s, movements z and the multipliers tau of the
 * largest pushes.
 */
final class CornerPoint {
  private final CornerShape shape;
  final double[] s;
  final double[] z;
  final double[] tau;
  final double[] ds;
  final double[] dz;
  final double[] dTau;

  CornerPoint(CornerShape shape) {
    this.shape = shape;
    s = new double[3 * shape.count];
    z = new double[3 * shape.count];
    tau = new double[shape.count];
    ds = new double[3 * shape.count];
    dz = new double[3 * shape.count];
    dTau = new double[shape.count];
  }

  /** Takes up the point of {@code o}, its movements times {@code mu}. */
  void copy(CornerPoint o, double mu) {
    System.arraycopy(o.s, 0, s, 0, s.length);
    for (int i = 0; i < z.length; i++) z[i] = mu * o.z[i];
    for (int i = 0; i < tau.length; i++) tau[i] = mu * o.tau[i];
  }

  /** Every corner pushes by as much as a body weighs; the movement is none, and what z has without it is missing from it. */
  void begin() {
    Arrays.fill(s, 0);
    Arrays.fill(z, 0);
    for (int k = 0; k < shape.count; k++) {
      s[3 * k] = Math.min(shape.most[k] / 2, 1);
      z[3 * k] = 1 / s[3 * k];
      tau[k] = 1 / (shape.most[k] - s[3 * k]);
    }
  }

  /** What {@code P' y + tau e} has in excess of z at the beginning. */
  double beginning(int k) {
    double s0 = Math.min(shape.most[k] / 2, 1);
    return 1 / (shape.most[k] - s0) - 1 / s0;
  }

  /** The largest difference from one of any product. */
  double uneven() {
    double worst = 0;
    for (int k = 0; k < shape.count; k++) {
      int o = 3 * k;
      double dot = s[o] * z[o] + s[o + 1] * z[o + 1] + s[o + 2] * z[o + 2];
      worst = Math.max(worst, Math.max(Math.abs(dot - 1), Math.abs((shape.most[k] - s[o]) * tau[k] - 1)));
    }
    return worst;
  }

  /** What the largest pushes gain where the movement alone is not in the cone; zero for most heaps. */
  double excess() {
    double total = 0;
    for (int k = 0; k < shape.count; k++) {
      double alone = z[3 * k] - tau[k];
      double tz = z[3 * k + 1] * z[3 * k + 1] + z[3 * k + 2] * z[3 * k + 2];
      if (alone < 0 || alone * alone < tz) total += (Math.sqrt(tz) - alone) * shape.most[k];
    }
    return total;
  }

  /** Sum of products. */
  double gap() {
    double total = 0;
    for (int i = 0; i < s.length; i++) total += s[i] * z[i];
    for (int k = 0; k < shape.count; k++) total += (shape.most[k] - s[3 * k]) * tau[k];
    return total;
  }

  void move(double lengthS, double lengthZ) {
    for (int i = 0; i < s.length; i++) {
      s[i] += lengthS * ds[i];
      z[i] += lengthZ * dz[i];
    }
    for (int k = 0; k < shape.count; k++) tau[k] += lengthZ * dTau[k];
  }
}
