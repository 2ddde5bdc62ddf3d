package holdfast.model.scene;

/**
 * What fixes the joint between two rocks.
 *
 * @param a one rock
 * @param b the other rock
 * @param bond what fixes them
 * @param amountMl volume of mortar, putty or gel, millilitres; 0 for a rod
 * @param rodDiameterMm 0 when there is no rod
 * @param rodDepthMm depth of the rod in each of the two rocks
 * @param rodGlued the rod is glued in, so that it also holds against pulling out
 * @param madeIn where it is made: rocks joined on the bench go into the tank as one piece
 */
public record JointSpec(
    String a, String b, Bond bond, double amountMl,
    double rodDiameterMm, double rodDepthMm, boolean rodGlued, MadeIn madeIn) {

  /** A joint that is made on the bench. */
  public JointSpec(
      String a, String b, Bond bond, double amountMl, double rodDiameterMm, double rodDepthMm, boolean rodGlued) {
    this(a, b, bond, amountMl, rodDiameterMm, rodDepthMm, rodGlued, MadeIn.BENCH);
  }

  /** What a joint is fixed with. */
  public enum Bond {
    NONE("none"), MORTAR("mortar"), PUTTY("putty"), GEL("gel"), ROD("rod");

    private final String word;

    Bond(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** Where a joint is made. */
  public enum MadeIn {
    /** Before the rocks go into the tank: it sets and soaks outside. */
    BENCH("bench"),
    /** When both rocks stand in the tank. */
    TANK("tank");

    private final String word;

    MadeIn(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** A joint filled on the bench with {@code amountMl} of a paste. */
  public static JointSpec paste(String a, String b, Bond bond, double amountMl) {
    return new JointSpec(a, b, bond, amountMl, 0, 0, false);
  }

  /** Something fixes the two rocks. */
  public boolean bonded() {
    return bond != Bond.NONE;
  }

  /** The same joint made elsewhere. */
  public JointSpec madeIn(MadeIn where) {
    return new JointSpec(a, b, bond, amountMl, rodDiameterMm, rodDepthMm, rodGlued, where);
  }

  public boolean joins(String p, String q) {
    return a.equals(p) && b.equals(q) || a.equals(q) && b.equals(p);
  }
}
