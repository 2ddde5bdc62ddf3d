package holdfast.engine.motion;

import holdfast.engine.contact.Planar;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * A heap cut by a vertical plane. Places in the plane are {@code (along, up)}, metres, from a foot point on z = 0.
 *
 * @param foot where {@code along} is zero, world
 * @param toward unit direction of {@code along}, horizontal
 * @param rocks the rocks that the plane cuts
 * @param fixed the fixed things that it cuts
 */
record SectionCut(Vec3 foot, Vec3 toward, List<Slice> rocks, List<FixedSlice> fixed) {
  /** Square metres: a smaller cut is a sliver and left out. */
  private static final double SLIVER_M2 = 1e-7;

  /** Lines per slice in the count of a union's area. */
  private static final int LINES = 2000;

  /** A point of the plane. */
  record Point(double along, double up) {
    Point minus(Point o) {
      return new Point(along - o.along, up - o.up);
    }

    double cross(Point o) {
      return along * o.up - up * o.along;
    }
  }

  /**
   * A rock's cut.
   *
   * @param body its number in the job
   * @param polygons cuts of its lobes, counter-clockwise
   * @param areaM2 area of their union
   * @param centre centroid of the union
   * @param polarM4 polar second moment of the union about its centroid
   * @param depthM volume over area: how deep a prism of this cut would be
   * @param extentM the rock's extent across the plane
   * @param offM distance of its centre of mass from the plane
   */
  record Slice(
      int body, List<List<Point>> polygons, double areaM2, Point centre, double polarM4,
      double depthM, double extentM, double offM) {}

  /** The cut of something fixed. */
  record FixedSlice(String name, Surface surface, List<List<Point>> polygons) {}

  static SectionCut of(PlayJob job, Vec3 through, Vec3 toward) {
    Vec3 across = Vec3.Z.cross(toward).unit();
    Vec3 foot = new Vec3(through.x(), through.y(), 0);
    List<Slice> rocks = new ArrayList<>();
    for (int i = 0; i < job.bodies().size(); i++) {
      MotionBody b = job.bodies().get(i).body();
      List<Hull> lobes = b.solid(false).lobes();
      List<List<Point>> polygons = cut(lobes, foot, toward, across);
      if (polygons.isEmpty()) continue;
      double extent = reach(lobes, across) + reach(lobes, across.negated());
      double volume = Unions.massProperties(b.lobes()).orElseThrow().volumeM3();
      rocks.add(slice(i, polygons, volume, extent, b.centreInWorld().minus(foot).dot(across)));
    }
    List<FixedSlice> fixed = new ArrayList<>();
    for (Solid s : job.fixed()) {
      List<List<Point>> polygons = cut(s.lobes(), foot, toward, across);
      if (!polygons.isEmpty()) fixed.add(new FixedSlice(s.name(), s.surface(), polygons));
    }
    return new SectionCut(foot, toward, rocks, fixed);
  }

  Optional<Slice> slice(int body) {
    return rocks.stream().filter(s -> s.body() == body).findFirst();
  }

  private static double reach(List<Hull> lobes, Vec3 direction) {
    return lobes.stream().mapToDouble(h -> h.reach(direction)).max().orElse(0);
  }

  private static List<List<Point>> cut(List<Hull> lobes, Vec3 foot, Vec3 toward, Vec3 across) {
    List<List<Point>> polygons = new ArrayList<>();
    for (Hull h : lobes) {
      List<Point> p = cut(PlacedLobe.of(h, PlacedLobe.Topology.of(h), Pose.IDENTITY), foot, toward, across);
      if (p.size() >= 3 && area(p) > SLIVER_M2) polygons.add(p);
    }
    return polygons;
  }

  private static List<Point> cut(PlacedLobe lobe, Vec3 foot, Vec3 toward, Vec3 across) {
    List<Point> points = new ArrayList<>();
    for (int[] e : lobe.topology.edges) {
      Vec3 p = lobe.corners[e[0]];
      Vec3 q = lobe.corners[e[1]];
      double dp = p.minus(foot).dot(across);
      double dq = q.minus(foot).dot(across);
      if (dp == 0 && dq == 0) {
        points.add(point(p, foot, toward));
        points.add(point(q, foot, toward));
      } else if (dp <= 0 && dq >= 0 || dp >= 0 && dq <= 0) {
        points.add(point(p.plusTimes(dp / (dp - dq), q.minus(p)), foot, toward));
      }
    }
    return convex(points);
  }

  private static Point point(Vec3 p, Vec3 foot, Vec3 toward) {
    return new Point(p.minus(foot).dot(toward), p.z());
  }

  /** Convex hull, counter-clockwise; points nearer than a micrometre are one. */
  private static List<Point> convex(List<Point> points) {
    if (points.isEmpty()) return points;
    double[] flat = points.stream().flatMapToDouble(p -> DoubleStream.of(p.along, p.up)).toArray();
    double[] hull = Planar.hull(flat, 1e-6);
    List<Point> out = new ArrayList<>();
    for (int i = 0; i < hull.length; i += 2) out.add(new Point(hull[i], hull[i + 1]));
    return out;
  }

  private static double area(List<Point> p) {
    double sum = 0;
    for (int i = 0; i < p.size(); i++) sum += p.get(i).cross(p.get((i + 1) % p.size()));
    return sum / 2;
  }

  /**
   * Area, centroid and polar moment of a union of convex polygons: exact for one; for several, counted line by line with
   * overlaps once (error about 1 / {@link #LINES}).
   */
  private static Slice slice(int body, List<List<Point>> polygons, double volume, double extent, double off) {
    double a = 0;
    double ax = 0;
    double ay = 0;
    double axx = 0;
    double ayy = 0;
    if (polygons.size() == 1) {
      List<Point> p = polygons.get(0);
      Point o = p.get(0);
      for (int i = 1; i + 1 < p.size(); i++) {
        Point u = p.get(i).minus(o);
        Point v = p.get(i + 1).minus(o);
        double t = u.cross(v) / 2;
        a += t;
        ax += t * (u.along + v.along) / 3;
        ay += t * (u.up + v.up) / 3;
        axx += t * (u.along * u.along + u.along * v.along + v.along * v.along) / 6;
        ayy += t * (u.up * u.up + u.up * v.up + v.up * v.up) / 6;
      }
      return slice(body, polygons, o, new double[] {a, ax, ay, axx, ayy}, volume, extent, off);
    }
    double lo = polygons.stream().flatMap(List::stream).mapToDouble(Point::up).min().orElse(0);
    double hi = polygons.stream().flatMap(List::stream).mapToDouble(Point::up).max().orElse(0);
    double dz = (hi - lo) / LINES;
    for (int k = 0; k < LINES; k++) {
      double z = lo + (k + 0.5) * dz;
      List<double[]> spans = new ArrayList<>();
      for (List<Point> p : polygons) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < p.size(); i++) {
          Point u = p.get(i);
          Point v = p.get((i + 1) % p.size());
          if (u.up <= z == v.up <= z) continue;
          double x = u.along + (z - u.up) / (v.up - u.up) * (v.along - u.along);
          from = Math.min(from, x);
          to = Math.max(to, x);
        }
        if (to > from) spans.add(new double[] {from, to});
      }
      spans.sort((s, t) -> Double.compare(s[0], t[0]));
      double done = Double.NEGATIVE_INFINITY;
      for (double[] s : spans) {
        double from = Math.max(s[0], done);
        if (s[1] <= from) continue;
        double w = s[1] - from;
        a += w * dz;
        ax += dz * (s[1] * s[1] - from * from) / 2;
        ay += w * dz * z;
        axx += dz * (s[1] * s[1] * s[1] - from * from * from) / 3;
        ayy += w * dz * z * z;
        done = s[1];
      }
    }
    return slice(body, polygons, new Point(0, 0), new double[] {a, ax, ay, axx, ayy}, volume, extent, off);
  }

  private static Slice slice(
      int body, List<List<Point>> polygons, Point o, double[] m, double volume, double extent, double off) {
    double cx = m[1] / m[0];
    double cy = m[2] / m[0];
    double polar = m[3] + m[4] - m[0] * (cx * cx + cy * cy);
    return new Slice(body, polygons, m[0], new Point(o.along + cx, o.up + cy), polar, volume / m[0], extent, off);
  }
}
