package holdfast.model.shape;

import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How much of a rock is below the water's level.
 *
 * @param share of the volume of the union of its lobes, 0 to 1
 * @param centre centroid of that part in the world, metres; the rock's own centre when the share is 0
 */
public record Submerged(double share, Vec3 centre) {
  /** The part of a placed rock below {@code levelM}: exact, by cutting each lobe. */
  public static Submerged of(RockBody body, Pose pose, double levelM) {
    Vec3 up = pose.turn().conjugate().rotate(Vec3.Z);
    double level = levelM - pose.at().z();
    List<Hull> below = new ArrayList<>();
    boolean whole = true;
    for (Hull lobe : body.lobes()) {
      Optional<Hull> part = Polyhedra.clip(lobe, up, level);
      part.ifPresent(below::add);
      whole &= part.isPresent() && part.get() == lobe;
    }
    Vec3 centre = pose.apply(body.centre());
    if (whole) return new Submerged(1, centre);
    if (below.isEmpty()) return new Submerged(0, centre);
    Optional<MassProperties> part = Unions.massProperties(below);
    // The whole rock was counted when it was shaped, so its parts can be counted too.
    return part.map(m -> new Submerged(Math.min(1, m.volumeM3() / body.solid().volumeM3()), pose.apply(m.centre())))
        .orElse(new Submerged(1, centre));
  }
}
