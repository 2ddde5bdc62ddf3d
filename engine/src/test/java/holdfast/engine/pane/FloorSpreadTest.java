package holdfast.engine.pane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank.BottomSupport;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class FloorSpreadTest {
  private static FloorSpread.Bearing bearing(Floor floor, double radiusM, boolean towardEdge) {
    Scene scene = PaneScenes.scene(PaneScenes.tank(BottomSupport.EDGES, 10), floor, 500);
    Plate plate = BottomPane.plateOf(scene);
    return new FloorSpread(scene, floor, plate).bearing(PaneScenes.foot("slab", floor, 0.2, 0.15, radiusM, 0, 10), towardEdge);
  }

  /**
   * A beam on its own squeeze: (4 (w h^3 / 12) (h / w))^(1/4) = (1 / 3)^(1/4) h. A plate on its own squeeze: p0 = P / (8 L^2) as
   * for the radius sqrt(8 / pi) L, L^4 = h^4 / 12 (1 - nu^2), nu 0.35 (both derived).
   */
  @Test
  void spreadOfGridAndSheet() {
    assertThat(FloorSpread.GRID_SPREAD).isCloseTo(Math.pow(1.0 / 3, 0.25), within(0.005));
    double sheet = Math.sqrt(8 / Math.PI) * Math.pow(1 / (12 * (1 - 0.35 * 0.35)), 0.25);
    assertThat(FloorSpread.SHEET_SPREAD).isCloseTo(sheet, within(0.01)).isLessThan(sheet);
  }

  /** Bare: a disc 10 mm wide, at the corner nearer the middle, or nearer the edge. */
  @Test
  void bareGlassTakesItOnOneSpot() {
    FloorSpread.Bearing inward = bearing(PaneScenes.BARE, 0.04, false);
    FloorSpread.Bearing outward = bearing(PaneScenes.BARE, 0.04, true);
    assertThat(inward.bearingM2()).isCloseTo(Math.PI * 25e-6, Percentage.withPercentage(0.1));
    assertThat(inward.bare()).isTrue();
    Point2 middle = new Point2(0.374, 0.224);
    assertThat(inward.patch().centre().distanceTo(middle)).isLessThan(outward.patch().centre().distanceTo(middle));
  }

  /** Pentagon of radius 40 mm, 2.378 r^2 in area; in by 5 mm, out by 7.6 mm; 1 - (11.2 / 12.7)^2 of it walls (derived). */
  @Test
  void gridWallsCarryTheFoot() {
    FloorSpread.Bearing b = bearing(Floor.DEFAULT, 0.04, false);
    double drawnIn = 0.04 * Math.cos(Math.PI / 5) - 0.005;
    double radius = drawnIn / Math.cos(Math.PI / 5);
    double perimeter = 10 * radius * Math.sin(Math.PI / 5);
    double grown = 2.3776 * radius * radius + perimeter * 0.0076 + Math.PI * 0.0076 * 0.0076;
    assertThat(b.patch().areaM2()).isCloseTo(grown, Percentage.withPercentage(3));
    assertThat(b.bearingM2()).isCloseTo(b.patch().areaM2() * (1 - Math.pow(11.2 / 12.7, 2)), Percentage.withPercentage(0.1));
    assertThat(b.contactM2()).isCloseTo(2.3776 * 0.0016, Percentage.withPercentage(0.1));
  }

  /** A foot smaller than the inset still has its spot. */
  @Test
  void smallFeetKeepTheSpot() {
    FloorSpread.Bearing b = bearing(Floor.DEFAULT, 0.002, false);
    assertThat(b.patch().areaM2()).isCloseTo(Math.PI * Math.pow(0.005 + 0.0076, 2), Percentage.withPercentage(3));
  }

  @Test
  void patchesStayOnThePane() {
    Scene scene = PaneScenes.scene(PaneScenes.tank(BottomSupport.EDGES, 10), Floor.DEFAULT, 500);
    Plate plate = BottomPane.plateOf(scene);
    Floor whole = new Floor(Floor.Kind.GRID, 12.7, 1.5, 10, 0, Optional.empty());
    FloorSpread spread = new FloorSpread(scene.withPlacements(List.of()), whole, plate);
    for (double[] at : new double[][] {{0, 0}, {0.74, 0.2}, {0.001, 0.439}}) {
      Patch patch = spread.bearing(PaneScenes.foot("slab", whole, at[0], at[1], 0.03, 0, 10), true).patch();
      assertThat(patch.ring()).allSatisfy(p -> assertThat(plate.edgeDistanceM(p.x(), p.y())).isPositive());
    }
  }
}
