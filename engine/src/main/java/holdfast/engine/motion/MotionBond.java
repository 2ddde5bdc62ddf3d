package holdfast.engine.motion;

import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.Objects;

/**
 * What holds two rocks together until it breaks.
 *
 * <p>Paste: linear stress over the bonded area ({@link BondSection}). It breaks when the tension at a corner or the shear at
 * the rim passes its strength. A gel holds a point: it carries pull and shear spread evenly, and no moment, so the rocks turn
 * about it until they bear on each other. A rod: when shear, bending or pull pass what it bears. Strengths are those of the
 * statics' links.
 *
 * @param a one rock
 * @param b the other
 * @param at middle of the joint, world
 * @param normal unit normal out of {@code b} into {@code a}, or the rod's axis
 * @param strength what it takes
 */
public record MotionBond(String a, String b, Vec3 at, Vec3 normal, Strength strength) {
  public MotionBond {
    Objects.requireNonNull(a);
    Objects.requireNonNull(b);
    Objects.requireNonNull(at);
    Objects.requireNonNull(normal);
    Objects.requireNonNull(strength);
  }

  /** What a bond takes before it breaks. */
  public sealed interface Strength {
    /**
     * The load as a share of what breaks the bond; 1 breaks it.
     *
     * @param load on {@code a} about the joint's middle, turned back to where the rocks were when the bond was made
     */
    double use(Wrench load, Vec3 normal);

    /** Whether it holds the two against turning. */
    default boolean carriesMoment() {
      return true;
    }
  }

  /** A paste over an area. */
  public record Paste(BondSection section, double tensionPa, double shearPa) implements Strength {
    public Paste {
      Objects.requireNonNull(section);
      if (!(tensionPa >= 0 && shearPa >= 0)) throw new IllegalArgumentException("strengths must be 0 or more");
    }

    @Override
    public double use(Wrench load, Vec3 normal) {
      if (section.areaM2() == 0) return Double.POSITIVE_INFINITY;
      Vec3[] axes = BondSection.axes(normal);
      double push = load.force().dot(normal);
      double shear = load.force().plusTimes(-push, normal).norm();
      double pull = section.tensionPa(push, load.moment().dot(axes[0]), load.moment().dot(axes[1]));
      return Math.max(share(pull, tensionPa), share(section.shearPa(shear, load.moment().dot(normal)), shearPa));
    }
  }

  /** A gel over an area: a point that pulls and shears and lets the rocks turn. */
  public record Gel(double areaM2, double tensionPa, double shearPa) implements Strength {
    public Gel {
      if (!(areaM2 >= 0 && tensionPa >= 0 && shearPa >= 0)) throw new IllegalArgumentException("strengths must be 0 or more");
    }

    @Override
    public double use(Wrench load, Vec3 normal) {
      if (areaM2 == 0) return Double.POSITIVE_INFINITY;
      double push = load.force().dot(normal);
      double shear = load.force().plusTimes(-push, normal).norm();
      return Math.max(share(-push / areaM2, tensionPa), share(shear / areaM2, shearPa));
    }

    @Override
    public boolean carriesMoment() {
      return false;
    }
  }

  /**
   * A rod across the joint, beside the bare bearing of the rocks on each other: a push takes bending off the rod as long
   * as it stays within the bearing.
   *
   * @param bearingM distance from the joint's middle to the rim of the bearing
   */
  public record RodSection(double shearN, double bendingNm, double pullN, double bearingM) implements Strength {
    /** Newtons: a pull below this is the solver's noise and no pull. */
    private static final double NOISE_N = 0.1;

    @Override
    public double use(Wrench load, Vec3 normal) {
      double push = load.force().dot(normal);
      double twist = load.moment().dot(normal);
      double shear = load.force().plusTimes(-push, normal).norm();
      double bending = load.moment().plusTimes(-twist, normal).norm() - Math.max(0, push) * bearingM;
      return Math.max(Math.max(share(shear, shearN), share(bending, bendingNm)), share(-push, Math.max(pullN, NOISE_N)));
    }
  }

  /** Never breaks. */
  public record Unbreakable() implements Strength {
    @Override
    public double use(Wrench load, Vec3 normal) {
      return 0;
    }
  }

  private static double share(double load, double strength) {
    if (load <= 0) return 0;
    return strength > 0 ? load / strength : Double.POSITIVE_INFINITY;
  }
}
