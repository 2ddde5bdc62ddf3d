package holdfast.engine.pane;

import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * One foot: where a rock bears on the floor and the range of force that may pass there.
 *
 * @param rock the rock's name
 * @param polygon the full contact patch as found, metres, world axes (x right, y back from the inner front-left corner);
 *     one point or two are allowed
 * @param leastN the least downward force that balances the heap, newtons
 * @param mostN the most; what counts for point loads
 * @param bounded false where nothing bounds the force from above (wedged between panes or stones)
 */
public record FootLoad(String rock, List<Vec3> polygon, double leastN, double mostN, boolean bounded) {
  public FootLoad {
    polygon = List.copyOf(polygon);
    if (polygon.isEmpty()) throw new IllegalArgumentException("foot of '" + rock + "' has no points");
    if (!(leastN >= 0) || !Double.isFinite(leastN)) {
      throw new IllegalArgumentException("leastN of '" + rock + "' must be 0 or more, was " + leastN);
    }
    if (bounded && !(mostN >= leastN && Double.isFinite(mostN))) {
      throw new IllegalArgumentException("mostN of '" + rock + "' must be at least leastN " + leastN + ", was " + mostN);
    }
  }
}
