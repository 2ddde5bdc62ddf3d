package holdfast.engine.gap;

import holdfast.engine.contact.HullDistance;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;

/**
 * Free water above a living rock, upright, to the next rock or the water's surface.
 *
 * <p>Measured along plumb lines on a grid over the rock: from its upper surface to the underside of whatever comes next.
 * Rocks that bear on it cover what they cover, but are no roof: only rocks that do not touch it count for the least
 * room. Overhangs of the rock itself over its own lower arms do not count as roofs either.
 *
 * @param rock number of the placement
 * @param leastM least free height under a rock that does not bear on it, or under the water's surface; zero when it
 *     sticks out of the water
 * @param under what ends it there: a rock's name, or {@link #SURFACE}
 * @param at the point of the rock where that is
 * @param openShare share of the rock, seen from above, that has at least the room asked for
 * @param requiredM the room asked for
 */
public record GrowingRoom(
    int rock, String name, double leastM, String under, Vec3 at, double openShare, double requiredM) {

  public static final String SURFACE = "water surface";

  public boolean kept() {
    return leastM >= requiredM - Tolerances.ROUNDING_M;
  }

  /** One entry for each living rock, in the order of the placements. */
  static List<GrowingRoom> of(Scene scene, List<PlacedRock> placed) {
    double required = scene.settings().get(Setting.GROWING_ROOM_MM) * 1e-3;
    double level = scene.water().levelMm() * 1e-3;
    List<GrowingRoom> rooms = new ArrayList<>();
    for (PlacedRock p : placed) {
      if (p.rock().kind() == Rock.Kind.LIVE) rooms.add(of(p, placed, level, required));
    }
    return rooms;
  }

  private static GrowingRoom of(PlacedRock p, List<PlacedRock> placed, double level, double required) {
    double[] x = span(p, Vec3.X);
    double[] y = span(p, Vec3.Y);
    List<PlacedRock> above = new ArrayList<>();
    List<Boolean> bears = new ArrayList<>();
    for (PlacedRock o : placed) {
      if (o == p || !overlap(x, span(o, Vec3.X)) || !overlap(y, span(o, Vec3.Y))) continue;
      above.add(o);
      bears.add(HullDistance.between(p.lobes(), o.lobes()).distanceM() <= Tolerances.BEARS_M);
    }
    double step = Math.min(Tolerances.PLUMB_M, Math.max(x[1] - x[0], y[1] - y[0]) / Tolerances.LEAST_PLUMB_LINES);
    int columns = (int) Math.ceil((x[1] - x[0]) / step);
    int rows = (int) Math.ceil((y[1] - y[0]) / step);
    Vec3 top = highest(p);
    double least = Math.max(0, level - top.z());
    String under = SURFACE;
    Vec3 at = top;
    int seen = 0;
    int open = 0;
    for (int i = 0; i < columns; i++) {
      for (int j = 0; j < rows; j++) {
        double px = x[0] + (i + 0.5) * (x[1] - x[0]) / columns;
        double py = y[0] + (j + 0.5) * (y[1] - y[0]) / rows;
        double z = surface(p, px, py);
        if (Double.isNaN(z)) continue;
        seen++;
        double free = Math.max(0, level - z);
        for (int k = 0; k < above.size(); k++) {
          double room = roof(above.get(k), px, py, z);
          free = Math.min(free, room);
          if (room < least && !bears.get(k)) {
            least = room;
            under = above.get(k).rock().name();
            at = new Vec3(px, py, z);
          }
        }
        if (free >= required - Tolerances.ROUNDING_M) open++;
      }
    }
    return new GrowingRoom(p.index(), p.rock().name(), least, under, at, seen == 0 ? 1 : (double) open / seen, required);
  }

  /** Height of a rock's upper surface on a plumb line; not a number beside the rock. */
  private static double surface(PlacedRock p, double x, double y) {
    double z = Double.NaN;
    for (Hull h : p.lobes()) {
      double[] in = plumb(h, x, y);
      if (in != null && !(z >= in[1])) z = in[1];
    }
    return z;
  }

  /** Free height above {@code z} to a rock on the same plumb line: zero where it lies across {@code z}. */
  private static double roof(PlacedRock o, double x, double y, double z) {
    double room = Double.POSITIVE_INFINITY;
    for (Hull h : o.lobes()) {
      double[] in = plumb(h, x, y);
      if (in != null && in[1] > z) room = Math.min(room, Math.max(0, in[0] - z));
    }
    return room;
  }

  /** Where a plumb line runs inside a hull, {low, high}; null when it misses (half-space clipping). */
  private static double[] plumb(Hull h, double x, double y) {
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    for (Hull.Face f : h.faces()) {
      Vec3 n = f.normal();
      double room = f.offset() - n.x() * x - n.y() * y;
      if (Math.abs(n.z()) < 1e-12) {
        if (room < 0) return null;
      } else if (n.z() > 0) {
        high = Math.min(high, room / n.z());
      } else {
        low = Math.max(low, room / n.z());
      }
      if (low > high) return null;
    }
    return new double[] {low, high};
  }

  private static double[] span(PlacedRock p, Vec3 axis) {
    return new double[] {-p.reach(axis.negated()), p.reach(axis)};
  }

  private static boolean overlap(double[] p, double[] q) {
    return p[0] < q[1] && q[0] < p[1];
  }

  private static Vec3 highest(PlacedRock p) {
    Vec3 best = null;
    for (Hull h : p.lobes()) for (Vec3 c : h.corners()) if (best == null || c.z() > best.z()) best = c;
    return best;
  }
}
