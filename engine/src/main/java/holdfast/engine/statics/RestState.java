package holdfast.engine.statics;

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

  RestState copy() {
    return new RestState(gap.clone(), held.clone(), limit.clone(), centre.clone(), stretch.clone());
  }
}
