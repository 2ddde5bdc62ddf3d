package holdfast.engine.statics.balance;

/**
 * The cones of friction at the corners of a heap's bearings, and steps of {@link CornerPath} from a {@link CornerPoint} inside
 * all of them.
 *
 * <p>A corner's force is {@code s}, in the cone {@code s0 >= |(s1, s2)|}: s0 is its push times its friction, s1 and s2 its
 * shear. {@code z} is how the corner opens and slides in a movement y of the bodies, {@code z = P' y} ({@link CornerShape}),
 * and lies in the same cone where the movement gains nothing from the corner's friction. So that forces which lock against
 * each other have an end, s0 is at most {@code most}; {@code tau} is the multiplier of that, {@code z = P' y + tau e}, and
 * next to nothing elsewhere.
 *
 * <p>In three dimensions the Nesterov-Todd scaling is {@code W^2 = eta (2 w w' - J)}, J = diag(1, -1, -1), hence
 * {@code P W^2 P' = eta (2 (P w)(P w)' - P J P')}: a square, and a matrix that never changes. With the largest push a step
 * obeys {@code ds + W^2 u = -s + later + kappa g - share g (g' u)}, u = P' dy and g the first column of W^2; kappa is what
 * the multipliers ask for.
 *
 * @see <a href="https://www.seas.ucla.edu/~vandenbe/publications/coneprog.pdf">Vandenberghe 2010, The CVXOPT linear and
 *     quadratic cone program solvers</a>, sections 4 and 5
 */
final class CornerCones {
  private final CornerShape shape;
  private final CornerScaling scaling;
  private final CornerPoint point;
  private final int count;
  private final double[][] later;
  /** What tau times what is left to the largest push is to be. */
  private final double[] product;
  private final double[] kappa;
  /** How tau is to move without s. */
  private final double[] alone;
  /** What z is missing of the beginning. */
  private final double[] missing;
  private final double[][] u;
  /** How much of g a step takes: kappa + share (g' u). */
  private final double[] along;
  /** w' of what is scaled. */
  private final double[] turn;
  private final double[][] asked;
  /** The step to the edge, scaled: forces and movements. */
  private final double[][] a;
  private final double[][] b;
  /** For what is used at once. */
  private final double[][] x;

  /** One over the longest step that stays inside, of forces and of movements. */
  private double shortS;
  private double shortZ;

  CornerCones(CornerShape shape) {
    this.shape = shape;
    count = shape.count;
    point = new CornerPoint(shape);
    scaling = new CornerScaling(shape, point);
    later = new double[3][count];
    product = new double[count];
    kappa = new double[count];
    alone = new double[count];
    missing = new double[count];
    u = new double[3][count];
    along = new double[count];
    turn = new double[count];
    asked = new double[3][count];
    a = new double[3][count];
    b = new double[3][count];
    x = new double[3][count];
  }

  CornerPoint point() {
    return point;
  }

  /** Number of products: each corner's, and each one's with its largest push. */
  int degree() {
    return 2 * count;
  }

  double gap() {
    return scaling.gap;
  }

  double longestS() {
    return shortS > 0 ? 1 / shortS : Double.POSITIVE_INFINITY;
  }

  double longestZ() {
    return shortZ > 0 ? 1 / shortZ : Double.POSITIVE_INFINITY;
  }

  // -- one step -------------------------------------------------------------------------------------------------------

  /** Works out the scaling and adds the matrix of every link to {@code blocks}. False where a point has left its cone. */
  boolean scale(double[] blocks) {
    if (!scaling.update()) return false;
    shape.assemble(scaling, blocks);
    return true;
  }

  /** Adds the wrenches of all forces to {@code on}. */
  void wrenches(double[] on) {
    shape.addWrenches(point.s, on);
  }

  /**
   * What a step towards forces and movements with products {@code mu} asks of the balance, added to {@code once}; the
   * movement is missing {@code rest} of what {@link CornerPoint#begin} left out.
   */
  void centring(double mu, double rest, double[] once) {
    for (int k = 0; k < count; k++) {
      double jz = mu * scaling.rootZ[k] * scaling.rootZ[k];
      later[0][k] = point.z[0][k] * jz;
      later[1][k] = -point.z[1][k] * jz;
      later[2][k] = -point.z[2][k] * jz;
      product[k] = mu;
      missing[k] = rest == 0 ? 0 : rest * point.beginning(k);
    }
    multipliers(rest);
    ask(once);
  }

  /** What a step to the very edge asks of the balance, added to {@code once}: nothing to speak of where none locks. */
  void predicting(double[] once) {
    edge();
    if (!scaling.locks) return;
    for (int i = 0; i < 3; i++) {
      for (int k = 0; k < count; k++) asked[i][k] = kappa[k] * scaling.g[i][k];
    }
    shape.addWrenches(asked, once);
  }

  /** The multipliers of a step to the very edge, where nothing comes later. */
  private void edge() {
    double[] tau = point.tau;
    double[] s0 = point.s[0];
    double[] share = scaling.share;
    double[] g0 = scaling.g[0];
    for (int k = 0; k < count; k++) kappa[k] = tau[k] + share[k] * (s0[k] - tau[k] * g0[k]);
  }

  /** Kappa of a step to the products and with what comes later. */
  private void multipliers(double rest) {
    double[] tau = point.tau;
    double[] s0 = point.s[0];
    double[] later0 = later[0];
    double[] over = scaling.overLeft;
    double[] share = scaling.share;
    double[] g0 = scaling.g[0];
    double[] t0 = alone;
    double[] to = kappa;
    for (int k = 0; k < count; k++) t0[k] = product[k] * over[k] - tau[k];
    if (rest == 0) {
      for (int k = 0; k < count; k++) to[k] = -t0[k] - share[k] * (later0[k] - s0[k] - t0[k] * g0[k]);
      return;
    }
    for (int k = 0; k < count; k++) {
      double t = t0[k] + missing[k];
      to[k] = -t - share[k] * (later0[k] - s0[k] - t * g0[k]);
    }
  }

  /** Adds what {@code later} and kappa ask of the balance. */
  private void ask(double[] once) {
    for (int i = 0; i < 3; i++) ask(later[i], scaling.g[i], asked[i]);
    shape.addWrenches(asked, once);
  }

  private void ask(double[] late, double[] g, double[] out) {
    double[] ka = kappa;
    for (int k = 0; k < out.length; k++) out[k] = late[k] + ka[k] * g[k];
  }

  /**
   * The step to the very edge with the movement {@code dy}, and what its second order and products of {@code mu} ask of the
   * balance, added to {@code once}.
   */
  void predicted(double[] dy, double mu, double[] once) {
    shape.motion(dy, u);
    turns();
    edgeScaled();
    second(mu);
    multipliers(0);
    ask(once);
  }

  /** w' u of the movement u, and with g = eta (2 w0 w - e) how much of g it takes. */
  private void turns() {
    double[] w0 = scaling.w[0];
    double[] w1 = scaling.w[1];
    double[] w2 = scaling.w[2];
    double[] u0 = u[0];
    double[] u1 = u[1];
    double[] u2 = u[2];
    double[] eta = scaling.eta;
    double[] share = scaling.share;
    double[] ka = kappa;
    double[] to = turn;
    double[] al = along;
    for (int k = 0; k < to.length; k++) to[k] = w0[k] * u0[k] + w1[k] * u1[k] + w2[k] * u2[k];
    for (int k = 0; k < to.length; k++) al[k] = ka[k] + share[k] * eta[k] * (2 * w0[k] * to[k] - u0[k]);
  }

  /**
   * The step to the edge as \bar W^-1 ds and \bar W dz, W over the root of eta: with ds = -s - W^2 u + along g the first is
   * -eta (\bar W z + \bar W u - along w).
   */
  private void edgeScaled() {
    double[] w0 = scaling.w[0];
    double[] eta = scaling.eta;
    double[] s0 = point.s[0];
    double[] u0 = u[0];
    double[] over = scaling.overLeft;
    double[] tau = point.tau;
    double[] to = turn;
    double[] al = along;
    double[] dt = point.dTau;
    double[] mul = product;
    double[] push = point.ds[0];
    for (int k = 0; k < push.length; k++) push[k] = eta[k] * (u0[k] - al[k] + 2 * w0[k] * (w0[k] * al[k] - to[k])) - s0[k];
    for (int k = 0; k < dt.length; k++) dt[k] = tau[k] * (over[k] * push[k] - 1);
    for (int k = 0; k < mul.length; k++) mul[k] = push[k] * dt[k];
    turned(u, turn, b);
    for (int i = 0; i < 3; i++) {
      scaledForce(scaling.l[i], b[i], scaling.w[i], a[i]);
      scaledMove(scaling.w[i], b[i]);
    }
  }

  private void scaledForce(double[] l, double[] bu, double[] w, double[] out) {
    double[] al = along;
    double[] eta = scaling.eta;
    for (int k = 0; k < out.length; k++) out[k] = eta[k] * (al[k] * w[k] - l[k] - bu[k]);
  }

  private void scaledMove(double[] w, double[] out) {
    double[] dt = point.dTau;
    for (int k = 0; k < out.length; k++) out[k] += dt[k] * w[k];
  }

  /** out := \bar W v, with {@code dot} = w' v. */
  private void turned(double[][] v, double[] dot, double[][] out) {
    double[] v0 = v[0];
    double[] c = scaling.scratch;
    double[] n = scaling.n;
    for (int k = 0; k < c.length; k++) c[k] = (v0[k] + dot[k]) * n[k];
    System.arraycopy(dot, 0, out[0], 0, count);
    for (int i = 1; i < 3; i++) turned(v[i], scaling.w[i], c, out[i]);
  }

  private static void turned(double[] v, double[] w, double[] c, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = v[k] + c[k] * w[k];
  }

  /**
   * Second order of the step to the edge, -W (l \ ((W^-1 ds) o (W dz))) with l = W z, and mu over z. The root of eta in W
   * cancels and is left out.
   */
  private void second(double mu) {
    double[] r0 = x[0];
    double[] r1 = x[1];
    double[] r2 = x[2];
    products(a[0], a[1], a[2], b[0], b[1], b[2], r0);
    crossed(a[0], a[1], b[0], b[1], r1);
    crossed(a[0], a[2], b[0], b[2], r2);
    double[] jz = scaling.overDetZ;
    double[] l0 = scaling.l[0];
    double[] l1 = scaling.l[1];
    double[] l2 = scaling.l[2];
    for (int k = 0; k < r0.length; k++) r0[k] = (l1[k] * r1[k] + l2[k] * r2[k] - l0[k] * r0[k]) * jz[k];
    divided(r1, r0, l1, l0);
    divided(r2, r0, l2, l0);
    double[] w0 = scaling.w[0];
    double[] w1 = scaling.w[1];
    double[] w2 = scaling.w[2];
    double[] dot = turn;
    for (int k = 0; k < dot.length; k++) dot[k] = w0[k] * r0[k] + w1[k] * r1[k] + w2[k] * r2[k];
    turned(x, dot, later);
    towards(point.z[0], mu, later[0]);
    towards(point.z[1], -mu, later[1]);
    towards(point.z[2], -mu, later[2]);
    double[] mul = product;
    for (int k = 0; k < mul.length; k++) mul[k] += mu;
  }

  private static void products(double[] a0, double[] a1, double[] a2, double[] b0, double[] b1, double[] b2, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = a0[k] * b0[k] + a1[k] * b1[k] + a2[k] * b2[k];
  }

  private static void crossed(double[] a0, double[] a1, double[] b0, double[] b1, double[] out) {
    for (int k = 0; k < out.length; k++) out[k] = a0[k] * b1[k] + b0[k] * a1[k];
  }

  private static void divided(double[] r, double[] x0, double[] l, double[] l0) {
    for (int k = 0; k < r.length; k++) r[k] = -(r[k] + x0[k] * l[k]) / l0[k];
  }

  private void towards(double[] z, double mu, double[] out) {
    double[] jz = scaling.overDetZ;
    for (int k = 0; k < out.length; k++) out[k] += mu * jz[k] * z[k];
  }

  /** The step with the movement {@code dy} to the products last asked for, second order and all; how far it stays inside. */
  void corrected(double[] dy, double rest) {
    shape.motion(dy, u);
    turns();
    direction();
    double[] t0 = alone;
    double[] u0 = u[0];
    double[] over = scaling.overLeft;
    double[] tau = point.tau;
    double[] push = point.ds[0];
    double[] opens = point.dz[0];
    double[] dt = point.dTau;
    for (int k = 0; k < dt.length; k++) dt[k] = t0[k] + tau[k] * over[k] * push[k];
    for (int k = 0; k < dt.length; k++) opens[k] = u0[k] + dt[k];
    if (rest != 0) for (int k = 0; k < dt.length; k++) opens[k] += missing[k];
    System.arraycopy(u[1], 0, point.dz[1], 0, count);
    System.arraycopy(u[2], 0, point.dz[2], 0, count);
    measure();
  }

  /** ds = later - s - W^2 u + along g: with turn = 2 eta (w0 along - w' u) that is turn w - eta (along - u0, u1, u2). */
  private void direction() {
    double[] w0 = scaling.w[0];
    double[] eta = scaling.eta;
    double[] al = along;
    double[] to = turn;
    for (int k = 0; k < to.length; k++) to[k] = 2 * eta[k] * (w0[k] * al[k] - to[k]);
    double[] u0 = u[0];
    double[] first = x[0];
    for (int k = 0; k < first.length; k++) first[k] = al[k] - u0[k];
    direction(0, first);
    direction(1, u[1]);
    direction(2, u[2]);
  }

  private void direction(int i, double[] back) {
    double[] late = later[i];
    double[] s = point.s[i];
    double[] w = scaling.w[i];
    double[] eta = scaling.eta;
    double[] to = turn;
    double[] out = point.ds[i];
    for (int k = 0; k < out.length; k++) out[k] = late[k] - s[k] + to[k] * w[k] - eta[k] * back[k];
  }

  /** How far the step stays inside. */
  private void measure() {
    double[] on = x[0];
    double[] over = scaling.overLeft;
    double[] push = point.ds[0];
    double[] dt = point.dTau;
    double[] tau = point.tau;
    shortest(point.s, point.ds, scaling.rootS);
    shortS = Math.max(0, most(on));
    for (int k = 0; k < on.length; k++) on[k] = push[k] * over[k];
    shortS = Math.max(shortS, most(on));
    shortest(point.z, point.dz, scaling.rootZ);
    shortZ = Math.max(0, most(on));
    for (int k = 0; k < on.length; k++) on[k] = -dt[k] / tau[k];
    shortZ = Math.max(shortZ, most(on));
  }

  private static double most(double[] v) {
    double m = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < v.length; k++) m = Math.max(m, v[k]);
    return m;
  }

  /**
   * One over the longest steps from v along d, with {@code root} one over the root of v's determinant: in the frame where v is
   * (1, 0, 0) the step has r0 along it and, since determinants stay, |r|^2 = r0^2 - det(d) across.
   */
  private void shortest(double[][] v, double[][] d, double[] root) {
    double[] v0 = v[0];
    double[] v1 = v[1];
    double[] v2 = v[2];
    double[] d0 = d[0];
    double[] d1 = d[1];
    double[] d2 = d[2];
    double[] r = x[1];
    double[] across = x[2];
    double[] out = x[0];
    for (int k = 0; k < r.length; k++) r[k] = root[k] * (v0[k] * d0[k] - v1[k] * d1[k] - v2[k] * d2[k]);
    for (int k = 0; k < r.length; k++) across[k] = r[k] * r[k] - d0[k] * d0[k] + d1[k] * d1[k] + d2[k] * d2[k];
    for (int k = 0; k < r.length; k++) out[k] = root[k] * (Math.sqrt(Math.max(0, across[k])) - r[k]);
  }
}
