package holdfast.model.scene;

/**
 * Density of sea water at the surface: the one-atmosphere equation of EOS-80, good to about 0.004 kg/m3 for a practical
 * salinity from 0 to 42 and -2 to 40 degrees C; outside that the nearest value inside is taken.
 *
 * @see "Fofonoff &amp; Millard 1983, UNESCO Technical Papers in Marine Science 44, equations 13 and 14, and the bulk
 *     modulus; after Millero &amp; Poisson 1981, Deep-Sea Research 28A:625"
 */
public final class SeaWater {
  /** EOS-80 is written in the temperature scale of 1968: t68 = 1.00024 t90 (Saunders 1990). */
  private static final double T68_PER_T90 = 1.00024;

  private SeaWater() {}

  /** Density in kg/m3 at a practical salinity and a temperature in degrees C of today's scale (ITS-90). */
  public static double densityKgM3(double salinity, double temperatureC) {
    return densityT68(clamp(salinity, 0, 42), clamp(temperatureC, -2, 40) * T68_PER_T90);
  }

  /** The equation itself, with the temperature in the scale of 1968. */
  static double densityT68(double s, double t) {
    double pure = 999.842594 + t * (6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
    double a = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
    double b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
    double c = 4.8314e-4;
    return pure + s * (a + Math.sqrt(s) * b + s * c);
  }

  /**
   * The same at depth: the high-pressure equation of EOS-80, rho = rho0 / (1 - p / K) with the secant bulk modulus K.
   * In an aquarium (0.05 bar) it adds two parts in a million; it is here so that all published check values can be met.
   *
   * @param bar pressure above that of the air
   */
  static double densityT68(double s, double t, double bar) {
    double root = s * Math.sqrt(s);
    double kw = 19652.21 + t * (148.4206 + t * (-2.327105 + t * (1.360477e-2 - t * 5.155288e-5)));
    double k0 = kw + s * (54.6746 + t * (-0.603459 + t * (1.09987e-2 - t * 6.1670e-5)))
        + root * (7.944e-2 + t * (1.6483e-2 - t * 5.3009e-4));
    double aw = 3.239908 + t * (1.43713e-3 + t * (1.16092e-4 - t * 5.77905e-7));
    double a = aw + s * (2.2838e-3 + t * (-1.0981e-5 - t * 1.6078e-6)) + root * 1.91075e-4;
    double bw = 8.50935e-5 + t * (-6.12293e-6 + t * 5.2787e-8);
    double b = bw + s * (-9.9348e-7 + t * (2.0816e-8 + t * 9.1697e-10));
    return densityT68(s, t) / (1 - bar / (k0 + bar * (a + bar * b)));
  }

  private static double clamp(double v, double least, double most) {
    return Math.max(least, Math.min(most, v));
  }
}
