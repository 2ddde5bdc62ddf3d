package holdfast.model.geom;

import java.util.Objects;

/**
 * Volume, centre and second moments of a solid of density one.
 *
 * @param volumeM3 volume, cubic metres, above zero
 * @param centre centroid, metres
 * @param inertia inertia tensor about the centroid for density 1 kg/m3, in m5 (times the density: kg m2);
 *     products of inertia enter off the diagonal as minus the integral of x y, so the tensor is tr(S) E - S
 */
public record MassProperties(double volumeM3, Vec3 centre, Mat3 inertia) {
  public MassProperties {
    Objects.requireNonNull(centre);
    Objects.requireNonNull(inertia);
    if (!(volumeM3 > 0)) throw new IllegalArgumentException("volumeM3 must be above 0, was " + volumeM3);
  }
}
