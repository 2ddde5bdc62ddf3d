package holdfast.model.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock.Look;
import holdfast.model.scene.Rock.Measured;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

/** Expected values: the measured box itself, and what each look promises (derived from its definition). */
class StonesTest {
  private static final double[][] SIZES = {
    {240, 170, 140}, {300, 200, 120}, {320, 170, 60}, {260, 150, 50}, {130, 110, 100}, {90, 80, 210},
    {60, 400, 45}, {30, 20, 15}};

  private static List<Hull> stone(Look look, double[] s, long seed) {
    return Stones.lobes(new Measured(look, s[0], s[1], s[2], seed));
  }

  private static double reach(List<Hull> lobes, double x, double y, double z) {
    return lobes.stream().mapToDouble(h -> h.reach(new Vec3(x, y, z))).max().orElseThrow();
  }

  @ParameterizedTest
  @EnumSource(Look.class)
  void fillsTheMeasuredBoxAndStandsInItsMiddle(Look look) {
    for (double[] s : SIZES) {
      for (long seed = 0; seed < 6; seed++) {
        List<Hull> h = stone(look, s, seed);
        String name = look + " " + s[0] + " x " + s[1] + " x " + s[2] + " seed " + seed;
        assertThat(reach(h, 1, 0, 0)).as(name).isCloseTo(s[0] / 2000, within(1e-6));
        assertThat(reach(h, -1, 0, 0)).as(name).isCloseTo(s[0] / 2000, within(1e-6));
        assertThat(reach(h, 0, 1, 0)).as(name).isCloseTo(s[1] / 2000, within(1e-6));
        assertThat(reach(h, 0, -1, 0)).as(name).isCloseTo(s[1] / 2000, within(1e-6));
        assertThat(reach(h, 0, 0, 1)).as(name).isCloseTo(s[2] / 1000, within(1e-6));
        assertThat(reach(h, 0, 0, -1)).as(name).isCloseTo(0, within(1e-6));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(value = Look.class, names = "BOX", mode = Mode.EXCLUDE)
  void hasThirtyToSixtyFacesALobe(Look look) {
    for (double[] s : SIZES) {
      for (long seed = 0; seed < 6; seed++) {
        for (Hull h : stone(look, s, seed)) {
          assertThat(h.faces().size()).as("%s %s seed %d", look, s[0], seed).isBetween(30, 60);
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource(value = Look.class, names = "BOX", mode = Mode.EXCLUDE)
  void isNeitherABoxNorASplinter(Look look) {
    // Share of the box that is stone: a look's own range, wide enough for the odd seed.
    double least = look == Look.BRANCH ? 0.1 : look == Look.ARCH || look == Look.SPIKE ? 0.3 : 0.35;
    double most = look == Look.BRANCH ? 0.4 : look == Look.ARCH || look == Look.SPIKE ? 0.6 : 0.85;
    for (double[] s : SIZES) {
      for (long seed = 0; seed < 6; seed++) {
        double v = Unions.massProperties(stone(look, s, seed)).map(MassProperties::volumeM3).orElseThrow();
        assertThat(v / (s[0] * s[1] * s[2] * 1e-9)).as("%s %s seed %d", look, s[0], seed).isBetween(least, most);
      }
    }
  }

  /** Area of the exactly level faces that look up or down at the given height, as a share of length times width. */
  private static double levelShare(List<Hull> lobes, double[] s, double up, double heightM) {
    double area = 0;
    for (Hull h : lobes) {
      for (Hull.Face f : h.faces()) {
        if (Math.abs(f.normal().z() - up) > 1e-12) continue;
        List<Vec3> loop = h.loop(f);
        if (!loop.stream().allMatch(p -> p.z() == heightM)) continue;
        for (int i = 1; i + 1 < loop.size(); i++) {
          area += loop.get(i).minus(loop.get(0)).cross(loop.get(i + 1).minus(loop.get(0))).norm() / 2;
        }
      }
    }
    return area / (s[0] * s[1] * 1e-6);
  }

  @Test
  void restsOnLevelPlacesAndCarriesOnThem() {
    for (double[] s : SIZES) {
      for (long seed = 0; seed < 6; seed++) {
        String name = s[0] + " x " + s[1] + " x " + s[2] + " seed " + seed;
        double top = s[2] * 1e-3;
        for (Look look : List.of(Look.BLOCK, Look.SLAB, Look.SHELF)) {
          List<Hull> h = stone(look, s, seed);
          assertThat(levelShare(h, s, -1, 0)).as("%s below %s", look, name).isGreaterThan(look == Look.SHELF ? 0.08 : 0.2);
          assertThat(levelShare(h, s, 1, top)).as("%s above %s", look, name).isGreaterThan(0.2);
        }
        assertThat(levelShare(stone(Look.ROUND, s, seed), s, -1, 0)).as("round below %s", name).isGreaterThan(0.05);
        // A box lower than half its length holds no spike; there the foot may be broad.
        if (2 * s[2] >= Math.max(s[0], s[1])) {
          assertThat(levelShare(stone(Look.SPIKE, s, seed), s, -1, 0)).as("spike below %s", name).isBetween(0.001, 0.15);
        }
      }
    }
  }

  @Test
  void anArchStandsOnTwoLegsWithRoomBetween() {
    double[] s = {300, 140, 200};
    for (long seed = 0; seed < 30; seed++) {
      List<Hull> h = stone(Look.ARCH, s, seed);
      assertThat(h).hasSize(4);
      for (int leg = 0; leg < 2; leg++) {
        assertThat(levelShare(List.of(h.get(leg)), s, -1, 0)).as("foot %d seed %d", leg, seed).isGreaterThan(0.03);
      }
      // Nothing reaches the middle of the passage up to a third of the height.
      for (Hull lobe : h) {
        for (double z = 0; z < 0.07; z += 0.01) {
          Vec3 p = new Vec3(0, 0, z);
          assertThat(lobe.faces().stream().anyMatch(f -> f.normal().dot(p) > f.offset())).as("seed %d", seed).isTrue();
        }
      }
    }
  }

  @Test
  void aBranchHasAStemAndThreeToFiveArmsThatHoldTogether() {
    double[] s = {170, 140, 150};
    for (long seed = 0; seed < 30; seed++) {
      List<Hull> h = stone(Look.BRANCH, s, seed);
      assertThat(h.size()).isBetween(4, 6);
      for (int i = 1; i < h.size(); i++) {
        assertThat(holdfast.model.geom.Polyhedra.intersect(h.get(0), h.get(i))).as("arm %d seed %d", i, seed).isPresent();
      }
    }
  }

  @Test
  void theSeedDecides() {
    Measured form = new Measured(Look.SLAB, 300, 200, 120, 7);
    List<Hull> a = Stones.lobes(form);
    List<Hull> b = Stones.lobes(form);
    assertThat(a.get(0).corners()).isEqualTo(b.get(0).corners());
    assertThat(a.get(0).faces()).isEqualTo(b.get(0).faces());
    for (long seed = 8; seed < 20; seed++) {
      assertThat(Stones.lobes(new Measured(Look.SLAB, 300, 200, 120, seed)).get(0).corners()).isNotEqualTo(a.get(0).corners());
    }
  }

  @Test
  void aBoxIsExact() {
    Hull h = Stones.lobes(Rocks.box(100, 200, 50)).get(0);
    assertThat(h.corners()).containsExactlyInAnyOrderElementsOf(
        Rocks.boxMm(-50, -100, 0, 100, 200, 50).stream().map(p -> p.times(1e-3)).toList());
    assertThat(h.faces()).hasSize(6);
  }
}
