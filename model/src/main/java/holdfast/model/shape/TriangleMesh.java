package holdfast.model.shape;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A surface of triangles, as a scanner gives it.
 *
 * @param points corners, in the units of the file
 * @param triangles three corner numbers each, counter-clockwise from outside
 */
public record TriangleMesh(List<Vec3> points, List<Triangle> triangles) {
  /** Three corner numbers. */
  public record Triangle(int a, int b, int c) {}

  public TriangleMesh {
    points = List.copyOf(points);
    triangles = List.copyOf(triangles);
    for (Triangle t : triangles) {
      int n = points.size();
      if (t.a < 0 || t.b < 0 || t.c < 0 || t.a >= n || t.b >= n || t.c >= n) {
        throw new IllegalArgumentException("triangle " + t + " names a corner that is not there; there are " + n);
      }
    }
  }

  /** The same with equal corners made one and triangles without area left out: STL repeats each corner. */
  public TriangleMesh welded() {
    Map<Vec3, Integer> number = new LinkedHashMap<>();
    int[] to = new int[points.size()];
    for (int i = 0; i < to.length; i++) {
      Vec3 p = points.get(i);
      // Adding zero turns -0.0 into 0.0, which record equality tells apart.
      Vec3 key = new Vec3(p.x() + 0.0, p.y() + 0.0, p.z() + 0.0);
      Integer known = number.putIfAbsent(key, number.size());
      to[i] = known == null ? number.size() - 1 : known;
    }
    List<Triangle> kept = new ArrayList<>();
    for (Triangle t : triangles) {
      Triangle w = new Triangle(to[t.a], to[t.b], to[t.c]);
      if (w.a != w.b && w.b != w.c && w.c != w.a) kept.add(w);
    }
    return new TriangleMesh(new ArrayList<>(number.keySet()), kept);
  }

  public TriangleMesh scaled(double s) {
    return new TriangleMesh(points.stream().map(p -> p.times(s)).toList(), triangles);
  }

  /** Signed volume: below zero when the surface is inside out. */
  public double volume() {
    if (points.isEmpty()) return 0;
    Vec3 o = points.get(0);
    double six = 0;
    for (Triangle t : triangles) {
      Vec3 a = points.get(t.a).minus(o);
      six += a.dot(points.get(t.b).minus(o).cross(points.get(t.c).minus(o)));
    }
    return six / 6;
  }

  /** Why this surface bounds no solid, if it does not: a corner that is no number, an edge without its other side. */
  public Optional<String> flaw() {
    for (int i = 0; i < points.size(); i++) {
      if (!points.get(i).isFinite()) return Optional.of("corner " + (i + 1) + " of the mesh is not a finite number");
    }
    if (triangles.size() < 4) return Optional.of("too few triangles in the mesh, " + triangles.size() + "; a solid needs four");
    Map<Long, Integer> edges = new HashMap<>();
    int twice = 0;
    for (Triangle t : triangles) {
      int[] v = {t.a, t.b, t.c};
      for (int i = 0; i < 3; i++) {
        if (edges.merge(key(v[i], v[(i + 1) % 3]), 1, Integer::sum) > 1) twice++;
      }
    }
    if (twice > 0) {
      return Optional.of(String.format(Locale.ROOT,
          "the mesh is not one clean surface: %d edges run the same way twice (triangles face different ways or overlap)",
          twice));
    }
    long open = 0;
    for (long e : edges.keySet()) if (!edges.containsKey(e << 32 | e >>> 32)) open++;
    if (open > 0) {
      return Optional.of(String.format(Locale.ROOT,
          "the mesh is open: %d edges have a triangle on one side only; close its holes first", open));
    }
    return Optional.empty();
  }

  private static long key(int a, int b) {
    return (long) a << 32 | b;
  }
}
