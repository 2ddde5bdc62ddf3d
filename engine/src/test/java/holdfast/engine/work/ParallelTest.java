package holdfast.engine.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Order and interruption: what is expected follows from the class's own promise (definition). */
class ParallelTest {
  private static final List<Integer> ITEMS = IntStream.range(0, 40).boxed().toList();

  @ParameterizedTest
  @ValueSource(ints = {1, 3})
  void answersComeInTheOrderOfTheQuestions(int threads) {
    assertThat(Parallel.map(ITEMS, threads, i -> i * i)).isEqualTo(ITEMS.stream().map(i -> i * i).toList());
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3})
  void whoIsInterruptedAsksNoFurther(int threads) {
    AtomicInteger asked = new AtomicInteger();
    Thread caller = Thread.currentThread();
    try {
      assertThatThrownBy(() -> Parallel.map(ITEMS, threads, i -> {
        if (asked.incrementAndGet() == 3) caller.interrupt();
        pause();
        return i;
      })).isInstanceOf(IllegalStateException.class).hasMessageContaining("interrupted");
    } finally {
      // The mark must not reach the next test.
      Thread.interrupted();
    }
    assertThat(asked.get()).as("questions begun, of 40").isLessThan(20);
  }

  private static void pause() {
    try {
      Thread.sleep(3);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
