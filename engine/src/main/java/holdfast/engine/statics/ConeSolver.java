package holdfast.engine.statics;

import holdfast.engine.statics.ConeSolution.End;

/**
 * Solves a {@link ConeProgram} on the true second-order cones by a primal-dual interior-point method on the homogeneous
 * self-dual embedding, with Nesterov-Todd scaling and Mehrotra's predictor and corrector. The embedding ends either with
 * forces and a mechanism that agree, or with a mechanism that proves that no forces exist.
 *
 * <p>One step costs one sparse Cholesky factor of 6 x 6 blocks: the unknowns of each link are eliminated on the spot, and
 * the equations of balance of the bodies are what is left. The live factor is eliminated like a link that joins every
 * body it acts on: close to a collapse it alone resists, and keeping it out of the factor would lose all digits.
 *
 * <p>Limits: figures near the square root of machine precision are the best that the normal equations give; whoever uses
 * a solution recomputes its residuals ({@link ForceBalance}).
 *
 * @see <a href="https://doi.org/10.23919/ECC.2013.6669541">Domahidi, Chu and Boyd 2013, ECOS: an SOCP solver for embedded
 *     systems</a>, sections II and III
 * @see <a href="https://www.seas.ucla.edu/~vandenbe/publications/coneprog.pdf">Vandenberghe 2010</a>, section 7
 */
final class ConeSolver {
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
  private final double[] x;
  private final double[] y;
  private final double[] z;
  private final double[] s;
  private final double[] bestX;
  private final double[] bestY;
  private final double[] bestZ;
  private double bestTau;
  private double tau;
  private double kappa;

  /** Lower Cholesky factors of the links' own blocks, one after another. */
  private final double[] small;
  private final int[] smallStart;
  private final double[] scaled;
  private final double[] folded;
  /** Bodies that the live load acts on. */
  private final int[] liveBodies;
  private double liveBlock;

  private final double[] rx;
  private final double[] ry;
  private final double[] rz;
  private final double[] lambda;
  private final double[] ds;
  private final double[] t1;
  private final double[] t2;
  private final double[] qx;
  private final double[] qy;
  private final double[] hx;
  private final Direction fixed;
  private final Direction free;
  private final double[] stepS;
  private final double[] stepZ;

  private static final class Direction {
    final double[] x;
    final double[] y;
    final double[] z;

    Direction(int nx, int ny, int nz) {
      x = new double[nx];
      y = new double[ny];
      z = new double[nz];
    }
  }

  ConeSolver(ConeProgram program, BlockCholesky pattern) {
    p = program;
    cone = new ConeScaling(p);
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
    x = new double[nx];
    y = new double[ny];
    z = new double[nz];
    s = new double[nz];
    bestX = new double[nx];
    bestY = new double[ny];
    bestZ = new double[nz];
    liveBodies = p.liveBodies();
    rx = new double[nx];
    ry = new double[ny];
    rz = new double[nz];
    lambda = new double[nz];
    ds = new double[nz];
    t1 = new double[nz];
    t2 = new double[nz];
    qx = new double[nx];
    qy = new double[ny];
    hx = new double[nx];
    fixed = new Direction(nx, ny, nz);
    free = new Direction(nx, ny, nz);
    stepS = new double[nz];
    stepZ = new double[nz];
  }

  /**
   * Solves to the tolerances of {@link Tolerances}; {@code gap} is the relative distance of forces and mechanism to stop at.
   * Where the digits run out before that, the best point on the way is taken if it is nearly there; whoever uses it
   * recomputes its residuals.
   */
  ConeSolution solve(double gap) {
    start();
    End end = End.UNSETTLED;
    int iteration = 0;
    double bestMerit = Double.POSITIVE_INFINITY;
    int since = 0;
    for (; iteration < Tolerances.CONE_STEPS; iteration++) {
      residuals();
      end = judge(gap);
      if (end != End.UNSETTLED) break;
      double merit = merit(gap);
      if (merit < bestMerit) {
        bestMerit = merit;
        since = 0;
        keep();
      } else if (bestMerit < Tolerances.CONE_NEARLY && ++since > Tolerances.CONE_WORSE_STEPS) {
        break;
      }
      if (!step()) break;
    }
    if (end == End.UNSETTLED && bestMerit < Tolerances.CONE_NEARLY) {
      recall();
      end = End.OPTIMAL;
    }
    double scale = end == End.OPTIMAL ? 1 / tau : 1 / Math.max(tau, certificateScale());
    double cx = dot(p.cost, x) * scale;
    double by = -(dot(p.rhs, y) + dot(p.h, z)) * scale;
    return new ConeSolution(end, times(x, scale), times(y, scale), times(z, scale), cx, by, iteration);
  }

  private void keep() {
    System.arraycopy(x, 0, bestX, 0, nx);
    System.arraycopy(y, 0, bestY, 0, ny);
    System.arraycopy(z, 0, bestZ, 0, nz);
    bestTau = tau;
  }

  private void recall() {
    System.arraycopy(bestX, 0, x, 0, nx);
    System.arraycopy(bestY, 0, y, 0, ny);
    System.arraycopy(bestZ, 0, z, 0, nz);
    tau = bestTau;
  }

  private double certificateScale() {
    double farkas = -(dot(p.rhs, y) + dot(p.h, z));
    return farkas > 0 ? farkas : Double.MIN_NORMAL;
  }

  /** Where the method begins: least squares for forces and for the mechanism, pushed into the cone. */
  private void start() {
    java.util.Arrays.fill(s, 0);
    java.util.Arrays.fill(z, 0);
    cone.addCentre(s, 1);
    cone.addCentre(z, 1);
    cone.update(s, z);
    factorAll();
    solveSystem(new double[nx], p.rhs, p.h, fixed);
    System.arraycopy(fixed.x, 0, x, 0, nx);
    for (int i = 0; i < nz; i++) s[i] = -fixed.z[i];
    pushInside(s);
    for (int i = 0; i < nx; i++) qx[i] = -p.cost[i];
    solveSystem(qx, new double[ny], new double[nz], fixed);
    System.arraycopy(fixed.y, 0, y, 0, ny);
    System.arraycopy(fixed.z, 0, z, 0, nz);
    pushInside(z);
    tau = 1;
    kappa = 1;
  }

  private void pushInside(double[] v) {
    double depth = cone.inside(v);
    double least = Tolerances.CONE_START * Math.max(1, maxAbs(v));
    if (depth < least) cone.addCentre(v, least - depth + 1);
  }

  private void residuals() {
    p.motion(y, rx);
    p.addConeTransposed(z, rx);
    for (int i = 0; i < nx; i++) rx[i] += p.cost[i] * tau;
    p.balance(x, ry);
    for (int i = 0; i < ny; i++) ry[i] -= p.rhs[i] * tau;
    p.cone(x, rz);
    for (int i = 0; i < nz; i++) rz[i] += s[i] - p.h[i] * tau;
  }

  /** How far from done: the largest of residuals and gap over their tolerances; 1 or less is done. */
  private double merit(double gap) {
    double primal = Math.max(maxAbs(ry) / Math.max(1, maxAbs(p.rhs)), maxAbs(rz) / Math.max(1, maxAbs(p.h))) / tau;
    double dual = maxAbs(rx) / Math.max(1, maxAbs(p.cost)) / tau;
    double forces = dot(p.cost, x) / tau;
    double mechanism = -(dot(p.rhs, y) + dot(p.h, z)) / tau;
    double size = Math.max(Tolerances.CONE_GAP_FLOOR, Math.min(Math.abs(forces), Math.abs(mechanism)));
    return Math.max(Math.max(primal, dual) / Tolerances.CONE_RESIDUAL, Math.abs(forces - mechanism) / (gap * size));
  }

  private End judge(double gap) {
    if (merit(gap) <= 1) return End.OPTIMAL;
    double cx = dot(p.cost, x);
    double by = dot(p.rhs, y);
    double hz = dot(p.h, z);
    double farkas = -(by + hz);
    if (farkas > 0) {
      // Without the part of the residual that tau still carries.
      double worst = 0;
      for (int i = 0; i < nx; i++) worst = Math.max(worst, Math.abs(rx[i] - p.cost[i] * tau));
      if (worst < Tolerances.CONE_CERTIFICATE * farkas && tau < kappa) return End.NO_FORCES;
    }
    if (cx < 0) {
      double worst = 0;
      for (int i = 0; i < ny; i++) worst = Math.max(worst, Math.abs(ry[i] + p.rhs[i] * tau));
      for (int i = 0; i < nz; i++) worst = Math.max(worst, Math.abs(rz[i] + p.h[i] * tau));
      if (worst < Tolerances.CONE_CERTIFICATE * -cx && tau < kappa) return End.UNBOUNDED;
    }
    return End.UNSETTLED;
  }

  /** One predictor-corrector step; false when the numbers have run out. */
  private boolean step() {
    if (!cone.update(s, z)) return false;
    cone.scale(z, lambda);
    factorAll();
    double mu = (dot(s, z) + kappa * tau) / (p.degree + 1);
    for (int i = 0; i < nx; i++) qx[i] = -p.cost[i];
    solveSystem(qx, p.rhs, p.h, fixed);
    double fixedValue = dot(p.cost, fixed.x) + dot(p.rhs, fixed.y) + dot(p.h, fixed.z);
    double r4 = dot(p.cost, x) + dot(p.rhs, y) + dot(p.h, z) + kappa;

    // Predictor.
    cone.product(lambda, lambda, ds);
    double dTau = direction(0, kappa * tau, fixedValue, r4);
    double dKappa = -(kappa * tau + kappa * dTau) / tau;
    double reach = longest(dTau, dKappa, 1);
    double sigma = Math.pow(1 - reach, 3);

    // Corrector.
    cone.unscale(stepS, t1);
    cone.scale(stepZ, t2);
    cone.product(t1, t2, t1);
    cone.product(lambda, lambda, ds);
    for (int i = 0; i < nz; i++) ds[i] += t1[i];
    cone.addCentre(ds, -sigma * mu);
    double dk = kappa * tau + dKappa * dTau - sigma * mu;
    dTau = direction(sigma, dk, fixedValue, r4);
    dKappa = -(dk + kappa * dTau) / tau;
    double length = Tolerances.CONE_STEP_SHARE * longest(dTau, dKappa, 1 / Tolerances.CONE_STEP_SHARE);
    if (!(length > Tolerances.CONE_LEAST_STEP)) return false;
    for (int i = 0; i < nx; i++) x[i] += length * free.x[i];
    for (int i = 0; i < ny; i++) y[i] += length * free.y[i];
    for (int i = 0; i < nz; i++) {
      s[i] += length * stepS[i];
      z[i] += length * stepZ[i];
    }
    tau += length * dTau;
    kappa += length * dKappa;
    return tau > 0 && kappa > 0 && Double.isFinite(tau) && Double.isFinite(kappa);
  }

  private double longest(double dTau, double dKappa, double most) {
    double step = cone.step(s, stepS, most);
    step = cone.step(z, stepZ, step);
    if (dTau < 0) step = Math.min(step, -tau / dTau);
    if (dKappa < 0) step = Math.min(step, -kappa / dKappa);
    return step;
  }

  /** The whole direction for the right-hand side {@code ds}, into {@code free}, {@code stepS}, {@code stepZ}; returns that of tau. */
  private double direction(double sigma, double dk, double fixedValue, double r4) {
    double rest = 1 - sigma;
    cone.divide(lambda, ds, t1);
    cone.scale(t1, t1);
    for (int i = 0; i < nz; i++) t2[i] = -rest * rz[i] + t1[i];
    for (int i = 0; i < nx; i++) qx[i] = -rest * rx[i];
    for (int i = 0; i < ny; i++) qy[i] = -rest * ry[i];
    solveSystem(qx, qy, t2, free);
    double value = dot(p.cost, free.x) + dot(p.rhs, free.y) + dot(p.h, free.z);
    double dTau = (-rest * r4 + dk / tau - value) / (fixedValue - kappa / tau);
    for (int i = 0; i < nx; i++) free.x[i] += dTau * fixed.x[i];
    for (int i = 0; i < ny; i++) free.y[i] += dTau * fixed.y[i];
    for (int i = 0; i < nz; i++) free.z[i] += dTau * fixed.z[i];
    // From the cone's own equation, so that its residual shrinks exactly.
    p.cone(free.x, stepS);
    for (int i = 0; i < nz; i++) {
      stepS[i] = -rest * rz[i] - stepS[i] + p.h[i] * dTau;
      stepZ[i] = free.z[i];
    }
    return dTau;
  }

  // -- the linear system --------------------------------------------------------------------------------------------

  private void factorAll() {
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

  private final Refinement refinement = new Refinement();

  private final class Refinement {
    double[] ex;
    double[] ey;
    double[] ez;
    Direction fix;
  }

  /**
   * Solves [0 A' G'; A 0 0; G 0 -W^2] (x, y, z) = (bx, by, bz), refined against the system itself for as long as that
   * helps: close to a collapse the equations of balance are all but singular.
   */
  private void solveSystem(double[] bx, double[] by, double[] bz, Direction out) {
    solveOnce(bx, by, bz, out);
    if (refinement.ex == null) {
      refinement.ex = new double[nx];
      refinement.ey = new double[ny];
      refinement.ez = new double[nz];
      refinement.fix = new Direction(nx, ny, nz);
    }
    double[] ex = refinement.ex;
    double[] ey = refinement.ey;
    double[] ez = refinement.ez;
    double aim = Tolerances.CONE_REFINED * Math.max(maxAbs(bx), Math.max(maxAbs(by), maxAbs(bz)));
    double before = Double.POSITIVE_INFINITY;
    for (int round = 0; round < Tolerances.CONE_REFINEMENTS; round++) {
      p.motion(out.y, ex);
      p.addConeTransposed(out.z, ex);
      for (int i = 0; i < nx; i++) ex[i] = bx[i] - ex[i];
      p.balance(out.x, ey);
      for (int i = 0; i < ny; i++) ey[i] = by[i] - ey[i];
      p.cone(out.x, ez);
      cone.scale(out.z, refinement.fix.z);
      cone.scale(refinement.fix.z, refinement.fix.z);
      for (int i = 0; i < nz; i++) ez[i] = bz[i] - ez[i] + refinement.fix.z[i];
      double error = Math.max(maxAbs(ex), Math.max(maxAbs(ey), maxAbs(ez)));
      if (error <= aim || error > 0.5 * before) return;
      before = error;
      solveOnce(ex, ey, ez, refinement.fix);
      for (int i = 0; i < nx; i++) out.x[i] += refinement.fix.x[i];
      for (int i = 0; i < ny; i++) out.y[i] += refinement.fix.y[i];
      for (int i = 0; i < nz; i++) out.z[i] += refinement.fix.z[i];
    }
  }

  private final double[][] scratch = new double[4][];

  private void solveOnce(double[] bx, double[] by, double[] bz, Direction out) {
    if (scratch[0] == null) {
      scratch[0] = new double[nz];
      scratch[1] = new double[nx];
      scratch[2] = new double[ny];
    }
    double[] w = scratch[0];
    double[] q = scratch[1];
    double[] r = scratch[2];
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

  private static double dot(double[] a, double[] b) {
    double v = 0;
    for (int i = 0; i < a.length; i++) v += a[i] * b[i];
    return v;
  }

  private static double maxAbs(double[] v) {
    double m = 0;
    for (double d : v) m = Math.max(m, Math.abs(d));
    return m;
  }

  private static double[] times(double[] v, double f) {
    double[] out = new double[v.length];
    for (int i = 0; i < v.length; i++) out[i] = v[i] * f;
    return out;
  }
}
