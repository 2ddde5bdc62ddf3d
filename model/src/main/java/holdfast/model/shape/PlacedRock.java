package holdfast.model.shape;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import java.util.List;

/**
 * A rock where it lies.
 *
 * @param index its number among the scene's placements, from 0
 * @param rock what its owner knows of it
 * @param body its shape and mass in its own frame
 * @param pose where it lies, metres
 * @param lobes the body's lobes in the world
 * @param centre the body's centre in the world, metres
 */
public record PlacedRock(int index, Rock rock, RockBody body, Pose pose, List<Hull> lobes, Vec3 centre) {
  public PlacedRock {
    lobes = List.copyOf(lobes);
  }

  public static PlacedRock of(int index, Rock rock, RockBody body, Pose pose) {
    List<Hull> world = body.lobes().stream().map(h -> h.moved(pose)).toList();
    return new PlacedRock(index, rock, body, pose, world, pose.apply(body.centre()));
  }

  /** The same rock elsewhere. */
  public PlacedRock at(Pose elsewhere) {
    return of(index, rock, body, elsewhere);
  }

  /** The farthest reach along a direction, metres for a unit vector. */
  public double reach(Vec3 direction) {
    double best = Double.NEGATIVE_INFINITY;
    for (Hull h : lobes) best = Math.max(best, h.reach(direction));
    return best;
  }
}
