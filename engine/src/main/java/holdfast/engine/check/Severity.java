package holdfast.engine.check;

/** How much a finding matters; told by word and shape as well as by colour. */
public enum Severity {
  /** Not safe, or not decided: the exit code says so. */
  FAIL("fail"),
  /** Look at it before going on. */
  WARN("warn"),
  /** Worth knowing. */
  NOTE("note");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
