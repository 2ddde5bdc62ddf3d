package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.solver.BlockCholesky;
import holdfast.model.geom.Vec3;
import java.util.Arrays;
import java.util.List;

/**
 * Where the corners of a heap's bearings are and which way they push, laid flat for {@link CornerCones}.
 *
 * <p>A corner has three columns P of six: the wrench on the upper body, about an origin that all bodies share, of a unit of
 * its push times its friction and of each of its two shears. With one origin a link adds the same 6 x 6 matrix to both of
 * its bodies and takes it from between them.
 */
final class CornerShape {
  /** Entries of a symmetric 6 x 6 matrix, row by row of its lower half. */
  static final int HALF = 21;

  /** Figures of the columns of one corner. */
  static final int COLUMNS = 18;

  final int count;
  final int links;
  /** By link: the first of its corners. */
  final int[] first;
  private final int[] a;
  private final int[] b;
  private final int[] blockAa;
  private final int[] blockBb;
  private final int[] blockAb;
  private final double[] sum = new double[HALF];
  /** Three columns of six a corner. */
  final double[] p;
  /** P J P' of a corner, J = diag(1, -1, -1). */
  final double[] pjp;
  /** Largest push of a corner times its friction. */
  final double[] most;

  /**
   * The corners of bearings.
   *
   * @param origin what all moments are about
   * @param mostPush largest push of a corner, scaled
   */
  CornerShape(List<Link.Bearing> bearings, Vec3 origin, double lengthM, double mostPush, BlockCholesky blocks) {
    links = bearings.size();
    a = new int[links];
    b = new int[links];
    first = new int[links + 1];
    blockAa = new int[links];
    blockBb = new int[links];
    blockAb = new int[links];
    for (int i = 0; i < links; i++) {
      Link.Bearing l = bearings.get(i);
      a[i] = l.a();
      b[i] = l.b();
      first[i + 1] = first[i] + l.polygon().size();
      blockAa[i] = blocks.blockOf(a[i], a[i]) * BlockCholesky.BB;
      if (b[i] < 0) continue;
      blockBb[i] = blocks.blockOf(b[i], b[i]) * BlockCholesky.BB;
      blockAb[i] = blocks.blockOf(a[i], b[i]) * BlockCholesky.BB;
    }
    count = first[links];
    p = new double[COLUMNS * count];
    pjp = new double[HALF * count];
    most = new double[count];
    for (int i = 0; i < links; i++) {
      Link.Bearing l = bearings.get(i);
      Vec3 u = l.normal().anyPerpendicular();
      Vec3 v = l.normal().cross(u);
      boolean rubs = l.friction() > 0;
      for (int k = first[i]; k < first[i + 1]; k++) {
        Vec3 r = l.polygon().get(k - first[i]).minus(origin).times(1 / lengthM);
        most[k] = rubs ? l.friction() * mostPush : mostPush;
        int o = COLUMNS * k;
        column(o, rubs ? l.normal().times(1 / l.friction()) : l.normal(), r);
        if (rubs) {
          column(o + 6, u, r);
          column(o + 12, v, r);
        }
        for (int x = 0, to = HALF * k; x < 6; x++) {
          for (int y = 0; y <= x; y++) {
            pjp[to++] = p[o + x] * p[o + y] - p[o + 6 + x] * p[o + 6 + y] - p[o + 12 + x] * p[o + 12 + y];
          }
        }
      }
    }
  }

  private void column(int at, Vec3 f, Vec3 r) {
    Vec3 m = r.cross(f);
    p[at] = f.x();
    p[at + 1] = f.y();
    p[at + 2] = f.z();
    p[at + 3] = m.x();
    p[at + 4] = m.y();
    p[at + 5] = m.z();
  }

  /** Adds the matrix {@code P W^2 P'} of every link, less what largest pushes take from it, to {@code blocks}. */
  void assemble(CornerScaling at, double[] blocks) {
    double[] w0 = at.w[0];
    double[] w1 = at.w[1];
    double[] w2 = at.w[2];
    for (int i = 0; i < links; i++) {
      Arrays.fill(sum, 0);
      for (int k = first[i]; k < first[i + 1]; k++) {
        addScaled(k, at.eta[k], w0[k], w1[k], w2[k], sum);
        if (at.share[k] > 0) {
          double h = Math.sqrt(at.share[k]);
          subtractSquare(k, h * at.g[0][k], h * at.g[1][k], h * at.g[2][k], sum);
        }
      }
      addMatrix(i, blocks);
    }
  }

  /** sum += 2 f (P w)(P w)' - f P J P' for corner {@code k}. */
  private void addScaled(int k, double f, double w0, double w1, double w2, double[] sum) {
    double[] q = p;
    int o = COLUMNS * k;
    double p0 = w0 * q[o] + w1 * q[o + 6] + w2 * q[o + 12];
    double p1 = w0 * q[o + 1] + w1 * q[o + 7] + w2 * q[o + 13];
    double p2 = w0 * q[o + 2] + w1 * q[o + 8] + w2 * q[o + 14];
    double p3 = w0 * q[o + 3] + w1 * q[o + 9] + w2 * q[o + 15];
    double p4 = w0 * q[o + 4] + w1 * q[o + 10] + w2 * q[o + 16];
    double p5 = w0 * q[o + 5] + w1 * q[o + 11] + w2 * q[o + 17];
    double g = 2 * f;
    double t0 = g * p0;
    double t1 = g * p1;
    double t2 = g * p2;
    double t3 = g * p3;
    double t4 = g * p4;
    double t5 = g * p5;
    double[] j = pjp;
    int c = HALF * k;
    sum[0] += t0 * p0 - f * j[c];
    sum[1] += t1 * p0 - f * j[c + 1];
    sum[2] += t1 * p1 - f * j[c + 2];
    sum[3] += t2 * p0 - f * j[c + 3];
    sum[4] += t2 * p1 - f * j[c + 4];
    sum[5] += t2 * p2 - f * j[c + 5];
    sum[6] += t3 * p0 - f * j[c + 6];
    sum[7] += t3 * p1 - f * j[c + 7];
    sum[8] += t3 * p2 - f * j[c + 8];
    sum[9] += t3 * p3 - f * j[c + 9];
    sum[10] += t4 * p0 - f * j[c + 10];
    sum[11] += t4 * p1 - f * j[c + 11];
    sum[12] += t4 * p2 - f * j[c + 12];
    sum[13] += t4 * p3 - f * j[c + 13];
    sum[14] += t4 * p4 - f * j[c + 14];
    sum[15] += t5 * p0 - f * j[c + 15];
    sum[16] += t5 * p1 - f * j[c + 16];
    sum[17] += t5 * p2 - f * j[c + 17];
    sum[18] += t5 * p3 - f * j[c + 18];
    sum[19] += t5 * p4 - f * j[c + 19];
    sum[20] += t5 * p5 - f * j[c + 20];
  }

  /** sum -= (P g)(P g)'. */
  private void subtractSquare(int k, double g0, double g1, double g2, double[] sum) {
    int q = COLUMNS * k;
    for (int r = 0, e = 0; r < 6; r++) {
      double v = g0 * p[q + r] + g1 * p[q + 6 + r] + g2 * p[q + 12 + r];
      for (int c = 0; c <= r; c++) sum[e++] -= v * (g0 * p[q + c] + g1 * p[q + 6 + c] + g2 * p[q + 12 + c]);
    }
  }

  /** Adds the matrix of a link to its bodies' blocks, of which a factor reads the lower half, and takes it from that between. */
  private void addMatrix(int link, double[] blocks) {
    addLower(sum, blocks, blockAa[link]);
    if (b[link] < 0) return;
    addLower(sum, blocks, blockBb[link]);
    subtract(sum, blocks, blockAb[link]);
  }

  private static void addLower(double[] half, double[] m, int to) {
    m[to] += half[0];
    m[to + 6] += half[1];
    m[to + 7] += half[2];
    m[to + 12] += half[3];
    m[to + 13] += half[4];
    m[to + 14] += half[5];
    m[to + 18] += half[6];
    m[to + 19] += half[7];
    m[to + 20] += half[8];
    m[to + 21] += half[9];
    m[to + 24] += half[10];
    m[to + 25] += half[11];
    m[to + 26] += half[12];
    m[to + 27] += half[13];
    m[to + 28] += half[14];
    m[to + 30] += half[15];
    m[to + 31] += half[16];
    m[to + 32] += half[17];
    m[to + 33] += half[18];
    m[to + 34] += half[19];
    m[to + 35] += half[20];
  }

  private static void subtract(double[] half, double[] m, int to) {
    m[to] -= half[0];
    m[to + 1] -= half[1];
    m[to + 2] -= half[3];
    m[to + 3] -= half[6];
    m[to + 4] -= half[10];
    m[to + 5] -= half[15];
    m[to + 6] -= half[1];
    m[to + 7] -= half[2];
    m[to + 8] -= half[4];
    m[to + 9] -= half[7];
    m[to + 10] -= half[11];
    m[to + 11] -= half[16];
    m[to + 12] -= half[3];
    m[to + 13] -= half[4];
    m[to + 14] -= half[5];
    m[to + 15] -= half[8];
    m[to + 16] -= half[12];
    m[to + 17] -= half[17];
    m[to + 18] -= half[6];
    m[to + 19] -= half[7];
    m[to + 20] -= half[8];
    m[to + 21] -= half[9];
    m[to + 22] -= half[13];
    m[to + 23] -= half[18];
    m[to + 24] -= half[10];
    m[to + 25] -= half[11];
    m[to + 26] -= half[12];
    m[to + 27] -= half[13];
    m[to + 28] -= half[14];
    m[to + 29] -= half[19];
    m[to + 30] -= half[15];
    m[to + 31] -= half[16];
    m[to + 32] -= half[17];
    m[to + 33] -= half[18];
    m[to + 34] -= half[19];
    m[to + 35] -= half[20];
  }

  /** Adds the wrenches of corners' forces v, component by component, to what acts on the bodies. */
  void addWrenches(double[][] v, double[] on) {
    double[] q = p;
    double[] v0 = v[0];
    double[] v1 = v[1];
    double[] v2 = v[2];
    for (int i = 0; i < links; i++) {
      double f0 = 0;
      double f1 = 0;
      double f2 = 0;
      double f3 = 0;
      double f4 = 0;
      double f5 = 0;
      for (int k = first[i]; k < first[i + 1]; k++) {
        int o = COLUMNS * k;
        double x = v0[k];
        double y = v1[k];
        double z = v2[k];
        f0 += x * q[o] + y * q[o + 6] + z * q[o + 12];
        f1 += x * q[o + 1] + y * q[o + 7] + z * q[o + 13];
        f2 += x * q[o + 2] + y * q[o + 8] + z * q[o + 14];
        f3 += x * q[o + 3] + y * q[o + 9] + z * q[o + 15];
        f4 += x * q[o + 4] + y * q[o + 10] + z * q[o + 16];
        f5 += x * q[o + 5] + y * q[o + 11] + z * q[o + 17];
      }
      add(on, 6 * a[i], f0, f1, f2, f3, f4, f5);
      if (b[i] >= 0) add(on, 6 * b[i], -f0, -f1, -f2, -f3, -f4, -f5);
    }
  }

  private static void add(double[] on, int at, double f0, double f1, double f2, double f3, double f4, double f5) {
    on[at] += f0;
    on[at + 1] += f1;
    on[at + 2] += f2;
    on[at + 3] += f3;
    on[at + 4] += f4;
    on[at + 5] += f5;
  }

  /** u := P' y: how each corner opens and slides where its bodies move by y. */
  void motion(double[] y, double[][] u) {
    double[] q = p;
    double[] u0 = u[0];
    double[] u1 = u[1];
    double[] u2 = u[2];
    for (int i = 0; i < links; i++) {
      int from = 6 * a[i];
      double y0 = y[from];
      double y1 = y[from + 1];
      double y2 = y[from + 2];
      double y3 = y[from + 3];
      double y4 = y[from + 4];
      double y5 = y[from + 5];
      if (b[i] >= 0) {
        from = 6 * b[i];
        y0 -= y[from];
        y1 -= y[from + 1];
        y2 -= y[from + 2];
        y3 -= y[from + 3];
        y4 -= y[from + 4];
        y5 -= y[from + 5];
      }
      for (int k = first[i]; k < first[i + 1]; k++) {
        int o = COLUMNS * k;
        u0[k] = q[o] * y0 + q[o + 1] * y1 + q[o + 2] * y2 + q[o + 3] * y3 + q[o + 4] * y4 + q[o + 5] * y5;
        u1[k] = q[o + 6] * y0 + q[o + 7] * y1 + q[o + 8] * y2 + q[o + 9] * y3 + q[o + 10] * y4 + q[o + 11] * y5;
        u2[k] = q[o + 12] * y0 + q[o + 13] * y1 + q[o + 14] * y2 + q[o + 15] * y3 + q[o + 16] * y4 + q[o + 17] * y5;
      }
    }
  }
}
