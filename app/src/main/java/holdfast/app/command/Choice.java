package holdfast.app.command;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/** One of a few words. */
final class Choice {
  private Choice() {}

  /** The value that goes by the word typed. */
  static <E> E of(String option, String typed, E[] values, Function<E, String> word) {
    List<String> words = Arrays.stream(values).map(word).toList();
    int at = words.indexOf(typed.strip().toLowerCase(java.util.Locale.ROOT));
    if (at >= 0) return values[at];
    String last = words.get(words.size() - 1);
    String all = String.join(", ", words.subList(0, words.size() - 1)) + " or " + last;
    throw new InputProblem(option + " must be " + all + ", was '" + typed + "'.",
        Nearest.to(typed, words).map(n -> List.of("Did you mean " + n + "?")).orElse(List.of()));
  }
}
