package holdfast.engine.pane;

import java.util.Objects;
import java.util.Optional;

/**
 * One judgement about the bottom pane.
 *
 * @param kind what it is about
 * @param weight how much it matters
 * @param about the rock or part concerned
 * @param figure what was found; NaN where there is none
 * @param limit what it is held against; NaN where there is none
 * @param unit of both
 * @param load the load case that governs, when one does
 * @param sentence one plain sentence
 * @param remedy what to do; empty when nothing need be done
 */
public record PaneFinding(
    Kind kind, Weight weight, String about, double figure, double limit, String unit, Optional<LoadCase> load,
    String sentence, String remedy) {

  public PaneFinding {
    Objects.requireNonNull(sentence);
    Objects.requireNonNull(remedy);
  }

  /** What it is about, with the stable word of the check's codes. */
  public enum Kind {
    UNDECIDED("undecided"), WEDGED("wedged"), POINT_LOAD("point-load"), STRESS("pane-stress"), WATER("pane-water"),
    THICKNESS("pane-thickness"), SUPPORT("pane-support"), DRILLED("pane-support"), STRIKE("pane-strike");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** How much it matters. */
  public enum Weight { FAIL, WARN, NOTE }
}
