package holdfast.model.io;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;

/**
 * The keys of one kind of object, in the order in which they are written.
 *
 * @param what the object as a message names it: {@code a rock}
 */
record Keys(String what, List<Key> all) {
  Keys {
    all = List.copyOf(all);
    Map<String, Key> byName = new LinkedHashMap<>();
    for (Key k : all) {
      if (byName.put(k.name(), k) != null) throw new IllegalArgumentException("key '" + k.name() + "' twice in " + what);
    }
  }

  static Keys of(String what, Key... keys) {
    return new Keys(what, List.of(keys));
  }

  List<String> names() {
    return all.stream().map(Key::name).toList();
  }

  /** The known word that a mistyped one most likely stands for; none when nothing is near. */
  static Optional<String> nearest(String typed, List<String> known) {
    // A third of the letters may be wrong, but two always: "hight" is height, "foo" is nothing.
    ToIntFunction<String> off = k -> distance(typed.toLowerCase(Locale.ROOT), k.toLowerCase(Locale.ROOT));
    return known.stream()
        .filter(k -> off.applyAsInt(k) <= Math.max(2, Math.min(k.length(), typed.length()) / 3))
        .min(Comparator.comparingInt(off));
  }

  /**
   * Edit distance with insertions, deletions, substitutions and swaps of neighbours (optimal string alignment; Damerau
   * 1964, Comm. ACM 7:171). Texts over 100 letters are cut, which only makes wild guesses wilder.
   */
  static int distance(String a, String b) {
    int n = Math.min(a.length(), 100);
    int m = Math.min(b.length(), 100);
    int[][] d = new int[n + 1][m + 1];
    for (int i = 0; i <= n; i++) d[i][0] = i;
    for (int j = 0; j <= m; j++) d[0][j] = j;
    for (int i = 1; i <= n; i++) {
      for (int j = 1; j <= m; j++) {
        int swap = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1), d[i - 1][j - 1] + swap);
        if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[n][m];
  }
}
