package holdfast.engine.contact;

import holdfast.model.geom.Hull;
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
    double[][] corners = lobes.stream().flatMap(h -> h.corners().stream())
        .map(c -> new double[] {c.x(), c.y(), c.z()}).toArray(double[][]::new);
    double most = 0;
    for (int i = 0; i < corners.length; i++) {
      double[] p = corners[i];
      for (int j = i + 1; j < corners.length; j++) {
        double[] q = corners[j];
        double x = p[0] - q[0];
        double y = p[1] - q[1];
        double z = p[2] - q[2];
        most = Math.max(most, x * x + y * y + z * z);
      }
    }
    return Math.sqrt(most);
  }
}
