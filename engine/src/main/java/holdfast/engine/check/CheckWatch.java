package holdfast.engine.check;

/** Is told how far a check has come, for people who wait; nothing that it does changes what is found. */
@FunctionalInterface
public interface CheckWatch {
  /** Looks away. */
  CheckWatch NONE = (stage, done, of) -> { };

  /** What a check is at. */
  enum Stage {
    STANDING("does it stand"), PUSHES("pushes, supports and the bottom pane"), JOINTS("which joints to fix"),
    VARIATIONS("variations");

    private final String words;

    Stage(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * Called as a stage begins and, where its length is known, again as it goes on; by several threads, one at a time or not.
   *
   * @param done parts of the stage that are done
   * @param of how many there are; 0 where that is not known
   */
  void at(Stage stage, int done, int of);

  /** How many joints the best set has that was found so far; told before {@link Stage#JOINTS} goes on. */
  default void best(int joints) {}
}
