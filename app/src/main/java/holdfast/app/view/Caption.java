package holdfast.app.view;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The line of words under a picture, as much of it as there is room for.
 *
 * @param name of the scene, its end left out where it is too long
 * @param about what there was room for beside it; may be empty
 */
record Caption(String name, String about) {
  private static final String BETWEEN = "  ·  ";

  /**
   * @param parts what is told beside the name, the last left out first
   * @param room pixels for name and parts
   * @param gap pixels between name and parts
   * @param nameWidth pixels that words take in the letters of the name
   * @param aboutWidth the same in those of the parts
   */
  static Caption fit(String name, List<String> parts, double room, double gap, ToDoubleFunction<String> nameWidth,
      ToDoubleFunction<String> aboutWidth) {
    String shown = shortened(name, room, nameWidth);
    double left = room - nameWidth.applyAsDouble(shown) - gap;
    String about = IntStream.rangeClosed(0, parts.size())
        .mapToObj(out -> String.join(BETWEEN, parts.subList(0, parts.size() - out)))
        .filter(words -> words.isEmpty() || aboutWidth.applyAsDouble(words) <= left).findFirst().orElse("");
    return new Caption(shown, about);
  }

  private static String shortened(String name, double room, ToDoubleFunction<String> width) {
    if (width.applyAsDouble(name) <= room) return name;
    for (int end = name.length(); end > 0; end = name.offsetByCodePoints(end, -1)) {
      String words = name.substring(0, end).strip() + "…";
      if (width.applyAsDouble(words) <= room) return words;
    }
    return "";
  }
}
