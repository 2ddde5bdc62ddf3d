package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The sand as a fixed body where rocks stand on it, with pits where it is dug away or where rocks stand through it.
 *
 * <p>A stated model: sand that carries is rigid and its pits keep upright walls, where real sand slumps. It shows what falls,
 * not how softly.
 */
final class SandBed {
  static final String NAME = "sand";

  /** Metres: rocks may be bedded this deep in the sand that carries them. */
  private static final double BEDDED_M = 0.01;

  /** Metres: sand is taken to carry a rock that stays this little above it. */
  private static final double REACH_M = 1e-3;

  /** Metres of room round a rock that stands through the sand: loose sand gives way beside it. */
  private static final double ROOM_M = 0.02;

  /** Metres that a dug pit goes beyond the foot that it takes away. */
  private static final double DUG_M = 0.01;

  private SandBed() {}

  /** Bounds of a pit seen from above. */
  private record Rect(double x0, double y0, double x1, double y1) {
    static Rect round(Iterable<Vec3> points, double roomM) {
      double x0 = Double.POSITIVE_INFINITY;
      double y0 = Double.POSITIVE_INFINITY;
      double x1 = Double.NEGATIVE_INFINITY;
      double y1 = Double.NEGATIVE_INFINITY;
      for (Vec3 p : points) {
        x0 = Math.min(x0, p.x());
        y0 = Math.min(y0, p.y());
        x1 = Math.max(x1, p.x());
        y1 = Math.max(y1, p.y());
      }
      return new Rect(x0 - roomM, y0 - roomM, x1 + roomM, y1 + roomM);
    }
  }

  /**
   * The sand of a scene. None with a grid or sheet, where rocks stand below it and sand was poured round them; nor where none
   * stands on it.
   */
  static Optional<Solid> of(Scene scene, List<MotionBody> bodies) {
    double depth = scene.sand().depthMm() * 1e-3;
    if (depth <= 0 || scene.floor().topMm() > 0) return Optional.empty();
    List<Rect> pits = new ArrayList<>();
    boolean carries = false;
    for (MotionBody b : bodies) {
      double low = Double.POSITIVE_INFINITY;
      for (Hull h : b.solid(false).lobes()) low = Math.min(low, -h.reach(Vec3.Z.negated()));
      if (low < depth - BEDDED_M) pits.add(Rect.round(below(b, depth), ROOM_M));
      else carries |= low < depth + REACH_M;
    }
    if (!carries && !pits.isEmpty() || bodies.isEmpty()) return Optional.empty();
    Rect all = new Rect(0, 0, scene.tank().lengthMm() * 1e-3, scene.tank().widthMm() * 1e-3);
    return solid(all, pits, depth);
  }

  private static List<Vec3> below(MotionBody body, double depth) {
    List<Vec3> points = new ArrayList<>();
    // A hull that dips in and widens above is taken at its full width: the pit is wide rather than the rock squeezed.
    for (Hull h : body.solid(false).lobes()) if (-h.reach(Vec3.Z.negated()) < depth) points.addAll(h.corners());
    return points;
  }

  /** The same sand with a pit down to the bottom under each outline. */
  static Optional<Solid> dug(Solid sand, List<List<Vec3>> outlines) {
    List<Hull> left = sand.lobes();
    for (List<Vec3> outline : outlines) {
      Rect pit = Rect.round(outline, DUG_M);
      List<Hull> next = new ArrayList<>();
      for (Hull h : left) {
        Rect r = Rect.round(h.corners(), 0);
        double top = h.reach(Vec3.Z);
        for (Rect part : without(r, pit)) next.add(box(part, top));
      }
      left = next;
    }
    return left.isEmpty() ? Optional.empty() : Optional.of(new Solid(NAME, Surface.SAND, true, left));
  }

  private static Optional<Solid> solid(Rect all, List<Rect> pits, double depth) {
    List<Rect> left = List.of(all);
    for (Rect pit : pits) {
      List<Rect> next = new ArrayList<>();
      for (Rect r : left) next.addAll(without(r, pit));
      left = next;
    }
    if (left.isEmpty()) return Optional.empty();
    return Optional.of(new Solid(NAME, Surface.SAND, true, left.stream().map(r -> box(r, depth)).toList()));
  }

  /** What is left of a rectangle: before, behind, left and right of the pit. Slivers are left out. */
  private static List<Rect> without(Rect r, Rect pit) {
    if (pit.x1 <= r.x0 || pit.x0 >= r.x1 || pit.y1 <= r.y0 || pit.y0 >= r.y1) return List.of(r);
    double y0 = Math.max(r.y0, pit.y0);
    double y1 = Math.min(r.y1, pit.y1);
    List<Rect> parts = new ArrayList<>();
    for (Rect p : List.of(new Rect(r.x0, r.y0, r.x1, y0), new Rect(r.x0, y1, r.x1, r.y1),
        new Rect(r.x0, y0, pit.x0, y1), new Rect(pit.x1, y0, r.x1, y1))) {
      if (p.x1 - p.x0 > REACH_M && p.y1 - p.y0 > REACH_M) parts.add(p);
    }
    return parts;
  }

  private static Hull box(Rect r, double top) {
    List<Vec3> corners = new ArrayList<>();
    for (double z : new double[] {0, top}) {
      for (double y : new double[] {r.y0, r.y1}) {
        for (double x : new double[] {r.x0, r.x1}) corners.add(new Vec3(x, y, z));
      }
    }
    return HullBuilder.build(corners).match(h -> h, reason -> {
      throw new IllegalStateException("a box of sand must be a hull: " + reason);
    });
  }
}
