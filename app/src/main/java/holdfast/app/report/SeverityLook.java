package holdfast.app.report;

import holdfast.engine.check.CheckReport.Verdict;
import holdfast.engine.check.Severity;

/**
 * How severity looks, wherever it is shown: a word, a shape, and a colour that adds to both and is never needed. The
 * colours are of the set that Okabe and Ito (2008, "Color universal design") chose to be told apart by colour-blind eyes.
 */
public enum SeverityLook {
  FAIL("fail", "■", 0xD55E00),
  UNDECIDED("undecided", "◆", 0xCC79A7),
  WARN("warn", "▲", 0xE69F00),
  NOTE("note", "○", 0x56B4E9),
  FINE("fine", "●", 0x009E73);

  private final String word;
  private final String shape;
  private final int rgb;

  SeverityLook(String word, String shape, int rgb) {
    this.word = word;
    this.shape = shape;
    this.rgb = rgb;
  }

  public static SeverityLook of(Severity severity) {
    return switch (severity) {
      case FAIL -> FAIL;
      case WARN -> WARN;
      case NOTE -> NOTE;
    };
  }

  public static SeverityLook of(Verdict verdict) {
    return switch (verdict) {
      case PASSES -> FINE;
      case FAILS -> FAIL;
      case UNDECIDED -> UNDECIDED;
      case NOTHING -> NOTE;
    };
  }

  public String word() {
    return word;
  }

  public String shape() {
    return shape;
  }

  public int rgb() {
    return rgb;
  }

  /** The text in this colour on a terminal that has 256 of them: the nearest of its 6 x 6 x 6 cube. */
  String paint(String text, boolean colour) {
    if (!colour) return text;
    int index = 16 + 36 * step(rgb >> 16 & 0xFF) + 6 * step(rgb >> 8 & 0xFF) + step(rgb & 0xFF);
    return "\u001b[1;38;5;" + index + "m" + text + "\u001b[0m";
  }

  private static int step(int value) {
    return value < 48 ? 0 : value < 115 ? 1 : (value - 35) / 40;
  }
}
