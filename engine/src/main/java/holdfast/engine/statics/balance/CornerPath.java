package holdfast.engine.statics.balance;

import holdfast.engine.statics.solver.BlockCholesky;
import java.util.Arrays;

/**
 * Pushes on the corners of a heap, solved by a primal-dual interior-point method:
 *
 * <pre>
 *   maximise l   subject to   P s + B x + dead + l live = 0,   s and x within their limits,   l at most cap.
 * </pre>
 *
 * <p>First come the forces at the centre of what balances the dead load alone ({@link #centre}): they maximise the product
 * of how far each corner is inside its cone, and the movement that goes with them opens every corner. From there every push
 * begins, balanced and with a movement that only wants scaling; one step with Nesterov-Todd scaling, Mehrotra's predictor and
 * corrector and two corrections of Gondzio's towards the centre costs one sparse Cholesky factor of 6 x 6 blocks and five
 * solutions with it; the corrections spare a third of the steps. The live factor is the one unknown besides and is
 * eliminated by one of those. Since movements stay what the corners make of them to rounding, each is
 * a proof: dead . y / live . y, plus what limits cost, is a bound on l.
 *
 * @see <a href="https://www.seas.ucla.edu/~vandenbe/publications/coneprog.pdf">Vandenberghe 2010, The CVXOPT linear and
 *     quadratic cone program solvers</a>, section 7, for the steps
 */
final class CornerPath {
  private final CornerCones corners;
  /** Null where there are none. */
  private final FastenedCones fastened;
  private final BlockCholesky factor;
  private final double[] dead;
  private final double[] live;
  private final double[] loads;
  private final double[] once;
  private final double[] alongLive;
  private final double[] dy;
  final double[] y;
  private final double degree;

  /** Factor on the live load, what it may come to, and the multiplier of that. */
  double l;
  private double cap;
  private double capZ;
  int steps;
  /** How far the last step went, of all that it aimed at; 0 before the first. */
  private double last;
  /** A factor to be used for the next step, and what its solutions are multiplied by; null where it is to be worked out. */
  private BlockCholesky known;
  private double times;

  /**
   * A path for loads on a heap.
   *
   * @param fastened its bonds and rods, or null
   */
  CornerPath(CornerCones corners, FastenedCones fastened, BlockCholesky factor, double[] dead) {
    this.corners = corners;
    this.fastened = fastened;
    this.factor = factor;
    this.dead = dead;
    int n = dead.length;
    live = new double[n];
    loads = new double[n];
    once = new double[n];
    alongLive = new double[n];
    dy = new double[n];
    y = new double[n];
    degree = corners.degree() + (fastened == null ? 0 : fastened.degree());
  }

  CornerCones corners() {
    return corners;
  }

  FastenedCones fastened() {
    return fastened;
  }

  // -- the dead load alone ----------------------------------------------------------------------------------------------

  /** Comes to the centre of what balances the dead load; false where it does not. */
  boolean centre() {
    corners.point().begin();
    if (fastened != null && !fastened.begin()) return false;
    Arrays.fill(y, 0);
    double rest = 1;
    for (steps = 0; steps < Tolerances.CORNER_CENTRE_STEPS; steps++) {
      if (!look()) return false;
      factor.factorRegular(Tolerances.PATH_REGULAR);
      if (rest == 0 && decrement() < Tolerances.CORNER_CENTRED && unbalance() < Tolerances.CORNER_BALANCED) return true;
      System.arraycopy(loads, 0, once, 0, loads.length);
      corners.centring(1, rest, once);
      if (fastened != null) fastened.centring(1, once);
      factor.solve(once, dy);
      corners.corrected(dy, rest);
      if (fastened != null) fastened.corrected(dy);
      double length = Math.min(1, Tolerances.CORNER_CENTRE_SHARE * Math.min(lengthS(), lengthZ()));
      if (!(length > Tolerances.PATH_LEAST_STEP)) return false;
      corners.point().move(length, length);
      if (fastened != null) fastened.move(length, length);
      for (int i = 0; i < y.length; i++) y[i] += length * dy[i];
      rest = length == 1 ? 0 : rest * (1 - length);
      if (rest < Tolerances.CORNER_NOTHING) rest = 0;
    }
    return false;
  }

  /** How far the products are from one. */
  private double decrement() {
    double gap = corners.gap() + (fastened == null ? 0 : fastened.gap());
    return Math.max(Math.abs(gap / degree - 1), corners.point().uneven());
  }

  /** What is out of balance, scaled. */
  private double unbalance() {
    System.arraycopy(loads, 0, once, 0, loads.length);
    corners.wrenches(once);
    if (fastened != null) fastened.wrenches(once);
    return largest(once);
  }

  /** Works out scaling and matrix at the point where it is; false where that has left a cone. */
  boolean look() {
    factor.clear();
    for (int i = 0; i < loads.length; i++) loads[i] = dead[i] + l * live[i];
    return corners.scale(factor.values()) && (fastened == null || fastened.scale(factor.values(), factor));
  }

  // -- a push -------------------------------------------------------------------------------------------------------------

  /** Begins at the centre that {@code at} has found; its factor is taken along. */
  void begin(CornerPath at, double[] live, double cap) {
    System.arraycopy(live, 0, this.live, 0, live.length);
    this.cap = cap;
    l = 0;
    last = 0;
    steps = 0;
    at.factor.solve(live, alongLive);
    double reach = 1 / Math.sqrt(Math.max(dot(live, alongLive), Double.MIN_NORMAL));
    double mu = Math.min(Tolerances.CORNER_FIRST * reach, cap);
    corners.point().copy(at.corners.point(), mu);
    if (fastened != null) fastened.copy(at.fastened, mu);
    for (int i = 0; i < y.length; i++) y[i] = mu * at.y[i];
    capZ = mu / cap;
    // All scaled alike: the centre's factor is that of the first step but for a number.
    known = at.factor;
    times = mu;
  }

  /**
   * Begins between two places of paths with other live loads, of which {@code live} is {@code a} and {@code b} times. False
   * where they are of no use.
   */
  boolean begin(CornerStart one, double a, CornerStart two, double b, double[] live, double cap) {
    if (!one.keptOf(this) || !two.keptOf(this)) return false;
    double carried = 1 / (a / one.l + b / two.l);
    if (!(carried * Tolerances.CORNER_PAST_CAP < cap)) return false;
    System.arraycopy(live, 0, this.live, 0, live.length);
    this.cap = cap;
    l = carried;
    last = 0;
    steps = 0;
    known = null;
    double shareOne = a / one.l * carried;
    double shareTwo = b / two.l * carried;
    CornerPoint p = corners.point();
    for (int i = 0; i < 3; i++) CornerStart.blend(shareOne, one.s[i], shareTwo, two.s[i], p.s[i]);
    double yOne = shareOne / one.bound;
    double yTwo = shareTwo / two.bound;
    CornerStart.blend(yOne, one.y, yTwo, two.y, y);
    double along = dot(live, y);
    if (!(along > 0)) return false;
    for (int i = 0; i < 3; i++) CornerStart.blend(yOne / along, one.z[i], yTwo / along, two.z[i], p.z[i]);
    CornerStart.blend(yOne / along, one.tau, yTwo / along, two.tau, p.tau);
    CornerStart.blend(yOne / along, one.y, yTwo / along, two.y, y);
    if (fastened != null) fastened.blend(shareOne, one, shareTwo, two, yOne / along, yTwo / along);
    double gap = p.gap() + (fastened == null ? 0 : fastened.gap());
    capZ = gap / degree / (cap - l);
    return true;
  }

  /** What a factor that was taken along has solved, to the scale of this step. */
  private void times(double[] solved) {
    if (known != null) for (int i = 0; i < solved.length; i++) solved[i] *= times;
  }

  /** What the movement proves: no factor above this. Infinite where it proves nothing. */
  double bound() {
    double lifted = -dot(dead, y) + corners.point().excess() + (fastened == null ? 0 : fastened.cost());
    double along = dot(live, y);
    return along > 0 ? lifted / along : Double.POSITIVE_INFINITY;
  }

  /** One step; false when the numbers have run out. */
  boolean step() {
    steps++;
    if (known == null) factor.factorRegular(Tolerances.PATH_REGULAR);
    double spare = cap - l;
    double missing = 1 - capZ - dot(live, y);
    double gap = corners.gap() + (fastened == null ? 0 : fastened.gap()) + spare * capZ;
    double mu = gap / (degree + 1);

    // To the very edge.
    System.arraycopy(loads, 0, once, 0, loads.length);
    corners.predicting(once);
    if (fastened != null) fastened.predicting(once);
    (known == null ? factor : known).solve(live, alongLive, once, dy);
    times(alongLive);
    times(dy);
    double stiff = dot(live, alongLive) + capZ / spare;
    // capZ moves by -capZ + capZ dl / spare.
    double dl = (missing + capZ - dot(live, dy)) / stiff;
    addLive(dl);
    double dCap = -capZ + capZ * dl / spare;

    // Towards the centre of what is left, second order and all.
    double aim = Math.max(Tolerances.CORNER_LEAST_AIM, Math.min(Tolerances.CORNER_AIM, 1 - last)) * mu;
    System.arraycopy(loads, 0, once, 0, loads.length);
    corners.predicted(dy, aim, once);
    if (fastened != null) fastened.predicted(dy, aim, once);
    double t = (aim + dl * dCap) / spare - capZ;
    dl = solved(missing - t, stiff);
    dCap = t + capZ * dl / spare;
    // From there once more, with what has run away from the centre brought back.
    for (int i = 0; i < Tolerances.CORNER_EVENINGS; i++) {
      double edgeS = Math.min(1, lengthS(dl, spare));
      double edgeZ = Math.min(1, lengthZ(dCap));
      if (edgeS * edgeZ > Tolerances.CORNER_FAR) break;
      double farS = Math.min(1, edgeS + Tolerances.CORNER_BEYOND);
      double farZ = Math.min(1, edgeZ + Tolerances.CORNER_BEYOND);
      System.arraycopy(loads, 0, once, 0, loads.length);
      corners.evened(aim, farS, farZ, once);
      if (fastened != null) fastened.again(once);
      dl = solved(missing - t, stiff);
      dCap = t + capZ * dl / spare;
    }
    double lengthS = Math.min(1, Tolerances.CORNER_STEP_SHARE * lengthS(dl, spare));
    double lengthZ = Math.min(1, Tolerances.CORNER_STEP_SHARE * lengthZ(dCap));
    if (!(lengthS > Tolerances.PATH_LEAST_STEP) && !(lengthZ > Tolerances.PATH_LEAST_STEP)) return false;
    last = Math.min(1, Math.min(lengthS, lengthZ));
    move(lengthS, lengthZ, dl, dCap);
    return Double.isFinite(l) && capZ > 0;
  }

  /** The step that {@link #once} asks for, but for its length; how l moves in it, which wants {@code rest} of the movement. */
  private double solved(double rest, double stiff) {
    (known == null ? factor : known).solve(once, dy);
    times(dy);
    double dl = (rest - dot(live, dy)) / stiff;
    addLive(dl);
    corners.corrected(dy, 0);
    if (fastened != null) fastened.corrected(dy);
    return dl;
  }

  private double lengthS(double dl, double spare) {
    return Math.min(lengthS(), spare / Math.max(dl, 1e-300));
  }

  private double lengthZ(double dCap) {
    return Math.min(lengthZ(), dCap < 0 ? -capZ / dCap : 2);
  }

  private void move(double reach, double reachZ, double dl, double dCap) {
    corners.point().move(reach, reachZ);
    if (fastened != null) fastened.move(reach, reachZ);
    l += reach * dl;
    capZ += reachZ * dCap;
    for (int i = 0; i < y.length; i++) y[i] += reachZ * dy[i];
    known = null;
  }

  private void addLive(double dl) {
    for (int i = 0; i < dy.length; i++) dy[i] += dl * alongLive[i];
  }

  private double lengthS() {
    double most = Math.min(2, corners.longestS());
    return fastened == null ? most : fastened.lengthS(most);
  }

  private double lengthZ() {
    double most = Math.min(2, corners.longestZ());
    return fastened == null ? most : fastened.lengthZ(most);
  }

  private static double dot(double[] a, double[] b) {
    double v = 0;
    for (int i = 0; i < a.length; i++) v += a[i] * b[i];
    return v;
  }

  private static double largest(double[] v) {
    double m = 0;
    for (double d : v) m = Math.max(m, Math.abs(d));
    return m;
  }
}
