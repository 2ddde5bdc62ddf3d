package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import java.util.Objects;

/**
 * How a world is stepped.
 *
 * @param stepHz steps a second, 240 or more for stones of a few centimetres
 * @param iterations rounds of the contact solver in a step
 * @param friction coefficient of friction by pair of surfaces
 */
public record WorldOptions(double stepHz, int iterations, Friction friction) {
  public WorldOptions {
    Objects.requireNonNull(friction);
    if (!(stepHz >= 60 && stepHz <= 1e5)) throw new IllegalArgumentException("stepHz must be from 60 to 100000, was " + stepHz);
    if (iterations < 1 || iterations > 255) {
      throw new IllegalArgumentException("iterations must be from 1 to 255, was " + iterations);
    }
  }

  /** 240 steps a second, 16 rounds: a stack of six drifts by micrometres. */
  public static WorldOptions of(Friction friction) {
    return new WorldOptions(240, 16, friction);
  }

  /** Coefficient of friction between two surfaces. */
  @FunctionalInterface
  public interface Friction {
    double between(Solid.Surface a, Solid.Surface b);

    /** One coefficient everywhere. */
    static Friction uniform(double mu) {
      return (a, b) -> mu;
    }
  }
}
