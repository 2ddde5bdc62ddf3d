package holdfast.engine.build;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes a found way shorter to tell: legs that can be run through as one become one, with as much room kept as there was. */
final class PathEasing {
  private final GateFit fit;
  private final List<GateLeg> legs;

  PathEasing(GateFit fit, List<GateLeg> legs) {
    this.fit = fit;
    this.legs = legs;
  }

  /**
   * The way, proved once more as a whole; empty when it cannot be.
   *
   * @param least room that must be left, metres
   */
  Optional<TurnPath> eased(double least) {
    List<GateLeg> few = new ArrayList<>();
    int i = 0;
    while (i < legs.size()) {
      int j = legs.size() - 1;
      GateLeg leg = null;
      while (leg == null) {
        leg = j == i ? legs.get(i) : asOne(i, j, least);
        if (leg == null) j = i + (j - i) * 3 / 4;
      }
      few.add(leg);
      i = j + 1;
    }
    double told = Double.POSITIVE_INFINITY;
    List<GatePose> poses = new ArrayList<>(List.of(few.get(0).from()));
    List<Vec3> pivots = new ArrayList<>();
    for (GateLeg leg : few) {
      double room = leg.proved(fit, least, told);
      if (Double.isNaN(room)) return Optional.empty();
      told = Math.min(told, room);
      poses.add(leg.to());
      pivots.add(leg.pivot());
    }
    return Optional.of(new TurnPath(poses, pivots, told));
  }

  /** Legs i to j as one, about a pivot that lets it; null when none does. */
  private GateLeg asOne(int i, int j, double room) {
    GatePose from = legs.get(i).from();
    GatePose to = legs.get(j).to();
    for (Vec3 pivot : List.of(legs.get((i + j) / 2).pivot(), legs.get(i).pivot(), legs.get(j).pivot(), legs.get(i).centre())) {
      GateLeg leg = new GateLeg(from, to, pivot, legs.get(i).centre());
      if (!Double.isNaN(leg.proved(fit, room, room))) return leg;
    }
    return null;
  }
}
