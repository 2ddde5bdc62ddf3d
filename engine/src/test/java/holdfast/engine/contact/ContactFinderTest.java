package holdfast.engine.contact;

import static holdfast.engine.contact.Bodies.box;
import static holdfast.engine.contact.Bodies.rock;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected figures are derived: plane geometry of boxes, given in a line beside each. */
class ContactFinderTest {
  private static final Offset<Double> EXACT = within(1e-12);

  private static ContactMap find(Solid... solids) {
    return ContactFinder.find(List.of(solids), ContactRules.DEFAULT);
  }

  private static Contact only(ContactMap map) {
    assertThat(map.contacts()).hasSize(1);
    return map.contacts().get(0);
  }

  private static void assertAt(Vec3 p, double x, double y, double z, Offset<Double> tolerance) {
    assertThat(p.x()).isCloseTo(x, tolerance);
    assertThat(p.y()).isCloseTo(y, tolerance);
    assertThat(p.z()).isCloseTo(z, tolerance);
  }

  private static boolean hasCorner(Contact c, double x, double y, double z, double tolerance) {
    return c.polygon().stream().anyMatch(p -> p.distanceTo(new Vec3(x, y, z)) <= tolerance);
  }

  private static Solid cubeAt(String name, double x, double y, double z) {
    return rock(name, box(0.1, 0.1, 0.1).moved(new Pose(new Vec3(x, y, z), Quat.IDENTITY)));
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "0.03, 0", "-0.03, 0.02", "0.05, -0.05", "0.09, 0.09", "-0.099, 0", "0.0137, -0.0911"})
  void boxOnBoxSharesTheOverlapOfTheirFaces(double dx, double dy) {
    Contact c = only(find(cubeAt("upper", 0.7 + dx, 0.4 + dy, 0.15), cubeAt("lower", 0.7, 0.4, 0.05)));
    assertAt(c.normal(), 0, 0, 1, EXACT);
    assertThat(c.distanceM()).isCloseTo(0, EXACT);
    // Derived: two squares of 0.1 m moved by (dx, dy) overlap from max of the lows to min of the highs.
    double x0 = 0.65 + Math.max(dx, 0);
    double x1 = 0.75 + Math.min(dx, 0);
    double y0 = 0.35 + Math.max(dy, 0);
    double y1 = 0.45 + Math.min(dy, 0);
    assertThat(c.polygon()).hasSize(4);
    for (double x : new double[] {x0, x1}) {
      for (double y : new double[] {y0, y1}) assertThat(hasCorner(c, x, y, 0.1, 1e-12)).as(x + " " + y).isTrue();
    }
    assertThat(c.areaM2()).isCloseTo((x1 - x0) * (y1 - y0), EXACT);
  }

  @Test
  void theNormalGoesOutOfTheSecondIntoTheFirst() {
    assertAt(only(find(cubeAt("lower", 0, 0, 0.05), cubeAt("upper", 0, 0, 0.15))).normal(), 0, 0, -1, EXACT);
    assertAt(only(find(cubeAt("left", 0, 0, 0), cubeAt("right", 0.1, 0, 0))).normal(), -1, 0, 0, EXACT);
  }

  @Test
  void cornersRunCounterClockwiseSeenFromTheTipOfTheNormal() {
    Contact c = only(find(cubeAt("lower", 0, 0, 0.05), cubeAt("upper", 0.02, 0, 0.15)));
    Vec3 turn = c.polygon().get(1).minus(c.polygon().get(0)).cross(c.polygon().get(2).minus(c.polygon().get(1)));
    assertThat(turn.dot(c.normal())).isPositive();
  }

  @Test
  void aBoxTurnedByHalfARightAngleSharesAnOctagon() {
    Hull turned = box(0.1, 0.1, 0.1).moved(new Pose(new Vec3(0, 0, 0.15), Quat.about(Vec3.Z, Math.PI / 4)));
    Contact c = only(find(rock("upper", turned), cubeAt("lower", 0, 0, 0.05)));
    assertThat(c.polygon()).hasSize(8);
    // Derived: a square and itself turned by 45 degrees share a regular octagon of inradius a/2: 2 (sqrt2 - 1) a^2.
    assertThat(c.areaM2()).isCloseTo(2 * (Math.sqrt(2) - 1) * 0.01, EXACT);
  }

  @Test
  void anEdgeOnAFaceIsALine() {
    double drop = 0.05 * Math.sqrt(2);
    Hull turned = box(0.1, 0.1, 0.1).moved(new Pose(new Vec3(0.3, 0.2, 0.1 + drop), Quat.about(Vec3.X, Math.PI / 4)));
    Contact c = only(find(rock("upper", turned), rock("slab", box(new Vec3(0, 0, 0), new Vec3(1, 1, 0.1)))));
    assertAt(c.normal(), 0, 0, 1, EXACT);
    assertThat(c.polygon()).hasSize(2);
    // Derived: the lowest edge runs along x through the middle, at the slab's top (the patch is midway between both).
    assertThat(hasCorner(c, 0.25, 0.2, 0.1, 1e-9)).isTrue();
    assertThat(hasCorner(c, 0.35, 0.2, 0.1, 1e-9)).isTrue();
  }

  @Test
  void aLeaningEdgeLiesWhereItTouches() {
    // Not symmetric about the edge: 20 degrees on one side, 70 on the other; the line is the edge, not the strip's middle.
    double a = Math.toRadians(20);
    double drop = 0.05 * (Math.cos(a) + Math.sin(a));
    double shift = 0.05 * (Math.cos(a) - Math.sin(a));
    Hull turned = box(0.1, 0.1, 0.1).moved(new Pose(new Vec3(0.3, 0.2, 0.1 + drop), Quat.about(Vec3.X, a)));
    Contact c = only(find(rock("upper", turned), rock("slab", box(new Vec3(0, 0, 0), new Vec3(1, 1, 0.1)))));
    assertThat(c.polygon()).hasSize(2);
    // Derived: turning (-s, -s) by a about x puts the lower edge at y = s (sin a - cos a), z = -s (sin a + cos a).
    assertThat(hasCorner(c, 0.25, 0.2 - shift, 0.1, 1e-9)).isTrue();
    assertThat(hasCorner(c, 0.35, 0.2 - shift, 0.1, 1e-9)).isTrue();
  }

  @Test
  void aCornerOnAFaceIsAPoint() {
    // Derived: stood on a corner, a cube's centre is half its body diagonal up.
    Quat onCorner = Quat.about(new Vec3(1, -1, 0).unit(), Math.acos(1 / Math.sqrt(3)));
    Hull turned = box(0.1, 0.1, 0.1).moved(new Pose(new Vec3(0.3, 0.2, 0.1 + 0.05 * Math.sqrt(3)), onCorner));
    Contact c = only(find(rock("upper", turned), rock("slab", box(new Vec3(0, 0, 0), new Vec3(1, 1, 0.1)))));
    assertThat(c.polygon()).hasSize(1);
    assertAt(c.polygon().get(0), 0.3, 0.2, 0.1, within(1e-9));
    assertAt(c.normal(), 0, 0, 1, EXACT);
  }

  @Test
  void crossedEdgesMeetInAPoint() {
    double half = 0.05 * Math.sqrt(2);
    Hull upper = box(0.1, 0.1, 0.1).moved(new Pose(new Vec3(0.01, 0.02, 2 * half), Quat.about(Vec3.Y, Math.PI / 4)));
    Hull lower = box(0.1, 0.1, 0.1).moved(new Pose(Vec3.ZERO, Quat.about(Vec3.X, Math.PI / 4)));
    Contact c = only(find(rock("upper", upper), rock("lower", lower)));
    assertAt(c.normal(), 0, 0, 1, EXACT);
    assertThat(c.polygon()).hasSize(1);
    // Derived: the lower ridge runs along x at y = 0, the upper keel along y at x = 0.01.
    assertAt(c.polygon().get(0), 0.01, 0, half, within(1e-9));
  }

  @Test
  void parallelEdgesMeetInALine() {
    double half = 0.05 * Math.sqrt(2);
    Quat turn = Quat.about(Vec3.X, Math.PI / 4);
    Hull upper = box(0.1, 0.1, 0.1).moved(new Pose(new Vec3(0.03, 0, 2 * half + 1e-4), turn));
    Hull lower = box(0.1, 0.1, 0.1).moved(new Pose(Vec3.ZERO, turn));
    Contact c = only(find(rock("upper", upper), rock("lower", lower)));
    // Derived: ridge under keel, 0.1 mm apart, sharing x from -0.02 to 0.05; no face normal measures this distance.
    assertAt(c.normal(), 0, 0, 1, within(1e-9));
    assertThat(c.distanceM()).isCloseTo(1e-4, EXACT);
    assertThat(c.polygon()).hasSize(2);
    assertThat(hasCorner(c, -0.02, 0, half + 0.5e-4, 1e-9)).isTrue();
    assertThat(hasCorner(c, 0.05, 0, half + 0.5e-4, 1e-9)).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"0.20, true", "0.29, true", "0.31, false", "2.4, false"})
  void hoveringUpToThreeTenthsBears(double gapMm, boolean bears) {
    ContactMap map = find(cubeAt("upper", 0, 0, 0.15 + gapMm * 1e-3), cubeAt("lower", 0, 0, 0.05));
    PairFit fit = map.fits().get(0);
    assertThat(fit.distanceM()).isCloseTo(gapMm * 1e-3, EXACT);
    assertThat(fit.kind()).isEqualTo(bears ? PairFit.Kind.TOUCHES : PairFit.Kind.HOVERS);
    assertThat(fit.onA().minus(fit.onB()).z()).isCloseTo(gapMm * 1e-3, EXACT);
    if (bears) {
      Contact c = only(map);
      assertThat(c.areaM2()).isCloseTo(0.01, EXACT);
      assertThat(c.polygon().get(0).z()).as("midway").isCloseTo(0.1 + gapMm * 0.5e-3, EXACT);
    } else {
      assertThat(map.contacts()).isEmpty();
    }
  }

  @Test
  void largeRocksBearOverAThousandthOfTheSmaller() {
    // Derived: a 0.4 m cube is 0.4 sqrt3 = 0.6928 m across, so 0.69 mm is still a joint and 0.70 mm is none.
    for (double gap : new double[] {0.69e-3, 0.70e-3}) {
      Hull upper = box(0.4, 0.4, 0.4).moved(new Pose(new Vec3(0, 0, 0.4 + gap), Quat.IDENTITY));
      assertThat(find(rock("upper", upper), rock("lower", box(0.4, 0.4, 0.4))).contacts()).hasSize(gap < 0.695e-3 ? 1 : 0);
    }
  }

  @Test
  void farApartIsNotListed() {
    ContactMap map = find(cubeAt("upper", 0, 0, 0.1551), cubeAt("lower", 0, 0, 0.05));
    assertThat(map.contacts()).isEmpty();
    assertThat(map.fits()).isEmpty();
  }

  @Test
  void anOverlapIsSaidAndMeasured() {
    ContactMap map = find(cubeAt("upper", 0.02, 0, 0.148), cubeAt("lower", 0, 0, 0.05));
    PairFit fit = map.fits(PairFit.Kind.OVERLAPS).get(0);
    assertThat(fit.distanceM()).isCloseTo(-0.002, EXACT);
    Contact c = only(map);
    assertThat(c.areaM2()).isCloseTo(0.08 * 0.1, EXACT);
    assertThat(c.polygon().get(0).z()).isCloseTo(0.099, EXACT);
    // A tenth of a millimetre is no finding.
    assertThat(find(cubeAt("upper", 0, 0, 0.1499), cubeAt("lower", 0, 0, 0.05)).fits().get(0).kind())
        .isEqualTo(PairFit.Kind.TOUCHES);
  }

  @Test
  void aPebbleOnASlabHasItsWholeFace() {
    Hull pebble = box(0.001, 0.001, 0.001).moved(new Pose(new Vec3(1.7, 0.31, 0.5005), Quat.IDENTITY));
    Contact c = only(find(rock("pebble", pebble), rock("slab", box(new Vec3(1.5, 0.1, 0), new Vec3(2.0, 0.6, 0.5)))));
    assertThat(c.polygon()).hasSize(4);
    assertThat(c.areaM2()).isCloseTo(1e-6, within(1e-15));
    assertAt(c.normal(), 0, 0, 1, EXACT);
  }

  @ParameterizedTest
  @CsvSource({"0.5", "1", "3"})
  void aTiltedFaceBearsOnAStrip(double degrees) {
    double t = Math.toRadians(degrees);
    // A 0.1 m cube tilted about its lower front edge, that edge on the slab.
    Hull tilted = box(new Vec3(0, 0, 0), new Vec3(0.1, 0.1, 0.1)).moved(new Pose(new Vec3(0.3, 0.3, 0.1), Quat.about(Vec3.X, t)));
    Contact c = only(find(rock("upper", tilted), rock("slab", box(new Vec3(0, 0, 0), new Vec3(1, 1, 0.1)))));
    // Derived: under the bottom face the gap grows by tan t from the edge, under the front face by cot t; the patch
    // tolerance h, 3e-4 of the cube's diagonal, is reached at h cot t on one side and h tan t on the other.
    double wide = 3e-4 * 0.1 * Math.sqrt(3) * (1 / Math.tan(t) + Math.tan(t));
    assertThat(c.polygon()).hasSize(4);
    assertThat(c.areaM2()).isCloseTo(0.1 * wide, within(1e-9));
  }

  @Test
  void anArchStandsOnTwoPatches() {
    Hull left = box(new Vec3(0, 0, 0.02), new Vec3(0.05, 0.08, 0.2));
    Hull right = box(new Vec3(0.25, 0, 0.02), new Vec3(0.3, 0.08, 0.2));
    Hull span = box(new Vec3(0, 0, 0.18), new Vec3(0.3, 0.08, 0.24));
    ContactMap map = find(rock("arch", left, right, span), rock("slab", box(new Vec3(-0.1, -0.1, 0), new Vec3(0.5, 0.5, 0.02))));
    assertThat(map.contacts()).extracting(Contact::lobeA).containsExactly(0, 1);
    assertThat(map.contacts()).allSatisfy(c -> assertThat(c.areaM2()).isCloseTo(0.05 * 0.08, EXACT));
    assertThat(map.fits()).hasSize(1);
    assertThat(map.between(1, 0)).hasSize(2);
  }

  @Test
  void bodiesThatShareOnlyACornerLineDoNotBear() {
    // Diagonal neighbours in a stack of blocks: their shadows along either face normal only graze each other.
    ContactMap map = find(cubeAt("upper right", 0.1, 0, 0.1), cubeAt("lower left", 0, 0, 0));
    assertThat(map.contacts()).isEmpty();
    assertThat(map.fits().get(0).kind()).isEqualTo(PairFit.Kind.TOUCHES);
  }

  @Test
  void fixedBodiesAreNotPairedWithEachOther() {
    Solid floor = new Solid("floor", Solid.Surface.GLASS, true, List.of(box(new Vec3(0, 0, -0.1), new Vec3(1, 1, 0))));
    Solid pane = new Solid("pane", Solid.Surface.GLASS, true, List.of(box(new Vec3(0, -0.1, 0), new Vec3(1, 0, 1))));
    ContactMap map = find(cubeAt("rock", 0.5, 0.05, 0.05), floor, pane);
    assertThat(map.contacts()).extracting(Contact::b).containsExactly(1, 2);
    assertAt(map.contacts().get(1).normal(), 0, 1, 0, EXACT);
  }

  /**
   * They bear within the larger of 0.3 mm and a thousandth of the smaller rock (definition): of cubes of 600 and 100 mm, 1039
   * and 173 mm across, two large ones within 1.04 mm, and a small one on a large one within 0.3 mm.
   */
  @Test
  void theSmallerRockTellsHowFarAJointReaches() {
    Hull large = Bodies.box(0.6, 0.6, 0.6);
    for (double[] c : new double[][] {{0.6, 1.02e-3, 1}, {0.6, 1.06e-3, 0}, {0.1, 0.29e-3, 1}, {0.1, 0.31e-3, 0}}) {
      Hull above = Bodies.box(c[0], c[0], c[0]).moved(new Pose(new Vec3(0, 0, 0.3 + c[0] / 2 + c[1]), Quat.IDENTITY));
      assertThat(ContactFinder.find(List.of(Bodies.rock("large", large), Bodies.rock("above", above)), ContactRules.DEFAULT)
          .contacts()).as("%.2f m cube, %.2f mm above", c[0], 1e3 * c[1]).hasSize((int) c[2]);
    }
  }
}
