package holdfast.engine.motion;

/** The acceleration of gravity. */
final class Gravity {
  /** 9.81 m/s2, everywhere in the project. */
  static final double G = 9.81;

  private Gravity() {}
}
