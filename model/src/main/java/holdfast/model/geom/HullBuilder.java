package holdfast.model.geom;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Turns points into a {@link Hull}.
 *
 * <p>Points nearer than {@link Tolerances#FLAT} become one; the rest go through {@link QuickHull}; triangles within the
 * same tolerance of a common plane are merged into faces, and corners where fewer than three faces meet are dropped.
 * What comes out is checked: closed, outward, Euler's count, every input point inside. If merging breaks any of this it
 * is tried again with a hundredth of the tolerance, and at last without merging. The answer depends on the points and
 * their order only.
 *
 * <p>Limits: features smaller than the tolerance are lost; a solid thinner than {@link Tolerances#THIN} is degenerate.
 */
public final class HullBuilder {
  private HullBuilder() {}

  /** The convex hull of points in metres, in any order, with duplicates and inner points. */
  public static HullResult build(List<Vec3> input) {
    for (int i = 0; i < input.size(); i++) {
      if (!input.get(i).isFinite()) return new HullResult.Degenerate("point " + (i + 1) + " is not a finite number");
    }
    if (input.size() < 4) return new HullResult.Degenerate(input.size() + " points; a solid needs four");
    Vec3 low = input.get(0);
    Vec3 high = low;
    for (Vec3 p : input) {
      low = new Vec3(Math.min(low.x(), p.x()), Math.min(low.y(), p.y()), Math.min(low.z(), p.z()));
      high = new Vec3(Math.max(high.x(), p.x()), Math.max(high.y(), p.y()), Math.max(high.z(), p.z()));
    }
    Vec3 extent = high.minus(low);
    double size = Math.max(extent.x(), Math.max(extent.y(), extent.z()));
    if (!(size > 1e-9 && size < 1e6)) return new HullResult.Degenerate(String.format(Locale.ROOT, "size %.3g m", size));
    Vec3[] points = apart(input, low, size * Tolerances.FLAT);
    if (points.length < 4) return new HullResult.Degenerate(points.length + " different points; a solid needs four");
    int[] simplex = simplex(points);
    double thin = Tolerances.THIN * size;
    if (simplex.length == 2) return new HullResult.Degenerate("all points lie in one line");
    if (simplex.length == 3 || thickness(points, simplex) < thin) {
      return new HullResult.Degenerate("all points lie in one plane");
    }
    List<QuickHull.Tri> triangles =
        QuickHull.triangles(points, simplex, new Orientation(points, low, size), size * Tolerances.GRAZING);
    for (double share : new double[] {Tolerances.FLAT, Tolerances.FLAT / 100, 0}) {
      Optional<Hull> hull = Merging.merge(points, triangles, share * size).filter(h -> sound(h, input, size));
      if (hull.isPresent()) return new HullResult.Solid(hull.get());
    }
    return new HullResult.Degenerate("too thin to tell its inside from its outside");
  }

  /** The points without those nearer than {@code apart} to one that came before. */
  private static Vec3[] apart(List<Vec3> input, Vec3 low, double apart) {
    record Cell(long x, long y, long z) {}

    Map<Cell, List<Vec3>> grid = new HashMap<>();
    List<Vec3> kept = new ArrayList<>();
    // A cell is far wider than the distance asked for, so that nearly always one look is enough.
    double cell = 64 * apart;
    for (Vec3 p : input) {
      long x0 = (long) Math.floor((p.x() - low.x() - apart) / cell);
      long x1 = (long) Math.floor((p.x() - low.x() + apart) / cell);
      long y0 = (long) Math.floor((p.y() - low.y() - apart) / cell);
      long y1 = (long) Math.floor((p.y() - low.y() + apart) / cell);
      long z0 = (long) Math.floor((p.z() - low.z() - apart) / cell);
      long z1 = (long) Math.floor((p.z() - low.z() + apart) / cell);
      boolean near = false;
      for (long x = x0; x <= x1; x++) {
        for (long y = y0; y <= y1; y++) {
          for (long z = z0; z <= z1; z++) {
            for (Vec3 q : grid.getOrDefault(new Cell(x, y, z), List.of())) near |= q.distanceTo(p) < apart;
          }
        }
      }
      if (near) continue;
      kept.add(p);
      Cell own = new Cell(
          (long) Math.floor((p.x() - low.x()) / cell),
          (long) Math.floor((p.y() - low.y()) / cell),
          (long) Math.floor((p.z() - low.z()) / cell));
      grid.computeIfAbsent(own, c -> new ArrayList<>(1)).add(p);
    }
    return kept.toArray(Vec3[]::new);
  }

  /** Four points far apart that span a solid; fewer when the points span only a plane, a line. */
  private static int[] simplex(Vec3[] p) {
    int[] ends = new int[6];
    for (int i = 1; i < p.length; i++) {
      if (p[i].x() < p[ends[0]].x()) ends[0] = i;
      if (p[i].x() > p[ends[1]].x()) ends[1] = i;
      if (p[i].y() < p[ends[2]].y()) ends[2] = i;
      if (p[i].y() > p[ends[3]].y()) ends[3] = i;
      if (p[i].z() < p[ends[4]].z()) ends[4] = i;
      if (p[i].z() > p[ends[5]].z()) ends[5] = i;
    }
    int a = ends[0];
    int b = ends[1];
    for (int i : ends) {
      for (int j : ends) {
        if (p[i].distanceTo(p[j]) > p[a].distanceTo(p[b])) {
          a = i;
          b = j;
        }
      }
    }
    double length = p[a].distanceTo(p[b]);
    Vec3 along = p[b].minus(p[a]).unit();
    int c = -1;
    double best = Tolerances.THIN * length;
    for (int i = 0; i < p.length; i++) {
      double d = p[i].minus(p[a]).cross(along).norm();
      if (d > best) {
        best = d;
        c = i;
      }
    }
    if (c < 0) return new int[] {a, b};
    Vec3 normal = along.cross(p[c].minus(p[a])).unit();
    int d = -1;
    best = 0;
    for (int i = 0; i < p.length; i++) {
      double h = Math.abs(normal.dot(p[i].minus(p[a])));
      if (h > best) {
        best = h;
        d = i;
      }
    }
    return d < 0 ? new int[] {a, b, c} : new int[] {a, b, c, d};
  }

  /** How far the points reach from the plane of the first three, to one side and the other together. */
  private static double thickness(Vec3[] p, int[] s) {
    Vec3 normal = p[s[1]].minus(p[s[0]]).cross(p[s[2]].minus(p[s[0]])).unit();
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (Vec3 q : p) {
      double h = normal.dot(q);
      least = Math.min(least, h);
      most = Math.max(most, h);
    }
    return most - least;
  }

  /** Above this many tests of a point against a face only corners are tested: scans, not stones. */
  private static final long MOST_TESTS = 20_000_000;

  /** Three numbers of corners and faces go into one long: up to two million of each. */
  private static final int BITS = 21;
  private static final long MASK = (1L << BITS) - 1;

  private static long key(int from, int to) {
    return (long) from << BITS | to;
  }

  /** Closed, outward, with Euler's count, convex across every edge, and all points inside. */
  static boolean sound(Hull hull, List<Vec3> points, double size) {
    int corners = hull.corners().size();
    int edges = 0;
    int[] degree = new int[corners];
    for (Hull.Face f : hull.faces()) {
      if (f.loop().size() < 3 || !f.normal().isFinite()) return false;
      edges += f.loop().size();
      for (int c : f.loop()) degree[c]++;
    }
    if (corners - edges / 2 + hull.faces().size() != 2 || hull.faces().size() > MASK) return false;
    if (Arrays.stream(degree).anyMatch(d -> d < 3)) return false;
    long[] from = new long[edges];
    int[] face = new int[edges];
    int at = 0;
    for (int k = 0; k < hull.faces().size(); k++) {
      List<Integer> loop = hull.faces().get(k).loop();
      for (int i = 0; i < loop.size(); i++) {
        from[at++] = key(loop.get(i), loop.get(i + 1 == loop.size() ? 0 : i + 1)) << BITS | k;
      }
    }
    Arrays.sort(from);
    for (int i = 0; i < edges; i++) {
      face[i] = (int) (from[i] & MASK);
      from[i] >>>= BITS;
      if (i > 0 && from[i] == from[i - 1]) return false;
    }
    double slack = Tolerances.INSIDE * size;
    for (int i = 0; i < edges; i++) {
      int across = Arrays.binarySearch(from, key((int) (from[i] & MASK), (int) (from[i] >>> BITS)));
      if (across < 0) return false;
      if (!below(hull, hull.faces().get(face[across]).loop(), hull.faces().get(face[i]), slack)) return false;
    }
    boolean few = (long) points.size() * hull.faces().size() <= MOST_TESTS;
    for (Hull.Face f : hull.faces()) {
      double nx = f.normal().x();
      double ny = f.normal().y();
      double nz = f.normal().z();
      double most = f.offset() + slack;
      for (int c : f.loop()) {
        if (f.normal().dot(hull.corners().get(c)) < f.offset() - slack) return false;
      }
      if (!few) continue;
      for (Vec3 p : points) {
        if (!(nx * p.x() + ny * p.y() + nz * p.z() <= most)) return false;
      }
    }
    return Polyhedra.volume(hull) > 0;
  }

  private static boolean below(Hull hull, List<Integer> loop, Hull.Face face, double slack) {
    for (int c : loop) if (!(face.normal().dot(hull.corners().get(c)) <= face.offset() + slack)) return false;
    return true;
  }

  /** Triangles into faces. */
  private static final class Merging {
    /** Empty when the patches are not simple polygons that meet in proper corners. */
    static Optional<Hull> merge(Vec3[] points, List<QuickHull.Tri> triangles, double flat) {
      List<QuickHull.Tri> bySize = new ArrayList<>(triangles);
      // The largest triangle knows its plane best. The sort is stable, so equal ones keep their order.
      bySize.sort((s, t) -> Double.compare(t.area, s.area));
      for (QuickHull.Tri t : bySize) t.patch = -1;
      List<List<QuickHull.Tri>> patches = new ArrayList<>();
      for (QuickHull.Tri seed : bySize) {
        if (seed.patch >= 0) continue;
        int number = patches.size();
        List<QuickHull.Tri> patch = new ArrayList<>();
        seed.patch = number;
        patch.add(seed);
        for (int i = 0; i < patch.size() && flat > 0; i++) {
          for (QuickHull.Tri n : patch.get(i).next) {
            if (n.patch >= 0 || !within(points, n, seed, flat)) continue;
            n.patch = number;
            patch.add(n);
          }
        }
        patches.add(patch);
      }
      int[] meeting = new int[points.length];
      int[] last = new int[points.length];
      Arrays.fill(last, -1);
      for (int k = 0; k < patches.size(); k++) {
        for (QuickHull.Tri t : patches.get(k)) {
          for (int v : t.v) {
            if (last[v] != k) {
              last[v] = k;
              meeting[v]++;
            }
          }
        }
      }
      int[] number = new int[points.length];
      Arrays.fill(number, -1);
      List<Vec3> corners = new ArrayList<>();
      for (int v = 0; v < points.length; v++) {
        if (meeting[v] < 3) continue;
        number[v] = corners.size();
        corners.add(points[v]);
      }
      List<Hull.Face> faces = new ArrayList<>();
      for (int k = 0; k < patches.size(); k++) {
        Optional<List<Integer>> loop = rim(patches.get(k), number);
        if (loop.isEmpty()) return Optional.empty();
        faces.add(face(corners, loop.get()));
      }
      return Optional.of(new Hull(corners, faces));
    }

    private static boolean within(Vec3[] points, QuickHull.Tri t, QuickHull.Tri plane, double flat) {
      for (int v : t.v) if (Math.abs(plane.above(points[v])) > flat) return false;
      return true;
    }

    /** The patch's rim as one loop of corner numbers, smallest first. */
    private static Optional<List<Integer>> rim(List<QuickHull.Tri> patch, int[] number) {
      Map<Integer, Integer> after = new HashMap<>();
      int start = -1;
      for (QuickHull.Tri t : patch) {
        for (int i = 0; i < 3; i++) {
          if (t.next[i].patch == t.patch) continue;
          if (after.put(t.v[i], t.v[(i + 1) % 3]) != null) return Optional.empty();
          if (number[t.v[i]] >= 0 && (start < 0 || t.v[i] < start)) start = t.v[i];
        }
      }
      if (start < 0) return Optional.empty();
      List<Integer> loop = new ArrayList<>();
      int at = start;
      int steps = 0;
      do {
        if (number[at] >= 0) loop.add(number[at]);
        at = after.get(at);
        steps++;
      } while (at != start);
      return steps == after.size() && loop.size() >= 3 ? Optional.of(loop) : Optional.empty();
    }

    /** Newell's plane of a loop: the normal is the area vector, the offset the mean over the corners. */
    private static Hull.Face face(List<Vec3> corners, List<Integer> loop) {
      Vec3 origin = corners.get(loop.get(0));
      Vec3 area = Vec3.ZERO;
      for (int i = 1; i + 1 < loop.size(); i++) {
        Vec3 a = corners.get(loop.get(i)).minus(origin);
        Vec3 b = corners.get(loop.get(i + 1)).minus(origin);
        area = area.plus(a.cross(b));
      }
      Vec3 normal = area.unit();
      double sum = 0;
      for (int c : loop) sum += normal.dot(corners.get(c));
      return new Hull.Face(loop, normal, sum / loop.size());
    }
  }
}
