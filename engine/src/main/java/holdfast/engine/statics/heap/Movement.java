package holdfast.engine.statics.heap;

/** What the first movement of a mechanism is: a rock tilts and goes over, or only shifts. */
public enum Movement {
  TOPPLES("topples"), SLIDES("slides"), NONE("none");

  private final String word;

  Movement(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /**
   * Slides only when nothing that moves tilts: of every moving body the speed that tilting gives its rim is small against
   * the speed of its centre. Whatever is not clearly sliding counts as toppling, the graver of the two.
   */
  public static Movement of(Heap heap, Mechanism mechanism) {
    boolean moves = false;
    for (int i = 0; i < heap.bodies().size(); i++) {
      Twist t = mechanism.twists().get(i);
      double tilt = Math.hypot(t.spin().x(), t.spin().y()) * heap.bodies().get(i).sizeM() / 2;
      double turn = Math.abs(t.spin().z()) * heap.bodies().get(i).sizeM() / 2;
      double speed = t.velocity().norm();
      if (speed + tilt + turn < Tolerances.MOVES_AT_ALL) continue;
      moves = true;
      if (tilt > Tolerances.SLIDE_TILT * Math.max(speed, turn)) return TOPPLES;
    }
    return moves ? SLIDES : NONE;
  }
}
