package holdfast.engine.supply;

import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What fills the glass box up to the waterline, cubic metres.
 *
 * <p>Four things take up room: rock solid (the mineral and sealed voids; pores fill with water), sand grains, the floor
 * panel and devices. Water is counted where it stands, not as what is left: over the sand, between the grains, and in the
 * pores of the rock. That the parts add up to the box is therefore a check.
 *
 * <p>The hulls are cut by the planes of sand and water exactly. Left out: overlaps of a rock with another rock, a device
 * or a wall of the louvre (at most about a millimetre deep in a sound scene), water behind a weir and in pipes. A device
 * counts as its whole box.
 *
 * @param boxM3 inner length times width times water level
 * @param rockSolidM3 rock below the waterline that water does not enter
 * @param rockHullM3 outer volume of the rock below the waterline
 * @param sandBulkM3 the bed of sand, rock feet, floor panel and devices taken out
 * @param sandGrainsM3 the solid of the sand
 * @param floorM3 solid of the floor panel
 * @param devicesM3 devices below the waterline
 * @param openWaterM3 water over the sand and round the rock
 * @param sandWaterM3 water between the grains
 * @param poreWaterM3 water in the pores of the rock
 */
public record Volumes(
    double boxM3, double rockSolidM3, double rockHullM3, double sandBulkM3, double sandGrainsM3,
    double floorM3, double devicesM3, double openWaterM3, double sandWaterM3, double poreWaterM3) {

  /** All the water, cubic metres. */
  public double waterM3() {
    return openWaterM3 + sandWaterM3 + poreWaterM3;
  }

  /** What the parts add up to, less the box; zero but for rounding. */
  public double residualM3() {
    return waterM3() + rockSolidM3 + sandGrainsM3 + floorM3 + devicesM3 - boxM3;
  }

  /** The balance of a scene; {@code bodies} are those of its placed rocks. */
  public static Volumes of(Scene scene, List<RockBody> bodies) {
    double levelM = Math.min(scene.water().levelMm(), scene.tank().heightMm()) * 1e-3;
    double sandM = Math.min(scene.sand().depthMm() * 1e-3, levelM);
    double plan = scene.tank().lengthMm() * scene.tank().widthMm() * 1e-6;
    double mineral = scene.settings().get(Setting.MINERAL_DENSITY);

    double hullInSand = 0;
    double hullBelowLevel = 0;
    double solid = 0;
    for (RockBody body : bodies) {
      Optional<Placement> place = scene.placement(body.name());
      if (place.isEmpty()) continue;
      List<Hull> lobes = body.lobes().stream().map(h -> h.moved(place.get().pose())).toList();
      double whole = body.solid().volumeM3();
      double wet = below(lobes, levelM, whole);
      double solidOfRock = Math.min(whole, body.dryMassKg() / mineral + body.sealedVolumeM3());
      hullInSand += below(lobes, sandM, whole);
      hullBelowLevel += wet;
      solid += solidOfRock * wet / whole;
    }

    double floorInSand = floorSolid(scene, sandM);
    double floor = floorSolid(scene, levelM);
    double devicesInSand = devices(scene, sandM);
    double devices = devices(scene, levelM);
    double bulk = Math.max(0, plan * sandM - hullInSand - floorInSand - devicesInSand);
    double grainShare =
        Math.min(1, scene.sand().bulkKgPerL() / scene.settings().get(Setting.SAND_GRAIN_KG_PER_L));
    double open = plan * (levelM - sandM)
        - (hullBelowLevel - hullInSand) - (floor - floorInSand) - (devices - devicesInSand);
    return new Volumes(
        plan * levelM, solid, hullBelowLevel, bulk, bulk * grainShare, floor, devices,
        open, bulk * (1 - grainShare), hullBelowLevel - solid);
  }

  /** Volume of the union of convex pieces below a level. */
  static double below(List<Hull> lobes, double levelM, double wholeM3) {
    List<Hull> parts = new ArrayList<>();
    boolean cut = false;
    for (Hull lobe : lobes) {
      if (lobe.reach(Vec3.Z) <= levelM) {
        parts.add(lobe);
        continue;
      }
      cut = true;
      Polyhedra.clip(lobe, Vec3.Z, levelM).ifPresent(parts::add);
    }
    if (!cut) return wholeM3;
    if (parts.isEmpty()) return 0;
    // A heap of lobes too tangled for the exact union is taken as their sum, no more than the whole.
    return Math.min(wholeM3, Unions.massProperties(parts).map(MassProperties::volumeM3)
        .orElseGet(() -> parts.stream().mapToDouble(Polyhedra::volume).sum()));
  }

  /** Share of a louvre's area that is plastic: the walls round square cells. */
  static double solidShare(Floor floor) {
    return switch (floor.kind()) {
      case BARE -> 0;
      case SHEET -> 1;
      case GRID -> {
        double open = Math.max(0, 1 - floor.wallMm() / floor.cellMm());
        yield 1 - open * open;
      }
    };
  }

  private static double floorSolid(Scene scene, double levelM) {
    Floor floor = scene.floor();
    if (floor.kind() == Floor.Kind.BARE) return 0;
    Floor.Extent e = floor.extentIn(scene.tank());
    double height = Math.min(levelM, floor.thicknessMm() * 1e-3);
    double area = e.lengthMm() * e.widthMm() * 1e-6;
    for (FloorCuts.CutOut c : FloorCuts.cutOuts(scene)) area -= c.lengthMm() * c.widthMm() * 1e-6;
    return Math.max(0, area) * height * solidShare(floor);
  }

  private static double devices(Scene scene, double levelM) {
    double sum = 0;
    for (Scene.Device d : scene.devices()) {
      double x = overlap(d.atMm().x(), d.sizeMm().x(), scene.tank().lengthMm());
      double y = overlap(d.atMm().y(), d.sizeMm().y(), scene.tank().widthMm());
      double z = overlap(d.atMm().z(), d.sizeMm().z(), levelM * 1e3);
      sum += x * y * z * 1e-9;
    }
    return sum;
  }

  private static double overlap(double at, double size, double upTo) {
    return Math.max(0, Math.min(at + size, upTo) - Math.max(at, 0));
  }
}
