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
}
