package holdfast.engine.contact;

/**
 * What counts as touching.
 *
 * @param jointFloorM bodies at most this far apart bear on each other, metres
 * @param jointShare the same as a share of the smaller body's size; the larger of the two counts
 * @param patchFloorM least value of the patch tolerance, metres
 * @param patchShare the patch is where the gap exceeds the least gap by at most this share of the smaller body's size
 * @param nearM pairs nearer than this are listed as fits though they do not bear, metres
 * @param overlapM overlaps above this are called so, metres
 */
public record ContactRules(
    double jointFloorM, double jointShare, double patchFloorM, double patchShare, double nearM, double overlapM) {

  public static final ContactRules DEFAULT = new ContactRules(
      Tolerances.JOINT_FLOOR_M, Tolerances.JOINT_SHARE, Tolerances.PATCH_FLOOR_M, Tolerances.PATCH_SHARE,
      Tolerances.NEAR_M, Tolerances.OVERLAP_M);

  public ContactRules {
    requireLength("jointFloorM", jointFloorM);
    requireLength("jointShare", jointShare);
    requireLength("patchFloorM", patchFloorM);
    requireLength("patchShare", patchShare);
    requireLength("nearM", nearM);
    requireLength("overlapM", overlapM);
    if (!(patchFloorM + patchShare > 0)) throw new IllegalArgumentException("a patch needs a tolerance above 0");
  }

  /** These rules without floors in metres: everything scales with the bodies. */
  public ContactRules scaleFree() {
    return new ContactRules(0, jointShare, 0, patchShare, nearM, overlapM);
  }

  /** Greatest distance at which two bodies of these sizes bear, metres. */
  public double jointToleranceM(double sizeA, double sizeB) {
    return Math.max(jointFloorM, jointShare * Math.min(sizeA, sizeB));
  }

  /** By how much the gap may exceed the least gap within a patch, metres. */
  public double patchToleranceM(double sizeA, double sizeB) {
    return Math.max(patchFloorM, patchShare * Math.min(sizeA, sizeB));
  }

  private static void requireLength(String name, double value) {
    if (!(value >= 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be finite and 0 or more, was " + value);
    }
  }
}
