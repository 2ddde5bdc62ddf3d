package holdfast.engine.statics.balance;

import holdfast.engine.statics.solver.BlockCholesky;
import holdfast.engine.statics.solver.ConeProgram;
import holdfast.engine.statics.solver.ConeScaling;
import holdfast.engine.statics.solver.Element;
import java.util.Arrays;
import java.util.List;

/**
 * The limits of a heap's bonds and rods with a point inside each, as {@link CornerCones} has those of its bearings. Few as
 * they are, they go through the general {@link ConeScaling}: {@code s = h - G x} with x the forces in the links, and z with
 * {@code G' z + B' y = 0}, which no force and even stresses fulfil without movement.
 */
final class FastenedCones {
  private final ConeProgram program;
  private final ConeScaling cone;
  private final int[] firstCone;
  final double[] x;
  final double[] s;
  final double[] z;
  private final double[] lambda;
  private final double[] later;
  private final double[] aim;
  private final double[] dx;
  private final double[] ds;
  private final double[] dz;
  private final double[] t1;
  private final double[] t2;
  private final double[] push;
  private final double[] body;
  /** Lower Cholesky factors of each link's G' W^-2 G, and B L^-T, twelve rows. */
  private final double[][] small;
  private final double[][] folded;
  private final double[] scaled;

  FastenedCones(int bodies, List<Element> elements) {
    program = new ConeProgram(bodies, elements, new double[6 * bodies], null, 0, null);
    cone = new ConeScaling(program);
    int n = elements.size();
    firstCone = new int[n];
    small = new double[n][];
    folded = new double[n][];
    int k = 0;
    int most = 1;
    for (int e = 0; e < n; e++) {
      Element el = elements.get(e);
      firstCone[e] = k;
      k += el.halfLines() + el.cones().length;
      small[e] = new double[el.size() * el.size()];
      folded[e] = new double[12 * el.size()];
      most = Math.max(most, el.rows() * el.size());
    }
    scaled = new double[most];
    x = new double[program.unknowns];
    push = new double[program.unknowns];
    dx = new double[program.unknowns];
    s = new double[program.rows];
    z = new double[program.rows];
    lambda = new double[program.rows];
    later = new double[program.rows];
    aim = new double[program.rows];
    ds = new double[program.rows];
    dz = new double[program.rows];
    t1 = new double[program.rows];
    t2 = new double[program.rows];
    body = new double[6 * bodies];
  }

  int degree() {
    return program.degree;
  }

  ConeProgram program() {
    return program;
  }

  /** No force in any link. False where a link can bear nothing at all, so that no force lies inside its limits. */
  boolean begin() {
    Arrays.fill(x, 0);
    Arrays.fill(z, 0);
    System.arraycopy(program.h, 0, s, 0, s.length);
    for (int e = 0; e < program.elements.length; e++) {
      double largest = 0;
      for (int r = program.zStart[e]; r < program.zStart[e + 1]; r++) largest = Math.max(largest, s[r]);
      if (!(largest > 0)) return false;
      int row = program.zStart[e];
      for (int i = 0; i < program.elements[e].halfLines(); i++) z[row++] = 1 / largest;
      for (int d : program.elements[e].cones()) {
        z[row] = 1 / largest;
        row += d;
      }
    }
    if (cone.inside(s) > 0) return true;
    // A rod that is glued may bear its pull from nothing on: the middle of what it bears is inside.
    for (int e = 0; e < program.elements.length; e++) {
      Element el = program.elements[e];
      for (int r = 0; r < el.halfLines(); r++) {
        if (s[program.zStart[e] + r] > 0) continue;
        int c = lone(el, r);
        if (c < 0) return false;
        for (int q = 0; q < el.halfLines(); q++) {
          double g = el.g()[q * el.size() + c];
          if (q != r && g * el.g()[r * el.size() + c] < 0) x[program.xStart[e] + c] = el.h()[q] / g / 2;
        }
      }
    }
    slack();
    return cone.inside(s) > 0;
  }

  /** The only unknown of a row, or -1. */
  private static int lone(Element el, int row) {
    int found = -1;
    for (int c = 0; c < el.size(); c++) {
      if (el.g()[row * el.size() + c] == 0) continue;
      if (found >= 0) return -1;
      found = c;
    }
    return found;
  }

  private void slack() {
    program.cone(x, s);
    for (int i = 0; i < s.length; i++) s[i] = program.h[i] - s[i];
  }

  void copy(FastenedCones o, double mu) {
    System.arraycopy(o.x, 0, x, 0, x.length);
    System.arraycopy(o.s, 0, s, 0, s.length);
    for (int i = 0; i < z.length; i++) z[i] = mu * o.z[i];
  }

  /** Takes up a blend of two points: shares of forces, and shares of movements. */
  void blend(double a, CornerStart one, double b, CornerStart two, double zA, double zB) {
    CornerStart.blend(a, one.fastenedX, b, two.fastenedX, x);
    CornerStart.blend(zA, one.fastenedZ, zB, two.fastenedZ, z);
    slack();
  }

  double gap() {
    double sum = 0;
    for (int i = 0; i < s.length; i++) sum += s[i] * z[i];
    return sum;
  }

  /** What the limits leave of a bound: h z. */
  double cost() {
    double sum = 0;
    for (int i = 0; i < z.length; i++) sum += program.h[i] * z[i];
    return sum;
  }

  /**
   * The same, put together anew for a movement: what rounding leaves of G' z + B' y is charged what the link may bear.
   *
   * @param y movements of the bodies
   */
  double cost(double[] y) {
    program.motion(y, push);
    program.addConeTransposed(z, push);
    double sum = cost();
    for (int e = 0; e < program.elements.length; e++) {
      double largest = 0;
      for (double h : program.elements[e].h()) largest = Math.max(largest, h);
      for (int i = program.xStart[e]; i < program.xStart[e + 1]; i++) {
        sum += Tolerances.FASTENED_REACH * largest * Math.abs(push[i]);
      }
    }
    return sum;
  }

  boolean scale(double[] blocks, BlockCholesky where) {
    if (!cone.update(s, z)) return false;
    cone.scale(z, lambda);
    for (int e = 0; e < program.elements.length; e++) factor(e, blocks, where);
    return true;
  }

  private void factor(int e, double[] blocks, BlockCholesky where) {
    Element el = program.elements[e];
    int size = el.size();
    cone.unscaleRows(el, program.zStart[e], firstCone[e], scaled);
    double[] l = small[e];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double v = 0;
        for (int r = 0; r < el.rows(); r++) v += scaled[r * size + i] * scaled[r * size + j];
        for (int k = 0; k < j; k++) v -= l[i * size + k] * l[j * size + k];
        l[i * size + j] = i == j ? Math.sqrt(Math.max(v, Double.MIN_NORMAL)) : v / l[j * size + j];
      }
    }
    double[] f = folded[e];
    int rows = el.b() >= 0 ? 12 : 6;
    for (int r = 0; r < rows; r++) {
      double[] wrench = r < 6 ? el.wrenchA() : el.wrenchB();
      for (int j = 0; j < size; j++) {
        double v = wrench[r % 6 * size + j];
        for (int k = 0; k < j; k++) v -= f[r * size + k] * l[j * size + k];
        f[r * size + j] = v / l[j * size + j];
      }
    }
    add(blocks, where.blockOf(el.a(), el.a()), f, 0, 0, size, false);
    if (el.b() < 0) return;
    add(blocks, where.blockOf(el.b(), el.b()), f, 6, 6, size, false);
    add(blocks, where.blockOf(el.a(), el.b()), f, 0, 6, size, where.flipped(el.a(), el.b()));
  }

  private static void add(double[] blocks, int block, double[] f, int row, int col, int size, boolean turned) {
    for (int r = 0; r < 6; r++) {
      for (int c = 0; c < 6; c++) {
        double v = 0;
        for (int k = 0; k < size; k++) v += f[(row + r) * size + k] * f[(col + c) * size + k];
        blocks[block * BlockCholesky.BB + (turned ? 6 * c + r : 6 * r + c)] += v;
      }
    }
  }

  /** out := (G' W^-2 G)^-1 v, link by link. */
  private void solveSmall(double[] v, double[] out) {
    for (int e = 0; e < small.length; e++) {
      int size = program.elements[e].size();
      int o = program.xStart[e];
      double[] l = small[e];
      for (int i = 0; i < size; i++) {
        double t = v[o + i];
        for (int k = 0; k < i; k++) t -= l[i * size + k] * out[o + k];
        out[o + i] = t / l[i * size + i];
      }
      for (int i = size - 1; i >= 0; i--) {
        double t = out[o + i];
        for (int k = i + 1; k < size; k++) t -= l[k * size + i] * out[o + k];
        out[o + i] = t / l[i * size + i];
      }
    }
  }

  /** What the aim c of the step asks of the balance besides the forces there are: -B H^-1 G' W^-2 c. */
  private void asks(double[] c, double[] on) {
    cone.unscale(c, t1);
    cone.unscale(t1, t1);
    Arrays.fill(push, 0);
    program.addConeTransposed(t1, push);
    for (int i = 0; i < push.length; i++) push[i] = -push[i];
    solveSmall(push, push);
    program.balance(push, body);
    for (int i = 0; i < on.length; i++) on[i] += body[i];
  }

  /** As {@link CornerCones#centring}; the forces that there are are counted as taken along, hence added here. */
  void centring(double mu, double[] once) {
    inverse(t2);
    for (int i = 0; i < aim.length; i++) {
      later[i] = mu * t2[i];
      aim[i] = later[i] - s[i];
    }
    asks(aim, once);
    wrenches(once);
  }

  void predicting(double[] once) {
    Arrays.fill(later, 0);
    for (int i = 0; i < aim.length; i++) aim[i] = -s[i];
    asks(aim, once);
    wrenches(once);
  }

  /** Adds the wrenches of all forces to {@code on}. */
  void wrenches(double[] on) {
    program.balance(x, body);
    for (int i = 0; i < on.length; i++) on[i] += body[i];
  }

  /** out := z^-1. */
  private void inverse(double[] out) {
    Arrays.fill(t1, 0);
    cone.addCentre(t1, 1);
    cone.divide(lambda, t1, out);
    cone.scale(out, out);
  }

  void predicted(double[] dy, double mu, double[] once) {
    direction(dy);
    cone.unscale(ds, t1);
    cone.scale(dz, t2);
    cone.product(t1, t2, t1);
    for (int i = 0; i < t1.length; i++) t1[i] = -t1[i];
    cone.divide(lambda, t1, t2);
    cone.scale(t2, later);
    inverse(t2);
    for (int i = 0; i < aim.length; i++) {
      later[i] += mu * t2[i];
      aim[i] = later[i] - s[i];
    }
    asks(aim, once);
    wrenches(once);
  }

  /** Asks once more for what was last asked. */
  void again(double[] once) {
    asks(aim, once);
    wrenches(once);
  }

  void corrected(double[] dy) {
    for (int i = 0; i < aim.length; i++) aim[i] = later[i] - s[i];
    direction(dy);
  }

  /** H dx = -B' dy - G' W^-2 c; then ds = -G dx and dz = W^-2 (c + G dx). */
  private void direction(double[] dy) {
    program.motion(dy, push);
    cone.unscale(aim, t1);
    cone.unscale(t1, t1);
    program.addConeTransposed(t1, push);
    for (int i = 0; i < push.length; i++) push[i] = -push[i];
    solveSmall(push, dx);
    program.cone(dx, ds);
    for (int i = 0; i < ds.length; i++) dz[i] = aim[i] + ds[i];
    cone.unscale(dz, dz);
    cone.unscale(dz, dz);
    for (int i = 0; i < ds.length; i++) ds[i] = -ds[i];
  }

  double lengthS(double most) {
    return cone.step(s, ds, most);
  }

  double lengthZ(double most) {
    return cone.step(z, dz, most);
  }

  void move(double lengthS, double lengthZ) {
    for (int i = 0; i < x.length; i++) x[i] += lengthS * dx[i];
    slack();
    for (int i = 0; i < z.length; i++) z[i] += lengthZ * dz[i];
  }
}
