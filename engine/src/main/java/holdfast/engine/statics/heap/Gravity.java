package holdfast.engine.statics.heap;

/** Standard gravity as it is used throughout. */
public final class Gravity {
  /** Metres a second squared; the round figure of statics tables. */
  public static final double G = 9.81;

  private Gravity() {}
}
