package holdfast.engine.check;

import holdfast.engine.statics.heap.Mechanism;
import holdfast.engine.statics.heap.State;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One judgement.
 *
 * @param code what it is about
 * @param severity how much it matters
 * @param about the rocks, panes or devices concerned, the first one first
 * @param figure what was found, in {@code unit}
 * @param limit what it is held against, in {@code unit}
 * @param unit unit of both; empty when there is no figure
 * @param state the state of the tank that governs, when one does
 * @param sentence one plain sentence
 * @param remedy what to do about it; empty when nothing need be done
 * @param mechanism how it begins to move, a twist for each placed rock of the scene, when that was seen: for pictures
 */
public record Finding(
    Code code, Severity severity, List<String> about, OptionalDouble figure, OptionalDouble limit, String unit,
    Optional<State> state, String sentence, String remedy, Optional<Mechanism> mechanism) {

  public Finding {
    about = List.copyOf(about);
    Objects.requireNonNull(sentence);
    Objects.requireNonNull(remedy);
    Objects.requireNonNull(mechanism);
    if (figure.isPresent() && Double.isNaN(figure.getAsDouble())) {
      throw new IllegalArgumentException("figure of '" + code.word() + "' is not a number");
    }
  }

  /** The title for people. A heap that joints do not mend is told of under the same code as a joint that needs fixing. */
  public String title() {
    return code == Code.NEEDS_BOND && severity == Severity.NOTE ? "joints do not mend it" : code.title();
  }

  /** A finding without a movement. */
  public Finding(
      Code code, Severity severity, List<String> about, OptionalDouble figure, OptionalDouble limit, String unit,
      Optional<State> state, String sentence, String remedy) {
    this(code, severity, about, figure, limit, unit, state, sentence, remedy, Optional.empty());
  }
}
