package holdfast.model.io;

import holdfast.model.scene.Tank.BottomSupport;

/**
 * A tank as it is sold: named by its outer lengths, with glass as such a tank usually has. The glass is a guess that the
 * owner replaces by a measurement.
 *
 * @param name as people say it: {@code 60x30x35 cm}
 * @param lengthMm inner length, left to right
 * @param widthMm inner width, front to back
 * @param heightMm inner height, bottom to rim
 * @param glassMm thickness of every pane
 * @param support what carries the bottom pane
 */
public record TankSize(String name, double lengthMm, double widthMm, double heightMm, double glassMm, BottomSupport support) {
  public TankSize {
    if (!(lengthMm > 0 && widthMm > 0 && heightMm > 0 && glassMm > 0)) {
      throw new IllegalArgumentException(name + ": lengths must be above 0");
    }
  }

  /** Water when it is filled to 25 mm below the rim, litres. */
  public double litres() {
    return lengthMm * widthMm * (heightMm - SceneKeys.WATER_BELOW_RIM_MM) * 1e-6;
  }
}
