package holdfast.app.command;

/** How a run ends, as the shell sees it. */
public enum ExitCode {
  /** All well. */
  FINE(0),
  /** It ran, and something that it judged fails. */
  FAILS(1),
  /** What was typed, or a file that was named, is wrong. */
  WRONG_INPUT(2),
  /** A fault of the program or of the machine. */
  OURS(3);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  public int number() {
    return number;
  }
}
