package holdfast.app.command;

/** What a command writes. */
public enum Format {
  /** For people. */
  TEXT,
  /** For programs: same content, stable names and order. */
  JSON
}
