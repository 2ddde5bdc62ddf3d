package holdfast.engine.verification;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.verification.EngineJudge.Says;
import holdfast.engine.verification.Verdicts.Family;
import java.io.IOException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The statics beside a 3D engine on the same heaps: what we call safe must not fall there without a reason. */
class JudgeTest {
  private static final int FEW_LAID = 40;
  private static final int FEW_SETTLED = 10;
  private static final int MANY_LAID = 2000;
  private static final int MANY_SETTLED = 300;

  private static void holds(Verdicts v) {
    assertThat(v.falseSafe()).isEmpty();
    double undecided = v.lines().stream().filter(l -> l.ours() == Says.UNDECIDED).count();
    assertThat(undecided / v.lines().size()).isLessThanOrEqualTo(0.01);
    // Both endings must be there, or nothing has been compared.
    for (Family f : Family.values()) {
      assertThat(Verdicts.count(v.of(f), Says.STAYS, Says.STAYS)).as(f.word()).isGreaterThan(v.of(f).size() / 10);
      assertThat(Verdicts.count(v.of(f), Says.FALLS, Says.FALLS)).as(f.word()).isGreaterThan(v.of(f).size() / 20);
    }
  }

  @Test
  void noHeapIsCalledSafeThatFallsInTheEngine() {
    holds(Verdicts.judge(FEW_LAID, FEW_SETTLED));
  }

  @Test
  void theKeptTableHoldsAndIsLargeEnough() throws IOException {
    Verdicts kept = Verdicts.read();
    holds(kept);
    assertThat(kept.of(Family.LAID)).hasSizeGreaterThanOrEqualTo(MANY_LAID);
    assertThat(kept.of(Family.SETTLED)).hasSizeGreaterThanOrEqualTo(MANY_SETTLED);
  }

  @Test
  @Tag("slow")
  void noneOfManyHeapsIsCalledSafeThatFallsInTheEngine() throws IOException {
    Verdicts v = Verdicts.judge(MANY_LAID, MANY_SETTLED);
    if (Boolean.getBoolean("holdfast.verification.write")) v.write();
    holds(v);
  }

  /** A level heap balanced by upright forces stays (derived): ours may not let it fall, nor are all balanced. */
  @Test
  void oursLetsNoLevelHeapFallThatUprightForcesBalance() {
    int balanced = 0;
    int not = 0;
    for (long seed = 1; seed <= 100; seed++) {
      RandomHeap heap = Family.LAID.heap(seed);
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
      ParallelForces upright = new ParallelForces(l.family().heap(l.seed()));
      assertThat(upright.level() && upright.balanced()).as("seed %d", l.seed()).isTrue();
    }
  }

  /** Laid heaps that fall in ours and shift by under 3 mm in the engine: no forces within the friction balance them (derived). */
  @Test
  void laidHeapsThatOnlyTheEngineLetsStayHaveNoBalance() throws IOException {
    for (Verdicts.Line l : Verdicts.read().of(Family.LAID)) {
      if (l.ours() != Says.FALLS || l.engine() != Says.STAYS) continue;
      assertThat(new ParallelForces(l.family().heap(l.seed())).balancedWithinFriction()).as("seed %d", l.seed()).isFalse();
    }
  }
}
