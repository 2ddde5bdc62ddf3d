package holdfast.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bumps in a section. Expected blows as in {@link RockingTest} (Housner 1963; grade: memory, recomputed). */
class SectionBumpTest {
  private static SectionResult.Played play(PlayJob job, String rock, Vec3 at, Vec3 impulse) {
    return SectionBump.play(job, new Disturbance.Blow(rock, at, impulse)).match(p -> p, none -> {
      throw new IllegalStateException(none.reason());
    });
  }

  /** Found by bisection between 0.9 and 1.1 of the closed form's speed, which has to stand and to fall. */
  private static double leastSpeed(double width, double height, double speed, double hz) {
    MotionBody block = TestBodies.box("block", width, 0.1, height, TestBodies.at(0, 0, height / 2));
    PlayJob job = PlayJob.dry(List.of(block), List.of(TestBodies.floor()), WorldOptions.Friction.uniform(3)).withStepHz(hz).withMostS(5);
    double stands = 0.9 * speed;
    double falls = 1.1 * speed;
    assertThat(falls(job, block, stands)).isFalse();
    assertThat(falls(job, block, falls)).isTrue();
    while (falls - stands > 0.002 * falls) {
      double middle = (stands + falls) / 2;
      if (falls(job, block, middle)) {
        falls = middle;
      } else {
        stands = middle;
      }
    }
    return falls;
  }

  private static boolean falls(PlayJob job, MotionBody block, double speed) {
    return play(job, "block", block.centreInWorld(), new Vec3(block.massKg() * speed, 0, 0)).anyFell();
  }

  @ParameterizedTest
  @CsvSource({
      "0.1, 0.2, 0.62126576", "0.1, 0.3, 0.48563724", "0.2, 0.6, 0.68679478", "0.05, 0.2, 0.29247739", "0.4, 2.0, 0.73402514",
      "1.0, 3.0, 1.53571981", "0.2, 0.2, 1.47212953"})
  void theLeastBlowAtTheCentreIsHousners(double width, double height, double speed) {
    assertThat(leastSpeed(width, height, speed, 480)).isCloseTo(speed, within(0.05 * speed));
  }

  @Test
  void halvingTheStepBringsTheBlowNearer() {
    double expected = 0.48563724;
    double coarse = Math.abs(leastSpeed(0.1, 0.3, expected, 240) / expected - 1);
    double fine = Math.abs(leastSpeed(0.1, 0.3, expected, 960) / expected - 1);
    assertThat(coarse).isLessThan(0.05);
    assertThat(fine).isLessThan(Math.max(coarse, 0.01));
  }

  @Test
  void aPrismSlidesAsItDoesInThree() {
    // v^2 / (2 mu g), derived; the same in the section and in 3D.
    MotionBody block = TestBodies.box("block", 0.1, 0.2, 0.03, TestBodies.at(0, 0, 0.015, Quat.ofDegreesZyx(90, 0, 0)));
    PlayJob job = PlayJob.dry(List.of(block), List.of(TestBodies.floor()), WorldOptions.Friction.uniform(0.4));
    Vec3 impulse = new Vec3(0, block.massKg() * 0.8, 0);
    double expected = 0.8 * 0.8 / (2 * 0.4 * 9.81);
    SectionResult.Played flat = play(job, "block", block.centreInWorld(), impulse);
    PlayResult.Played full = (PlayResult.Played) Bump.play(job, new Disturbance.Blow("block", block.centreInWorld(), impulse));
    assertThat(flat.representative()).isTrue();
    assertThat(flat.outcomes().get(0).shiftM()).isCloseTo(expected, within(0.02 * expected));
    assertThat(full.outcomes().get(0).shiftM()).isCloseTo(flat.outcomes().get(0).shiftM(), within(0.02 * expected));
  }

  @Test
  void aStackOfPrismsFallsUnderTheSameBlowAsInThree() {
    List<MotionBody> stack = new ArrayList<>();
    for (int i = 0; i < 3; i++) stack.add(TestBodies.box("s" + i, 0.08, 0.15, 0.08, TestBodies.at(0, 0, 0.04 + 0.08 * i)));
    PlayJob job = PlayJob.dry(stack, List.of(TestBodies.floor()), WorldOptions.Friction.uniform(0.6));
    Vec3 top = new Vec3(0, 0, 0.22);
    double stands = 0;
    double flatFalls = 0;
    double fullFalls = 0;
    for (double v = 0.2; v < 3; v += 0.1) {
      Vec3 impulse = new Vec3(v * stack.get(2).massKg(), 0, 0);
      if (flatFalls == 0 && play(job, "s2", top, impulse).anyFell()) flatFalls = v;
      if (fullFalls == 0 && ((PlayResult.Played) Bump.play(job, new Disturbance.Blow("s2", top, impulse))).anyFell()) fullFalls = v;
      if (flatFalls > 0 && fullFalls > 0) break;
      stands = v;
    }
    assertThat(stands).isPositive();
    assertThat(flatFalls).isCloseTo(fullFalls, within(0.1 * fullFalls + 0.1));
  }

  @Test
  void aStackOfSixRestsInTheSection() {
    List<MotionBody> stack = new ArrayList<>();
    for (int i = 0; i < 6; i++) stack.add(TestBodies.box("s" + i, 0.1, 0.1, 0.06, TestBodies.at(0, 0, 0.03 + 0.06 * i)));
    PlayJob job = PlayJob.dry(stack, List.of(TestBodies.floor()), WorldOptions.Friction.uniform(0.6));
    SectionResult.Played played = play(job, "s5", new Vec3(0, 0, 0.34), new Vec3(1e-9, 0, 0));
    assertThat(played.outcomes()).allSatisfy(o -> assertThat(o.fate()).isEqualTo(PlayResult.Fate.STAYED));
    assertThat(played.doubts()).isEmpty();
  }

  @Test
  void saysWhyASectionDoesNotStandForTheHeap() {
    // A round stone is no prism; of two boxes on a base one is out of the plane.
    MotionBody base = TestBodies.box("base", 0.3, 0.3, 0.1, TestBodies.at(0, 0, 0.05));
    MotionBody round = TestBodies.body("round", TestBodies.stone(new java.util.Random(3), 0.06, 0.9), 2000, TestBodies.at(0, 0, 0.154));
    MotionBody beside = TestBodies.box("beside", 0.05, 0.05, 0.05, TestBodies.at(0, 0.12, 0.125));
    MotionBody far = TestBodies.box("far", 0.05, 0.05, 0.05, TestBodies.at(0.5, 0.1, 0.025));
    PlayJob job = PlayJob.dry(List.of(base, round, beside, far), List.of(TestBodies.floor()), WorldOptions.Friction.uniform(0.6));
    SectionResult.Played played = play(job, "base", new Vec3(0, 0, 0.05), new Vec3(0.01, 0, 0));
    assertThat(played.doubts()).contains("part of the heap but outside the plane: beside")
        .noneMatch(d -> d.contains("far"));
    SectionResult.Played alone = play(PlayJob.dry(List.of(round.at(TestBodies.at(0, 0, 0.054))), List.of(TestBodies.floor()),
        WorldOptions.Friction.uniform(0.6)), "round", new Vec3(0, 0, 0.06), new Vec3(0.01, 0, 0));
    assertThat(alone.doubts()).contains("no prism across the plane: round");
  }

  /**
   * A slab on two posts, struck across in its middle: the plane cuts the slab alone, which in it rests on nothing and would be
   * seen to fall before the blow. Along the posts the plane cuts all three.
   */
  @Test
  void aSectionThatFallsBeforeTheBlowIsNotDrawn() {
    MotionBody left = TestBodies.box("left", 0.1, 0.1, 0.2, TestBodies.at(-0.15, 0, 0.1));
    MotionBody right = TestBodies.box("right", 0.1, 0.1, 0.2, TestBodies.at(0.15, 0, 0.1));
    MotionBody slab = TestBodies.box("slab", 0.4, 0.1, 0.05, TestBodies.at(0, 0, 0.225));
    PlayJob job = PlayJob.dry(List.of(left, right, slab), List.of(TestBodies.floor()), WorldOptions.Friction.uniform(0.6));
    SectionResult across = SectionBump.play(job, new Disturbance.Blow("slab", new Vec3(0, 0, 0.24), new Vec3(0, 0.5, 0)));
    assertThat(across).isInstanceOfSatisfying(SectionResult.NotPlayed.class, n -> assertThat(n.reason())
        .isEqualTo("cut through slab that way, slab falls before the blow: what carries it lies outside the plane"));
    assertThat(play(job, "slab", new Vec3(0, 0, 0.24), new Vec3(0.5, 0, 0)).outcomes()).hasSize(3);
  }
}
