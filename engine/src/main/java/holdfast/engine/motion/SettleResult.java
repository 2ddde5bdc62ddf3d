package holdfast.engine.motion;

import holdfast.model.geom.Pose;
import java.util.List;
import java.util.function.Function;

/** What came of settling. */
public sealed interface SettleResult {

  /**
   * The heap at rest on real contacts.
   *
   * @param moves what happened to each rock, in the order given
   * @param touches the least gap of each pair that touches or nearly does
   * @param atRest the heap came to rest within the time allowed and the polish converged
   * @param playedS seconds of motion that were played
   */
  record Settled(List<Move> moves, List<Touch> touches, boolean atRest, double playedS) implements SettleResult {
    public Settled {
      moves = List.copyOf(moves);
      touches = List.copyOf(touches);
    }

    /** Deepest overlap left, metres, 0 or more. */
    public double worstOverlapM() {
      return touches.stream().mapToDouble(t -> Math.max(0, -t.gapM())).max().orElse(0);
    }

    /** Largest distance that a rock hovers over what is nearest to it, metres; infinite when nothing is near it. */
    public double worstHoverM() {
      return moves.stream().filter(m -> !m.locked()).mapToDouble(Move::hoverM).max().orElse(0);
    }
  }

  /** Nothing was done; {@code reason} is a sentence for people. */
  record NotDone(String reason) implements SettleResult {}

  /**
   * One rock's move.
   *
   * @param shiftM how far its centre of mass went
   * @param turnRad by how much it turned
   * @param hoverM its distance from the nearest rock or part of the tank, 0 when it touches
   * @param pose where it is now
   */
  record Move(String rock, double shiftM, double turnRad, double hoverM, boolean locked, Pose pose) {}

  /** Two that touch, hover or overlap: the gap is above zero when they hover, below when they overlap. */
  record Touch(String a, String b, double gapM) {}

  /** Both cases, exhaustively. */
  default <T> T match(Function<Settled, T> settled, Function<NotDone, T> notDone) {
    if (this instanceof Settled s) return settled.apply(s);
    return notDone.apply((NotDone) this);
  }
}
