package holdfast.engine.statics;

import holdfast.engine.statics.Forces.LinkForce;
import java.util.Arrays;
import java.util.List;

/**
 * What a heap at rest bears without any contact opening, closing or slipping and without any bond breaking: there the
 * forces of {@link Resting} are linear in the load, so a load on one body is answered by adding six known responses, and
 * no step need be sought. A yes is the same yes that {@link Resting} gives; a no says nothing.
 *
 * <p>Responses are worked out when a body is first asked about; not for several threads at once.
 */
final class Elastic {
  private static final int COLUMN = CompliantHeap.COLUMN;

  private final Heap heap;
  private final CompliantHeap soft;
  private final BlockLu factor;
  private final double forceN;
  private final double lengthM;
  private final double[] gap;
  private final double[] push;
  private final boolean[] carries;
  private final double[] slip;
  private final double[] arm;
  private final double[] least;
  private final double[] spring;
  private final Patch[] patches;
  /** For every body asked about: six responses of openings (or pushes), shears and twists, bonded springs. */
  private final Response[] responses;

  /** With the farthest that anything moves at each, weighed as accelerations are. */
  private record Response(double[][] corner, double[][] slip, double[][] spring, double[] moves) {}

  Elastic(Heap heap, CompliantHeap soft, RestState at, double[] held, BlockLu factor, double forceN, double lengthM) {
    this.heap = heap;
    this.soft = soft;
    this.factor = factor;
    this.forceN = forceN;
    this.lengthM = lengthM;
    patches = soft.patches;
    gap = at.gap;
    int corners = gap.length;
    push = new double[corners];
    carries = new boolean[soft.links];
    arm = new double[soft.links];
    least = new double[soft.links];
    slip = held;
    for (int i = 0; i < soft.links; i++) {
      for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) {
        push[c] = gap[c] < 0 ? -soft.cornerStiffness[c] * gap[c] : 0;
        carries[i] |= push[c] > 0 && soft.friction[i] > 0;
      }
      arm[i] = at.centre[3 * i + 2];
      least[i] = soft.bearing[i] ? Tolerances.ELASTIC_ARM * patches[i].meanDistance(0, 0) : 0;
    }
    spring = new double[at.stretch.length];
    for (int i = 0; i < soft.links; i++) springs(i, at.stretch, spring);
    responses = new Response[soft.bodies];
  }

  /** The forces that the bonded springs of a link put up against these stretches. */
  private void springs(int i, double[] stretch, double[] to) {
    int from = soft.springStart[i];
    int n = soft.springStart[i + 1] - from;
    for (int r = 0; r < n; r++) {
      double f = 0;
      for (int c = 0; c < n; c++) f -= soft.springStiffness[i][r * n + c] * stretch[from + c];
      to[from + r] = f;
    }
  }

  private Response response(int body) {
    if (responses[body] != null) return responses[body];
    Response out = new Response(new double[6][gap.length], new double[6][slip.length], new double[6][spring.length],
        new double[6]);
    double[] d = new double[6 * soft.bodies];
    double[] stretch = new double[spring.length];
    for (int k = 0; k < 6; k++) {
      Arrays.fill(d, 0);
      d[6 * body + k] = 1;
      factor.solve(d, d);
      for (int i = 0; i < soft.bodies; i++) {
        double radius = heap.bodies().get(i).sizeM() / 2 / lengthM;
        for (int r = 0; r < 6; r++) out.moves[k] = Math.max(out.moves[k], Math.abs(d[6 * i + r]) * (r < 3 ? 1 : radius));
      }
      for (int i = 0; i < soft.links; i++) {
        for (int c = soft.cornerStart[i]; c < soft.cornerStart[i + 1]; c++) {
          double opens = soft.along(soft.cornerColumn, COLUMN * c, i, d);
          out.corner[k][c] = push[c] > 0 ? -soft.cornerStiffness[c] * opens : opens;
        }
        for (int q = 3 * i; carries[i] && q < 3 * i + 3; q++) {
          out.slip[k][q] = -Tolerances.REST_SHEAR_STIFFNESS * soft.along(soft.slipColumn, COLUMN * q, i, d);
        }
        for (int at = soft.springStart[i]; at < soft.springStart[i + 1]; at++) {
          stretch[at] = soft.along(soft.springColumn, COLUMN * at, i, d);
        }
        springs(i, stretch, out.spring[k]);
      }
    }
    responses[body] = out;
    return out;
  }

  /** Whether {@code factor} times a live load on one body is borne so; false too where the load is on several. */
  boolean bears(List<Wrench> live, double factor) {
    int body = -1;
    for (int i = 0; i < live.size(); i++) {
      if (live.get(i).isZero()) continue;
      if (body >= 0) return false;
      body = i;
    }
    if (body < 0) return true;
    double[] six = ForceBalance.scaled(List.of(live.get(body)), forceN / factor, lengthM);
    Response r = response(body);
    // What only inertia holds is not held.
    double moves = 0;
    for (int k = 0; k < 6; k++) moves += Math.abs(six[k]) * r.moves[k];
    if (!(moves * Tolerances.REST_LEAST_INERTIA <= Tolerances.REST_ACCELERATION)) return false;
    // Deal with the links of the body itself first: they are the likeliest to let go.
    for (int i = 0; i < soft.links; i++) if ((soft.a[i] == body || soft.b[i] == body) && !holds(i, r, six)) return false;
    for (int i = 0; i < soft.links; i++) if (soft.a[i] != body && soft.b[i] != body && !holds(i, r, six)) return false;
    return true;
  }

  private boolean holds(int i, Response r, double[] w) {
    if (!soft.bearing[i]) return bondHolds(i, r, w);
    double total = 0;
    double before = 0;
    double u = 0;
    double v = 0;
    int start = soft.cornerStart[i];
    int end = soft.cornerStart[i + 1];
    Patch patch = patches[i];
    for (int c = start; c < end; c++) {
      double change = sum(r.corner, c, w);
      if (push[c] > 0) {
        double n = push[c] + change;
        if (n < Tolerances.ELASTIC_SPARE * push[c]) return false;
        total += n;
        u += n * patch.u[c - start];
        v += n * patch.v[c - start];
        before += push[c];
      } else if (gap[c] + change < 0) {
        return false;
      }
    }
    if (!carries[i]) return true;
    double limit = (1 - Tolerances.ELASTIC_SPARE) * soft.friction[i] * total;
    double q1 = slip[3 * i] + sum(r.slip, 3 * i, w);
    double q2 = slip[3 * i + 1] + sum(r.slip, 3 * i + 1, w);
    double q3 = slip[3 * i + 2] + sum(r.slip, 3 * i + 2, w);
    if (q1 * q1 + q2 * q2 + q3 * q3 > limit * limit) return false;
    // The centre of pressure has moved: the twist about the new one, on an arm no longer than the new one can be short.
    u /= total;
    v /= total;
    double gathered = 0;
    double un = 0;
    double vn = 0;
    for (int c = start; c < end; c++) {
      if (!(push[c] > 0)) continue;
      double n = push[c] + sum(r.corner, c, w);
      gathered += n / total * Math.hypot(patch.u[c - start] - u, patch.v[c - start] - v);
      un += push[c] / before * patch.u[c - start];
      vn += push[c] / before * patch.v[c - start];
    }
    double moment = q3 * arm[i] + (un - u) * q2 - (vn - v) * q1;
    double reach = Math.min(least[i], gathered);
    double q = reach > 0 ? moment / reach : moment == 0 ? 0 : Double.POSITIVE_INFINITY;
    return q1 * q1 + q2 * q2 + q * q <= limit * limit;
  }

  private boolean bondHolds(int i, Response r, double[] w) {
    int from = soft.springStart[i];
    double[] f = new double[soft.springStart[i + 1] - from];
    for (int k = 0; k < f.length; k++) f[k] = (spring[from + k] + sum(r.spring, from + k, w)) * forceN;
    Link link = heap.links().get(i);
    LinkForce force = link instanceof Link.Bond b
        ? BondUse.bondForce(b, patches[i], f, lengthM)
        : BondUse.rodForce((Link.Rod) link, f, lengthM);
    return BondUse.of(link, patches[i], force) <= 1 - Tolerances.ELASTIC_SPARE;
  }

  private static double sum(double[][] of, int at, double[] w) {
    return of[0][at] * w[0] + of[1][at] * w[1] + of[2][at] * w[2] + of[3][at] * w[3] + of[4][at] * w[4] + of[5][at] * w[5];
  }
}
