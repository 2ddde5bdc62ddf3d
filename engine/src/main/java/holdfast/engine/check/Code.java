package holdfast.engine.check;

/** What a finding is about: a stable word for files and tests, and a short title for people. */
public enum Code {
  UNDECIDED("undecided", "not decided"),
  FALLS("falls", "falls"),
  SQUEEZED("held-by-squeeze", "held only by squeeze"),
  TOPPLES("topples", "topples when pushed"),
  PRESSED("pressed", "tips when pressed down"),
  SLIDES("slides", "slides when pushed"),
  LOOSE("loose", "loose"),
  SHAKES("shakes", "falls when shaken"),
  UNDERMINED("undermined", "falls when a foot is dug free"),
  LIFTED("lifted-out", "falls when a rock is lifted out"),
  SAND_ONLY("sand-only", "kept up by sand alone"),
  ON_SAND("on-sand", "rests on sand"),
  SINGLE_BOND("single-bond", "hangs on one bond"),
  BOND_OVERLOADED("bond-overloaded", "joint overloaded"),
  ROCK_WEAKER("rock-weaker", "rock weaker than its bond"),
  NEEDS_BOND("needs-bond", "joint needs fixing"),
  BOND_WITHOUT_CONTACT("bond-without-contact", "bond with nothing to hold"),
  OUTSIDE("outside", "outside the tank"),
  OVERLAPS("overlaps", "overlaps"),
  HOVERS("hovers", "hovers"),
  BIG_ON_SMALL("big-on-small", "big rock on a small one"),
  GAP("gap", "too close to a pane"),
  TOUCHES_PANE("touches-pane", "touches a pane"),
  NEEDS_PANE("needs-pane", "held by a pane"),
  BLOCKS_DEVICE("blocks-device", "too close to a device"),
  TOO_TALL("too-tall", "too tall"),
  GROWING_ROOM("growing-room", "too little growing room"),
  POINT_LOAD("point-load", "point load on the bottom"),
  PANE_STRESS("pane-stress", "bottom pane overloaded"),
  PANE_WATER("pane-water", "water alone loads the bottom pane"),
  PANE_THICKNESS("pane-thickness", "bottom pane thinner than usual"),
  PANE_SUPPORT("pane-support", "support of the bottom pane"),
  PANE_STRIKE("pane-strike", "a slipped rock on the bottom pane"),
  WEDGED("wedged", "wedged: foot force without limit"),
  FLOATS("floats", "floats"),
  HEAVY_LIFT("heavy-lift", "too heavy for one lift"),
  BREAKS_LIFTED("breaks-lifted", "joint breaks when lifted"),
  OPENING("opening", "does not pass the opening"),
  OPENING_TURN("opening-turn", "passes the opening only by turning"),
  DEAD_WATER("dead-water", "dead water"),
  SHADED("shaded", "shaded living rock"),
  LIVE_AT_BOTTOM("live-at-bottom", "living rock at the bottom"),
  ROCK_AMOUNT("rock-amount", "amount of rock"),
  REACH("reach", "out of reach"),
  VARIES("varies", "gives way in some variations");

  private final String word;
  private final String title;

  Code(String word, String title) {
    this.word = word;
    this.title = title;
  }

  public String word() {
    return word;
  }

  public String title() {
    return title;
  }
}
