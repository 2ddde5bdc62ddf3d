package holdfast.app.command;

import java.util.Collection;
import java.util.Optional;

/** The word someone probably meant. */
final class Nearest {
  private Nearest() {}

  /** The candidate with the fewest slips from what was typed, if few enough to be a slip. */
  static Optional<String> to(String typed, Collection<String> candidates) {
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String c : candidates) {
      int d = slips(typed.toLowerCase(java.util.Locale.ROOT), c.toLowerCase(java.util.Locale.ROOT));
      if (d < least) {
        least = d;
        best = c;
      }
    }
    return best != null && least <= Math.max(1, Math.min(typed.length(), best.length()) / 3 + 1)
        && least < Math.min(typed.length(), best.length()) ? Optional.of(best) : Optional.empty();
  }

  /** Insertions, deletions, replacements and swaps of neighbours that turn one word into the other. */
  static int slips(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) d[i][0] = i;
    for (int j = 0; j <= b.length(); j++) d[0][j] = j;
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int change = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        d[i][j] = Math.min(change, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
        if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
