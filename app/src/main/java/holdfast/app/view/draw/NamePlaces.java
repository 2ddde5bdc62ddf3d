package holdfast.app.view.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where a rock's name goes on a picture, so that it is not read on another that stands before it. */
public final class NamePlaces {
  /** Lines of sight tried across and down a rock. */
  private static final int TRIES = 15;

  private NamePlaces() {}

  /**
   * The rock's centre where that is seen, else what is seen of it nearest to the middle of that; nothing where nothing is
   * seen.
   */
  public static Optional<Projector.Spot> seen(Projector eye, Stone stone, List<Stone> stones) {
    Projector.Spot centre = eye.spot(stone.centreInTank());
    if (!centre.inFront()) return Optional.empty();
    if (sees(eye, centre.x(), centre.y(), stone, stones)) return Optional.of(centre);
    double reach = 0.5 * stone.high().minus(stone.low()).norm() / eye.metresPerPixel(stone.centreInTank());
    List<double[]> open = new ArrayList<>();
    for (int i = 0; i < TRIES; i++) {
      for (int j = 0; j < TRIES; j++) {
        double x = centre.x() + reach * (2.0 * i / (TRIES - 1) - 1);
        double y = centre.y() + reach * (2.0 * j / (TRIES - 1) - 1);
        if (sees(eye, x, y, stone, stones)) open.add(new double[] {x, y});
      }
    }
    double mx = open.stream().mapToDouble(p -> p[0]).average().orElse(0);
    double my = open.stream().mapToDouble(p -> p[1]).average().orElse(0);
    double[] best = null;
    for (double[] p : open) {
      if (best == null || Math.hypot(p[0] - mx, p[1] - my) < Math.hypot(best[0] - mx, best[1] - my)) best = p;
    }
    return best == null ? Optional.empty() : Optional.of(new Projector.Spot(best[0], best[1], true));
  }

  private static boolean sees(Projector eye, double x, double y, Stone stone, List<Stone> stones) {
    return Picking.stone(eye.ray(x, y), stones).filter(h -> h.stone().equals(stone)).isPresent();
  }
}
