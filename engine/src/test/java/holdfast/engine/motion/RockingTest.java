package holdfast.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Single blocks that are struck or shaken, in 3D.
 *
 * <p>Least toppling speeds of the centre of mass: Housner 1963, Bull. Seism. Soc. Am. 53(2):403, formulas from memory,
 * figures recomputed: m v h = I0 w0, I0 w0^2 / 2 = m g R (1 - cos alpha) (grade: memory). Constant acceleration: least
 * duration from the nonlinear equation of motion integrated to the balance point (grade: derived).
 */
class RockingTest {
  /** No sliding in the closed form. */
  private static final WorldOptions.Friction ROUGH = WorldOptions.Friction.uniform(3);

  private static MotionBody block(double width, double height) {
    return TestBodies.box("block", width, width, height, TestBodies.at(0, 0, height / 2));
  }

  @ParameterizedTest
  @CsvSource({
      "0.1, 0.2, 0.62126576", "0.1, 0.3, 0.48563724", "0.2, 0.6, 0.68679478",
      "0.05, 0.2, 0.29247739", "0.4, 2.0, 0.73402514", "1.0, 3.0, 1.53571981", "0.2, 0.2, 1.47212953"})
  void theLeastBlowAtTheCentreIsHousners(double width, double height, double speed) {
    MotionBody block = block(width, height);
    PlayJob job = PlayJob.dry(List.of(block), List.of(TestBodies.floor()), ROUGH);
    LeastBlow.Found found = LeastBlow.find(job, "block", block.centreInWorld(), Vec3.X, 0.005);
    LeastBlow.Found.Between between = (LeastBlow.Found.Between) found;
    double expected = block.massKg() * speed;
    assertThat(between.closedFormNs().getAsDouble()).isCloseTo(expected, within(1e-6 * expected));
    assertThat(between.fallsNs()).isCloseTo(expected, within(0.05 * expected));
  }

  @Test
  void halvingTheStepBringsTheBlowNearer() {
    // Row 4 of the table above, the worst one: 240, 480 and 960 steps a second.
    MotionBody block = block(0.05, 0.2);
    PlayJob job = PlayJob.dry(List.of(block), List.of(TestBodies.floor()), ROUGH);
    double expected = block.massKg() * 0.29247739;
    double[] error = new double[3];
    for (int k = 0; k < 3; k++) {
      LeastBlow.Found found = LeastBlow.find(job.withStepHz(240 << k), "block", block.centreInWorld(), Vec3.X, 0.001);
      error[k] = ((LeastBlow.Found.Between) found).fallsNs() / expected - 1;
    }
    assertThat(error[0]).isBetween(0.0, 0.05);
    assertThat(error[1]).isBetween(0.0, error[0]);
    assertThat(error[2]).isBetween(0.0, error[1]);
  }

  @ParameterizedTest
  @CsvSource({
      "0.1, 0.3, 0.5, 0.161059", "0.1, 0.3, 1.0, 0.059851", "0.2, 0.4, 1.0, 0.121698",
      "0.2, 0.4, 0.75, 0.19142", "0.4, 2.0, 0.3, 0.409047", "0.1, 0.1, 1.5, 0.106686"})
  void theLeastPushByConstantAccelerationIsTheNonlinearOne(double width, double height, double g, double leastS) {
    MotionBody block = block(width, height);
    double found = bisect(0.5 * leastS, 1.5 * leastS, 0.005 * leastS, duration -> topples(block, g, duration, 960));
    assertThat(found).isCloseTo(leastS, within(0.05 * leastS));
  }

  private static double bisect(double stands, double falls, double width, DoublePredicate topples) {
    assertThat(topples.test(stands)).isFalse();
    assertThat(topples.test(falls)).isTrue();
    while (falls - stands > width) {
      double middle = (stands + falls) / 2;
      if (topples.test(middle)) {
        falls = middle;
      } else {
        stands = middle;
      }
    }
    return falls;
  }

  /** In the frame of the shaken ground: a body force for a time, the last step in part. */
  private static boolean topples(MotionBody block, double g, double durationS, double hz) {
    try (MotionWorld world = TestBodies.open(new WorldOptions(hz, 16, ROUGH))) {
      world.addFixed(TestBodies.floor());
      world.addBody(block);
      for (int i = 0; i < 0.1 * hz; i++) world.step();
      for (double t = 0; t < 4; t += world.stepS()) {
        double share = Math.max(0, Math.min(1, (durationS - t) / world.stepS()));
        if (share > 0) world.applyWrench(0, new Wrench(new Vec3(share * g * Gravity.G * block.massKg(), 0, 0), Vec3.ZERO));
        world.step();
        if (world.pose(0).turn().angleRad() > Math.toRadians(80)) return true;
      }
      return false;
    }
  }
}
