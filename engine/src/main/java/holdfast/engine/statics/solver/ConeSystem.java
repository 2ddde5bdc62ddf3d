package holdfast.engine.statics.solver;

/**
 * The linear system of one step of {@link ConeSolver},
 *
 * <pre>
 *   [ 0  A'  G'  ] [x]   [bx]
 *   [ A  0   0   ] [y] = [by]
 *   [ G  0  -W^2 ] [z]   [bz]
 * </pre>
 *
 * with A the equations of balance, G the cones' rows and W their scaling. The unknowns of each link are eliminated on the
 * spot, which leaves one sparse matrix of 6 x 6 blocks for the bodies. The live factor is eliminated like a link that joins
 * every body it acts on: close to a collapse it alone resists, and keeping it out of the factor would lose all digits.
 */
final class ConeSystem {
  private final ConeProgram p;
  private final ConeScaling cone;
  private final BlockCholesky factor;
  private final int[] firstCone;
  private final int[] blockAa;
  private final int[] blockBb;
  private final int[] blockAb;
  private final boolean[] flipped;
  private final int nx;
  private final int ny;
  private final int nz;

  /** Lower Cholesky factors of the links' own blocks, one after another. */
  private final double[] small;
  private final int[] smallStart;
  private final double[] scaled;
  private final double[] folded;
  /** Bodies that the live load acts on. */
  private final int[] liveBodies;
  private double liveBlock;

  private final double[] hx;
  private final Direction fix;
  private final double[] ex;
  private final double[] ey;
  private final double[] ez;
  private final double[] w;
  private final double[] q;
  private final double[] r;

  /** A solution: forces, velocities, multipliers of the cones. */
  static final class Direction {
    final double[] x;
    final double[] y;
    final double[] z;

    Direction(int nx, int ny, int nz) {
      x = new double[nx];
      y = new double[ny];
      z = new double[nz];
    }
  }

  ConeSystem(ConeProgram program, ConeScaling scaling, BlockCholesky pattern) {
    p = program;
    cone = scaling;
    factor = pattern;
    nx = p.unknowns;
    ny = 6 * p.bodies;
    nz = p.rows;
    int n = p.elements.length;
    firstCone = new int[n];
    blockAa = new int[n];
    blockBb = new int[n];
    blockAb = new int[n];
    flipped = new boolean[n];
    smallStart = new int[n + 1];
    int k = 0;
    int widest = 1;
    int tallest = 1;
    for (int e = 0; e < n; e++) {
      Element el = p.elements[e];
      firstCone[e] = k;
      k += el.halfLines() + el.cones().length;
      blockAa[e] = pattern.blockOf(el.a(), el.a()) * BlockCholesky.BB;
      if (el.b() >= 0) {
        blockBb[e] = pattern.blockOf(el.b(), el.b()) * BlockCholesky.BB;
        blockAb[e] = pattern.blockOf(el.a(), el.b()) * BlockCholesky.BB;
        flipped[e] = pattern.flipped(el.a(), el.b());
      }
      smallStart[e + 1] = smallStart[e] + el.size() * el.size();
      widest = Math.max(widest, el.size());
      tallest = Math.max(tallest, el.rows());
    }
    small = new double[smallStart[n]];
    scaled = new double[tallest * widest];
    folded = new double[12 * widest];
    liveBodies = p.liveBodies();
    hx = new double[nx];
    fix = new Direction(nx, ny, nz);
    ex = new double[nx];
    ey = new double[ny];
    ez = new double[nz];
    w = new double[nz];
    q = new double[nx];
    r = new double[ny];
  }

  /** Takes up the scaling as it now is. */
  void factor() {
    factor.clear();
    double[] blocks = factor.values();
    for (int e = 0; e < p.elements.length; e++) {
      Element el = p.elements[e];
      int size = el.size();
      cone.unscaleRows(el, p.zStart[e], firstCone[e], scaled);
      int at = smallStart[e];
      for (int i = 0; i < size; i++) {
        for (int j = 0; j <= i; j++) {
          double v = 0;
          for (int r = 0; r < el.rows(); r++) v += scaled[r * size + i] * scaled[r * size + j];
          small[at + i * size + j] = v;
        }
      }
      factorSmall(at, size);
      fold(el, at, size);
      addBlock(blocks, blockAa[e], 0, 0, size, false);
      if (el.b() >= 0) {
        addBlock(blocks, blockBb[e], 6, 6, size, false);
        addBlock(blocks, blockAb[e], 0, 6, size, flipped[e]);
      }
    }
    if (p.live != null) {
      double lo = 1 / cone.lineScale(p.rows - 2);
      double hi = 1 / cone.lineScale(p.rows - 1);
      liveBlock = lo * lo + hi * hi;
      for (int i : liveBodies) {
        for (int j : liveBodies) {
          if (factor.flipped(i, j)) continue;
          int at = factor.blockOf(i, j) * BlockCholesky.BB;
          for (int r = 0; r < 6; r++) {
            for (int c = 0; c < 6; c++) blocks[at + 6 * r + c] += p.live[6 * i + r] * p.live[6 * j + c] / liveBlock;
          }
        }
      }
    }
    double largest = 0;
    for (double v : blocks) largest = Math.max(largest, Math.abs(v));
    double least = Tolerances.CONE_REGULAR * largest;
    factor.addToDiagonal(least);
    factor.factor(least);
  }

  private void factorSmall(int at, int size) {
    for (int j = 0; j < size; j++) {
      double d = small[at + j * size + j];
      double before = d;
      for (int k = 0; k < j; k++) d -= small[at + j * size + k] * small[at + j * size + k];
      if (!(d > Tolerances.CONE_SMALL_PIVOT * before)) d = Tolerances.CONE_SMALL_PIVOT * Math.max(before, Double.MIN_NORMAL);
      double root = Math.sqrt(d);
      small[at + j * size + j] = root;
      for (int i = j + 1; i < size; i++) {
        double v = small[at + i * size + j];
        for (int k = 0; k < j; k++) v -= small[at + i * size + k] * small[at + j * size + k];
        small[at + i * size + j] = v / root;
      }
    }
  }

  /** folded := wrench rows times L^-T, twelve rows: those of a, then those of b. */
  private void fold(Element el, int at, int size) {
    for (int r = 0; r < (el.b() >= 0 ? 12 : 6); r++) {
      double[] wrench = r < 6 ? el.wrenchA() : el.wrenchB();
      int row = (r % 6) * size;
      for (int j = 0; j < size; j++) {
        double v = wrench[row + j];
        for (int k = 0; k < j; k++) v -= folded[r * size + k] * small[at + j * size + k];
        folded[r * size + j] = v / small[at + j * size + j];
      }
    }
  }

  private void addBlock(double[] blocks, int to, int rowFrom, int colFrom, int size, boolean transposed) {
    for (int r = 0; r < 6; r++) {
      for (int c = 0; c < 6; c++) {
        double v = 0;
        for (int k = 0; k < size; k++) v += folded[(rowFrom + r) * size + k] * folded[(colFrom + c) * size + k];
        blocks[to + (transposed ? 6 * c + r : 6 * r + c)] += v;
      }
    }
  }

  /** out := H^-1 v, link by link. */
  private void solveSmall(double[] v, double[] out) {
    for (int e = 0; e < p.elements.length; e++) {
      int size = p.elements[e].size();
      int at = smallStart[e];
      int o = p.xStart[e];
      for (int i = 0; i < size; i++) {
        double t = v[o + i];
        for (int k = 0; k < i; k++) t -= small[at + i * size + k] * out[o + k];
        out[o + i] = t / small[at + i * size + i];
      }
      for (int i = size - 1; i >= 0; i--) {
        double t = out[o + i];
        for (int k = i + 1; k < size; k++) t -= small[at + k * size + i] * out[o + k];
        out[o + i] = t / small[at + i * size + i];
      }
    }
    if (p.live != null) out[p.links] = v[p.links] / liveBlock;
  }

  /**
   * Solves, refined against the system itself for as long as that helps: close to a collapse the equations of balance are
   * all but singular.
   *
   * @param exact relative error that will do
   */
  void solve(double[] bx, double[] by, double[] bz, Direction out, double exact) {
    solveOnce(bx, by, bz, out);
    double aim = exact * Math.max(maxAbs(bx), Math.max(maxAbs(by), maxAbs(bz)));
    double before = Double.POSITIVE_INFINITY;
    for (int round = 0; round < Tolerances.CONE_REFINEMENTS; round++) {
      p.motion(out.y, ex);
      p.addConeTransposed(out.z, ex);
      for (int i = 0; i < nx; i++) ex[i] = bx[i] - ex[i];
      p.balance(out.x, ey);
      for (int i = 0; i < ny; i++) ey[i] = by[i] - ey[i];
      p.cone(out.x, ez);
      cone.scale(out.z, fix.z);
      cone.scale(fix.z, fix.z);
      for (int i = 0; i < nz; i++) ez[i] = bz[i] - ez[i] + fix.z[i];
      double error = Math.max(maxAbs(ex), Math.max(maxAbs(ey), maxAbs(ez)));
      if (error <= aim || error > 0.5 * before) return;
      before = error;
      solveOnce(ex, ey, ez, fix);
      for (int i = 0; i < nx; i++) out.x[i] += fix.x[i];
      for (int i = 0; i < ny; i++) out.y[i] += fix.y[i];
      for (int i = 0; i < nz; i++) out.z[i] += fix.z[i];
    }
  }

  private void solveOnce(double[] bx, double[] by, double[] bz, Direction out) {
    // q = bx + G' W^-2 bz
    cone.unscale(bz, w);
    cone.unscale(w, w);
    System.arraycopy(bx, 0, q, 0, nx);
    p.addConeTransposed(w, q);
    // (A H^-1 A') y = A H^-1 q - by
    solveSmall(q, hx);
    p.balance(hx, r);
    for (int i = 0; i < ny; i++) r[i] -= by[i];
    factor.solve(r, out.y);
    // x = H^-1 (q - A' y)
    p.motion(out.y, hx);
    for (int i = 0; i < nx; i++) q[i] -= hx[i];
    solveSmall(q, out.x);
    // z = W^-2 (G x - bz)
    p.cone(out.x, w);
    for (int i = 0; i < nz; i++) w[i] -= bz[i];
    cone.unscale(w, w);
    cone.unscale(w, out.z);
  }

  private static double maxAbs(double[] v) {
    double m = 0;
    for (double d : v) m = Math.max(m, Math.abs(d));
    return m;
  }
}
