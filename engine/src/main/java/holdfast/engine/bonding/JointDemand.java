package holdfast.engine.bonding;

import holdfast.model.scene.JointSpec;
import java.util.Optional;

/**
 * What one fixed joint is asked for and what it offers.
 *
 * @param index its place among the scene's joints
 * @param patches number of patches that the paste fills, 1 for a rod
 * @param areaM2 area of all of them
 * @param offer what its governing patch can take of each kind alone
 * @param place the worst that was found with the heap where it belongs; empty when no answer was found at all
 * @param lift the worst of lifting its piece, drained, by any one of its rocks; empty for a joint that is made in the tank
 */
public record JointDemand(
    int index, JointSpec spec, int patches, double areaM2, Offer offer, Optional<Demand> place, Optional<Demand> lift) {

  /**
   * One load on the patch that is asked most in that case.
   *
   * @param load what brings it, in words
   * @param tensionN pull across the patch, 0 when it is pressed
   * @param pressN pressure across it, 0 when it is pulled
   * @param shearN force along it
   * @param momentNm bending about its middle
   * @param twistNm twist about its normal
   * @param use the part of the design strength that all of them together call on; above 1 it is not borne
   */
  public record Demand(
      String load, double tensionN, double pressN, double shearN, double momentNm, double twistNm, double use) {}

  /**
   * Each load that the governing patch can take alone; 0 where it takes none.
   *
   * @param momentNm in its weakest direction
   * @param strengthN_m2 design strength of the paste, 0 for a rod
   * @param rockN_m2 tensile strength that the rock is credited with, a tenth of its crushing strength
   */
  public record Offer(
      double pullN, double shearN, double momentNm, double twistNm, double strengthN_m2, double rockN_m2) {
    /** The rock may tear before the paste does. */
    public boolean rockFirst() {
      return strengthN_m2 > rockN_m2 * (1 + 1e-9);
    }
  }
}
