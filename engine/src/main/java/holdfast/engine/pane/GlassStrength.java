package holdfast.engine.pane;

import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;

/**
 * What the glass may bear, N/mm2, by two routes.
 *
 * <p>The standard's: f = k_e k_mod k_sp f_k / 1.8, and for toughened glass (120 - f_k) / 1.2 more, held against the stress
 * times a load factor. The form is that of EN 16612 (published, secondary copies; the toughened part from memory).
 * The trade's: a fixed allowable held against the plain stress (common practice), four times that for toughened glass
 * (common practice).
 *
 * @param characteristicNmm2 characteristic bending strength of annealed float glass
 * @param edgeFactor k_e
 * @param surfaceFactor k_sp
 * @param tempered thermally toughened
 * @param loadFactor on the stress, standard's route
 * @param tradeAnnealedNmm2 the trade's allowable for annealed glass
 */
public record GlassStrength(
    double characteristicNmm2, double edgeFactor, double surfaceFactor, boolean tempered, double loadFactor,
    double tradeAnnealedNmm2) {

  /** Material factor of annealed glass (EN 16612, published in secondary copies). */
  static final double MATERIAL_FACTOR = 1.8;

  /** Material factor of the strength that toughening adds (memory). */
  static final double TOUGHENING_FACTOR = 1.2;

  /** Characteristic strength of thermally toughened soda-lime glass, N/mm2 (EN 12150-1, published). */
  static final double TOUGHENED_NMM2 = 120;

  /** Toughened against annealed by the trade's rule (common practice). */
  static final double TRADE_TOUGHENED_TIMES = 4;

  public static GlassStrength of(Settings settings, boolean tempered) {
    return new GlassStrength(
        settings.get(Setting.GLASS_STRENGTH_N_MM2), settings.get(Setting.GLASS_EDGE_FACTOR),
        settings.get(Setting.GLASS_SURFACE_FACTOR), tempered, settings.get(Setting.GLASS_LOAD_FACTOR),
        settings.get(Setting.GLASS_TRADE_ALLOWABLE_N_MM2));
  }

  /** Design strength on the standard's route, held against {@link #loadFactor} times the stress. */
  public double designNmm2(LoadDuration duration) {
    double annealed = edgeFactor * duration.kMod() * surfaceFactor * characteristicNmm2 / MATERIAL_FACTOR;
    return tempered ? annealed + Math.max(0, TOUGHENED_NMM2 - characteristicNmm2) / TOUGHENING_FACTOR : annealed;
  }

  /** The greatest plain stress that the standard's route lets pass. */
  public double limitNmm2(LoadDuration duration) {
    return designNmm2(duration) / loadFactor;
  }

  /** The greatest plain stress that the trade's rule lets pass. */
  public double tradeLimitNmm2() {
    return tempered ? TRADE_TOUGHENED_TIMES * tradeAnnealedNmm2 : tradeAnnealedNmm2;
  }
}
