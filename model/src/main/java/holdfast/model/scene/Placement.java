package holdfast.model.scene;

import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;

/**
 * Where one rock lies.
 *
 * @param rock the rock's name
 * @param atMm where the rock's own origin goes, millimetres from the inner bottom's front-left corner
 * @param turn unit quaternion, to within 1e-6 as the file gave it
 * @param locked settling and searching leave it where it is
 */
public record Placement(String rock, Vec3 atMm, Quat turn, boolean locked) {
  /** The pose in metres, with the rotation brought to length one. */
  public Pose pose() {
    return new Pose(atMm.times(1e-3), turn.unit());
  }
}
