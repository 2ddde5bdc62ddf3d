package holdfast.engine.statics.heap;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A force on one rock: where it acts and which way.
 *
 * @param rock place of the rock in the heap
 * @param at the point, metres
 * @param direction unit vector
 */
public record Push(int rock, Vec3 at, Vec3 direction) {

  /** Unit force of this push as a load on every body of {@code heap}. */
  public List<Wrench> unit(Heap heap) {
    List<Wrench> out = new ArrayList<>();
    for (int i = 0; i < heap.bodies().size(); i++) {
      out.add(i == rock ? Wrench.of(direction, at, heap.bodies().get(i).centre()) : Wrench.ZERO);
    }
    return out;
  }

  /**
   * The push lines of one rock from one side: at the push height of the rock's own height, through the vertical line of
   * its centre of mass and to either side of it, never past the rock's own outline.
   */
  public static List<Push> lines(int rock, List<Hull> lobes, Vec3 centre, double degrees, Settings settings) {
    Vec3 d = Vec3.heading(degrees);
    Vec3 across = new Vec3(-d.y(), d.x(), 0);
    double top = reach(lobes, Vec3.Z);
    double bottom = -reach(lobes, Vec3.Z.negated());
    double z = bottom + settings.get(Setting.PUSH_HEIGHT) * (top - bottom);
    double left = reach(lobes, across) - centre.dot(across);
    double right = reach(lobes, across.negated()) + centre.dot(across);
    double offset = settings.get(Setting.PUSH_OFFSET) * (left + right) / 2;
    Vec3 middle = new Vec3(centre.x(), centre.y(), z);
    if (offset == 0) return List.of(new Push(rock, middle, d));
    return List.of(
        new Push(rock, middle, d),
        new Push(rock, middle.plusTimes(Math.min(offset, left), across), d),
        new Push(rock, middle.plusTimes(-Math.min(offset, right), across), d));
  }

  /** From how many sides a rock is pushed: directions round the compass, evenly. */
  public static int sides(Settings settings) {
    return (int) Math.round(settings.get(Setting.PUSH_DIRECTIONS));
  }

  /** The push lines of one rock from every side, side by side; of each side the middle line first. */
  public static List<List<Push>> round(int rock, List<Hull> lobes, Vec3 centre, Settings settings) {
    int sides = sides(settings);
    List<List<Push>> out = new ArrayList<>();
    for (int d = 0; d < sides; d++) out.add(lines(rock, lobes, centre, 360.0 * d / sides, settings));
    return out;
  }

  /** Presses straight down on the outermost points of one rock, in eight directions, each point once. */
  public static List<Push> presses(int rock, List<Hull> lobes) {
    Set<Vec3> points = new LinkedHashSet<>();
    for (int k = 0; k < 8; k++) {
      Vec3 d = Vec3.heading(45.0 * k);
      Vec3 best = null;
      for (Hull h : lobes) {
        for (Vec3 p : h.corners()) {
          if (best == null || p.dot(d) > best.dot(d) + 1e-9 || p.dot(d) > best.dot(d) - 1e-9 && p.z() > best.z()) best = p;
        }
      }
      points.add(best);
    }
    return points.stream().map(p -> new Push(rock, p, Vec3.Z.negated())).toList();
  }

  private static double reach(List<Hull> lobes, Vec3 direction) {
    return lobes.stream().mapToDouble(h -> h.reach(direction)).max().orElse(0);
  }
}
