package holdfast.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bonds in motion: what breaks them, in three dimensions and in a section, and that a gel lets rocks turn. */
class BondTest {
  private static final double AREA_M2 = 4e-4;

  /** 2 kg/L, 50 mm cube. */
  private static final double WEIGHT_N = 0.25 * 9.81;

  private static PlayJob job(List<MotionBody> bodies, MotionBond bond) {
    return new PlayJob(bodies.stream().map(PlayBody::dry).toList(), List.of(TestBodies.floor()), List.of(bond), List.of(),
        Optional.empty(), WorldOptions.Friction.uniform(0.6), 480, 4, 0);
  }

  private static PlayResult.Played rest(PlayJob job) {
    return Bump.play(job, new Disturbance.Nothing()).match(p -> p, none -> {
      throw new IllegalStateException(none.reason());
    });
  }

  private static SectionResult.Played section(PlayJob job, String rock, Vec3 at, Vec3 impulse) {
    return SectionBump.play(job, new Disturbance.Blow(rock, at, impulse)).match(p -> p, none -> {
      throw new IllegalStateException(none.reason());
    });
  }

  /** A cube hung by a bond under the overhang of a slab on a block: the bond's pull is the cube's weight (derived). */
  private static List<MotionBody> hanging() {
    return List.of(TestBodies.box("block", 0.2, 0.2, 0.2, TestBodies.at(0, 0, 0.1)),
        TestBodies.box("slab", 0.4, 0.2, 0.04, TestBodies.at(0, 0, 0.22)),
        TestBodies.box("cube", 0.05, 0.05, 0.05, TestBodies.at(0.15, 0, 0.175)));
  }

  private static MotionBond hung(boolean gel, double share) {
    double strength = share * WEIGHT_N / AREA_M2;
    return new MotionBond("cube", "slab", new Vec3(0.15, 0, 0.2), Vec3.Z.negated(), gel
        ? new MotionBond.Gel(AREA_M2, strength, 1e9) : new MotionBond.Paste(BondSection.disc(AREA_M2), strength, 1e9));
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aHungCubeFallsWhenItsWeightIsTooMuchForTheBond(boolean gel) {
    // The engine's constraint forces tremble; a paste also sees the bending in that.
    assertThat(rest(job(hanging(), hung(gel, gel ? 1.15 : 1.35))).broken()).isEmpty();
    PlayResult.Played falls = rest(job(hanging(), hung(gel, 0.9)));
    assertThat(falls.broken()).extracting(PlayResult.Broken::a).containsExactly("cube");
    assertThat(falls.outcomes().get(2).fate()).isEqualTo(PlayResult.Fate.FELL);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void theSameInTheSection(boolean gel) {
    Vec3 nothing = new Vec3(1e-9, 0, 0);
    Vec3 at = new Vec3(0, 0, 0.1);
    assertThat(section(job(hanging(), hung(gel, 1.1)), "block", at, nothing).broken()).isEmpty();
    SectionResult.Played falls = section(job(hanging(), hung(gel, 0.9)), "block", at, nothing);
    assertThat(falls.broken()).extracting(PlayResult.Broken::a).containsExactly("cube");
    assertThat(falls.anyFell()).isTrue();
  }

  /** The arm of {@link WorldTest}, M = 0.7848 N m about its bond, rim tension 4 M / (pi r^3) on 2000 mm2 (derived). */
  @Test
  void anArmInTheSectionBreaksAtTheSameStrengthAsInThree() {
    double area = 2e-3;
    double rim = 4 * 0.7848 / (Math.PI * Math.pow(area / Math.PI, 1.5));
    List<MotionBody> bodies = List.of(TestBodies.box("block", 0.2, 0.2, 0.2, TestBodies.at(0, 0, 0.1)),
        TestBodies.box("arm", 0.2, 0.05, 0.04, TestBodies.at(0.2, 0, 0.15)));
    for (double share : new double[] {1.1, 0.9}) {
      MotionBond bond = new MotionBond("arm", "block", new Vec3(0.1, 0, 0.15), Vec3.X,
          new MotionBond.Paste(BondSection.disc(area), share * rim, 1e9));
      SectionResult.Played played = section(job(bodies, bond), "block", new Vec3(0, 0, 0.1), new Vec3(1e-9, 0, 0));
      assertThat(played.broken()).hasSize(share > 1 ? 0 : 1);
      assertThat(played.anyFell()).isEqualTo(share < 1);
    }
  }

  /** A push breaks no paste, however weak it is to pull: a cube on a block, in both. */
  @Test
  void weightOnABondDoesNotBreakIt() {
    List<MotionBody> bodies = List.of(TestBodies.box("block", 0.2, 0.2, 0.2, TestBodies.at(0, 0, 0.1)),
        TestBodies.box("cube", 0.05, 0.05, 0.05, TestBodies.at(0, 0, 0.225)));
    MotionBond bond = new MotionBond("cube", "block", new Vec3(0, 0, 0.2), Vec3.Z,
        new MotionBond.Paste(BondSection.disc(AREA_M2), 1000, 1000));
    assertThat(rest(job(bodies, bond)).broken()).isEmpty();
    assertThat(section(job(bodies, bond), "block", new Vec3(0, 0, 0.1), new Vec3(1e-9, 0, 0)).broken()).isEmpty();
  }

  /** However strong, a gel carries no moment: the arm turns down about it and hangs (the trade's gel is brittle and peels). */
  @Test
  void aGelLetsAnArmTurnDown() {
    List<MotionBody> bodies = List.of(TestBodies.box("block", 0.2, 0.2, 0.2, TestBodies.at(0, 0, 0.1)),
        TestBodies.box("arm", 0.12, 0.05, 0.04, TestBodies.at(0.1605, 0, 0.15)));
    MotionBond gel = new MotionBond("arm", "block", new Vec3(0.1005, 0, 0.17), Vec3.X, new MotionBond.Gel(2e-3, 1e9, 1e9));
    PlayResult.Played played = rest(job(bodies, gel));
    assertThat(played.broken()).isEmpty();
    // The gap of half a millimetre closes below the gel: the arm's lower edge is 40 mm under it, so by 1 / 80 (derived).
    Vec3 lies = played.outcomes().get(1).landedAtM();
    assertThat(0.15 - lies.z()).isCloseTo(0.06 / 80, within(3e-4));
    PlayResult.Played held = rest(job(bodies, new MotionBond("arm", "block", new Vec3(0.1005, 0, 0.17), Vec3.X,
        new MotionBond.Paste(BondSection.disc(2e-3), 1e9, 1e9))));
    assertThat(held.outcomes().get(1).landedAtM().z()).isCloseTo(0.15, within(1e-4));
  }

  /** Rectangle b by h about its weak axis: 6 M / (b h^2); pull N / A (derived, any handbook). */
  @Test
  void aSectionsStressIsThatOfARectangle() {
    List<Vec3> ring = List.of(new Vec3(0.01, 0.02, 0), new Vec3(0.09, 0.02, 0), new Vec3(0.09, 0.04, 0), new Vec3(0.01, 0.04, 0));
    MotionBond.Paste paste = new MotionBond.Paste(BondSection.of(List.of(ring), new Vec3(0.05, 0.03, 0), Vec3.Z), 1, 1);
    double weak = 0.5 / (0.08 * 0.02 * 0.02 / 6);
    double strong = 0.5 / (0.02 * 0.08 * 0.08 / 6);
    assertThat(paste.use(new Wrench(Vec3.ZERO, new Vec3(0.5, 0, 0)), Vec3.Z)).isCloseTo(weak, within(1e-9 * weak));
    assertThat(paste.use(new Wrench(Vec3.ZERO, new Vec3(0, 0.5, 0)), Vec3.Z)).isCloseTo(strong, within(1e-9 * strong));
    assertThat(paste.use(new Wrench(new Vec3(0, 0, -8), Vec3.ZERO), Vec3.Z)).isCloseTo(8 / 1.6e-3, within(1e-6));
    assertThat(paste.use(new Wrench(new Vec3(0, 0, 8), Vec3.ZERO), Vec3.Z)).isZero();
    assertThat(paste.use(new Wrench(new Vec3(8, 0, 0), Vec3.ZERO), Vec3.Z)).isCloseTo(8 / 1.6e-3, within(1e-6));
  }
}
