package holdfast.engine.pane;

import holdfast.engine.pane.PaneReport.Slip;
import holdfast.engine.pane.PaneReport.Strike;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.List;

/**
 * A rock let slip over the middle of the pane, on bare glass and on grid or sheet: to compare the two. The stone's energy goes
 * into its contact, the cover's squeeze and the pane's bending; the pane's own inertia, which stiffens a short blow, and any
 * crushing, which softens it, are left out.
 */
final class PaneStrike {
  /** Young's modulus of louvre and sheet: polystyrene and acrylic, 3 GPa (memory). */
  private static final double PLASTIC_PA = 3e9;
  private static final double PLASTIC_POISSON = 0.35;

  private final Scene scene;
  private final Plate plate;
  private final PlateModel model;

  PaneStrike(Scene scene, Plate plate, PlateModel model) {
    this.scene = scene;
    this.plate = plate;
    this.model = model;
  }

  Slip slip(PaneLoad.HeldRock rock) {
    double heightMm = scene.settings().get(Setting.DROP_MM);
    double speed = StonePoint.fallSpeed(1e-3 * heightMm);
    double radiusM = 1e-3 * scene.settings().get(Setting.POINT_RADIUS_MM);
    boolean sheet = scene.floor().kind() == Floor.Kind.SHEET;
    Floor cover = sheet ? scene.floor() : BottomPane.Covers.grid(scene);
    return new Slip(rock.name(), rock.massKg(), heightMm, onGlass(rock.massKg(), speed, radiusM),
        onCover(rock.massKg(), speed, radiusM, cover), sheet ? "sheet" : "louvre grid", scene.floor().kind() != Floor.Kind.BARE);
  }

  private Strike onGlass(double massKg, double speed, double radiusM) {
    StonePoint point = StonePoint.limestoneOn(plate.youngPa(), plate.poisson());
    double rigid = point.drop(radiusM, massKg, speed, Double.POSITIVE_INFINITY).peakN();
    // The touching circle is far smaller than the pane is thick: the least equivalent radius stands for it.
    PlateModel.UnitLoad load = middle(Patch.equivalentRadiusM(0, plate.thicknessM()));
    double peak = point.drop(radiusM, massKg, speed, stiffness(load)).peakN();
    return new Strike(rigid, peak, bending(load, peak), 1e-6 * point.press(radiusM, peak).ringPa());
  }

  private Strike onCover(double massKg, double speed, double radiusM, Floor cover) {
    StonePoint point = StonePoint.limestoneOn(PLASTIC_PA, PLASTIC_POISSON);
    double spot = 0.5e-3 * scene.settings().get(Setting.SPOT_MM);
    double height = Math.max(1e-4, 1e-3 * cover.thicknessMm());
    double spread = height * (cover.kind() == Floor.Kind.GRID ? FloorSpread.GRID_SPREAD : FloorSpread.SHEET_SPREAD);
    double area = cover.kind() == Floor.Kind.GRID
        ? 1e-3 * cover.wallMm() * 2 * (spot + spread) : Math.PI * (spot + spread) * (spot + spread);
    double squeeze = PLASTIC_PA * area / height;
    double rigid = point.drop(radiusM, massKg, speed, squeeze).peakN();
    PlateModel.UnitLoad load = middle(Patch.equivalentRadiusM(spot + spread, plate.thicknessM()));
    double spring = 1 / (1 / squeeze + 1 / stiffness(load));
    double peak = point.drop(radiusM, massKg, speed, spring).peakN();
    return new Strike(rigid, peak, bending(load, peak), 0);
  }

  private PlateModel.UnitLoad middle(double radiusM) {
    return model.unitLoad(Patch.disc(0.5 * plate.lengthM(), 0.5 * plate.widthM(), radiusM));
  }

  /** Newtons a metre of deflection under the patch. */
  private double stiffness(PlateModel.UnitLoad load) {
    Point2 c = load.patch().centre();
    return 1 / model.deflection(List.of(load), new double[] {1}, 0).atM(c.x(), c.y());
  }

  private double bending(PlateModel.UnitLoad load, double forceN) {
    Point2 c = load.patch().centre();
    return 1e-6 * plate.surfaceStressPa(Math.abs(model.bending(load, c.x(), c.y()).principal()) * forceN);
  }
}
