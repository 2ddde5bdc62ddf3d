package holdfast.engine.supply;

import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;
import holdfast.model.shape.RockBody;
import java.util.List;

/**
 * What the stand carries, kilograms.
 *
 * <p>Counted: glass, water, dry rock, dry sand and the floor panel. Not counted, since a scene does not say what they
 * weigh: the stand itself, a sump, lamps, hood, equipment, animals, and people who lean on it.
 *
 * @param glassKg five panes and the braces round the openings; the side panes stand on the bottom pane
 * @param waterKg all water, pores and sand included
 * @param rockKg dry rock
 * @param sandKg dry sand
 * @param floorKg floor panel
 * @param footprintM2 outer length times width of the tank
 */
public record Weights(double glassKg, double waterKg, double rockKg, double sandKg, double floorKg, double footprintM2) {

  /** Glass alone. */
  public double emptyKg() {
    return glassKg;
  }

  /** Glass, rock, sand and floor panel, before any water. */
  public double dryKg() {
    return glassKg + rockKg + sandKg + floorKg;
  }

  /** All of it, in use. */
  public double filledKg() {
    return dryKg() + waterKg;
  }

  /** Load on the floor of the room if it were spread over the tank's own footprint, kg/m2; without the stand. */
  public double perFootprintKgM2() {
    return filledKg() / footprintM2;
  }

  /**
   * The weights of a scene.
   *
   * @param waterDensity density of the tank's water, kg/m3
   */
  static Weights of(Scene scene, List<RockBody> bodies, Volumes volumes, double waterDensity) {
    double rock = bodies.stream().mapToDouble(RockBody::dryMassKg).sum();
    return new Weights(
        glassM3(scene.tank()) * scene.settings().get(Setting.GLASS_DENSITY),
        volumes.waterM3() * waterDensity,
        rock,
        volumes.sandBulkM3() * scene.sand().bulkKgPerL() * 1e3,
        volumes.floorM3() * scene.settings().get(Setting.FLOOR_KG_PER_L) * 1e3,
        outerM(scene.tank().lengthMm(), scene.tank()) * outerM(scene.tank().widthMm(), scene.tank()));
  }

  /** Volume of the glass, cubic metres. */
  static double glassM3(Tank tank) {
    double side = tank.sideGlassMm() * 1e-3;
    double bottom = tank.bottomGlassMm() * 1e-3;
    double length = outerM(tank.lengthMm(), tank);
    double width = outerM(tank.widthMm(), tank);
    double height = tank.heightMm() * 1e-3;
    double panes = length * width * bottom
        + 2 * length * height * side + 2 * tank.widthMm() * 1e-3 * height * side;
    double braces = 0;
    if (!tank.openings().isEmpty()) {
      double open = tank.openings().stream().mapToDouble(o -> o.lengthMm() * o.widthMm() * 1e-6).sum();
      braces = Math.max(0, tank.lengthMm() * tank.widthMm() * 1e-6 - open) * side;
    }
    return panes + braces;
  }

  private static double outerM(double innerMm, Tank tank) {
    return (innerMm + 2 * tank.sideGlassMm()) * 1e-3;
  }
}
