package holdfast.engine.pane;

import holdfast.engine.contact.Planar;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** Plain geometry of convex outlines in plan, counter-clockwise. */
final class Outline {
  private static final int DISC_CORNERS = 16;
  private static final int GROWN_CORNERS = 8;

  private Outline() {}

  /** Convex hull, counter-clockwise; one or two points come back as they are. */
  static List<Point2> hull(List<Point2> points) {
    double[] flat = points.stream().flatMapToDouble(p -> DoubleStream.of(p.x(), p.y())).toArray();
    double[] hull = Planar.hull(flat, 0);
    List<Point2> ring = new ArrayList<>();
    for (int i = 0; i < hull.length; i += 2) ring.add(new Point2(hull[i], hull[i + 1]));
    return List.copyOf(ring);
  }

  private static double turn(Point2 a, Point2 b, Point2 c) {
    return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
  }

  static double area(List<Point2> ring) {
    // About a corner, so that a small ring far from the origin keeps its digits.
    Point2 o = ring.get(0);
    double twice = 0;
    for (int i = 1; i + 1 < ring.size(); i++) {
      Point2 p = ring.get(i);
      Point2 q = ring.get(i + 1);
      twice += (p.x() - o.x()) * (q.y() - o.y()) - (p.y() - o.y()) * (q.x() - o.x());
    }
    return 0.5 * twice;
  }

  /** Centroid of the area; of the corners where there is no area. */
  static Point2 centroid(List<Point2> ring) {
    Point2 o = ring.get(0);
    double twice = 0;
    double sx = 0;
    double sy = 0;
    double extent = 0;
    for (int i = 1; i + 1 < ring.size(); i++) {
      double ux = ring.get(i).x() - o.x();
      double uy = ring.get(i).y() - o.y();
      double vx = ring.get(i + 1).x() - o.x();
      double vy = ring.get(i + 1).y() - o.y();
      double w = ux * vy - uy * vx;
      twice += w;
      sx += w * (ux + vx) / 3;
      sy += w * (uy + vy) / 3;
      extent = Math.max(extent, Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy)));
    }
    if (Math.abs(twice) > 1e-12 * extent * extent) return new Point2(o.x() + sx / twice, o.y() + sy / twice);
    double mx = ring.stream().mapToDouble(Point2::x).average().orElseThrow();
    double my = ring.stream().mapToDouble(Point2::y).average().orElseThrow();
    return new Point2(mx, my);
  }

  static List<Point2> scaled(List<Point2> ring, Point2 about, double factor) {
    return ring.stream()
        .map(p -> new Point2(about.x() + factor * (p.x() - about.x()), about.y() + factor * (p.y() - about.y())))
        .toList();
  }

  static List<Point2> moved(List<Point2> ring, double dx, double dy) {
    return ring.stream().map(p -> new Point2(p.x() + dx, p.y() + dy)).toList();
  }

  /** Least distance from an inner point to the sides; zero without area. */
  static double inradius(List<Point2> ring, Point2 inner) {
    if (ring.size() < 3) return 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ring.size(); i++) {
      Point2 p = ring.get(i);
      Point2 q = ring.get((i + 1) % ring.size());
      least = Math.min(least, turn(p, q, inner) / p.distanceTo(q));
    }
    return Math.max(0, least);
  }

  /** An ellipse as a polygon of the same area. */
  static List<Point2> ellipse(Point2 centre, double semiMajorM, double semiMinorM, double angleRad) {
    return ellipse(centre, semiMajorM, semiMinorM, angleRad, DISC_CORNERS);
  }

  private static List<Point2> ellipse(Point2 centre, double semiMajorM, double semiMinorM, double angleRad, int corners) {
    double step = 2 * Math.PI / corners;
    double grow = Math.sqrt(step / Math.sin(step));
    double c = Math.cos(angleRad);
    double s = Math.sin(angleRad);
    List<Point2> ring = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      double u = grow * semiMajorM * Math.cos(i * step);
      double v = grow * semiMinorM * Math.sin(i * step);
      ring.add(new Point2(centre.x() + c * u - s * v, centre.y() + s * u + c * v));
    }
    return List.copyOf(ring);
  }

  static List<Point2> disc(Point2 centre, double radiusM) {
    return ellipse(centre, radiusM, radiusM, 0);
  }

  /** Everything within about {@code byM} of the outline, by octagons of the right area round its corners. */
  static List<Point2> grown(List<Point2> ring, double byM) {
    if (!(byM > 0)) return ring;
    List<Point2> all = new ArrayList<>();
    for (Point2 p : ring) all.addAll(ellipse(p, byM, byM, 0, GROWN_CORNERS));
    return hull(all);
  }

  /** The part inside the rectangle from (x0, y0) to (x1, y1), by cutting with one side after the other. */
  static List<Point2> clipped(List<Point2> ring, double x0, double y0, double x1, double y1) {
    return cut(cut(cut(cut(ring, 1, 0, -x0), -1, 0, x1), 0, 1, -y0), 0, -1, y1);
  }

  private static List<Point2> cut(List<Point2> ring, double nx, double ny, double offset) {
    List<Point2> kept = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      Point2 p = ring.get(i);
      Point2 q = ring.get((i + 1) % ring.size());
      double dp = nx * p.x() + ny * p.y() + offset;
      double dq = nx * q.x() + ny * q.y() + offset;
      if (dp >= 0) kept.add(p);
      if ((dp > 0 && dq < 0) || (dp < 0 && dq > 0)) {
        double s = dp / (dp - dq);
        kept.add(new Point2(p.x() + s * (q.x() - p.x()), p.y() + s * (q.y() - p.y())));
      }
    }
    return kept;
  }
}
