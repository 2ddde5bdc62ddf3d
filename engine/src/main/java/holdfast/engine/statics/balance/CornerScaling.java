package holdfast.engine.statics.balance;

/** The Nesterov-Todd scaling of {@link CornerCones} at a {@link CornerPoint}, kept as that is. */
final class CornerScaling {
  private final CornerShape shape;
  private final CornerPoint point;
  final double[][] w;
  final double[] eta;
  /** One over the root of the determinant of s, and of z; the latter's square. */
  final double[] rootS;
  final double[] rootZ;
  final double[] overDetZ;
  /** One over 1 + w0. */
  final double[] n;
  /** W z over the root of eta. */
  final double[][] l;
  /** First column of W^2. */
  final double[][] g;
  /** One over what is left to the largest push, and tau over what is left over 1 + that times g0, or zero. */
  final double[] overLeft;
  final double[] share;
  /** For what is used at once. */
  final double[] scratch;

  /** Whether a largest push counts at any corner. */
  boolean locks;
  /** Sum of s z and of tau times what is left to {@code most}. */
  double gap;

  CornerScaling(CornerShape shape, CornerPoint point) {
    this.shape = shape;
    this.point = point;
    int count = shape.count;
    w = new double[3][count];
    eta = new double[count];
    rootS = new double[count];
    rootZ = new double[count];
    overDetZ = new double[count];
    n = new double[count];
    l = new double[3][count];
    g = new double[3][count];
    overLeft = new double[count];
    share = new double[count];
    scratch = new double[count];
  }

  /** False where the point has left a cone. */
  boolean update() {
    if (!inside()) return false;
    root(point.s[0], point.s[1], point.s[2], rootS);
    root(point.z[0], point.z[1], point.z[2], rootZ);
    double[] c = scratch;
    double[] rs = rootS;
    double[] rz = rootZ;
    dot(point.s, point.z, c);
    gap = sum(c);
    for (int k = 0; k < c.length; k++) c[k] = 0.5 / Math.sqrt(0.5 + 0.5 * c[k] * rs[k] * rz[k]);
    for (int i = 1; i < 3; i++) middle(point.s[i], point.z[i], w[i]);
    double[] w0 = w[0];
    double[] w1 = w[1];
    double[] w2 = w[2];
    // On the hyperboloid w0^2 - |w1|^2 = 1, which rounding would leave.
    for (int k = 0; k < w0.length; k++) w0[k] = Math.sqrt(1 + w1[k] * w1[k] + w2[k] * w2[k]);
    for (int k = 0; k < n.length; k++) n[k] = 1 / (1 + w0[k]);
    for (int k = 0; k < eta.length; k++) eta[k] = rz[k] / rs[k];
    for (int k = 0; k < overDetZ.length; k++) overDetZ[k] = rz[k] * rz[k];
    for (int k = 0; k < w0.length; k++) g[0][k] = eta[k] * (2 * w0[k] * w0[k] - 1);
    for (int i = 1; i < 3; i++) first(w[i], g[i]);
    dot(w, point.z, l[0]);
    double[] l0 = l[0];
    double[] z0 = point.z[0];
    for (int k = 0; k < c.length; k++) c[k] = (z0[k] + l0[k]) * n[k];
    for (int i = 1; i < 3; i++) turned(point.z[i], w[i], c, l[i]);
    return largest();
  }

  private boolean inside() {
    double[] s0 = point.s[0];
    double[] z0 = point.z[0];
    double[] t = point.tau;
    double[] most = shape.most;
    boolean in = true;
    for (int k = 0; k < s0.length; k++) in &= s0[k] > 0 & z0[k] > 0 & t[k] > 0 & s0[k] < most[k];
    return in;
  }

  private static void root(double[] v0, double[] v1, double[] v2, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = 1 / Math.sqrt(v0[k] * v0[k] - v1[k] * v1[k] - v2[k] * v2[k]);
  }

  private static void dot(double[][] a, double[][] b, double[] out) {
    double[] a0 = a[0];
    double[] a1 = a[1];
    double[] a2 = a[2];
    double[] b0 = b[0];
    double[] b1 = b[1];
    double[] b2 = b[2];
    for (int k = 0; k < out.length; k++) out[k] = a0[k] * b0[k] + a1[k] * b1[k] + a2[k] * b2[k];
  }

  /** out := w' v. */
  void along(double[][] v, double[] out) {
    dot(w, v, out);
  }

  private void middle(double[] s, double[] z, double[] out) {
    double[] half = scratch;
    double[] rs = rootS;
    double[] rz = rootZ;
    for (int k = 0; k < out.length; k++) out[k] = half[k] * (s[k] * rs[k] - z[k] * rz[k]);
  }

  private void first(double[] wi, double[] out) {
    double[] w0 = w[0];
    double[] f = eta;
    for (int k = 0; k < out.length; k++) out[k] = 2 * f[k] * w0[k] * wi[k];
  }

  /** out := \bar W v, with {@code dot} = w' v. */
  void turned(double[][] v, double[] dot, double[][] out) {
    double[] v0 = v[0];
    double[] c = scratch;
    for (int k = 0; k < c.length; k++) c[k] = (v0[k] + dot[k]) * n[k];
    System.arraycopy(dot, 0, out[0], 0, c.length);
    for (int i = 1; i < 3; i++) turned(v[i], w[i], c, out[i]);
  }

  private static void turned(double[] v, double[] w, double[] c, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = v[k] + c[k] * w[k];
  }

  /** out := \bar W^-1 v, with {@code dot} = w' v. */
  void unturned(double[][] v, double[] dot, double[][] out) {
    double[] v0 = v[0];
    double[] w0 = w[0];
    double[] c = scratch;
    double[] first = out[0];
    for (int k = 0; k < first.length; k++) first[k] = 2 * w0[k] * v0[k] - dot[k];
    for (int k = 0; k < c.length; k++) c[k] = -(v0[k] + first[k]) * n[k];
    for (int i = 1; i < 3; i++) turned(v[i], w[i], c, out[i]);
  }

  /** What the largest pushes make of it; false where a root was of nothing. */
  private boolean largest() {
    double[] s0 = point.s[0];
    double[] t = point.tau;
    double[] g0 = g[0];
    double[] most = shape.most;
    double[] over = overLeft;
    double[] c = scratch;
    for (int k = 0; k < c.length; k++) c[k] = (most[k] - s0[k]) * t[k];
    gap += sum(c);
    for (int k = 0; k < over.length; k++) over[k] = 1 / (most[k] - s0[k]);
    for (int k = 0; k < c.length; k++) c[k] = t[k] * over[k] / (1 + t[k] * over[k] * g0[k]);
    locks = false;
    for (int k = 0; k < c.length; k++) {
      boolean counts = c[k] * g0[k] > Tolerances.CORNER_CAPPED;
      share[k] = counts ? c[k] : 0;
      locks |= counts;
    }
    double all = sum(eta);
    return all > 0 && all < Double.POSITIVE_INFINITY;
  }

  /** Four sums side by side, which a processor adds at once; the same every time. */
  private static double sum(double[] v) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    int k = 0;
    for (; k + 3 < v.length; k += 4) {
      a += v[k];
      b += v[k + 1];
      c += v[k + 2];
      d += v[k + 3];
    }
    for (; k < v.length; k++) a += v[k];
    return a + b + (c + d);
  }
}
