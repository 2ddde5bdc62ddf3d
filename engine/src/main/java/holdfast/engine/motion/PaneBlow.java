package holdfast.engine.motion;

import holdfast.engine.pane.StonePoint;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;

/**
 * What a blow of a falling rock means for a side pane: the peak of an elastic blow of a stone's round point on glass that
 * does not give ({@link StonePoint}), and the ring tension that starts cone cracks. The pane's own give would lower it, a
 * sharper point raise it; the strength of glass under a small contact scatters by a factor of two and more. So no blow is
 * called harmless here: the figures are there to compare layouts by.
 *
 * @param peakN peak force
 * @param ringNmm2 tension at the rim of the contact
 * @param strengthNmm2 characteristic bending strength of the glass, to compare with
 */
public record PaneBlow(PlayResult.PaneHit hit, double peakN, double ringNmm2, double strengthNmm2) {

  /** A hit on a pane of a scene with these settings. */
  public static PaneBlow of(PlayResult.PaneHit hit, Settings settings) {
    double radius = settings.get(Setting.POINT_RADIUS_MM) * 1e-3;
    StonePoint point = StonePoint.limestoneOn(
        settings.get(Setting.GLASS_YOUNG_N_MM2) * 1e6, settings.get(Setting.GLASS_POISSON));
    double mass = 2 * hit.energyJ() / (hit.speedMS() * hit.speedMS());
    double peak = point.drop(radius, mass, hit.speedMS(), Double.POSITIVE_INFINITY).peakN();
    return new PaneBlow(hit, peak, point.press(radius, peak).ringPa() * 1e-6, settings.get(Setting.GLASS_STRENGTH_N_MM2));
  }
}
