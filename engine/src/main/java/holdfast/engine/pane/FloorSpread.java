package holdfast.engine.pane;

import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;
import java.util.List;

/**
 * From a foot to the patch of glass that takes its force. Each step is an assumption and is said so in the report.
 *
 * <ul>
 *   <li>Bare glass: the whole force on one spot ({@code glass.spot_mm} wide), at the end of the foot that stresses the pane
 *       more: toward the middle of a pane on four edges, toward the edge of a bedded one.
 *   <li>Louvre grid: the force goes down the walls under the contact patch, drawn in by {@code contact.inset_mm} and never
 *       under one spot. A wall is a beam of height h on its own squeeze, stiffness E w / h to the metre: it spreads a force
 *       over its length (4 E I h / E w)^(1/4) = (h^4 / 3)^(1/4) = 0.76 h to either side, whatever the plastic.
 *   <li>Solid sheet: the same for a plate of thickness h on its own squeeze, E / h: a point acts as over the radius
 *       sqrt(8 / pi) L with L^4 = h^4 / 12 (1 - nu^2), 0.88 h.
 *   <li>Sand is not counted on: it shifts and is dug away. Foam under the tank acts as a bed, not here.
 * </ul>
 */
final class FloorSpread {
  static final double GRID_SPREAD = 0.76;
  static final double SHEET_SPREAD = 0.88;

  /** A foot this far above the floor's top bears on sand, metres. */
  private static final double ON_SAND_M = 1e-3;

  /** A patch that leaves the pane is cut off this far inside its edge, metres. */
  private static final double INSIDE_M = 1e-4;

  private final Floor floor;
  private final Floor.Extent extent;
  private final Plate plate;
  /** Height of the floor that the feet were found on; another floor is tried under the same feet. */
  private final double foundTopM;
  private final boolean asFound;
  private final double offsetM;
  private final double spotRadiusM;
  private final double insetM;

  FloorSpread(Scene scene, Floor floor, Plate plate) {
    Tank tank = scene.tank();
    this.floor = floor;
    this.extent = floor.extentIn(tank);
    this.plate = plate;
    this.foundTopM = 1e-3 * scene.floor().topMm();
    this.asFound = floor.equals(scene.floor());
    this.offsetM = offsetM(tank);
    this.spotRadiusM = 0.5e-3 * scene.settings().get(Setting.SPOT_MM);
    this.insetM = 1e-3 * scene.settings().get(Setting.CONTACT_INSET_MM);
  }

  /** The pane reaches to the middle of the side panes, where it is carried: half a side pane beyond the inner corner. */
  static double offsetM(Tank tank) {
    return 0.5e-3 * tank.sideGlassMm();
  }

  /**
   * How one foot bears.
   *
   * @param foot outline of the contact, plate axes
   * @param patch what bends the pane, the rule for thick panes applied
   * @param contactM2 area of the contact as found
   * @param bearingM2 area of what presses on the glass: the spot, walls of the grid, or the sheet under the foot
   * @param bare nothing lies between this foot and the glass
   * @param onSand it bears on sand now
   */
  record Bearing(List<Point2> foot, Patch patch, double contactM2, double bearingM2, boolean bare, boolean onSand) {}

  Bearing bearing(FootLoad foot, boolean towardEdge) {
    List<Point2> found = Outline.hull(
        foot.polygon().stream().map(p -> new Point2(p.x() + offsetM, p.y() + offsetM)).toList());
    double contact = found.size() < 3 ? 0 : Outline.area(found);
    double z = foot.polygon().stream().mapToDouble(p -> p.z()).average().orElseThrow();
    boolean onSand = z > foundTopM + ON_SAND_M;
    boolean beside = !covered(Outline.centroid(found)) || (asFound && z < 0.5 * foundTopM);
    boolean bare = floor.kind() == Floor.Kind.BARE || beside;
    if (bare) return bareBearing(found, contact, onSand, towardEdge);
    List<Point2> drawnIn = drawnIn(found);
    double spread = spreadM();
    Patch patch = patch(Outline.grown(drawnIn, spread));
    return new Bearing(found, patch.forThickness(plate.thicknessM()), contact, underFloor(patch, spread), false, onSand);
  }

  /** The same foot, all its force on one spot of the present floor. */
  Bearing onOneSpot(FootLoad foot, boolean towardEdge) {
    Bearing usual = bearing(foot, towardEdge);
    if (usual.bare()) return usual;
    Point2 at = Outline.centroid(usual.foot());
    Patch patch = patch(Outline.disc(at, spotRadiusM + spreadM()));
    return new Bearing(usual.foot(), patch.forThickness(plate.thicknessM()), usual.contactM2(), underFloor(patch, spreadM()),
        false, usual.onSand());
  }

  private Bearing bareBearing(List<Point2> found, double contact, boolean onSand, boolean towardEdge) {
    Point2 at = Outline.centroid(found);
    double cx = 0.5 * plate.lengthM();
    double cy = 0.5 * plate.widthM();
    for (Point2 p : found) {
      boolean worse = towardEdge
          ? plate.edgeDistanceM(p.x(), p.y()) < plate.edgeDistanceM(at.x(), at.y()) - 1e-9
          : Math.hypot(p.x() - cx, p.y() - cy) < Math.hypot(at.x() - cx, at.y() - cy) - 1e-9;
      if (worse) at = p;
    }
    // The spot itself stays on the pane.
    double keep = spotRadiusM + INSIDE_M;
    Point2 inside = new Point2(
        Math.min(Math.max(at.x(), keep), plate.lengthM() - keep), Math.min(Math.max(at.y(), keep), plate.widthM() - keep));
    Patch spot = Patch.disc(inside.x(), inside.y(), spotRadiusM);
    return new Bearing(found, spot.forThickness(plate.thicknessM()), contact, spot.areaM2(), true, onSand);
  }

  private boolean covered(Point2 p) {
    double x = 1e3 * (p.x() - offsetM);
    double y = 1e3 * (p.y() - offsetM);
    return x >= extent.xMm() && x <= extent.xMm() + extent.lengthMm()
        && y >= extent.yMm() && y <= extent.yMm() + extent.widthMm();
  }

  /** Shrunk about the centroid by the inset, at least the spot. */
  private List<Point2> drawnIn(List<Point2> found) {
    Point2 centre = Outline.centroid(found);
    List<Point2> spot = Outline.disc(centre, spotRadiusM);
    double inner = Outline.inradius(found, centre);
    if (inner <= insetM) return spot;
    List<Point2> shrunk = Outline.scaled(found, centre, 1 - insetM / inner);
    return Outline.area(shrunk) < Outline.area(spot) ? spot : shrunk;
  }

  private double spreadM() {
    return 1e-3 * floor.thicknessMm() * (floor.kind() == Floor.Kind.GRID ? GRID_SPREAD : SHEET_SPREAD);
  }

  private Patch patch(List<Point2> ring) {
    List<Point2> kept = Outline.clipped(ring, INSIDE_M, INSIDE_M, plate.lengthM() - INSIDE_M, plate.widthM() - INSIDE_M);
    if (kept.size() < 3 || !(Outline.area(Outline.hull(kept)) > 0)) {
      Point2 c = Outline.centroid(ring);
      double keep = spotRadiusM + INSIDE_M;
      return Patch.disc(Math.min(Math.max(c.x(), keep), plate.lengthM() - keep),
          Math.min(Math.max(c.y(), keep), plate.widthM() - keep), spotRadiusM);
    }
    return Patch.of(kept);
  }

  /** Area that presses on the glass within a patch: the walls of a grid, at least one; all of a sheet. */
  private double underFloor(Patch patch, double spreadM) {
    if (floor.kind() == Floor.Kind.SHEET) return patch.areaM2();
    double wall = 1e-3 * floor.wallMm();
    double open = Math.max(0, 1 - floor.wallMm() / floor.cellMm());
    double walls = (1 - open * open) * patch.areaM2();
    return Math.max(walls, wall * 2 * (spotRadiusM + spreadM));
  }
}
