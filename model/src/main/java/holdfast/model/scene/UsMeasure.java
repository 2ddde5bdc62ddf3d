package holdfast.model.scene;

/**
 * The units that are read in the United States, each in the metric unit that its name ends in. Nothing is reckoned in them:
 * sizes of tanks and panes are traded in them, and figures are shown and typed in them.
 *
 * <p>Inch, foot, pound, standard gravity and gallon (231 cubic inches) are exact in NIST Special Publication 811 (2008),
 * appendix B.8 (published); a pound has 16 ounces and a gallon 128 fluid ounces.
 */
public final class UsMeasure {
  public static final double INCH_MM = 25.4;
  public static final double FOOT_M = 12 * INCH_MM / 1000;
  public static final double POUND_KG = 0.45359237;
  public static final double OUNCE_G = 1000 * POUND_KG / 16;
  public static final double POUND_FORCE_N = POUND_KG * 9.80665;
  public static final double PSI_N_MM2 = POUND_FORCE_N / (INCH_MM * INCH_MM);
  public static final double GALLON_L = 3.785411784;
  public static final double FLUID_OUNCE_ML = 1000 * GALLON_L / 128;

  private UsMeasure() {}
}
