package holdfast.engine.gap;

import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.List;

/**
 * A block that is moved along a pane: length level along the glass, height up it, thickness out from it.
 *
 * @param thicknessM the room it needs between glass and rock, what it must have to spare included
 */
public record Cleaner(double lengthM, double heightM, double thicknessM) {
  public Cleaner {
    if (!(lengthM > 0) || !(heightM > 0) || !(thicknessM > 0)) {
      throw new IllegalArgumentException(
          "a cleaner has three lengths above 0, were " + lengthM + ", " + heightM + ", " + thicknessM);
    }
  }

  /** Room that cleaners of the three usual sizes need, what they must have to spare included (memory). */
  public static final List<Double> USUAL_THICKNESS_M = List.of(0.035, 0.060, 0.085);

  /** The same cleaner, thinner or thicker. */
  public Cleaner ofThickness(double metres) {
    return new Cleaner(lengthM, heightM, metres);
  }

  /** The cleaner of a scene's settings; a thickness of zero there means a sheet of a millimetre. */
  public static Cleaner of(Settings settings) {
    return new Cleaner(settings.get(Setting.CLEANER_LENGTH_MM) * 1e-3, settings.get(Setting.CLEANER_HEIGHT_MM) * 1e-3,
        Math.max(1, settings.get(Setting.GAP_CLEANER_MM)) * 1e-3);
  }
}
