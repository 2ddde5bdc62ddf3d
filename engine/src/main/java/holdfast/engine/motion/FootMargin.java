package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A quick rank for rests of one rock: the least push, level and at a share of its height, that tips it over the rim of
 * what it touches, its neighbours taken as fixed. An upper bound on its push margin, good enough to sort poses by; the
 * statics judge.
 *
 * @param pushShare height of the push as a share of the rock's height
 * @param weightN the rock's weight per kilogram, newtons
 */
public record FootMargin(double pushShare, double weightN) {
  /** Metres: what counts as touching after settling. */
  private static final double TOUCH_M = 1e-5;

  private static final int DIRECTIONS = 16;

  /** At 0.9 of the height, in air. */
  public static final FootMargin DEFAULT = new FootMargin(0.9, Gravity.G);

  /** The rank in a tank. */
  public SteadyRest.Rank of(List<Solid> fixed) {
    return (heap, rock) -> margin(heap, rock, fixed);
  }

  private double margin(List<MotionBody> heap, int rock, List<Solid> fixed) {
    int[] group = new int[heap.size()];
    Arrays.fill(group, -1);
    group[rock] = 0;
    List<Vec3> points = new ArrayList<>();
    for (Cluster.Facing f : new Cluster(heap, group, fixed).facings(TOUCH_M)) {
      for (LobeGap.Feature p : f.gap().features()) if (p.gapM() <= TOUCH_M) points.add(p.at());
    }
    MotionBody b = heap.get(rock);
    Vec3 centre = b.centreInWorld();
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < DIRECTIONS; i++) {
      Vec3 toward = Vec3.heading(360.0 * i / DIRECTIONS);
      double edge = Double.NEGATIVE_INFINITY;
      for (Vec3 p : points) edge = Math.max(edge, p.minus(centre).dot(toward));
      least = Math.min(least, edge);
    }
    return Math.max(0, least) * b.massKg() * weightN / (pushShare * b.heights().extentM());
  }
}
