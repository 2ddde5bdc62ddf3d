package holdfast.engine.statics.heap;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;

/** Friction by pair of surfaces, from the settings; erring low. */
public final class Frictions {
  private Frictions() {}

  /** The coefficient of one pair. A grid or sheet may itself slide on the glass: the lower of the two counts. */
  public static double between(Surface p, Surface q, Settings s) {
    boolean slimy = p == Surface.SLIMY_ROCK || q == Surface.SLIMY_ROCK;
    double dry = bare(p, q, s);
    return slimy ? Math.min(dry, s.get(Setting.FRICTION_SLIMY)) : dry;
  }

  private static double bare(Surface p, Surface q, Settings s) {
    if (either(p, q, Surface.SAND)) return s.get(Setting.FRICTION_ROCK_SAND);
    if (either(p, q, Surface.GRID) || either(p, q, Surface.SHEET)) {
      return Math.min(s.get(Setting.FRICTION_ROCK_GRID), s.get(Setting.FRICTION_GRID_GLASS));
    }
    if (either(p, q, Surface.GLASS)) return s.get(Setting.FRICTION_ROCK_GLASS);
    return s.get(Setting.FRICTION_ROCK_ROCK);
  }

  private static boolean either(Surface p, Surface q, Surface which) {
    return p == which || q == which;
  }
}
