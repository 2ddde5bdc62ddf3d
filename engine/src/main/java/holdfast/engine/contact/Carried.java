package holdfast.engine.contact;

import java.util.Arrays;

/**
 * Which bodies are what and where they were before: their numbers then and now. Bodies may have come, gone or moved in
 * between; those that have not keep their order.
 */
public final class Carried {
  /** Stands for a body that came, went or moved. */
  public static final int NONE = -1;

  private final int[] before;
  private final int[] now;

  /**
   * @param before for every body of now its number before, or {@link #NONE}
   * @param countBefore how many bodies there were
   * @throws IllegalArgumentException when the order has changed
   */
  public Carried(int[] before, int countBefore) {
    this.before = before.clone();
    now = new int[countBefore];
    Arrays.fill(now, NONE);
    int last = NONE;
    for (int i = 0; i < before.length; i++) {
      if (before[i] == NONE) continue;
      if (before[i] <= last) throw new IllegalArgumentException("body " + i + " was number " + before[i] + " after " + last);
      last = before[i];
      now[last] = i;
    }
  }

  /** The number that body {@code i} of now had before. */
  public int before(int i) {
    return before[i];
  }

  /** The number that body {@code i} of before has now. */
  public int now(int i) {
    return now[i];
  }

  /** Whether body {@code i} of now was there before, as it is. */
  public boolean has(int i) {
    return before[i] != NONE;
  }

  /** Whether nothing came, went or moved. */
  public boolean all() {
    return before.length == now.length && Arrays.stream(before).noneMatch(b -> b == NONE);
  }
}
