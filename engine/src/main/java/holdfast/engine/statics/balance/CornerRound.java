package holdfast.engine.statics.balance;

import java.util.ArrayList;
import java.util.List;

/** In which order loads that go round are asked: four that are spread out first, then what lies halfway between two known. */
final class CornerRound {
  /** Loads that are asked on their own. */
  private static final int FIRST = 4;

  private CornerRound() {}

  /**
   * One load's turn.
   *
   * @param first the known one before it, or -1 where it is asked on its own
   * @param second the known one after it, or -1
   * @param last no other is asked from it
   */
  record Turn(int at, int first, int second, boolean last) {}

  static List<Turn> of(int n) {
    List<Turn> out = new ArrayList<>();
    List<Integer> known = new ArrayList<>();
    for (int k = 0; k < Math.min(FIRST, n); k++) known.add(n <= FIRST ? k : k * n / FIRST);
    for (int at : known) out.add(new Turn(at, -1, -1, n <= FIRST));
    while (known.size() < n) {
      List<Integer> next = new ArrayList<>();
      int widest = 0;
      for (int k = 0; k < known.size(); k++) widest = Math.max(widest, after(known, k, n) - known.get(k));
      for (int k = 0; k < known.size(); k++) {
        int from = known.get(k);
        int to = after(known, k, n);
        next.add(from);
        if (to - from < 2) continue;
        out.add(new Turn((from + to) / 2, from, to % n, widest <= 2));
        next.add((from + to) / 2);
      }
      known = next;
    }
    return out;
  }

  private static int after(List<Integer> known, int k, int n) {
    return k + 1 < known.size() ? known.get(k + 1) : known.get(0) + n;
  }
}
