package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.verification.EngineJudge.Says;
import java.io.IOException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The statics beside a 3D engine on the same heaps: what we call safe must not fall there without a reason. */
class JudgeTest {
  private static final int FEW = 40;
  private static final int MANY = 2000;

  private static void holds(Verdicts v) {
    assertThat(v.falseSafe()).isEmpty();
    long undecided = v.count(Says.UNDECIDED, Says.STAYS) + v.count(Says.UNDECIDED, Says.FALLS);
    assertThat((double) undecided / v.lines().size()).isLessThanOrEqualTo(0.01);
    // Both endings must be there, or nothing has been compared.
    assertThat(v.count(Says.STAYS, Says.STAYS)).isGreaterThan(v.lines().size() / 10);
    assertThat(v.count(Says.FALLS, Says.FALLS)).isGreaterThan(v.lines().size() / 10);
  }

  @Test
  void noHeapIsCalledSafeThatFallsInTheEngine() {
    holds(Verdicts.judge(1, FEW));
  }

  @Test
  void theKeptTableHoldsAndIsLargeEnough() throws IOException {
    Verdicts kept = Verdicts.read();
    holds(kept);
    assertThat(kept.lines()).hasSizeGreaterThanOrEqualTo(MANY);
  }

  @Test
  @Tag("slow")
  void noneOfManyHeapsIsCalledSafeThatFallsInTheEngine() throws IOException {
    Verdicts v = Verdicts.judge(1, MANY);
    if (Boolean.getBoolean("holdfast.verification.write")) v.write();
    holds(v);
  }

  /**
   * Two level heaps that bear over 4 degrees of tilt and fall in the engine at every step up to 4000 Hz: forces straight up
   * at contacts cut from the corners balance them (derived), and to the same lean as ours within half a degree.
   */
  @Test
  void levelHeapsThatTheEngineDropsStandByForcesStraightUp() {
    for (long seed : new long[] {1078, 1226}) {
      RandomHeap heap = RandomHeap.of(seed, 8);
      ParallelForces upright = new ParallelForces(heap);
      assertThat(upright.level()).isTrue();
      assertThat(upright.balanced()).isTrue();
      assertThat(upright.leanDegrees()).isBetween(4.0, EngineJudge.tiltMarginDegrees(heap) + 0.5);
    }
  }

  /** A level heap balanced by upright forces stays (derived): ours may not let it fall, nor are all balanced. */
  @Test
  void oursLetsNoLevelHeapFallThatUprightForcesBalance() {
    int balanced = 0;
    int not = 0;
    for (long seed = 1; seed <= 100; seed++) {
      RandomHeap heap = RandomHeap.of(seed, 8);
      ParallelForces upright = new ParallelForces(heap);
      if (!upright.level()) continue;
      if (upright.balanced()) {
        balanced++;
        assertThat(EngineJudge.ours(heap)).as("seed %d", seed).isEqualTo(Says.STAYS);
      } else {
        not++;
      }
    }
    assertThat(balanced).isGreaterThan(10);
    assertThat(not).isGreaterThan(5);
  }

  /** The kept table's word for every level heap with that reason, found again. */
  @Test
  void everyHeapKeptAsBalancedByUprightForcesIsSo() throws IOException {
    for (Verdicts.Line l : Verdicts.read().lines()) {
      if (l.reason().filter(r -> r == EngineJudge.Reason.PARALLEL_FORCES).isEmpty()) continue;
      ParallelForces upright = new ParallelForces(RandomHeap.of(l.seed(), 8));
      assertThat(upright.level() && upright.balanced()).as("seed %d", l.seed()).isTrue();
    }
  }

  /** Heaps that fall in ours and shift by under 3 mm in the engine: no forces in the friction cones' pyramids balance them. */
  @Test
  void heapsThatOnlyTheEngineLetsStayHaveNoBalance() throws IOException {
    for (Verdicts.Line l : Verdicts.read().lines()) {
      if (l.ours() != Says.FALLS || l.engine() != Says.STAYS) continue;
      RandomHeap heap = RandomHeap.of(l.seed(), 8);
      assertThat(new ParallelForces(heap).balancedWithinFriction()).as("seed %d", l.seed()).isFalse();
      assertThat(EngineJudge.movedM(heap, 240, 16)).as("seed %d", l.seed()).isGreaterThan(5e-4);
    }
  }
}
