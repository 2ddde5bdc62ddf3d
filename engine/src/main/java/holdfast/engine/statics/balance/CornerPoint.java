package holdfast.engine.statics.balance;

import java.util.Arrays;

/**
 * A point inside all cones of {@link CornerCones}, and a step from it: forces s, movements z and the multipliers tau of the
 * largest pushes.
 *
 * <p>What belongs to corners is kept component by component, {@code s[i][k]} of corner k, and worked on in short loops over all
 * corners, each of which writes one array: a compiler turns such loops into instructions on several corners at once, and
 * neither longer loops nor numbers that lie three by three. That halves the time of a step.
 */
final class CornerPoint {
  private final CornerShape shape;
  final double[][] s;
  final double[][] z;
  final double[] tau;
  final double[][] ds;
  final double[][] dz;
  final double[] dTau;

  CornerPoint(CornerShape shape) {
    this.shape = shape;
    s = new double[3][shape.count];
    z = new double[3][shape.count];
    tau = new double[shape.count];
    ds = new double[3][shape.count];
    dz = new double[3][shape.count];
    dTau = new double[shape.count];
  }

  /** Takes up the point of {@code o}, its movements times {@code mu}. */
  void copy(CornerPoint o, double mu) {
    for (int i = 0; i < 3; i++) {
      System.arraycopy(o.s[i], 0, s[i], 0, shape.count);
      for (int k = 0; k < shape.count; k++) z[i][k] = mu * o.z[i][k];
    }
    for (int k = 0; k < shape.count; k++) tau[k] = mu * o.tau[k];
  }

  /** Every corner pushes by as much as a body weighs; the movement is none, and what z has without it is missing from it. */
  void begin() {
    for (int i = 0; i < 3; i++) {
      Arrays.fill(s[i], 0);
      Arrays.fill(z[i], 0);
    }
    for (int k = 0; k < shape.count; k++) {
      s[0][k] = Math.min(shape.most[k] / 2, 1);
      z[0][k] = 1 / s[0][k];
      tau[k] = 1 / (shape.most[k] - s[0][k]);
    }
  }

  /** What {@code P' y + tau e} has in excess of z at the beginning. */
  double beginning(int k) {
    double push = Math.min(shape.most[k] / 2, 1);
    return 1 / (shape.most[k] - push) - 1 / push;
  }

  /** The largest difference from one of any product. */
  double uneven() {
    double worst = 0;
    for (int k = 0; k < shape.count; k++) {
      double dot = s[0][k] * z[0][k] + s[1][k] * z[1][k] + s[2][k] * z[2][k];
      worst = Math.max(worst, Math.max(Math.abs(dot - 1), Math.abs((shape.most[k] - s[0][k]) * tau[k] - 1)));
    }
    return worst;
  }

  /** What the largest pushes gain where the movement alone is not in the cone; zero for most heaps. */
  double excess() {
    double total = 0;
    for (int k = 0; k < shape.count; k++) {
      double alone = z[0][k] - tau[k];
      double tz = z[1][k] * z[1][k] + z[2][k] * z[2][k];
      if (alone < 0 || alone * alone < tz) total += (Math.sqrt(tz) - alone) * shape.most[k];
    }
    return total;
  }

  /** Sum of products. */
  double gap() {
    double total = 0;
    for (int i = 0; i < 3; i++) for (int k = 0; k < shape.count; k++) total += s[i][k] * z[i][k];
    for (int k = 0; k < shape.count; k++) total += (shape.most[k] - s[0][k]) * tau[k];
    return total;
  }

  void move(double lengthS, double lengthZ) {
    for (int i = 0; i < 3; i++) {
      add(lengthS, ds[i], s[i]);
      add(lengthZ, dz[i], z[i]);
    }
    add(lengthZ, dTau, tau);
  }

  private static void add(double times, double[] what, double[] to) {
    for (int k = 0; k < to.length; k++) to[k] += times * what[k];
  }
}
