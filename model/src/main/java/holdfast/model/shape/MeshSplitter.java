package holdfast.model.shape;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Tolerances;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * Divides a closed surface into a few convex lobes that cover it.
 *
 * <p>The piece whose hull holds the most that is not stone is cut in two by a plane through the hollow that lies deepest
 * under its hull; of thirteen fixed directions the plane that leaves the least hull volume wins. Cutting stops when stone
 * fills nine tenths of the hull, when a cut gains nothing, or at {@link #MOST_LOBES}. Cut pieces stay closed: the rim of
 * a cut is joined to one point of its plane, and since such a fan is counted with its sign, neither hollows nor
 * several rims matter.
 *
 * <p>Limits: lobes are hulls, so bays narrower than the pieces are filled; fine detail is thinned to
 * {@link #DIRECTIONS} corners a lobe, which shaves a few per cent of the volume.
 */
final class MeshSplitter {
  /** Share of a hull that must be stone before it is taken for a lobe. */
  static final double SOLID = 0.9;
  static final int MOST_LOBES = 8;
  /** Corners a lobe keeps at most; more only slows down every later step. */
  private static final int DIRECTIONS = 90;

  private static final List<Vec3> CUTS = cuts();

  /** A signed triangle of a piece's surface. */
  private record Tri(Vec3 a, Vec3 b, Vec3 c) {}

  private record Piece(List<Tri> surface, double volume, Hull hull, double hullVolume) {
    double waste() {
      return hullVolume - volume;
    }
  }

  private record Cut(Piece one, Piece other) {
    double hullVolume() {
      return one.hullVolume + other.hullVolume;
    }
  }

  private MeshSplitter() {}

  /** Lobes of a mesh without flaws, in its units; empty when it bounds no solid. */
  static List<Hull> lobes(TriangleMesh mesh) {
    boolean insideOut = mesh.volume() < 0;
    List<Tri> surface = new ArrayList<>();
    for (TriangleMesh.Triangle t : mesh.triangles()) {
      Vec3 a = mesh.points().get(t.a());
      Vec3 b = mesh.points().get(t.b());
      Vec3 c = mesh.points().get(t.c());
      surface.add(insideOut ? new Tri(a, c, b) : new Tri(a, b, c));
    }
    Optional<Piece> whole = piece(surface);
    if (whole.isEmpty()) return List.of();
    List<Piece> done = new ArrayList<>();
    List<Piece> open = new ArrayList<>(List.of(whole.get()));
    while (!open.isEmpty()) {
      Piece p = open.stream().max(Comparator.comparingDouble(Piece::waste)).orElseThrow();
      open.remove(p);
      Optional<Cut> cut = p.volume >= SOLID * p.hullVolume || done.size() + open.size() + 2 > MOST_LOBES
          ? Optional.empty() : bestCut(p);
      if (cut.isEmpty()) {
        done.add(p);
      } else {
        open.add(cut.get().one);
        open.add(cut.get().other);
      }
    }
    return done.stream().map(p -> thinned(p.hull)).toList();
  }

  private static Optional<Piece> piece(List<Tri> surface) {
    List<Vec3> points = new ArrayList<>(3 * surface.size());
    for (Tri t : surface) {
      points.add(t.a);
      points.add(t.b);
      points.add(t.c);
    }
    double volume = volume(surface);
    return HullBuilder.build(points).match(
        h -> Optional.of(new Piece(surface, volume, h, Polyhedra.volume(h))), why -> Optional.empty());
  }

  private static double volume(List<Tri> surface) {
    if (surface.isEmpty()) return 0;
    Vec3 o = surface.get(0).a;
    double six = 0;
    for (Tri t : surface) six += t.a.minus(o).dot(t.b.minus(o).cross(t.c.minus(o)));
    return six / 6;
  }

  private static Optional<Cut> bestCut(Piece p) {
    Vec3 deepest = deepest(p);
    double film = Tolerances.THIN * Math.cbrt(p.hullVolume);
    Cut best = null;
    for (Vec3 n : CUTS) {
      double d = n.dot(deepest);
      Optional<Piece> one = piece(half(p.surface, n, d, film));
      Optional<Piece> other = piece(half(p.surface, n.negated(), -d, film));
      if (one.isEmpty() || other.isEmpty()) continue;
      Cut cut = new Cut(one.get(), other.get());
      if (best == null || cut.hullVolume() < best.hullVolume()) best = cut;
    }
    return best != null && best.hullVolume() < 0.995 * p.hullVolume ? Optional.of(best) : Optional.empty();
  }

  /**
   * The middle of that hollow edge (its two triangles face each other) which lies farthest beneath the hull; the deepest
   * corner when there is no such edge.
   */
  private static Vec3 deepest(Piece p) {
    Map<Edge, List<Tri>> sides = new LinkedHashMap<>();
    for (Tri t : p.surface) {
      sides.computeIfAbsent(Edge.of(t.a, t.b), e -> new ArrayList<>(2)).add(t);
      sides.computeIfAbsent(Edge.of(t.b, t.c), e -> new ArrayList<>(2)).add(t);
      sides.computeIfAbsent(Edge.of(t.c, t.a), e -> new ArrayList<>(2)).add(t);
    }
    double slight = Tolerances.THIN * Math.cbrt(p.hullVolume);
    Vec3 best = null;
    double most = slight;
    for (Map.Entry<Edge, List<Tri>> e : sides.entrySet()) {
      if (e.getValue().size() != 2 || !hollow(e.getValue().get(0), e.getValue().get(1), slight)) continue;
      Vec3 middle = e.getKey().a.plus(e.getKey().b).times(0.5);
      double depth = depth(p.hull, middle);
      if (depth > most) {
        most = depth;
        best = middle;
      }
    }
    if (best != null) return best;
    return p.surface.stream().map(Tri::a).max(Comparator.comparingDouble(v -> depth(p.hull, v))).orElseThrow();
  }

  private static boolean hollow(Tri t, Tri u, double slight) {
    Vec3 n = t.b.minus(t.a).cross(t.c.minus(t.a)).unit();
    return n.dot(u.a.minus(t.a)) > slight || n.dot(u.b.minus(t.a)) > slight || n.dot(u.c.minus(t.a)) > slight;
  }

  private static double depth(Hull hull, Vec3 p) {
    double depth = Double.POSITIVE_INFINITY;
    for (Hull.Face f : hull.faces()) depth = Math.min(depth, f.offset() - f.normal().dot(p));
    return depth;
  }

  /** An edge without direction, its lesser end first. */
  private record Edge(Vec3 a, Vec3 b) {
    static Edge of(Vec3 p, Vec3 q) {
      return BY_PLACE.compare(p, q) < 0 ? new Edge(p, q) : new Edge(q, p);
    }
  }

  private static final Comparator<Vec3> BY_PLACE =
      Comparator.comparingDouble(Vec3::x).thenComparingDouble(Vec3::y).thenComparingDouble(Vec3::z);

  /**
   * The part of a closed surface with {@code n . p <= d}, closed again by fans in the plane. Triangles that reach less
   * than {@code film} below the plane are left out: they bound nothing on this side.
   */
  private static List<Tri> half(List<Tri> surface, Vec3 n, double d, double film) {
    List<Tri> kept = new ArrayList<>();
    for (Tri t : surface) {
      Vec3[] v = {t.a, t.b, t.c};
      double[] h = new double[3];
      for (int i = 0; i < 3; i++) {
        h[i] = n.dot(v[i]) - d;
        if (Math.abs(h[i]) < film) h[i] = 0;
      }
      if (h[0] >= 0 && h[1] >= 0 && h[2] >= 0) continue;
      List<Vec3> loop = new ArrayList<>(4);
      for (int i = 0; i < 3; i++) {
        int j = (i + 1) % 3;
        if (h[i] <= 0) loop.add(v[i]);
        // The lower end first, so that both triangles of an edge find the same point to the bit.
        if (h[i] < 0 && h[j] > 0) loop.add(between(v[i], v[j], h[i], h[j]));
        if (h[i] > 0 && h[j] < 0) loop.add(between(v[j], v[i], h[j], h[i]));
      }
      for (int i = 1; i + 1 < loop.size(); i++) kept.add(new Tri(loop.get(0), loop.get(i), loop.get(i + 1)));
    }
    // What is left open is the rim of the cut. Edges are counted with their direction, for fans may overlap.
    Map<Edge, Integer> open = new LinkedHashMap<>();
    for (Tri t : kept) {
      count(open, t.a, t.b);
      count(open, t.b, t.c);
      count(open, t.c, t.a);
    }
    Vec3 hub = null;
    for (Map.Entry<Edge, Integer> e : open.entrySet()) {
      if (e.getValue() == 0) continue;
      Vec3 from = e.getValue() > 0 ? e.getKey().a : e.getKey().b;
      Vec3 to = e.getValue() > 0 ? e.getKey().b : e.getKey().a;
      if (hub == null) hub = from;
      for (int i = 0; i < Math.abs(e.getValue()); i++) kept.add(new Tri(hub, to, from));
    }
    return kept;
  }

  private static void count(Map<Edge, Integer> open, Vec3 from, Vec3 to) {
    Edge e = Edge.of(from, to);
    open.merge(e, e.a.equals(from) ? 1 : -1, Integer::sum);
  }

  private static Vec3 between(Vec3 low, Vec3 high, double hl, double hh) {
    return low.plusTimes(hl / (hl - hh), high.minus(low));
  }

  /** The hull of its own farthest corners along many directions. */
  private static Hull thinned(Hull hull) {
    if (hull.corners().size() <= DIRECTIONS) return hull;
    List<Vec3> kept = new ArrayList<>();
    List<Vec3> directions = new ArrayList<>(List.of(Vec3.X, Vec3.Y, Vec3.Z));
    for (Vec3 axis : List.copyOf(directions)) directions.add(axis.negated());
    directions.addAll(StoneCutter.directions(DIRECTIONS - 6, 0, new Random(1)));
    for (Vec3 n : directions) {
      Vec3 far = hull.corners().stream().max(Comparator.comparingDouble(n::dot)).orElseThrow();
      if (!kept.contains(far)) kept.add(far);
    }
    return HullBuilder.build(kept).match(h -> h, why -> hull);
  }

  /** Along the axes, the diagonals of the sides and of the cube. */
  private static List<Vec3> cuts() {
    List<Vec3> out = new ArrayList<>();
    for (int x = -1; x <= 1; x++) {
      for (int y = -1; y <= 1; y++) {
        for (int z = -1; z <= 1; z++) {
          // One of each pair of opposites.
          if (x > 0 || x == 0 && (y > 0 || y == 0 && z > 0)) out.add(new Vec3(x, y, z).unit());
        }
      }
    }
    return List.copyOf(out);
  }
}
