package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.edit.Scenes;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.Twist;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * The slow showing of a first movement. Expected places are the rigid motion of a block that tilts about its lower right
 * edge (derived: every point keeps its distance to the edge, and the centre turns by angle = way / speed x spin).
 */
class FirstMovementTest {
  private static final long START = 5_000_000_000L;
  /** The block of 100 x 100 x 80 mm on the slab: its lower right edge runs along y at x = 350, z = 70 mm. */
  private static final Vec3 EDGE = new Vec3(0.35, 0.2, 0.07);
  private static final Vec3 CENTRE = new Vec3(0.3, 0.2, 0.11);

  private static Tableau tableau() {
    return new SceneStones(name -> ScanFiles.load(java.nio.file.Path.of(""), name)).tableau(Scenes.small());
  }

  /** Tilting about the edge toward the right; the farthest corner, 128.1 mm away, at 1 m/s. */
  private static Mechanism tilting() {
    double spin = 1 / Math.hypot(0.1, 0.08);
    Vec3 about = Vec3.Y.times(spin);
    return new Mechanism(List.of(Twist.ZERO, new Twist(about.cross(CENTRE.minus(EDGE)), about)));
  }

  private static FirstMovement movement() {
    return new FirstMovement(List.of("slab", "block"), tilting(), START, "block topples", Optional.empty());
  }

  private static Stone block(Tableau t) {
    return t.stones().stream().filter(s -> s.name().equals("block")).findFirst().orElseThrow();
  }

  @Test
  void startsAtRestAndEndsWhereTheFastestPointHasGoneItsWay() {
    FirstMovement m = movement();
    assertThat(block(m.on(tableau(), START)).pose()).isEqualTo(block(tableau()).pose());
    long end = START + 2_500_000_000L;
    assertThat(m.goneM(end)).isEqualTo(FirstMovement.REACH_M);
    Stone moved = block(m.on(tableau(), end));
    double angle = FirstMovement.REACH_M / Math.hypot(0.1, 0.08);
    Vec3 arm = CENTRE.minus(EDGE);
    // The centre goes along its first velocity: the chord of a small arc.
    Vec3 to = CENTRE.plusTimes(angle, Vec3.Y.cross(arm));
    assertThat(moved.centreInTank().distanceTo(to)).isLessThan(1e-9);
    assertThat(moved.pose().turn().angleRad()).isCloseTo(angle, within(1e-9));
    // So drawn, the edge it turns about stays put within the height of that arc, a few millimetres.
    Vec3 edgeInBlock = block(tableau()).pose().turn().conjugate().rotate(EDGE.minus(block(tableau()).pose().at()));
    assertThat(moved.pose().apply(edgeInBlock).distanceTo(EDGE)).isLessThan(angle * angle / 2 * arm.norm() + 1e-9);
    // It tilts to the right: its left side rises.
    assertThat(moved.high().z()).isGreaterThan(block(tableau()).high().z());
    assertThat(moved.high().x()).isGreaterThan(block(tableau()).high().x());
  }

  @Test
  void whatDoesNotMoveIsLeftWhereItIs() {
    Tableau shown = movement().on(tableau(), START + 2_500_000_000L);
    assertThat(shown.stones().get(0).pose()).isEqualTo(tableau().stones().get(0).pose());
  }

  @Test
  void slowsInFromRestIsShownThreeTimesAndEnds() {
    FirstMovement m = movement();
    double early = m.goneM(START + 600_000_000L);
    double half = m.goneM(START + 1_200_000_000L);
    assertThat(half / early).as("from rest at a steady pull: way goes with the square of time").isCloseTo(4, within(1e-6));
    assertThat(m.goneM(START + 3_300_000_000L)).as("the second time begins").isLessThan(0.001);
    assertThat(m.over(START + 9_500_000_000L)).isFalse();
    assertThat(m.over(START + 9_700_000_000L)).isTrue();
  }

  @Test
  void oneTwistARock() {
    assertThatThrownBy(() -> new FirstMovement(List.of("slab"), tilting(), 0, "", Optional.empty())).isInstanceOf(IllegalArgumentException.class);
  }
}
