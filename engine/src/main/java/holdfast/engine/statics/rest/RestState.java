package holdfast.engine.statics.rest;

/**
 * A heap at rest, to go on from under a changed load: how far each corner is compressed, what each link holds.
 * Scaled as in {@link Resting}; opaque to others.
 */
public final class RestState {
  /** Opening at every corner since no load, above zero apart. */
  final double[] gap;
  /** For every link: shear along first and second, twist as a moment about the centre of pressure. */
  final double[] held;
  /** For every link: the friction limit in force. */
  final double[] limit;
  /** For every link: centre of pressure and the arm of its twist. */
  final double[] centre;
  /** For every bonded link: its six stretches. */
  final double[] stretch;

  RestState(double[] gap, double[] held, double[] limit, double[] centre, double[] stretch) {
    this.gap = gap;
    this.held = held;
    this.limit = limit;
    this.centre = centre;
    this.stretch = stretch;
  }

  /** Whether some contact is at its limit of friction: the heap then rests as it does by the way it came to rest. */
  boolean slips() {
    for (int i = 0; i < limit.length; i++) {
      double arm = centre[3 * i + 2];
      double twist = arm > 0 ? held[3 * i + 2] / arm : 0;
      double size = Math.sqrt(held[3 * i] * held[3 * i] + held[3 * i + 1] * held[3 * i + 1] + twist * twist);
      if (limit[i] > 0 && size > Tolerances.NUDGE_AT * limit[i]) return true;
    }
    return false;
  }

  RestState copy() {
    return new RestState(gap.clone(), held.clone(), limit.clone(), centre.clone(), stretch.clone());
  }
}
