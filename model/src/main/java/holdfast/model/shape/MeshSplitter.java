package holdfast.model.shape;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Divides a closed surface into a few convex lobes that cover it.
 *
 * <p>The piece whose hull holds the most that is not stone is cut in two by a plane through the corner that lies deepest
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
    Cut best = null;
    for (Vec3 n : CUTS) {
      double d = n.dot(deepest);
      Optional<Piece> one = piece(half(p.surface, n, d));
      Optional<Piece> other = piece(half(p.surface, n.negated(), -d));
      if (one.isEmpty() || other.isEmpty()) continue;
      Cut cut = new Cut(one.get(), other.get());
      if (best == null || cut.hullVolume() < best.hullVolume()) best = cut;
    }
    return best != null && best.hullVolume() < 0.995 * p.hullVolume ? Optional.of(best) : Optional.empty();
  }

  /** The corner of the surface that lies farthest beneath its hull. */
  private static Vec3 deepest(Piece p) {
    Vec3 best = p.surface.get(0).a;
    double most = -1;
    for (Tri t : p.surface) {
      double depth = Double.POSITIVE_INFINITY;
      for (Hull.Face f : p.hull.faces()) depth = Math.min(depth, f.offset() - f.normal().dot(t.a));
      if (depth > most) {
        most = depth;
        best = t.a;
      }
    }
    return best;
  }

  /** The part of a closed surface with {@code n . p <= d}, closed again by a fan in the plane. */
  private static List<Tri> half(List<Tri> surface, Vec3 n, double d) {
    List<Tri> kept = new ArrayList<>();
    Vec3 hub = null;
    for (Tri t : surface) {
      Vec3[] v = {t.a, t.b, t.c};
      List<Vec3> loop = new ArrayList<>(4);
      Vec3 from = null;
      Vec3 to = null;
      for (int i = 0; i < 3; i++) {
        Vec3 p = v[i];
        Vec3 q = v[(i + 1) % 3];
        double hp = n.dot(p) - d;
        double hq = n.dot(q) - d;
        if (hp <= 0) loop.add(p);
        if (hp <= 0 == hq <= 0) continue;
        // The lower end first, so that both triangles of an edge find the same point.
        Vec3 x = hp <= 0 ? between(p, q, hp, hq) : between(q, p, hq, hp);
        loop.add(x);
        if (hp <= 0) from = x;
        else to = x;
      }
      for (int i = 1; i + 1 < loop.size(); i++) kept.add(new Tri(loop.get(0), loop.get(i), loop.get(i + 1)));
      if (from == null || to == null) continue;
      if (hub == null) hub = from;
      // The kept part runs from..to along the cut; its cap runs back.
      kept.add(new Tri(hub, to, from));
    }
    return kept;
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
