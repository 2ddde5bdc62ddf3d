package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.solver.BlockCholesky;
import holdfast.model.geom.Vec3;
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
  private final double[] square = new double[36];
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

  /** sum += 2 f (P w)(P w)' - f P J P' for corner {@code k}. */
  void addScaled(int k, double f, double w0, double w1, double w2, double[] sum) {
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
  void subtractSquare(int k, double g0, double g1, double g2, double[] sum) {
    int q = COLUMNS * k;
    for (int r = 0, e = 0; r < 6; r++) {
      double v = g0 * p[q + r] + g1 * p[q + 6 + r] + g2 * p[q + 12 + r];
      for (int c = 0; c <= r; c++) sum[e++] -= v * (g0 * p[q + c] + g1 * p[q + 6 + c] + g2 * p[q + 12 + c]);
    }
  }

  /** Adds the matrix of a link to its bodies' blocks, and takes it from the block between them. */
  void addMatrix(int link, double[] sum, double[] blocks) {
    double[] m = square;
    for (int r = 0, e = 0; r < 6; r++) {
      for (int c = 0; c <= r; c++, e++) {
        m[6 * r + c] = sum[e];
        m[6 * c + r] = sum[e];
      }
    }
    int to = blockAa[link];
    for (int e = 0; e < 36; e++) blocks[to + e] += m[e];
    if (b[link] < 0) return;
    to = blockBb[link];
    for (int e = 0; e < 36; e++) blocks[to + e] += m[e];
    to = blockAb[link];
    for (int e = 0; e < 36; e++) blocks[to + e] -= m[e];
  }

  /** force += P v, six figures from {@code to} on. */
  void addWrench(int k, double v0, double v1, double v2, double[] force, int to) {
    int o = COLUMNS * k;
    for (int r = 0; r < 6; r++) force[to + r] += v0 * p[o + r] + v1 * p[o + 6 + r] + v2 * p[o + 12 + r];
  }

  /** Adds the wrench of a link, six figures from {@code from} on, to what acts on its bodies. */
  void addForce(int link, double[] force, int from, double[] on) {
    int at = 6 * a[link];
    for (int r = 0; r < 6; r++) on[at + r] += force[from + r];
    if (b[link] < 0) return;
    at = 6 * b[link];
    for (int r = 0; r < 6; r++) on[at + r] -= force[from + r];
  }

  /** out := the movement of a link's body a over that of b. */
  void relative(int link, double[] y, double[] out) {
    System.arraycopy(y, 6 * a[link], out, 0, 6);
    if (b[link] < 0) return;
    int at = 6 * b[link];
    for (int r = 0; r < 6; r++) out[r] -= y[at + r];
  }
}
