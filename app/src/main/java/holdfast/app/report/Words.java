package holdfast.app.report;

import java.util.ArrayList;
import java.util.List;

/** Plain text of a fixed width. */
public final class Words {
  private Words() {}

  private static final String[] TOWARD = {
    "right", "right, a little back", "back-right", "back, a little right",
    "back", "back, a little left", "back-left", "left, a little back",
    "left", "left, a little front", "front-left", "front, a little left",
    "front", "front, a little right", "front-right", "right, a little front"
  };

  /** A direction of the scene, 0 to the right and 90 to the back, in words; the nearest of sixteen. */
  public static String toward(double degrees) {
    return TOWARD[(int) Math.floorMod(Math.round(degrees / 22.5), 16L)];
  }

  /** Text that cannot disturb a terminal: what controls one, or has no width, becomes a space. */
  static String clean(String text) {
    StringBuilder b = new StringBuilder();
    text.codePoints().forEach(c -> b.appendCodePoint(switch (Character.getType(c)) {
      case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR, Character.UNASSIGNED, Character.PRIVATE_USE -> ' ';
      default -> c;
    }));
    return b.toString();
  }

  /** Columns that a text takes on a terminal: marks that combine take none, East Asian ideographs two. */
  static int width(String text) {
    return text.codePoints().map(Words::width).sum();
  }

  private static int width(int c) {
    int type = Character.getType(c);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) return 0;
    boolean wide = c >= 0x1100 && c <= 0x115F || c >= 0x2E80 && c <= 0xA4CF || c >= 0xAC00 && c <= 0xD7A3
        || c >= 0xF900 && c <= 0xFAFF || c >= 0xFE30 && c <= 0xFE6F || c >= 0xFF00 && c <= 0xFF60
        || c >= 0x1F300 && c <= 0x1FAFF || c >= 0x20000 && c <= 0x3FFFD;
    return wide ? 2 : 1;
  }

  /** Breaks a text into lines of at most {@code width} columns, at spaces where there are any. */
  public static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+")) {
      if (line.length() > 0 && width(line.toString()) + 1 + width(word) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      if (line.length() > 0) line.append(' ');
      line.append(word);
      while (width(line.toString()) > width) {
        int cut = line.length();
        while (width(line.substring(0, cut)) > width) cut = line.offsetByCodePoints(cut, -1);
        lines.add(line.substring(0, cut));
        line.delete(0, cut);
      }
    }
    lines.add(line.toString());
    return lines;
  }

  /** The text with spaces up to a width, on its left when {@code right} says so. */
  public static String padded(String text, int width, boolean right) {
    String space = " ".repeat(Math.max(0, width - width(text)));
    return right ? space + text : text + space;
  }
}
