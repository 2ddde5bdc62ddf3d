package holdfast.engine.motion;

import java.util.List;
import java.util.function.Function;

/** What came of playing a bump in a section. */
public sealed interface SectionResult {

  /**
   * Played out in the section. Places are (along, up) in metres: along the blow, and above the inner bottom.
   *
   * @param pieces what the section shows
   * @param frames places of the rocks over time
   * @param outcomes how it ended for each rock in the section
   * @param broken bonds that broke in it, in the order of time
   * @param seconds time from the blow to rest
   * @param rested everything lay still within the time allowed
   * @param doubts why the section does not stand for the heap, phrases for people; empty when it does
   */
  record Played(
      List<Piece> pieces, List<Frame> frames, List<Outcome> outcomes, List<PlayResult.Broken> broken, double seconds,
      boolean rested, List<String> doubts)
      implements SectionResult {
    public Played {
      pieces = List.copyOf(pieces);
      frames = List.copyOf(frames);
      outcomes = List.copyOf(outcomes);
      broken = List.copyOf(broken);
      doubts = List.copyOf(doubts);
    }

    public boolean representative() {
      return doubts.isEmpty();
    }

    public boolean anyFell() {
      return outcomes.stream().anyMatch(o -> o.fate() == PlayResult.Fate.FELL);
    }
  }

  /** Nothing was played; {@code reason} is a sentence for people. */
  record NotPlayed(String reason) implements SectionResult {}

  /**
   * One thing in the section.
   *
   * @param moves a rock; otherwise a part of the tank
   * @param polygons its convex pieces as corners (along, up) at the start
   */
  record Piece(String name, boolean moves, List<List<double[]>> polygons) {}

  /** The shift and turn of each rock since the start, in the order of the pieces that move. */
  record Frame(double timeS, List<Move> moves) {
    public Frame {
      moves = List.copyOf(moves);
    }
  }

  /**
   * Turns about {@code (pivotAlong, pivotUp)} of the start, counter-clockwise, then shifts.
   */
  record Move(double pivotAlong, double pivotUp, double shiftAlong, double shiftUp, double turnRad) {
    /** Where a point of the start is now. */
    public double[] apply(double[] p) {
      double c = Math.cos(turnRad);
      double s = Math.sin(turnRad);
      double x = p[0] - pivotAlong;
      double y = p[1] - pivotUp;
      return new double[] {pivotAlong + shiftAlong + c * x - s * y, pivotUp + shiftUp + s * x + c * y};
    }
  }

  /** How it ended for one rock in the section. */
  record Outcome(String rock, PlayResult.Fate fate, double shiftM, double turnRad, double dropM) {}

  /** Both cases, exhaustively. */
  default <T> T match(Function<Played, T> played, Function<NotPlayed, T> notPlayed) {
    if (this instanceof Played p) return played.apply(p);
    return notPlayed.apply((NotPlayed) this);
  }
}
