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
  private final CornerProducts products;
  private final double[][] later;
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
    products = new CornerProducts(shape, point, scaling);
    later = products.later;
    product = products.product;
    kappa = new double[count];
    alone = new double[count];
    missing = new double[count];
    u = new double[3][count];
    along = new double[count];
    turn = new double[count];
    asked = new double[3][count];
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
    products.second(u, turn, along, mu);
    multipliers(0);
    ask(once);
  }

  /**
   * What the last step asks of the balance, added to {@code once}, when products that have run away from {@code mu} by the time
   * it has gone {@code farS} and {@code farZ} are brought back.
   */
  void evened(double mu, double farS, double farZ, double[] once) {
    products.even(mu, farS, farZ);
    multipliers(0);
    ask(once);
  }

  /** w' u of the movement u, and with g = eta (2 w0 w - e) how much of g it takes. */
  private void turns() {
    double[] w0 = scaling.w[0];
    double[] u0 = u[0];
    double[] eta = scaling.eta;
    double[] share = scaling.share;
    double[] ka = kappa;
    double[] to = turn;
    double[] al = along;
    scaling.along(u, to);
    for (int k = 0; k < al.length; k++) al[k] = ka[k] + share[k] * eta[k] * (2 * w0[k] * to[k] - u0[k]);
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
    for (int k = 0; k < on.length; k++) on[k] = Math.max(on[k], push[k] * over[k]);
    shortS = Math.max(0, most(on));
    shortest(point.z, point.dz, scaling.rootZ);
    for (int k = 0; k < on.length; k++) on[k] = Math.max(on[k], -dt[k] / tau[k]);
    shortZ = Math.max(0, most(on));
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
