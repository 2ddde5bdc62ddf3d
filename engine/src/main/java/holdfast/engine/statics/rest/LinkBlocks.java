package holdfast.engine.statics.rest;

import holdfast.engine.statics.solver.BlockLu;
import holdfast.engine.statics.solver.BlockPattern;

/** Where the links of a heap stand in the block matrix of its bodies. */
final class LinkBlocks {
  private final CompliantHeap soft;
  private final int[] blockAa;
  private final int[] blockBb;
  private final int[] blockAb;

  LinkBlocks(CompliantHeap soft) {
    this.soft = soft;
    blockAa = new int[soft.links];
    blockBb = new int[soft.links];
    blockAb = new int[soft.links];
    for (int i = 0; i < soft.links; i++) {
      blockAa[i] = soft.pattern.blockOf(soft.a[i], soft.a[i]) * BlockPattern.BB;
      if (soft.b[i] >= 0) {
        blockBb[i] = soft.pattern.blockOf(soft.b[i], soft.b[i]) * BlockPattern.BB;
        blockAb[i] = soft.pattern.blockOf(soft.a[i], soft.b[i]) * BlockPattern.BB;
      }
    }
  }

  /** Adds {@code f p q'} for two columns of a link, twelve figures each from {@code pAt} and {@code qAt}. */
  void add(BlockLu to, int link, double[] p, int pAt, double[] q, int qAt, double f) {
    int a = soft.a[link];
    int b = soft.b[link];
    outer(to.holding(a, a), blockAa[link], p, pAt, q, qAt, f);
    if (b < 0) return;
    outer(to.holding(b, b), blockBb[link], p, pAt + 6, q, qAt + 6, f);
    outer(to.holding(a, b), blockAb[link], p, pAt, q, qAt + 6, f);
    outer(to.holding(b, a), blockAb[link], p, pAt + 6, q, qAt, f);
  }

  private static void outer(double[] to, int at, double[] p, int pAt, double[] q, int qAt, double f) {
    double q0 = q[qAt];
    double q1 = q[qAt + 1];
    double q2 = q[qAt + 2];
    double q3 = q[qAt + 3];
    double q4 = q[qAt + 4];
    double q5 = q[qAt + 5];
    for (int r = 0; r < 6; r++) {
      double v = f * p[pAt + r];
      if (v == 0) continue;
      int o = at + 6 * r;
      to[o] += v * q0;
      to[o + 1] += v * q1;
      to[o + 2] += v * q2;
      to[o + 3] += v * q3;
      to[o + 4] += v * q4;
      to[o + 5] += v * q5;
    }
  }
}
