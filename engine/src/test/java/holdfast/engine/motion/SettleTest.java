package holdfast.engine.motion;

import static holdfast.engine.motion.TestBodies.at;
import static holdfast.engine.motion.TestBodies.box;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SettleTest {
  /** Metres: what polishing is to reach; the promise to users is 0.2 mm. */
  private static final double POLISHED_M = 1e-9;

  private static SettleResult.Settled settle(List<MotionBody> bodies, Set<String> locked, List<SettleJob.Bonded> bonds) {
    SettleJob job = new SettleJob(bodies, locked, List.of(TestBodies.floor()), bonds, 0.01, WorldOptions.Friction.uniform(0.6));
    return Settle.settle(job).match(s -> s, none -> {
      throw new IllegalStateException(none.reason());
    });
  }

  private static SettleResult.Settled settle(List<MotionBody> bodies) {
    return settle(bodies, Set.of(), List.of());
  }

  private static List<MotionBody> moved(List<MotionBody> bodies, SettleResult.Settled settled) {
    List<MotionBody> next = new ArrayList<>();
    for (int i = 0; i < bodies.size(); i++) next.add(bodies.get(i).at(settled.moves().get(i).pose()));
    return next;
  }

  private static void assertClosed(SettleResult.Settled settled) {
    assertThat(settled.atRest()).isTrue();
    assertThat(settled.worstOverlapM()).isLessThan(POLISHED_M);
    assertThat(settled.worstHoverM()).isLessThan(POLISHED_M);
  }

  private static double lowest(MotionBody body, Pose pose) {
    double z = Double.POSITIVE_INFINITY;
    for (Hull h : body.lobes()) for (Vec3 p : h.corners()) z = Math.min(z, pose.apply(p).z());
    return z;
  }

  @Test
  void aHoveringBoxComesStraightDownFlush() {
    MotionBody box = box("slab", 0.1, 0.1, 0.06, at(0.3, 0.3, 0.05));
    SettleResult.Settled settled = settle(List.of(box));
    assertClosed(settled);
    SettleResult.Move move = settled.moves().get(0);
    // Half of 60 mm above the floor, and nothing else changed. Derived.
    assertThat(move.pose().at().z()).isCloseTo(0.03, within(POLISHED_M));
    assertThat(move.shiftM()).isCloseTo(0.02, within(1e-6));
    assertThat(move.turnRad()).isLessThan(1e-6);
  }

  @Test
  void aTiltedBoxEndsFlushOnItsFace() {
    MotionBody box = box("slab", 0.1, 0.1, 0.06, at(0.3, 0.3, 0.05, Quat.ofDegreesZyx(20, 3, 5)));
    SettleResult.Settled settled = settle(List.of(box));
    assertClosed(settled);
    Vec3 up = settled.moves().get(0).pose().turn().rotate(Vec3.Z);
    assertThat(Math.hypot(up.x(), up.y())).isLessThan(1e-8);
  }

  @Test
  void overlapIsPartedByTheLeastMotion() {
    // The upper box is 10 mm into the lower: it has to go up by 10 mm less what the lower hovers (2 mm).
    MotionBody lower = box("lower", 0.2, 0.2, 0.1, at(0.3, 0.3, 0.052));
    MotionBody upper = box("upper", 0.1, 0.1, 0.06, at(0.3, 0.3, 0.122));
    SettleResult.Settled settled = settle(List.of(lower, upper));
    assertClosed(settled);
    assertThat(settled.moves().get(0).pose().at().z()).isCloseTo(0.05, within(POLISHED_M));
    assertThat(settled.moves().get(1).pose().at().z()).isCloseTo(0.13, within(POLISHED_M));
    for (SettleResult.Move m : settled.moves()) {
      assertThat(m.turnRad()).isLessThan(1e-4);
      assertThat(Math.hypot(m.pose().at().x() - 0.3, m.pose().at().y() - 0.3)).isLessThan(2e-4);
    }
  }

  @Test
  void aLeaningSlabTouchesFloorAndNeighbour() {
    MotionBody base = box("base", 0.2, 0.2, 0.1, at(0.3, 0.3, 0.052));
    MotionBody slab = box("slab", 0.02, 0.1, 0.16, at(0.44, 0.3, 0.08, Quat.ofDegreesZyx(0, -25, 0)));
    SettleResult.Settled settled = settle(List.of(base, slab));
    assertClosed(settled);
    assertThat(settled.touches()).filteredOn(t -> t.gapM() < POLISHED_M)
        .extracting(t -> t.a() + " on " + t.b())
        .containsExactlyInAnyOrder("base on bottom pane", "slab on base", "slab on bottom pane");
  }

  @Test
  void aBondedArmStaysUpAndMovesWithItsRock() {
    // Alone the arm would fall: its centre is beyond the edge of the leg. Bonded and touching, both move as one.
    MotionBody leg = box("leg", 0.2, 0.2, 0.12, at(0.3, 0.3, 0.065));
    MotionBody arm = box("arm", 0.22, 0.05, 0.04, at(0.47, 0.3, 0.145));
    SettleResult.Settled settled = settle(List.of(leg, arm), Set.of(), List.of(new SettleJob.Bonded("leg", "arm")));
    assertClosed(settled);
    assertThat(settled.moves().get(1).pose().at().z()).isCloseTo(0.14, within(1e-6));
    assertThat(settled.moves().get(1).turnRad()).isLessThan(1e-6);
  }

  @Test
  void aLockedRockStaysToTheLastBit() {
    MotionBody held = box("held", 0.1, 0.1, 0.06, at(0.3, 0.3, 0.2));
    MotionBody loose = box("loose", 0.06, 0.06, 0.06, at(0.31, 0.3, 0.27));
    SettleResult.Settled settled = settle(List.of(held, loose), Set.of("held"), List.of());
    assertThat(settled.moves().get(0).pose()).isEqualTo(held.pose());
    assertThat(settled.moves().get(0).locked()).isTrue();
    assertThat(settled.moves().get(1).pose().at().z()).isCloseTo(0.26, within(POLISHED_M));
  }

  @Test
  void aPileOfStonesClosesAndSettlingItAgainLeavesItAlone() {
    Random random = new Random(11);
    List<MotionBody> pile = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      Hull hull = TestBodies.stone(random, 0.05 + 0.03 * random.nextDouble(), 0.6);
      Quat turn = Quat.ofDegreesZyx(360 * random.nextDouble(), 0, 0);
      pile.add(TestBodies.body("stone " + i, hull, 2000,
          at(0.3 + 0.13 * (i % 2), 0.3 + 0.13 * (i / 2 % 2), 0.04 + 0.07 * (i / 4), turn)));
    }
    SettleResult.Settled first = settle(pile);
    assertClosed(first);
    for (int i = 0; i < pile.size(); i++) {
      assertThat(lowest(pile.get(i), first.moves().get(i).pose())).isGreaterThan(-POLISHED_M);
    }
    SettleResult.Settled again = settle(moved(pile, first));
    assertClosed(again);
    assertThat(again.moves()).allSatisfy(m -> assertThat(m.shiftM()).isLessThan(1e-7));
  }

  @Test
  void theSameSketchGivesTheSameBits() {
    List<MotionBody> bodies = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      bodies.add(box("b" + i, 0.12, 0.1, 0.05, at(0.3 + 0.01 * i, 0.3, 0.03 + 0.055 * i, Quat.ofDegreesZyx(11 * i, 2, 1))));
    }
    assertThat(settle(bodies)).isEqualTo(settle(bodies));
  }

  @Test
  void polishedFacesTouchWithNoEngineNoiseLeft() {
    List<MotionBody> stack = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      stack.add(box("s" + i, 0.18 - 0.02 * i, 0.1, 0.06, at(0.3 + 0.004 * i, 0.3, 0.03 + 0.055 * i, Quat.ofDegreesZyx(7 * i, 1, -1))));
    }
    SettleResult.Settled settled = settle(stack);
    assertClosed(settled);
    for (int i = 0; i < 4; i++) {
      // Boxes 60 mm high lie flush on each other. Derived.
      assertThat(settled.moves().get(i).pose().at().z()).isCloseTo(0.03 + 0.06 * i, within(POLISHED_M));
    }
  }
}
