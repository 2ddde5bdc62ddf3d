package holdfast.engine.pane;

/**
 * A flat rectangular pane of one thickness; its corner nearest the front-left is the origin, x along the length.
 *
 * @param lengthM side along x, metres
 * @param widthM side along y, metres
 * @param thicknessM thickness, metres
 * @param youngPa Young's modulus, pascals
 * @param poisson Poisson ratio
 */
public record Plate(double lengthM, double widthM, double thicknessM, double youngPa, double poisson) {
  public Plate {
    above0("lengthM", lengthM);
    above0("widthM", widthM);
    above0("thicknessM", thicknessM);
    above0("youngPa", youngPa);
    if (!(poisson >= 0 && poisson < 0.5)) throw new IllegalArgumentException("poisson must be from 0 to 0.5, was " + poisson);
  }

  private static void above0(String name, double value) {
    if (!(value > 0) || !Double.isFinite(value)) throw new IllegalArgumentException(name + " must be above 0, was " + value);
  }

  /** Bending stiffness E t^3 / (12 (1 - nu^2)), newton metres. */
  public double stiffnessNm() {
    return youngPa * thicknessM * thicknessM * thicknessM / (12 * (1 - poisson * poisson));
  }

  /** Surface stress of a bending moment per metre, pascals: 6 M / t^2. */
  public double surfaceStressPa(double momentNmPerM) {
    return 6 * momentNmPerM / (thicknessM * thicknessM);
  }

  /** Distance from a point to the nearest edge, metres; negative outside. */
  public double edgeDistanceM(double x, double y) {
    return Math.min(Math.min(x, lengthM - x), Math.min(y, widthM - y));
  }
}
