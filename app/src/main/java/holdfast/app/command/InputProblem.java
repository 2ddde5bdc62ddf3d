package holdfast.app.command;

import java.util.List;

/**
 * Something that the user named or typed is wrong: shown as it is, without a trace, and the run ends with
 * {@link ExitCode#WRONG_INPUT}. The first line says what is wrong and where, the hints what would be right.
 */
public final class InputProblem extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final List<String> hints;

  public InputProblem(String message, String... hints) {
    this(message, List.of(hints));
  }

  public InputProblem(String message, List<String> hints) {
    super(message, null, false, false);
    this.hints = List.copyOf(hints);
  }

  public List<String> hints() {
    return hints;
  }
}
