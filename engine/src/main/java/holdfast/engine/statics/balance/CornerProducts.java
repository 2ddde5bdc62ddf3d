package holdfast.engine.statics.balance;

/**
 * What a step of {@link CornerCones} leaves of the products of forces and movements, and what is asked of the next so that they
 * come to where they are wanted.
 *
 * <p>Products are those of Jordan's algebra of the cone, of both scaled, {@code (W^-1 s) o (W z)}; at a point that is
 * {@code l o l}, l = W z. A step to products r more asks for {@code W (l \ r)} more force. Everywhere \bar W is W over the root
 * of eta, which cancels.
 */
final class CornerProducts {
  private final CornerShape shape;
  private final CornerPoint point;
  private final CornerScaling scaling;
  /** What a step asks of s besides -s. */
  final double[][] later;
  /** What tau times what is left to the largest push is to be. */
  final double[] product;
  /** Forces and movements, scaled. */
  private final double[][] a;
  private final double[][] b;
  /** For what is used at once. */
  private final double[][] x;
  private final double[][] more;
  private final double[] turn;
  private final double[] upper;

  CornerProducts(CornerShape shape, CornerPoint point, CornerScaling scaling) {
    this.shape = shape;
    this.point = point;
    this.scaling = scaling;
    later = new double[3][shape.count];
    product = new double[shape.count];
    a = new double[3][shape.count];
    b = new double[3][shape.count];
    x = new double[3][shape.count];
    more = new double[3][shape.count];
    turn = new double[shape.count];
    upper = new double[shape.count];
  }

  /**
   * Asks for products of {@code mu} less the second order of the step to the very edge, -W (l \ ((W^-1 ds) o (W dz))).
   *
   * @param u the movement at the corners
   * @param dot w' u
   * @param along how much of g the step takes
   */
  void second(double[][] u, double[] dot, double[] along, double mu) {
    edge(u, dot, along);
    double[] r0 = x[0];
    double[] r1 = x[1];
    double[] r2 = x[2];
    products(a[0], a[1], a[2], b[0], b[1], b[2], r0);
    crossed(a[0], a[1], b[0], b[1], r1);
    crossed(a[0], a[2], b[0], b[2], r2);
    back(later);
    edged(point.z[0], mu, later[0]);
    edged(point.z[1], -mu, later[1]);
    edged(point.z[2], -mu, later[2]);
    double[] mul = product;
    for (int k = 0; k < mul.length; k++) mul[k] += mu;
  }

  /** out := W (l \ x) over the root of eta, with x of {@link #x}. */
  private void back(double[][] out) {
    double[] x0 = x[0];
    double[] x1 = x[1];
    double[] x2 = x[2];
    double[] jz = scaling.overDetZ;
    double[] l0 = scaling.l[0];
    double[] l1 = scaling.l[1];
    double[] l2 = scaling.l[2];
    for (int k = 0; k < x0.length; k++) x0[k] = (l0[k] * x0[k] - l1[k] * x1[k] - l2[k] * x2[k]) * jz[k];
    divided(x1, x0, l1, l0);
    divided(x2, x0, l2, l0);
    scaling.along(x, turn);
    scaling.turned(x, turn, out);
  }

  private static void products(double[] a0, double[] a1, double[] a2, double[] b0, double[] b1, double[] b2, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = a0[k] * b0[k] + a1[k] * b1[k] + a2[k] * b2[k];
  }

  private static void crossed(double[] a0, double[] a1, double[] b0, double[] b1, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = a0[k] * b1[k] + b0[k] * a1[k];
  }

  private static void divided(double[] r, double[] x0, double[] l, double[] l0) {
    for (int k = 0; k < r.length; k++) r[k] = (r[k] - x0[k] * l[k]) / l0[k];
  }

  private void edged(double[] z, double mu, double[] out) {
    double[] jz = scaling.overDetZ;
    for (int k = 0; k < out.length; k++) out[k] = mu * jz[k] * z[k] - out[k];
  }

  /**
   * The step to the edge as \bar W^-1 ds and \bar W dz, W over the root of eta: with ds = -s - W^2 u + along g the first is
   * -eta (\bar W z + \bar W u - along w).
   */
  private void edge(double[][] u, double[] to, double[] al) {
    double[] w0 = scaling.w[0];
    double[] eta = scaling.eta;
    double[] s0 = point.s[0];
    double[] u0 = u[0];
    double[] over = scaling.overLeft;
    double[] tau = point.tau;
    double[] dt = point.dTau;
    double[] mul = product;
    double[] push = point.ds[0];
    for (int k = 0; k < push.length; k++) push[k] = eta[k] * (u0[k] - al[k] + 2 * w0[k] * (w0[k] * al[k] - to[k])) - s0[k];
    for (int k = 0; k < dt.length; k++) dt[k] = tau[k] * (over[k] * push[k] - 1);
    for (int k = 0; k < mul.length; k++) mul[k] = push[k] * dt[k];
    scaling.turned(u, to, b);
    for (int i = 0; i < 3; i++) {
      force(scaling.l[i], b[i], scaling.w[i], al, a[i]);
      move(scaling.w[i], b[i]);
    }
  }

  private void force(double[] l, double[] bu, double[] w, double[] al, double[] out) {
    double[] eta = scaling.eta;
    for (int k = 0; k < out.length; k++) out[k] = eta[k] * (al[k] * w[k] - l[k] - bu[k]);
  }

  private void move(double[] w, double[] out) {
    double[] dt = point.dTau;
    for (int k = 0; k < out.length; k++) out[k] += dt[k] * w[k];
  }

  /**
   * Asks for what brings back those products that have run away from {@code mu} by the time the last step has gone {@code farS}
   * and {@code farZ}. None is lowered by more than mu: the few that are far too large would outdo all others.
   *
   * @see <a href="https://doi.org/10.1007/BF00249643">Gondzio 1996, Multiple centrality corrections in a primal-dual method for
   *     linear programming</a>, of which these are the like on cones
   */
  void even(double mu, double farS, double farZ) {
    for (int i = 0; i < 3; i++) ahead(point.s[i], farS, point.ds[i], x[i]);
    scaling.along(x, turn);
    scaling.unturned(x, turn, a);
    for (int i = 0; i < 3; i++) ahead(point.z[i], farZ, point.dz[i], x[i]);
    scaling.along(x, turn);
    scaling.turned(x, turn, b);
    products(a[0], a[1], a[2], b[0], b[1], b[2], x[0]);
    crossed(a[0], a[1], b[0], b[1], x[1]);
    crossed(a[0], a[2], b[0], b[2], x[2]);
    wanted(mu);
    back(more);
    for (int i = 0; i < 3; i++) add(more[i], later[i]);
    capped(mu, farS, farZ);
  }

  private static void ahead(double[] v, double far, double[] d, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = v[k] + far * d[k];
  }

  private static void add(double[] what, double[] to) {
    for (int k = 0; k < to.length; k++) to[k] += what[k];
  }

  /** x := what the products x, of both their eigenvalues x0 +- |(x1, x2)|, want to be {@code mu}. */
  private void wanted(double mu) {
    double[] x0 = x[0];
    double[] x1 = x[1];
    double[] x2 = x[2];
    double[] apart = turn;
    double[] up = upper;
    double most = 2 * mu;
    for (int k = 0; k < apart.length; k++) apart[k] = Math.sqrt(x1[k] * x1[k] + x2[k] * x2[k]);
    for (int k = 0; k < up.length; k++) up[k] = mu - Math.min(most, x0[k] + apart[k]);
    for (int k = 0; k < x0.length; k++) x0[k] = mu - Math.min(most, x0[k] - apart[k]);
    for (int k = 0; k < apart.length; k++) apart[k] = (up[k] - x0[k]) / (2 * apart[k] + Double.MIN_NORMAL);
    for (int k = 0; k < x0.length; k++) x0[k] = 0.5 * (x0[k] + up[k]);
    for (int k = 0; k < x1.length; k++) x1[k] *= apart[k];
    for (int k = 0; k < x2.length; k++) x2[k] *= apart[k];
  }

  /** The same of the products with the largest pushes. */
  private void capped(double mu, double farS, double farZ) {
    double[] push = point.s[0];
    double[] step = point.ds[0];
    double[] most = shape.most;
    double[] tau = point.tau;
    double[] dt = point.dTau;
    double[] left = turn;
    double[] mul = product;
    double twice = 2 * mu;
    for (int k = 0; k < left.length; k++) left[k] = most[k] - push[k] - farS * step[k];
    for (int k = 0; k < left.length; k++) left[k] *= tau[k] + farZ * dt[k];
    for (int k = 0; k < mul.length; k++) mul[k] += mu - Math.min(twice, left[k]);
  }
}
