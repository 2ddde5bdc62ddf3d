package holdfast.model.shape;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Mat3;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * A rock as mechanics sees it, in its own frame, metres and kilograms. The origin is where the scene's placement puts
 * it; the mass is that of the dry stone.
 *
 * @param name the rock's name
 * @param lobes convex pieces, overlapping or not
 * @param solid volume, centre and second moments of the union of the lobes, overlaps counted once
 * @param dryMassKg mass of the dry stone, spread evenly over the union
 * @param poreWaterKg water that its pores hold when full, above zero for porous stone
 * @param sealedVolumeM3 closed voids
 */
public record RockBody(
    String name, List<Hull> lobes, MassProperties solid, double dryMassKg, double poreWaterKg, double sealedVolumeM3) {

  public RockBody {
    lobes = List.copyOf(lobes);
    if (lobes.isEmpty()) throw new IllegalArgumentException("rock '" + name + "' has no lobes");
    if (!(dryMassKg > 0)) throw new IllegalArgumentException("dryMassKg must be above 0, was " + dryMassKg);
  }

  public Vec3 centre() {
    return solid.centre();
  }

  /** Inertia of the dry stone about its centre, kg m2. */
  public Mat3 inertia() {
    return solid.inertia().times(dryMassKg / solid.volumeM3());
  }
}
