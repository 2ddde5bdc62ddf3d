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

  /**
   * Largest distance between two of its corners, metres: the length that tolerances are relative to, the same however
   * the body is turned.
   */
  public double sizeM() {
    List<Vec3> corners = lobes.stream().flatMap(h -> h.corners().stream()).toList();
    double size = 0;
    for (int i = 0; i < corners.size(); i++) {
      for (int j = i + 1; j < corners.size(); j++) size = Math.max(size, corners.get(i).distanceTo(corners.get(j)));
    }
    return size;
  }
}
