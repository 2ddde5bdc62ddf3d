package holdfast.engine.pane;

import holdfast.engine.pane.PaneReport.Remedy;
import holdfast.model.scene.Floor;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What would bring the governing case under its limit, each tried on the plate and given with what it leaves. */
final class PaneRemedies {
  private static final double[] FOOT_RADII_MM = {10, 15, 20, 30, 40, 50, 60, 80, 100};
  private static final double[] MOVES_MM = {25, 50, 75, 100, 150, 200, 300};

  private final BottomPane pane;
  private final BottomPane.Solved governing;
  private final double limitNmm2;

  PaneRemedies(BottomPane pane, BottomPane.Solved governing) {
    this.pane = pane;
    this.governing = governing;
    this.limitNmm2 = pane.strength().limitNmm2(governing.stress().load().duration());
  }

  /** Nothing unless the rocks take the governing case over its limit. */
  List<Remedy> list() {
    List<Remedy> all = new ArrayList<>();
    if (governing.foot() < 0 || !PaneFindings.rocksOver(governing.stress())) return all;
    if (pane.scene().floor().kind() == Floor.Kind.BARE) {
      double after = pane.totalWithFloorNmm2(governing, BottomPane.Covers.grid(pane.scene()));
      all.add(new Remedy(Remedy.Kind.GRID, "lay a louvre grid under it", after / limitNmm2));
    }
    widen(all);
    move(all);
    shim(all);
    return all;
  }

  private double force() {
    return governing.worst().peak().forcesN()[governing.foot()];
  }

  private Patch patch() {
    return new FloorSpread(pane.scene(), pane.scene().floor(), pane.plate())
        .bearing(pane.foot(governing.foot()), governing.bed().foam()).patch();
  }

  private double utilisation(Point2 at, Patch patch) {
    Bending b = governing.solver().withFoot(at, governing.worst(), governing.evenPa(), governing.foot(), patch, force());
    return pane.stressNmm2(b.principal()) / limitNmm2;
  }

  /** A bedded foot: the widths in turn, the first that will do, else the widest if it helps at all. */
  private void widen(List<Remedy> all) {
    Patch now = patch();
    Point2 c = now.centre();
    for (double radiusMm : FOOT_RADII_MM) {
      double radius = 1e-3 * radiusMm;
      if (radius <= now.radiusM() || pane.plate().edgeDistanceM(c.x(), c.y()) < radius) continue;
      double after = utilisation(c, Patch.disc(c.x(), c.y(), radius));
      if (after <= 1) {
        all.add(new Remedy(Remedy.Kind.WIDER_FOOT,
            String.format(Locale.ROOT, "give it a bedded foot %.0f mm across", 2 * radiusMm), after));
        return;
      }
    }
  }

  /** Toward the nearest edge on four edges, where the pane bends less; toward the middle on foam, where an edge is weak. */
  private void move(List<Remedy> all) {
    Patch now = patch();
    Point2 c = now.centre();
    Plate plate = pane.plate();
    double[] gaps = {c.x(), plate.lengthM() - c.x(), c.y(), plate.widthM() - c.y()};
    String[] toward = {"left", "right", "front", "back"};
    String[] away = {"right", "left", "back", "front"};
    int side = 0;
    for (int i = 1; i < 4; i++) if (gaps[i] < gaps[side]) side = i;
    boolean inward = governing.bed().foam();
    double sign = (side % 2 == 0 ? -1 : 1) * (inward ? -1 : 1);
    for (double mm : MOVES_MM) {
      double by = 1e-3 * mm;
      double room = inward ? 0.5 * (side < 2 ? plate.lengthM() : plate.widthM()) : gaps[side] - now.radiusM();
      if (by > room) return;
      double dx = side < 2 ? sign * by : 0;
      double dy = side < 2 ? 0 : sign * by;
      Patch moved = Patch.of(Outline.moved(now.ring(), dx, dy));
      double after = Math.max(utilisation(moved.centre(), moved), utilisation(governing.worst().at(), moved));
      if (after <= 1) {
        all.add(new Remedy(Remedy.Kind.MOVE,
            String.format(Locale.ROOT, "move it %.0f mm toward the %s", mm, (inward ? away : toward)[side]), after));
        return;
      }
    }
  }

  /** Three shims under the rim of the foot, a third of the force on each. */
  private void shim(List<Remedy> all) {
    List<Point2> foot = new FloorSpread(pane.scene(), pane.scene().floor(), pane.plate())
        .bearing(pane.foot(governing.foot()), governing.bed().foam()).foot();
    Patch now = patch();
    Point2 c = Outline.centroid(foot);
    double inner = Outline.inradius(foot, c);
    if (inner < 2 * now.semiMinorM()) return;
    double worst = 0;
    for (int at = 0; at < 3; at++) {
      Bending sum = Bending.ZERO;
      Point2 place = shimAt(c, inner, at);
      for (int k = 0; k < 3; k++) {
        Point2 p = shimAt(c, inner, k);
        Patch spot = Patch.of(Outline.moved(now.ring(), p.x() - now.centre().x(), p.y() - now.centre().y()));
        Bending b = governing.solver().withFoot(place, governing.worst(), k == 0 ? governing.evenPa() : 0, governing.foot(), spot,
            force() / 3);
        // The other feet are in each sum: count them once.
        Bending others = k == 0 ? Bending.ZERO
            : governing.solver().withFoot(place, governing.worst(), 0, governing.foot(), spot, 0);
        sum = sum.plusTimes(1, b).plusTimes(-1, others);
      }
      worst = Math.max(worst, pane.stressNmm2(sum.principal()) / limitNmm2);
    }
    if (worst < governing.stress().utilisation()) {
      all.add(new Remedy(Remedy.Kind.SHIM, "bed it on three shims set well apart", worst));
    }
  }

  private static Point2 shimAt(Point2 centre, double innerM, int number) {
    double angle = Math.PI / 2 + number * 2 * Math.PI / 3;
    return new Point2(centre.x() + 0.8 * innerM * Math.cos(angle), centre.y() + 0.8 * innerM * Math.sin(angle));
  }
}
