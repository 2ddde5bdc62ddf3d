package holdfast.engine.statics.solver;

/**
 * The symmetric cone of one program and its Nesterov-Todd scaling: for {@code s}, {@code z} inside the cone the matrix
 * {@code W} with {@code W z = W^-1 s}, a block for each half-line or second-order cone.
 *
 * @see <a href="https://www.seas.ucla.edu/~vandenbe/publications/coneprog.pdf">Vandenberghe 2010, The CVXOPT linear and
 *     quadratic cone program solvers</a>, sections 4 and 5 (scaling, Jordan product, step to the boundary)
 */
public final class ConeScaling {
  private final int[] at;
  private final int[] dim;
  /** Half-lines: the scale. Cones: eta at the first row, the unit hyperbolic vector w beside it. */
  private final double[] w;
  private final double[] eta;

  /** The scaling of a program's cone. */
  public ConeScaling(ConeProgram p) {
    int count = p.degree;
    at = new int[count];
    dim = new int[count];
    int k = 0;
    for (int e = 0; e < p.elements.length; e++) {
      int row = p.zStart[e];
      for (int i = 0; i < p.elements[e].halfLines(); i++) {
        at[k] = row++;
        dim[k++] = 1;
      }
      for (int d : p.elements[e].cones()) {
        at[k] = row;
        dim[k++] = d;
        row += d;
      }
    }
    if (p.live != null) {
      for (int row = p.rows - 2; row < p.rows; row++) {
        at[k] = row;
        dim[k++] = 1;
      }
    }
    w = new double[p.rows];
    eta = new double[count];
  }

  /** The least distance of {@code v} from the edge of the cone: below zero it is outside. */
  public double inside(double[] v) {
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < at.length; k++) {
      double m = dim[k] == 1 ? v[at[k]] : v[at[k]] - tail(v, at[k], dim[k]);
      if (m < least) least = m;
    }
    return least;
  }

  private static double tail(double[] v, int at, int dim) {
    double s = 0;
    for (int i = 1; i < dim; i++) s += v[at + i] * v[at + i];
    return Math.sqrt(s);
  }

  /** v := v + t e, with e the centre of the cone. */
  public void addCentre(double[] v, double t) {
    for (int i : at) v[i] += t;
  }

  /** Works out W for {@code s} and {@code z}, both strictly inside; false when they are not. */
  public boolean update(double[] s, double[] z) {
    for (int k = 0; k < at.length; k++) {
      int o = at[k];
      if (dim[k] == 1) {
        if (!(s[o] > 0) || !(z[o] > 0)) return false;
        w[o] = Math.sqrt(s[o] / z[o]);
        continue;
      }
      int d = dim[k];
      double ts = tail(s, o, d);
      double tz = tail(z, o, d);
      double js = (s[o] - ts) * (s[o] + ts);
      double jz = (z[o] - tz) * (z[o] + tz);
      if (!(js > 0) || !(jz > 0) || !(s[o] > 0) || !(z[o] > 0)) return false;
      double rs = 1 / Math.sqrt(js);
      double rz = 1 / Math.sqrt(jz);
      double dot = 0;
      for (int i = 0; i < d; i++) dot += s[o + i] * z[o + i];
      double gamma = Math.sqrt(0.5 * (1 + dot * rs * rz));
      double c = 0.5 / gamma;
      double norm = 0;
      for (int i = 1; i < d; i++) {
        w[o + i] = c * (s[o + i] * rs - z[o + i] * rz);
        norm += w[o + i] * w[o + i];
      }
      // On the hyperboloid w0^2 - |w1|^2 = 1, which rounding would leave.
      w[o] = Math.sqrt(1 + norm);
      eta[k] = Math.sqrt(Math.sqrt(js / jz));
    }
    return true;
  }

  /** out := W v. */
  public void scale(double[] v, double[] out) {
    apply(v, out, false);
  }

  /** out := W^-1 v. */
  public void unscale(double[] v, double[] out) {
    apply(v, out, true);
  }

  private void apply(double[] v, double[] out, boolean inverse) {
    for (int k = 0; k < at.length; k++) {
      int o = at[k];
      if (dim[k] == 1) {
        out[o] = inverse ? v[o] / w[o] : v[o] * w[o];
        continue;
      }
      int d = dim[k];
      double sign = inverse ? -1 : 1;
      double f = inverse ? 1 / eta[k] : eta[k];
      double dot = 0;
      for (int i = 1; i < d; i++) dot += w[o + i] * v[o + i];
      double v0 = v[o];
      double c = sign * v0 + dot / (1 + w[o]);
      out[o] = f * (w[o] * v0 + sign * dot);
      for (int i = 1; i < d; i++) out[o + i] = f * (v[o + i] + c * w[o + i]);
    }
  }

  /** The rows of W^-1 G for one element, written over {@code out} (rows x size), from its own rows at {@code zAt}. */
  public void unscaleRows(Element el, int zAt, int firstCone, double[] out) {
    double[] g = el.g();
    int size = el.size();
    for (int r = 0; r < el.halfLines(); r++) {
      double f = 1 / w[zAt + r];
      for (int c = 0; c < size; c++) out[r * size + c] = f * g[r * size + c];
    }
    int row = el.halfLines();
    int k = firstCone + el.halfLines();
    for (int d : el.cones()) {
      double f = 1 / eta[k++];
      int o = zAt + row;
      double w0 = w[o];
      for (int c = 0; c < size; c++) {
        double dot = 0;
        for (int i = 1; i < d; i++) dot += w[o + i] * g[(row + i) * size + c];
        double v0 = g[row * size + c];
        double t = -v0 + dot / (1 + w0);
        out[row * size + c] = f * (w0 * v0 - dot);
        for (int i = 1; i < d; i++) out[(row + i) * size + c] = f * (g[(row + i) * size + c] + t * w[o + i]);
      }
      row += d;
    }
  }

  /** The scale of a half-line row. */
  double lineScale(int row) {
    return w[row];
  }

  /** out := u o v, the Jordan product. */
  public void product(double[] u, double[] v, double[] out) {
    for (int k = 0; k < at.length; k++) {
      int o = at[k];
      if (dim[k] == 1) {
        out[o] = u[o] * v[o];
        continue;
      }
      double dot = 0;
      for (int i = 0; i < dim[k]; i++) dot += u[o + i] * v[o + i];
      double u0 = u[o];
      double v0 = v[o];
      for (int i = 1; i < dim[k]; i++) out[o + i] = u0 * v[o + i] + v0 * u[o + i];
      out[o] = dot;
    }
  }

  /** out := the x with {@code l o x = v}. */
  public void divide(double[] l, double[] v, double[] out) {
    for (int k = 0; k < at.length; k++) {
      int o = at[k];
      if (dim[k] == 1) {
        out[o] = v[o] / l[o];
        continue;
      }
      double t = tail(l, o, dim[k]);
      double det = (l[o] - t) * (l[o] + t);
      double dot = 0;
      for (int i = 1; i < dim[k]; i++) dot += l[o + i] * v[o + i];
      double x0 = (l[o] * v[o] - dot) / det;
      for (int i = 1; i < dim[k]; i++) out[o + i] = (v[o + i] - x0 * l[o + i]) / l[o];
      out[o] = x0;
    }
  }

  /** The longest step from {@code v}, strictly inside, along {@code d} that stays in the cone; at most {@code most}. */
  public double step(double[] v, double[] d, double most) {
    double step = most;
    for (int k = 0; k < at.length; k++) {
      int o = at[k];
      if (dim[k] == 1) {
        if (d[o] < 0) step = Math.min(step, -v[o] / d[o]);
        continue;
      }
      step = Math.min(step, coneStep(v, d, o, dim[k], step));
    }
    return step;
  }

  /** The first root of |v1 + t d1| = v0 + t d0 on t >= 0. */
  private static double coneStep(double[] v, double[] d, int o, int dim, double most) {
    double a = d[o] * d[o];
    double b = v[o] * d[o];
    double t = tail(v, o, dim);
    double c = (v[o] - t) * (v[o] + t);
    for (int i = 1; i < dim; i++) {
      a -= d[o + i] * d[o + i];
      b -= v[o + i] * d[o + i];
    }
    // a t^2 + 2 b t + c = 0 with c > 0.
    double disc = b * b - a * c;
    double step = most;
    if (a < 0 || b < 0 && disc >= 0) {
      double root = Math.sqrt(Math.max(0, disc));
      double first = b < 0 || a < 0 ? c / (root - b) : most;
      if (first >= 0) step = Math.min(step, first);
    }
    if (d[o] < 0) step = Math.min(step, -v[o] / d[o]);
    return step;
  }
}
