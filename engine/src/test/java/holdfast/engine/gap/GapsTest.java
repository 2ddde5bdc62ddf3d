package holdfast.engine.gap;

import static holdfast.engine.gap.GapScenes.box;
import static holdfast.engine.gap.GapScenes.rock;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock.Kind;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Expected figures are derived: distances of boxes in a tank of 600 x 300 x 400 mm with 360 mm of water. */
class GapsTest {
  private static final Offset<Double> EXACT = within(1e-12);

  @Test
  void distancesToTheFourPanes() {
    Scene s = GapScenes.scene(Settings.DEFAULT);
    Gaps g = Gaps.of(s, List.of(rock(0, "block", Kind.DRY, box(120, 45, 0, 220, 145, 100))));
    assertThat(g.panes()).extracting(Gaps.PaneGap::side).containsExactly(Side.FRONT, Side.RIGHT, Side.BACK, Side.LEFT);
    assertThat(g.panes().get(0).distanceM()).isCloseTo(0.045, EXACT);
    assertThat(g.panes().get(1).distanceM()).isCloseTo(0.380, EXACT);
    assertThat(g.panes().get(2).distanceM()).isCloseTo(0.155, EXACT);
    assertThat(g.panes().get(3).distanceM()).isCloseTo(0.120, EXACT);
    assertThat(g.panes().get(0).onPane().y()).isCloseTo(0, EXACT);
    assertThat(g.panes().get(1).onPane().x()).isCloseTo(0.6, EXACT);
    // Viewed from front and left (50 mm), the rest 40 mm; the back may be touched.
    assertThat(g.panes()).extracting(Gaps.PaneGap::requiredM).containsExactly(0.05, 0.04, 0.0, 0.05);
    assertThat(g.panes()).extracting(Gaps.PaneGap::kept).containsExactly(false, true, true, true);
    assertThat(g.panes()).extracting(Gaps.PaneGap::mayTouch).containsExactly(false, false, true, false);
  }

  @Test
  void aThickCleanerRaisesEveryLimit() {
    Scene s = GapScenes.scene(Settings.DEFAULT.with(Setting.GAP_CLEANER_MM, 85));
    assertThat(Gaps.requiredM(s, Side.FRONT)).isCloseTo(0.085, EXACT);
    assertThat(Gaps.requiredM(s, Side.RIGHT)).isCloseTo(0.085, EXACT);
    assertThat(Gaps.requiredM(s, Side.BACK)).isZero();
  }

  @Test
  void aTurnedRockIsNearestWithItsCorner() {
    Hull turned = box(-50, -50, -50, 50, 50, 50).moved(new Pose(new Vec3(0.3, 0.15, 0.1), Quat.about(Vec3.Z, Math.PI / 4)));
    Gaps.PaneGap front = Gaps.of(GapScenes.scene(Settings.DEFAULT), List.of(rock(0, "block", Kind.DRY, turned))).panes().get(0);
    assertThat(front.distanceM()).isCloseTo(0.15 - 0.05 * Math.sqrt(2), EXACT);
    assertThat(front.onRock().x()).isCloseTo(0.3, EXACT);
  }

  @Test
  void aDeviceIsMeasuredCornerToCorner() {
    Scene.Device pump = new Scene.Device("pump", new Vec3(400, 200, 150), new Vec3(60, 50, 40), 75);
    Scene s = GapScenes.scene(Settings.DEFAULT, pump);
    Gaps g = Gaps.of(s, List.of(rock(0, "block", Kind.DRY, box(100, 50, 0, 370, 160, 138))));
    Gaps.DeviceGap d = g.devices().get(0);
    // Derived: 30, 40 and 12 mm apart along the axes: the square root of 900 + 1600 + 144.
    assertThat(d.distanceM()).isCloseTo(Math.sqrt(0.03 * 0.03 + 0.04 * 0.04 + 0.012 * 0.012), EXACT);
    assertThat(d.onDevice().minus(new Vec3(0.4, 0.2, 0.15)).norm()).isLessThan(1e-12);
    assertThat(d.kept()).isFalse();
  }

  @Test
  void heightAgainstTwoThirdsOfTheWater() {
    Gaps g = Gaps.of(GapScenes.scene(Settings.DEFAULT), List.of(
        rock(0, "tall", Kind.DRY, box(100, 100, 0, 200, 200, 241)), rock(1, "low", Kind.DRY, box(300, 100, 0, 400, 200, 239))));
    assertThat(g.heights().get(0).limitM()).isCloseTo(0.24, EXACT);
    assertThat(g.heights()).extracting(Gaps.RockHeight::kept).containsExactly(false, true);
    assertThat(g.heights().get(0).topM()).isCloseTo(0.241, EXACT);
  }

  @Test
  void anArmReachesFromTheRim() {
    Gaps.ArmReach r = Gaps.of(GapScenes.scene(Settings.DEFAULT.with(Setting.REACH_MM, 350)),
        List.of(rock(0, "block", Kind.DRY, box(100, 100, 0, 200, 200, 100)))).reaches().get(0);
    // Derived: straight down from the open rim at 400 mm.
    assertThat(r.nearestM()).isCloseTo(0.3, EXACT);
    assertThat(r.farthestM()).isCloseTo(0.4, EXACT);
    assertThat(r.kept()).isFalse();
  }

  @Test
  void growingRoomUpToTheSurface() {
    GrowingRoom room = Gaps.of(GapScenes.scene(Settings.DEFAULT),
        List.of(rock(0, "dry", Kind.DRY, box(0, 0, 0, 50, 50, 50)), rock(1, "live", Kind.LIVE, box(100, 100, 0, 200, 200, 300)))).rooms().get(0);
    assertThat(room.name()).isEqualTo("live");
    assertThat(room.leastM()).isCloseTo(0.06, EXACT);
    assertThat(room.under()).isEqualTo(GrowingRoom.SURFACE);
    assertThat(room.openShare()).isEqualTo(1);
    assertThat(room.kept()).isTrue();
  }

  @Test
  void aShelfOverHalfOfALivingRock() {
    List<holdfast.model.shape.PlacedRock> rocks = List.of(
        rock(0, "live", Kind.LIVE, box(100, 100, 0, 200, 200, 100)),
        rock(1, "shelf", Kind.DRY, box(150, 80, 130, 300, 220, 160)));
    GrowingRoom room = Gaps.of(GapScenes.scene(Settings.DEFAULT), rocks).rooms().get(0);
    assertThat(room.leastM()).isCloseTo(0.03, EXACT);
    assertThat(room.under()).isEqualTo("shelf");
    assertThat(room.openShare()).isCloseTo(0.5, within(1e-9));
    assertThat(room.kept()).isFalse();
  }

  @Test
  void aRockThatBearsOnItCoversButIsNoRoof() {
    List<holdfast.model.shape.PlacedRock> rocks = List.of(
        rock(0, "live", Kind.LIVE, box(100, 100, 0, 200, 200, 100)),
        rock(1, "hat", Kind.DRY, box(100, 100, 100, 125, 200, 160)));
    GrowingRoom room = Gaps.of(GapScenes.scene(Settings.DEFAULT), rocks).rooms().get(0);
    assertThat(room.leastM()).isCloseTo(0.26, EXACT);
    assertThat(room.openShare()).isCloseTo(0.75, within(1e-9));
  }
}
