package holdfast.app.view;

import holdfast.engine.gap.DeadWater;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A pocket of dead water with what is seen of it.
 *
 * @param skin the outer faces of its cells, four corners each, metres; each is drawn in a little, so that cells are told apart
 */
record Hollow(DeadWater.Pocket pocket, List<List<Vec3>> skin) {
  /** Part of a cell's side that its face covers. */
  private static final double COVERED = 0.78;

  Hollow {
    skin = List.copyOf(skin);
  }

  static Hollow of(DeadWater.Pocket pocket) {
    Vec3 first = pocket.cells().get(0);
    Set<List<Long>> filled = new HashSet<>();
    for (Vec3 c : pocket.cells()) filled.add(place(c, first, pocket.cellM()));
    List<List<Vec3>> skin = new ArrayList<>();
    for (Vec3 c : pocket.cells()) {
      for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
        for (int sign = -1; sign <= 1; sign += 2) {
          Vec3 out = axis.times(sign);
          if (!filled.contains(place(c.plusTimes(pocket.cellM(), out), first, pocket.cellM()))) {
            skin.add(face(c, out, pocket.cellM()));
          }
        }
      }
    }
    return new Hollow(pocket, skin);
  }

  /** The cell's number along each axis, counted from the first one. */
  private static List<Long> place(Vec3 c, Vec3 first, double cellM) {
    Vec3 d = c.minus(first).times(1 / cellM);
    return List.of(Math.round(d.x()), Math.round(d.y()), Math.round(d.z()));
  }

  private static List<Vec3> face(Vec3 middle, Vec3 out, double cellM) {
    Vec3 at = middle.plusTimes(cellM / 2, out);
    Vec3 u = out.anyPerpendicular().times(COVERED * cellM / 2);
    Vec3 v = out.cross(u);
    return List.of(at.minus(u).minus(v), at.plus(u).minus(v), at.plus(u).plus(v), at.minus(u).plus(v));
  }
}
