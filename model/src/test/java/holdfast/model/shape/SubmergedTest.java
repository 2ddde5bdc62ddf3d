package holdfast.model.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expected values: boxes cut by a level plane (derived, exact). */
class SubmergedTest {
  private static final RockBody BOX = Rocks.body(Rocks.rock(Rocks.box(100, 100, 200), Rocks.dry(2)));

  @Test
  void anUprightBox() {
    Submerged s = Submerged.of(BOX, new Pose(new Vec3(1, 2, 0.1), Quat.IDENTITY), 0.15);
    assertThat(s.share()).isCloseTo(0.25, within(1e-12));
    assertThat(s.centre().distanceTo(new Vec3(1, 2, 0.125))).isLessThan(1e-12);
  }

  @Test
  void dryAndDrowned() {
    Pose pose = new Pose(new Vec3(0, 0, 0.1), Quat.IDENTITY);
    assertThat(Submerged.of(BOX, pose, 0.05).share()).isEqualTo(0);
    assertThat(Submerged.of(BOX, pose, 0.1).share()).isEqualTo(0);
    assertThat(Submerged.of(BOX, pose, 0.3).share()).isEqualTo(1);
    for (double level : new double[] {0.05, 0.3}) {
      assertThat(Submerged.of(BOX, pose, level).centre().distanceTo(new Vec3(0, 0, 0.2))).isLessThan(1e-15);
    }
  }

  @Test
  void aBoxOnItsEdge() {
    // Turned by 45 degrees about y: the lowest edge at the origin's level less 0.05 / sqrt 2; a wedge of depth h below it
    // holds h^2 x width, its centroid h / 3 under the surface.
    Pose pose = new Pose(Vec3.ZERO, Quat.about(Vec3.Y, Math.PI / 4));
    double h = 0.06;
    Submerged s = Submerged.of(BOX, pose, -0.05 * Math.sqrt(0.5) + h);
    assertThat(s.share()).isCloseTo(h * h * 0.1 / 0.002, within(1e-12));
    assertThat(s.centre().z()).isCloseTo(-0.05 * Math.sqrt(0.5) + h - h / 3, within(1e-12));
  }

  @Test
  void overlappingLobesCountOnce() {
    // An L: a plate of 200 x 100 x 50 and a post of 100 x 100 x 150 that stands through it.
    RockBody b = Rocks.body(Rocks.rock(new Rock.Lobes(List.of(
        Rocks.boxMm(0, 0, 0, 200, 100, 50), Rocks.boxMm(0, 0, 0, 100, 100, 150))), Rocks.dry(2)));
    Submerged s = Submerged.of(b, Pose.IDENTITY, 0.1);
    assertThat(s.share()).isCloseTo(1.5 / 2.0, within(1e-12));
    // 1 L at (100, 50, 25), half a litre at (50, 50, 75) mm.
    assertThat(s.centre().distanceTo(new Vec3(0.25 / 3, 0.05, 0.125 / 3))).isLessThan(1e-12);
  }

  @Test
  void partsAboveAndBelowAddUp() {
    for (long seed = 0; seed < 10; seed++) {
      RockBody b = Rocks.body(Rocks.rock(new Rock.Measured(Rock.Look.BRANCH, 170, 140, 150, seed), Rocks.dry(1)));
      Pose up = new Pose(Vec3.ZERO, Quat.about(Vec3.X, 0.3));
      // Upside down, what was above the level is below it.
      Pose down = new Pose(Vec3.ZERO, Quat.about(Vec3.X, Math.PI).times(up.turn()));
      double share = Submerged.of(b, up, 0.06).share();
      assertThat(share).isBetween(0.05, 0.95);
      assertThat(share + Submerged.of(b, down, -0.06).share()).as("seed %d", seed).isCloseTo(1, within(1e-5));
    }
  }
}
