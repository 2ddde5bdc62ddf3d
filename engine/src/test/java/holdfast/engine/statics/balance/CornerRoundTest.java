package holdfast.engine.statics.balance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Every load of a round has its turn once, after those that it begins between. */
class CornerRoundTest {
  @Test
  void everyLoadOnceAndAfterItsNeighbours() {
    for (int n = 0; n < 50; n++) {
      List<CornerRound.Turn> turns = CornerRound.of(n);
      Set<Integer> had = new HashSet<>();
      Set<Integer> begunFrom = new HashSet<>();
      for (CornerRound.Turn t : turns) {
        assertThat(t.at()).isBetween(0, n - 1);
        if (t.first() >= 0) {
          assertThat(had).contains(t.first(), t.second());
          // Halfway, but for one where the gap is odd.
          int before = Math.floorMod(t.at() - t.first(), n);
          int after = Math.floorMod(t.second() - t.at(), n);
          assertThat(after - before).isBetween(0, 1);
          begunFrom.add(t.first());
          begunFrom.add(t.second());
        }
        assertThat(had.add(t.at())).isTrue();
      }
      assertThat(had).hasSize(n);
      for (CornerRound.Turn t : turns) if (t.last()) assertThat(begunFrom).doesNotContain(t.at());
    }
  }

  @Test
  void sixteenTakeThreeLevels() {
    assertThat(CornerRound.of(16).stream().map(CornerRound.Turn::at))
        .containsExactly(0, 4, 8, 12, 2, 6, 10, 14, 1, 3, 5, 7, 9, 11, 13, 15);
    assertThat(CornerRound.of(16).stream().filter(CornerRound.Turn::last).count()).isEqualTo(8);
  }
}
