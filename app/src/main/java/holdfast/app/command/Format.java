package holdfast.app.command;

import java.util.Locale;

/** What a command writes. */
public enum Format {
  /** For people. */
  TEXT,
  /** For programs: same content, stable names and order. */
  JSON;

  /** The word to type. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
