package holdfast.engine.pane;

/**
 * A round point of stone pressed or dropped on glass.
 *
 * <p>Pressed: Hertz contact of sphere and half-space (Johnson, Contact Mechanics, 1985): a^3 = 3 P R / 4 E*,
 * p0 = 3 P / 2 pi a^2, and the ring tension at the contact's rim (1 - 2 nu) p0 / 3 that starts cone cracks.
 * Dropped: the kinetic energy goes into that contact and into springs in series with it (the pane's bending, a grid's
 * walls), each loaded without delay; with no springs this is Hertz's law of impact.
 *
 * <p>Limits: elastic, smooth, without the pane's inertia. A real point is rough and the strength of glass under a small
 * contact scatters by a factor of two and more, so the figures serve to compare floors, not to show safety.
 *
 * @param stonePa Young's modulus of the stone
 * @param stonePoisson its Poisson ratio
 * @param basePa Young's modulus of what it touches
 * @param basePoisson its Poisson ratio
 */
public record StonePoint(double stonePa, double stonePoisson, double basePa, double basePoisson) {
  /** Limestone, memory. */
  static final double LIMESTONE_PA = 50e9;

  /** Limestone, memory. */
  static final double LIMESTONE_POISSON = 0.25;

  private static final double GRAVITY = 9.81;

  public static StonePoint limestoneOn(double basePa, double basePoisson) {
    return new StonePoint(LIMESTONE_PA, LIMESTONE_POISSON, basePa, basePoisson);
  }

  /** E* of the pair, pascals. */
  public double effectivePa() {
    return 1 / ((1 - stonePoisson * stonePoisson) / stonePa + (1 - basePoisson * basePoisson) / basePa);
  }

  /** Pressed with a force. */
  public Contact press(double radiusM, double forceN) {
    double a = Math.cbrt(0.75 * forceN * radiusM / effectivePa());
    double p0 = a > 0 ? 1.5 * forceN / (Math.PI * a * a) : 0;
    return new Contact(a, p0, (1 - 2 * basePoisson) * p0 / 3);
  }

  /** Speed of a free fall in air, metres a second; water only slows it. */
  public static double fallSpeed(double heightM) {
    return Math.sqrt(2 * GRAVITY * heightM);
  }

  /**
   * Dropped.
   *
   * @param massKg of the stone
   * @param speed at the blow, m/s
   * @param springNm stiffness in series with the contact, N/m; infinite for none
   */
  public Blow drop(double radiusM, double massKg, double speed, double springNm) {
    double hertz = 4.0 / 3 * effectivePa() * Math.sqrt(radiusM);
    double energy = 0.5 * massKg * speed * speed;
    // Contact energy 0.4 F^(5/3) / K^(2/3); the sum grows with F, so halving finds it.
    double most = Math.pow(2.5 * energy * Math.pow(hertz, 2.0 / 3), 0.6);
    double low = 0;
    double high = most;
    for (int i = 0; i < 200 && high - low > 1e-12 * most; i++) {
      double f = 0.5 * (low + high);
      double stored = 0.4 * Math.pow(f, 5.0 / 3) / Math.pow(hertz, 2.0 / 3) + 0.5 * f * f / springNm;
      if (stored < energy) low = f; else high = f;
    }
    return new Blow(0.5 * (low + high), speed);
  }

  /** Duration of the rigid contact, seconds: 2.9432 x greatest approach / speed. */
  public double contactSeconds(double radiusM, double massKg, double speed) {
    double hertz = 4.0 / 3 * effectivePa() * Math.sqrt(radiusM);
    return 2.943275 * Math.pow(1.25 * massKg * speed * speed / hertz, 0.4) / speed;
  }

  /** Radius of the touching circle, pressure at its middle, ring tension at its rim. */
  public record Contact(double radiusM, double peakPa, double ringPa) {}

  /** Peak force of a blow. */
  public record Blow(double peakN, double speed) {}
}
