package holdfast.engine.statics.solver;

import holdfast.engine.statics.solver.ConeSolution.End;
import holdfast.engine.work.Parallel;
import java.util.Arrays;

/**
 * Solves a {@link ConeProgram} on the true second-order cones by a primal-dual interior-point method on the homogeneous
 * self-dual embedding, with Nesterov-Todd scaling and Mehrotra's predictor and corrector. The embedding ends either with
 * forces and a mechanism that agree, or with a mechanism that proves that no forces exist.
 *
 * <p>One step costs one sparse Cholesky factor of 6 x 6 blocks and three solutions with it ({@link ConeSystem}), refined
 * only as far as the step can use.
 *
 * <p>Limits: figures near the square root of machine precision are the best that the normal equations give; whoever uses
 * a solution recomputes its residuals ({@code ForceBalance}).
 *
 * @see <a href="https://doi.org/10.23919/ECC.2013.6669541">Domahidi, Chu and Boyd 2013, ECOS: an SOCP solver for embedded
 *     systems</a>, sections II and III
 * @see <a href="https://www.seas.ucla.edu/~vandenbe/publications/coneprog.pdf">Vandenberghe 2010</a>, section 7
 */
public final class ConeSolver {
  private final ConeProgram p;
  private final ConeScaling cone;
  private final ConeSystem system;
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

  private final double[] rx;
  private final double[] ry;
  private final double[] rz;
  private final double[] lambda;
  private final double[] ds;
  private final double[] t1;
  private final double[] t2;
  private final double[] qx;
  private final double[] qy;
  private double exact;
  private final ConeSystem.Direction fixed;
  private final ConeSystem.Direction free;
  private final double[] stepS;
  private final double[] stepZ;

  /** Solves {@code program} on a pattern as {@link ConeProgram#pattern} makes it, which programs of the same heap share. */
  public ConeSolver(ConeProgram program, BlockCholesky pattern) {
    p = program;
    cone = new ConeScaling(p);
    nx = p.unknowns;
    ny = 6 * p.bodies;
    nz = p.rows;
    system = new ConeSystem(p, cone, pattern);
    x = new double[nx];
    y = new double[ny];
    z = new double[nz];
    s = new double[nz];
    bestX = new double[nx];
    bestY = new double[ny];
    bestZ = new double[nz];
    rx = new double[nx];
    ry = new double[ny];
    rz = new double[nz];
    lambda = new double[nz];
    ds = new double[nz];
    t1 = new double[nz];
    t2 = new double[nz];
    qx = new double[nx];
    qy = new double[ny];
    fixed = new ConeSystem.Direction(nx, ny, nz);
    free = new ConeSystem.Direction(nx, ny, nz);
    stepS = new double[nz];
    stepZ = new double[nz];
  }

  /**
   * Solves until forces and mechanism are {@code gap} apart, relative, and their residuals below {@code residual}, scaled.
   * Where the digits run out before that, the best point on the way is taken if it is nearly there; whoever uses it
   * recomputes its residuals.
   */
  public ConeSolution solve(double gap, double residual) {
    start();
    End end = End.UNSETTLED;
    int iteration = 0;
    double bestMerit = Double.POSITIVE_INFINITY;
    int since = 0;
    for (; iteration < Tolerances.CONE_STEPS; iteration++) {
      Parallel.stopIfInterrupted();
      residuals();
      end = judge(gap, residual);
      if (end != End.UNSETTLED) break;
      double merit = merit(gap, residual);
      exact = Math.min(Tolerances.CONE_REFINED_LEAST, Math.max(1, merit) * Tolerances.CONE_REFINED);
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
    exact = Tolerances.CONE_REFINED_LEAST;
    Arrays.fill(s, 0);
    Arrays.fill(z, 0);
    cone.addCentre(s, 1);
    cone.addCentre(z, 1);
    cone.update(s, z);
    system.factor();
    system.solve(new double[nx], p.rhs, p.h, fixed, exact);
    System.arraycopy(fixed.x, 0, x, 0, nx);
    for (int i = 0; i < nz; i++) s[i] = -fixed.z[i];
    pushInside(s);
    for (int i = 0; i < nx; i++) qx[i] = -p.cost[i];
    system.solve(qx, new double[ny], new double[nz], fixed, exact);
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
  private double merit(double gap, double residual) {
    double primal = Math.max(maxAbs(ry) / Math.max(1, maxAbs(p.rhs)), maxAbs(rz) / Math.max(1, maxAbs(p.h))) / tau;
    double dual = maxAbs(rx) / Math.max(1, maxAbs(p.cost)) / tau;
    double forces = dot(p.cost, x) / tau;
    double mechanism = -(dot(p.rhs, y) + dot(p.h, z)) / tau;
    double size = Math.max(Tolerances.CONE_GAP_FLOOR, Math.min(Math.abs(forces), Math.abs(mechanism)));
    return Math.max(Math.max(primal, dual) / residual, Math.abs(forces - mechanism) / (gap * size));
  }

  private End judge(double gap, double residual) {
    if (merit(gap, residual) <= 1) return End.OPTIMAL;
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
    system.factor();
    double mu = (dot(s, z) + kappa * tau) / (p.degree + 1);
    for (int i = 0; i < nx; i++) qx[i] = -p.cost[i];
    system.solve(qx, p.rhs, p.h, fixed, exact);
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

  /**
   * The whole direction for the right-hand side {@code ds}, into {@code free}, {@code stepS}, {@code stepZ}; returns that of
   * tau.
   */
  private double direction(double sigma, double dk, double fixedValue, double r4) {
    double rest = 1 - sigma;
    cone.divide(lambda, ds, t1);
    cone.scale(t1, t1);
    for (int i = 0; i < nz; i++) t2[i] = -rest * rz[i] + t1[i];
    for (int i = 0; i < nx; i++) qx[i] = -rest * rx[i];
    for (int i = 0; i < ny; i++) qy[i] = -rest * ry[i];
    system.solve(qx, qy, t2, free, exact);
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
