package holdfast.model.geom;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The convex hull of points as triangles: Quickhull with exact sides.
 *
 * <p>Each triangle keeps the points outside it; the farthest of them is joined to the rim of what it sees. "Outside" and
 * "sees" are answered by {@link Orientation} without error, so the rim is one closed loop and no new triangle is ever
 * flat. Distances in doubles only choose which point comes next and which ones merely graze.
 *
 * @see <a href="https://doi.org/10.1145/235815.235821">Barber, Dobkin and Huhdanpaa 1996, The Quickhull algorithm for
 *     convex hulls, ACM Trans. Math. Softw. 22:469</a>
 */
final class QuickHull {
  /** One triangle, counter-clockwise from outside; {@code next[i]} is the neighbour across the edge v[i], v[i+1]. */
  static final class Tri {
    final int[] v;
    final Tri[] next = new Tri[3];
    final Vec3 normal;
    final double offset;
    final double area;
    private int[] outside = new int[0];
    private int outsideCount;
    private int farthest = -1;
    private double farthestDistance = Double.NEGATIVE_INFINITY;
    private boolean dead;
    private int seenBy = -1;
    /** The face that it is merged into; written by {@link HullBuilder}. */
    int patch = -1;

    Tri(Vec3[] p, int a, int b, int c) {
      v = new int[] {a, b, c};
      Vec3 n = p[b].minus(p[a]).cross(p[c].minus(p[a]));
      area = n.norm() / 2;
      normal = n.unit();
      // The mean over the three corners: for a needle one corner alone would carry all the rounding.
      offset = (normal.dot(p[a]) + normal.dot(p[b]) + normal.dot(p[c])) / 3;
    }

    double above(Vec3 q) {
      return normal.dot(q) - offset;
    }

    int edgeFrom(int vertex) {
      return v[0] == vertex ? 0 : v[1] == vertex ? 1 : 2;
    }

    private void take(int point, double distance) {
      if (outsideCount == outside.length) outside = Arrays.copyOf(outside, Math.max(8, 2 * outsideCount));
      outside[outsideCount++] = point;
      if (distance > farthestDistance) {
        farthestDistance = distance;
        farthest = point;
      }
    }
  }

  private final Vec3[] points;
  private final Orientation orientation;
  private final double grazing;
  private final List<Tri> all = new ArrayList<>();

  private QuickHull(Vec3[] points, Orientation orientation, double grazing) {
    this.points = points;
    this.orientation = orientation;
    this.grazing = grazing;
  }

  /** The hull's triangles, or an empty list when the four first points already lie in one plane. */
  static List<Tri> triangles(Vec3[] points, int[] simplex, Orientation orientation, double grazing) {
    QuickHull q = new QuickHull(points, orientation, grazing);
    if (!q.start(simplex)) return List.of();
    q.grow();
    List<Tri> live = new ArrayList<>();
    for (Tri t : q.all) if (!t.dead) live.add(t);
    return live;
  }

  private boolean start(int[] s) {
    int side = orientation.side(s[0], s[1], s[2], s[3]);
    if (side == 0) return false;
    // The fourth point must lie below the first triangle.
    int a = s[0];
    int b = side < 0 ? s[1] : s[2];
    int c = side < 0 ? s[2] : s[1];
    int d = s[3];
    Tri[] t = {add(a, b, c), add(a, d, b), add(b, d, c), add(c, d, a)};
    for (Tri p : t) {
      for (Tri q : t) {
        if (p != q) link(p, q);
      }
    }
    for (int i = 0; i < points.length; i++) {
      if (i != a && i != b && i != c && i != d) assign(i, Arrays.asList(t));
    }
    return true;
  }

  /** Joins two triangles across the edge they share, if any. */
  private static void link(Tri p, Tri q) {
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        if (p.v[i] == q.v[(j + 1) % 3] && p.v[(i + 1) % 3] == q.v[j]) {
          p.next[i] = q;
          q.next[j] = p;
        }
      }
    }
  }

  private Tri add(int a, int b, int c) {
    Tri t = new Tri(points, a, b, c);
    all.add(t);
    return t;
  }

  private boolean sees(int point, Tri t) {
    return orientation.side(t.v[0], t.v[1], t.v[2], point) > 0;
  }

  /** Gives a point to the candidate that it stands out of farthest, or to none when it is inside or merely grazes. */
  private void assign(int point, List<Tri> candidates) {
    Tri best = null;
    double bestDistance = grazing;
    for (Tri t : candidates) {
      double d = t.above(points[point]);
      if (d > bestDistance && sees(point, t)) {
        best = t;
        bestDistance = d;
      }
    }
    if (best != null) best.take(point, bestDistance);
  }

  private void grow() {
    // New triangles go to the end of the list, so one pass over the growing list meets them all.
    for (int i = 0; i < all.size(); i++) {
      Tri t = all.get(i);
      if (!t.dead && t.outsideCount > 0) raise(t);
    }
  }

  private void raise(Tri from) {
    int apex = from.farthest;
    List<Tri> seen = new ArrayList<>();
    ArrayDeque<Tri> open = new ArrayDeque<>();
    from.seenBy = apex;
    open.add(from);
    while (!open.isEmpty()) {
      Tri t = open.remove();
      seen.add(t);
      t.dead = true;
      for (Tri n : t.next) {
        if (n.seenBy != apex && sees(apex, n)) {
          n.seenBy = apex;
          open.add(n);
        }
      }
    }
    // The rim: walk from one edge of it round the seen region until it closes.
    Tri at = null;
    int edge = -1;
    for (Tri t : seen) {
      for (int i = 0; i < 3 && at == null; i++) {
        if (!t.next[i].dead) {
          at = t;
          edge = i;
        }
      }
      if (at != null) break;
    }
    List<Tri> fan = new ArrayList<>();
    Tri firstAt = at;
    int firstEdge = edge;
    do {
      int a = at.v[edge];
      int b = at.v[(edge + 1) % 3];
      Tri beyond = at.next[edge];
      Tri made = add(a, b, apex);
      made.next[0] = beyond;
      beyond.next[beyond.edgeFrom(b)] = made;
      fan.add(made);
      // Turn about b through the seen triangles to the next edge of the rim.
      edge = (edge + 1) % 3;
      while (at.next[edge].dead) {
        at = at.next[edge];
        edge = at.edgeFrom(b);
      }
    } while (at != firstAt || edge != firstEdge);
    for (int i = 0; i < fan.size(); i++) {
      Tri t = fan.get(i);
      Tri after = fan.get((i + 1) % fan.size());
      t.next[1] = after;
      after.next[2] = t;
    }
    for (Tri t : seen) {
      for (int k = 0; k < t.outsideCount; k++) {
        if (t.outside[k] != apex) assign(t.outside[k], fan);
      }
      t.outside = null;
      t.outsideCount = 0;
    }
  }
}
