package holdfast.engine.pane;

import java.util.ArrayList;
import java.util.List;

/**
 * A convex area of a pane that carries an evenly spread force.
 *
 * <p>Holds what both plates need: four points with the patch's area, centroid and second moments for its effect from afar,
 * a finer set of points for its effect close by, and the exact integral of the plate's logarithmic core over the patch.
 */
public final class Patch {
  /** Points of a degree 5 rule on a triangle (Radon 1948): weight, then two barycentric coordinates. */
  private static final double[][] TRIANGLE_RULE = triangleRule();

  private final List<Point2> ring;
  private final double areaM2;
  private final Point2 centre;
  private final double radiusM;
  private final double[] middle;
  private final double[] coarse;
  private final double[] medium;
  private final double[] fine;
  private final double sigmaMajorM;
  private final double sigmaMinorM;
  private final double angleRad;

  private Patch(List<Point2> ring) {
    this.ring = ring;
    this.areaM2 = Outline.area(ring);
    this.centre = Outline.centroid(ring);
    this.radiusM = ring.stream().mapToDouble(centre::distanceTo).max().orElseThrow();
    double sxx = 0;
    double syy = 0;
    double sxy = 0;
    for (int i = 0; i < ring.size(); i++) {
      double ux = ring.get(i).x() - centre.x();
      double uy = ring.get(i).y() - centre.y();
      double vx = ring.get((i + 1) % ring.size()).x() - centre.x();
      double vy = ring.get((i + 1) % ring.size()).y() - centre.y();
      double w = (ux * vy - uy * vx) / 12;
      sxx += w * (ux * ux + ux * vx + vx * vx);
      syy += w * (uy * uy + uy * vy + vy * vy);
      sxy += w * (ux * uy + 0.5 * (ux * vy + vx * uy) + vx * vy);
    }
    sxx /= areaM2;
    syy /= areaM2;
    sxy /= areaM2;
    double mean = 0.5 * (sxx + syy);
    double spread = Math.hypot(0.5 * (sxx - syy), sxy);
    this.sigmaMajorM = Math.sqrt(Math.max(0, mean + spread));
    this.sigmaMinorM = Math.sqrt(Math.max(0, mean - spread));
    this.angleRad = 0.5 * Math.atan2(2 * sxy, sxx - syy);
    this.middle = new double[] {centre.x(), centre.y(), 1};
    this.coarse = coarsePoints();
    this.medium = mediumPoints();
    this.fine = finePoints();
  }

  /** The patch with these corners, in any order; empty corners or no area is an error. */
  public static Patch of(List<Point2> corners) {
    List<Point2> ring = Outline.hull(corners);
    if (ring.size() < 3 || !(Outline.area(ring) > 0)) {
      throw new IllegalArgumentException("a patch needs an area, had corners " + corners);
    }
    return new Patch(ring);
  }

  public static Patch disc(double x, double y, double radiusM) {
    return of(Outline.disc(new Point2(x, y), radiusM));
  }

  /** A rectangle with sides along x and y about a centre. */
  public static Patch rectangle(double x, double y, double sideXM, double sideYM) {
    double u = 0.5 * sideXM;
    double v = 0.5 * sideYM;
    return of(List.of(new Point2(x - u, y - v), new Point2(x + u, y - v), new Point2(x + u, y + v), new Point2(x - u, y + v)));
  }

  public List<Point2> ring() {
    return ring;
  }

  public double areaM2() {
    return areaM2;
  }

  public Point2 centre() {
    return centre;
  }

  /** Distance of the farthest corner from the centre, metres. */
  public double radiusM() {
    return radiusM;
  }

  double semiMajorM() {
    return 2 * sigmaMajorM;
  }

  double semiMinorM() {
    return 2 * sigmaMinorM;
  }

  double angleRad() {
    return angleRad;
  }

  /** Points as x, y, weight; the weights add up to one. */
  double[] coarse() {
    return coarse;
  }

  /** Seven points of a degree 5 rule on the ellipse with the patch's area and moments (Stroud 1971, S2 5-1). */
  double[] medium() {
    return medium;
  }

  /** The fewest points that see the patch rightly from {@code distanceM} off its centre. */
  double[] pointsFrom(double distanceM) {
    double share = radiusM / distanceM;
    if (!(share > 0)) return fine;
    return share < Tolerances.TINY_SHARE ? middle : share < Tolerances.SMALL_SHARE ? coarse
        : share < Tolerances.MEDIUM_SHARE ? medium : fine;
  }

  /** The centroid alone, as a point of weight one. */
  double[] middle() {
    return middle;
  }

  /** As {@link #coarse()}, seven points in each triangle between centre and side. */
  double[] fine() {
    return fine;
  }

  /**
   * The patch as a thin-plate solution may use it: where it is narrower than half the pane's thickness, the equivalent
   * radius sqrt(1.6 r^2 + t^2) - 0.675 t takes its place along that axis (Westergaard 1926, as in Roark, Formulas for Stress
   * and Strain, table 11.4; never under 0.325 t).
   */
  public Patch forThickness(double thicknessM) {
    if (2 * sigmaMinorM >= 0.5 * thicknessM) return this;
    double major = equivalentRadiusM(2 * sigmaMajorM, thicknessM);
    double minor = equivalentRadiusM(2 * sigmaMinorM, thicknessM);
    return of(Outline.ellipse(centre, major, minor, angleRad));
  }

  /** Radius that a circle of load on a thick pane acts with in thin-plate theory, metres. */
  public static double equivalentRadiusM(double radiusM, double thicknessM) {
    if (radiusM >= 0.5 * thicknessM) return radiusM;
    return Math.sqrt(1.6 * radiusM * radiusM + thicknessM * thicknessM) - 0.675 * thicknessM;
  }

  /**
   * Means over the patch, seen from (x, y), of ln r, cos 2t and sin 2t (r, t: polar coordinates of the patch's points about
   * that place). The patch is taken apart into triangles from (x, y) to each side, over which all three integrate exactly.
   *
   * @param out receives the three means
   */
  void logMeans(double x, double y, double[] out) {
    double log = 0;
    double cos2 = 0;
    double sin2 = 0;
    int n = ring.size();
    Point2 last = ring.get(n - 1);
    double px = last.x() - x;
    double py = last.y() - y;
    double logP = Math.log(Math.max(px * px + py * py, Tolerances.SAME_POINT_M2));
    for (int i = 0; i < n; i++) {
      Point2 q = ring.get(i);
      double qx = q.x() - x;
      double qy = q.y() - y;
      double logQ = Math.log(Math.max(qx * qx + qy * qy, Tolerances.SAME_POINT_M2));
      double ex = qx - px;
      double ey = qy - py;
      double length = Math.sqrt(ex * ex + ey * ey);
      ex /= length;
      ey /= length;
      // Distance of the side, and where it begins and ends along itself from the foot of that distance.
      double d = px * ey - py * ex;
      double u1 = px * ex + py * ey;
      double u2 = u1 + length;
      double turn = 2 * d * Math.atan2(px * qy - py * qx, px * qx + py * qy);
      log += 0.25 * d * (u2 * logQ - u1 * logP - 3 * length + turn);
      double c = turn - length;
      double s = d * (logQ - logP);
      // Twice the direction of the side's outward normal (ey, -ex).
      double cn = ey * ey - ex * ex;
      double sn = -2 * ex * ey;
      cos2 += 0.5 * d * (cn * c - sn * s);
      sin2 += 0.5 * d * (sn * c + cn * s);
      px = qx;
      py = qy;
      logP = logQ;
    }
    out[0] = log / areaM2;
    out[1] = cos2 / areaM2;
    out[2] = sin2 / areaM2;
  }

  private double[] coarsePoints() {
    double c = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    double major = Math.sqrt(2) * sigmaMajorM;
    double minor = Math.sqrt(2) * sigmaMinorM;
    return new double[] {
      centre.x() + major * c, centre.y() + major * s, 0.25,
      centre.x() - major * c, centre.y() - major * s, 0.25,
      centre.x() - minor * s, centre.y() + minor * c, 0.25,
      centre.x() + minor * s, centre.y() - minor * c, 0.25};
  }

  private double[] mediumPoints() {
    double[] points = new double[21];
    points[0] = centre.x();
    points[1] = centre.y();
    points[2] = 0.25;
    double c = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    double out = Math.sqrt(2.0 / 3);
    for (int i = 0; i < 6; i++) {
      double u = out * semiMajorM() * Math.cos(i * Math.PI / 3);
      double v = out * semiMinorM() * Math.sin(i * Math.PI / 3);
      points[3 * i + 3] = centre.x() + c * u - s * v;
      points[3 * i + 4] = centre.y() + s * u + c * v;
      points[3 * i + 5] = 0.125;
    }
    return points;
  }

  private double[] finePoints() {
    List<double[]> triangles = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      Point2 p = ring.get(i);
      Point2 q = ring.get((i + 1) % ring.size());
      // A long side is cut so that the triangles stay well shaped.
      int parts = (int) Math.min(8, Math.max(1, Math.ceil(1.5 * p.distanceTo(q) / radiusM)));
      for (int k = 0; k < parts; k++) {
        triangles.add(new double[] {
          p.x() + (q.x() - p.x()) * k / parts, p.y() + (q.y() - p.y()) * k / parts,
          p.x() + (q.x() - p.x()) * (k + 1) / parts, p.y() + (q.y() - p.y()) * (k + 1) / parts});
      }
    }
    double[] points = new double[3 * TRIANGLE_RULE.length * triangles.size()];
    int at = 0;
    for (double[] t : triangles) {
      double ux = t[0] - centre.x();
      double uy = t[1] - centre.y();
      double vx = t[2] - centre.x();
      double vy = t[3] - centre.y();
      double share = 0.5 * (ux * vy - uy * vx) / areaM2;
      for (double[] rule : TRIANGLE_RULE) {
        points[at++] = centre.x() + rule[1] * ux + rule[2] * vx;
        points[at++] = centre.y() + rule[1] * uy + rule[2] * vy;
        points[at++] = rule[0] * share;
      }
    }
    return points;
  }

  private static double[][] triangleRule() {
    double root = Math.sqrt(15);
    double[][] rule = new double[7][];
    rule[0] = new double[] {9.0 / 40, 1.0 / 3, 1.0 / 3};
    int at = 1;
    for (int sign = -1; sign <= 1; sign += 2) {
      double weight = (155 + sign * root) / 1200;
      double a = (6 + sign * root) / 21;
      double b = 1 - 2 * a;
      rule[at++] = new double[] {weight, a, a};
      rule[at++] = new double[] {weight, b, a};
      rule[at++] = new double[] {weight, a, b};
    }
    return rule;
  }
}
