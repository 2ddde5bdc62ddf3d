package holdfast.model.scene;

/** How far a figure can be trusted: where it came from. Shown beside every default. */
public enum Grade {
  PUBLISHED("published"),
  MEMORY("memory"),
  DERIVED("derived"),
  COMMON_PRACTICE("common practice");

  private final String word;

  Grade(String word) {
    this.word = word;
  }

  /** The word shown to people and written in files. */
  public String word() {
    return word;
  }
}
