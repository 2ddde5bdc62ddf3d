package holdfast.engine.contact;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * A body in place: its lobes in the world, metres.
 *
 * @param name a rock's name, or the name of a part of the tank
 * @param surface what its outside is
 * @param fixed it never moves (floor, pane, device, a fixed block)
 * @param lobes convex pieces in world coordinates
 */
public record Solid(String name, Surface surface, boolean fixed, List<Hull> lobes) {
  public Solid {
    lobes = List.copyOf(lobes);
  }

  /** What the outside of a body is; friction goes by pairs of these. */
  public enum Surface {
    ROCK, SLIMY_ROCK, GLASS, GRID, SHEET, SAND
  }

  /** Largest extent along any axis, metres; the length that tolerances are relative to. */
  public double sizeM() {
    double size = 0;
    for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
      double hi = Double.NEGATIVE_INFINITY;
      double lo = Double.POSITIVE_INFINITY;
      for (Hull h : lobes) {
        hi = Math.max(hi, h.reach(axis));
        lo = Math.min(lo, -h.reach(axis.negated()));
      }
      size = Math.max(size, hi - lo);
    }
    return size;
  }
}
