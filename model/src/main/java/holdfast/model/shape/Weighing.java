package holdfast.model.shape;

import holdfast.model.scene.Rock;
import holdfast.model.scene.Rock.BulkDensity;
import holdfast.model.scene.Rock.Mass;
import holdfast.model.scene.Rock.Weighed;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.Locale;
import java.util.Optional;

/**
 * The mass of the dry stone from what its owner knows. Pores flood, so under water a stone of mass m and mineral density
 * rho_s reads m (1 - rho_w / rho_s) less rho_w times its sealed voids (Archimedes).
 */
final class Weighing {
  private final double mineralKgM3;
  private final double dampShare;
  private final double waterKgM3;

  Weighing(Settings settings, double waterKgM3) {
    this.mineralKgM3 = settings.get(Setting.MINERAL_DENSITY);
    this.dampShare = settings.get(Setting.DAMP_SHARE);
    this.waterKgM3 = waterKgM3;
  }

  /** Dry mass in kg of a rock whose lobes fill {@code volumeM3}; may be nonsense, see {@link #flaw}. */
  double dryKg(Rock rock, double volumeM3) {
    Mass mass = rock.mass();
    if (mass instanceof BulkDensity b) return b.kgPerL() * 1000 * volumeM3;
    Weighed w = (Weighed) mass;
    return switch (w.state()) {
      case DRY -> w.kg();
      case DAMP -> w.kg() - w.heldWaterKg().orElse(dampShare * w.kg());
      case UNDERWATER -> (w.kg() + waterKgM3 * sealedM3(rock)) / (1 - waterKgM3 / mineralKgM3);
    };
  }

  /** What is wrong with that mass, in both figures, and what would be right. */
  Optional<String> flaw(Rock rock, double dryKg, double volumeM3) {
    if (!(dryKg > 0) || !Double.isFinite(dryKg)) {
      return Optional.of(String.format(Locale.ROOT,
          "its dry stone comes to %.3f kg; the reading, less the water it holds, must be above 0", dryKg));
    }
    double stoneM3 = volumeM3 - sealedM3(rock);
    if (!(stoneM3 > 1e-6 * volumeM3)) {
      return Optional.of(String.format(Locale.ROOT,
          "its sealed volume of %.3f L is not below the %.3f L of its shape", sealedM3(rock) * 1e3, volumeM3 * 1e3));
    }
    // A millionth of slack: a solid stone of exactly the mineral's density is not an error.
    double most = mineralKgM3 * stoneM3;
    if (dryKg <= most * (1 + 1e-6)) return Optional.empty();
    return Optional.of(String.format(Locale.ROOT,
        "%.3f kg of dry stone in a shape of %.3f L is %.2f kg/L, denser than the mineral itself (%.2f kg/L): "
            + "at most %.3f kg, or a shape of at least %.3f L",
        dryKg, volumeM3 * 1e3, dryKg / stoneM3 / 1e3, mineralKgM3 / 1e3, most,
        (dryKg / mineralKgM3 + sealedM3(rock)) * 1e3));
  }

  /** Water in the full pores, kg: what of the shape is neither mineral nor sealed. */
  double poreWaterKg(Rock rock, double dryKg, double volumeM3) {
    return Math.max(0, waterKgM3 * (volumeM3 - dryKg / mineralKgM3 - sealedM3(rock)));
  }

  static double sealedM3(Rock rock) {
    return rock.sealedVolumeMl() / 1e6;
  }
}
