package holdfast.model.scene;

import java.util.List;

/**
 * The glass box. All lengths are inside lengths in millimetres, as in the scene file.
 *
 * @param lengthMm left to right
 * @param widthMm front to back
 * @param heightMm from the inner bottom to the rim
 * @param sideGlassMm thickness of the side panes
 * @param bottomGlassMm thickness of the bottom pane
 * @param bottomSupport what the bottom pane rests on
 * @param temperedBottom the bottom pane is thermally toughened
 * @param drilledBottom the bottom pane has holes (stress round holes is outside what is computed)
 * @param openings the openings between rim and braces through which everything must pass; empty: the whole rim
 * @param viewedFrom the sides people look through, in the order of {@link Side}
 * @param mayTouch the panes that rock may lean against
 */
public record Tank(
    double lengthMm, double widthMm, double heightMm,
    double sideGlassMm, double bottomGlassMm,
    BottomSupport bottomSupport, boolean temperedBottom, boolean drilledBottom,
    List<Opening> openings, List<Side> viewedFrom, List<Side> mayTouch) {

  public Tank {
    openings = List.copyOf(openings);
    viewedFrom = List.copyOf(viewedFrom);
    mayTouch = List.copyOf(mayTouch);
  }

  /** What carries the bottom pane. */
  public enum BottomSupport {
    /** Four edges, as in a rimmed or framed tank. */
    EDGES("edges"),
    /** Foam over a full flat deck. */
    FULL("full"),
    /** Not known: the worse of both is used. */
    UNKNOWN("unknown");

    private final String word;

    BottomSupport(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** A rectangular opening at the rim, millimetres from the front-left inner corner. */
  public record Opening(double xMm, double yMm, double lengthMm, double widthMm) {}
}
