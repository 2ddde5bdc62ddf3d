package holdfast.app.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;

/**
 * Breaks sentences into lines between words, and never between a figure and its unit nor inside a figure, which is what
 * the panels' library does. Lines are kept, since the same sentences are drawn frame after frame.
 */
final class Wrapping {
  private static final int MOST_KEPT = 400;
  private static final Pattern UNIT =
      Pattern.compile("(mm²?|kg(/L)?|L|ml|N(/mm²)?|J|g|in²?|lbf?(/gal)?|psi|gal|fl|oz|ft|%|°)[.,;:)]*");
  private static final Pattern FIGURE = Pattern.compile("\\(?[\\d.,\u2212]*\\d");

  private record Key(String words, int width) {}

  private final Map<Key, List<String>> kept = new LinkedHashMap<>(64, 0.75f, true) {
    @Override
    protected boolean removeEldestEntry(Map.Entry<Key, List<String>> eldest) {
      return size() > MOST_KEPT;
    }
  };

  /** Lines no wider than this many pixels where the words allow it. */
  List<String> lines(String words, double width, ToDoubleFunction<String> measure) {
    return kept.computeIfAbsent(new Key(words, (int) width), k -> broken(words, width, measure));
  }

  static List<String> broken(String words, double width, ToDoubleFunction<String> measure) {
    List<String> out = new ArrayList<>();
    for (String paragraph : words.split("\n", -1)) {
      StringBuilder line = new StringBuilder();
      for (String piece : pieces(paragraph)) {
        String longer = line.isEmpty() ? piece : line + " " + piece;
        if (!line.isEmpty() && measure.applyAsDouble(longer) > width) {
          out.add(line.toString());
          line.setLength(0);
          line.append(piece);
        } else {
          line.setLength(0);
          line.append(longer);
        }
      }
      out.add(line.toString());
    }
    return List.copyOf(out);
  }

  /** Words, a figure and the unit after it as one. */
  private static List<String> pieces(String paragraph) {
    List<String> out = new ArrayList<>();
    String last = "";
    for (String word : paragraph.split(" ")) {
      if (!out.isEmpty() && FIGURE.matcher(last).matches() && UNIT.matcher(word).matches()) {
        out.set(out.size() - 1, out.get(out.size() - 1) + " " + word);
      } else {
        out.add(word);
      }
      last = word;
    }
    return out;
  }
}
