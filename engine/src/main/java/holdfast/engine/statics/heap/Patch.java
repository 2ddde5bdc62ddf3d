package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * The plane geometry of a contact patch: frame, centroid, area, second moments, mean distance from a point.
 * Lengths in metres; {@code u} and {@code v} are coordinates along {@code first} and {@code second} from the centroid,
 * with {@code first x second = normal}.
 */
public final class Patch {
  /** Out of b into a. */
  public final Vec3 normal;
  public final Vec3 first;
  public final Vec3 second;
  /** Of the area, or of an edge or point. */
  public final Vec3 centroid;
  public final List<Vec3> corners;
  /** Coordinates of the corners from the centroid. */
  public final double[] u;
  public final double[] v;
  /** Zero for an edge or a point. */
  public final double areaM2;
  /** Means over the patch of u^2, v^2 and u v, square metres. */
  public final double uu;
  public final double vv;
  public final double uv;
  private final double[] apart;

  /** The patch with these corners, in order round it, in a plane with this normal. */
  public Patch(Vec3 normal, List<Vec3> corners) {
    this.normal = normal;
    this.corners = corners;
    first = normal.anyPerpendicular();
    second = normal.cross(first);
    int n = corners.size();
    u = new double[n];
    v = new double[n];
    Vec3 o = corners.get(0);
    double[] pu = new double[n];
    double[] pv = new double[n];
    for (int i = 0; i < n; i++) {
      Vec3 d = corners.get(i).minus(o);
      pu[i] = d.dot(first);
      pv[i] = d.dot(second);
    }
    double area = 0;
    double mu = 0;
    double mv = 0;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      double cross = pu[i] * pv[j] - pu[j] * pv[i];
      area += cross / 2;
      mu += cross * (pu[i] + pu[j]) / 6;
      mv += cross * (pv[i] + pv[j]) / 6;
    }
    double cu;
    double cv;
    double reach = 0;
    for (int i = 0; i < n; i++) reach = Math.max(reach, length(pu[i], pv[i]));
    boolean flat = n >= 3 && Math.abs(area) > 1e-12 * reach * reach;
    if (flat) {
      cu = mu / area;
      cv = mv / area;
    } else {
      area = 0;
      cu = 0;
      cv = 0;
      for (int i = 0; i < n; i++) {
        cu += pu[i] / n;
        cv += pv[i] / n;
      }
    }
    areaM2 = Math.abs(area);
    centroid = o.plusTimes(cu, first).plusTimes(cv, second);
    for (int i = 0; i < n; i++) {
      u[i] = pu[i] - cu;
      v[i] = pv[i] - cv;
    }
    double suu = 0;
    double svv = 0;
    double suv = 0;
    if (flat) {
      for (int i = 0; i < n; i++) {
        int j = (i + 1) % n;
        double cross = (u[i] * v[j] - u[j] * v[i]) / area;
        suu += cross * (u[i] * u[i] + u[i] * u[j] + u[j] * u[j]) / 12;
        svv += cross * (v[i] * v[i] + v[i] * v[j] + v[j] * v[j]) / 12;
        suv += cross * (u[i] * v[j] + 2 * u[i] * v[i] + 2 * u[j] * v[j] + u[j] * v[i]) / 24;
      }
    }
    uu = suu;
    vv = svv;
    uv = suv;
    apart = distances(u, v);
  }

  private static double[] distances(double[] u, double[] v) {
    int n = u.length;
    double[] out = new double[n * n];
    for (int i = 0; i < n; i++) for (int j = 0; j < n; j++) out[i * n + j] = length(u[i] - u[j], v[i] - v[j]);
    return out;
  }

  /** Math.hypot guards against lengths that no patch has, and takes ten times as long. */
  public static double length(double u, double v) {
    return Math.sqrt(u * u + v * v);
  }

  /** The farthest corner from the centroid, metres. */
  public double reachM() {
    double r = 0;
    for (int i = 0; i < u.length; i++) r = Math.max(r, length(u[i], v[i]));
    return r;
  }

  /**
   * Mean distance of the patch from the point (pu, pv): over its area, or along its length when it is an edge; metres.
   * Exact: a triangle with its apex at the point gives d^3/6 [sec t tan t + ln(sec t + tan t)] between the angles of its
   * base, d the distance of the base.
   */
  public double meanDistance(double pu, double pv) {
    int n = u.length;
    if (n == 1) return 0;
    if (areaM2 == 0) {
      int far = 0;
      int near = 0;
      for (int i = 1; i < n; i++) {
        if (u[i] * (u[1] - u[0]) + v[i] * (v[1] - v[0]) > u[far] * (u[1] - u[0]) + v[far] * (v[1] - v[0])) far = i;
        if (u[i] * (u[1] - u[0]) + v[i] * (v[1] - v[0]) < u[near] * (u[1] - u[0]) + v[near] * (v[1] - v[0])) near = i;
      }
      double a = length(u[far] - pu, v[far] - pv);
      double b = length(u[near] - pu, v[near] - pv);
      double length = length(u[far] - u[near], v[far] - v[near]);
      return length == 0 ? 0 : (a * a + b * b) / (2 * length);
    }
    double sum = 0;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      double eu = u[j] - u[i];
      double ev = v[j] - v[i];
      double length = length(eu, ev);
      if (length == 0) continue;
      double au = u[i] - pu;
      double av = v[i] - pv;
      double d = (au * ev - av * eu) / length;
      if (d == 0) continue;
      double along0 = (au * eu + av * ev) / length;
      double along1 = along0 + length;
      sum += d * (primitive(d, along1) - primitive(d, along0));
    }
    return Math.abs(sum) / areaM2;
  }

  /**
   * Where pushes at the corners come together: u and v of their centre, and what they can give of twist alone as an arm of
   * friction. Friction at the corners that adds up to no shear gives at most min over all points q of {@code sum n |x - q|}
   * (the dual of its largest moment); tried are the centre and the corners, of which one is close to the least.
   *
   * @param push pushes, from {@code start} on one a corner
   * @param to three figures: u, v and the arm, metres; not a number where nothing pushes
   */
  public void gather(double[] push, int start, double[] to) {
    int n = u.length;
    double total = 0;
    double cu = 0;
    double cv = 0;
    for (int k = 0; k < n; k++) {
      double f = push[start + k];
      total += f;
      cu += f * u[k];
      cv += f * v[k];
    }
    cu /= total;
    cv /= total;
    double least = 0;
    for (int k = 0; k < n; k++) least += push[start + k] * length(u[k] - cu, v[k] - cv);
    for (int q = 0; q < n; q++) {
      double sum = 0;
      for (int k = 0; k < n; k++) sum += push[start + k] * apart[q * n + k];
      least = Math.min(least, sum);
    }
    to[0] = cu;
    to[1] = cv;
    to[2] = least / total;
  }

  /** d^2/6 [sec t tan t + asinh(tan t)] with tan t = along / |d|. */
  private static double primitive(double d, double along) {
    double m = Math.abs(d);
    double tan = along / m;
    double sec = Math.sqrt(1 + tan * tan);
    double asinh = Math.copySign(Math.log(Math.abs(tan) + sec), tan);
    return d * d / 6 * (sec * tan + asinh);
  }
}
