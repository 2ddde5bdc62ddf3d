package holdfast.app.view;

import holdfast.engine.check.Code;

/** Which drawing belongs to which kind of finding. */
final class SceneMarksChoice {
  private SceneMarksChoice() {}

  static boolean rose(Code c) {
    return switch (c) {
      case TOPPLES, SLIDES, LOOSE, PRESSED, SHAKES, FALLS, SQUEEZED, UNDECIDED, VARIES, LIFTED, SINGLE_BOND, BIG_ON_SMALL -> true;
      default -> false;
    };
  }

  static boolean gaps(Code c) {
    return switch (c) {
      case GAP, TOUCHES_PANE, NEEDS_PANE, BLOCKS_DEVICE, OUTSIDE -> true;
      default -> false;
    };
  }

  static boolean feet(Code c) {
    return switch (c) {
      case POINT_LOAD, WEDGED, ON_SAND, SAND_ONLY, UNDERMINED, PANE_STRESS -> true;
      default -> false;
    };
  }

  static boolean joints(Code c) {
    return switch (c) {
      case NEEDS_BOND, BOND_OVERLOADED, SINGLE_BOND, ROCK_WEAKER, BOND_WITHOUT_CONTACT, HOVERS, OVERLAPS,
          BREAKS_LIFTED -> true;
      default -> false;
    };
  }

  static boolean pane(Code c) {
    return c == Code.PANE_STRESS || c == Code.PANE_WATER;
  }

  static boolean strike(Code c) {
    return c == Code.PANE_STRIKE;
  }

  static boolean reach(Code c) {
    return c == Code.REACH;
  }

  /** Findings about the room above a rock, or about its own height. */
  static boolean height(Code c) {
    return c == Code.TOO_TALL || c == Code.GROWING_ROOM;
  }

  static boolean light(Code c) {
    return c == Code.SHADED || c == Code.LIVE_AT_BOTTOM;
  }

  /** A piece that is heavy to lift. */
  static boolean lift(Code c) {
    return c == Code.HEAVY_LIFT;
  }

  static boolean opening(Code c) {
    return c == Code.OPENING || c == Code.OPENING_TURN;
  }

  static boolean floats(Code c) {
    return c == Code.FLOATS;
  }

  /** Pockets of dead water. */
  static boolean hollow(Code c) {
    return c == Code.DEAD_WATER;
  }

  /** The bottom pane as a plate, apart from its stress. */
  static boolean plate(Code c) {
    return c == Code.PANE_THICKNESS || c == Code.PANE_SUPPORT;
  }

  /** How much rock there is: it has no place in the tank and is told on the card of keys. */
  static boolean amount(Code c) {
    return c == Code.ROCK_AMOUNT;
  }

  /** Findings whose drawing wants what is measured in {@link Handling}. */
  static boolean handling(Code c) {
    return lift(c) || opening(c) || hollow(c);
  }

  /** Findings that are seen only with the whole tank in sight, whatever rock they name. */
  static boolean wholeTank(Code c) {
    return opening(c) || plate(c);
  }

  /** Findings whose movement is shown when the report carries it. */
  static boolean moves(Code c) {
    return switch (c) {
      case PRESSED, SHAKES, UNDERMINED, SAND_ONLY, LIFTED, SINGLE_BOND, NEEDS_PANE -> true;
      default -> playable(c);
    };
  }

  /** Findings whose movement a push, or the weight alone, brings about: it can be played where the report carries none. */
  static boolean playable(Code c) {
    return switch (c) {
      case TOPPLES, SLIDES, LOOSE, FALLS, SQUEEZED -> true;
      default -> false;
    };
  }
}
