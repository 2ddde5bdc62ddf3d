package holdfast.engine.motion;

import holdfast.engine.statics.heap.Twist;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import holdfast.model.shape.RockBody;

/**
 * What still water does to a moving stone.
 *
 * <p>The model, stated: pores flood, so a stone weighs {@code g m (1 - rho_water / rho_mineral)} less the lift of its
 * sealed voids under water, and {@code g (m + pore water)} above it; in between it goes by the share of its height under
 * the level. It carries along its pore water and the added mass of a sphere of its hull's volume, half the water
 * displaced (potential flow, exact; Lamb, Hydrodynamics, art. 92). Drag is {@code rho C A v^2 / 2} with the frontal area
 * of the same sphere and C = 0.445, a sphere's in Newton's range, Reynolds number 1000 to 350 000 (Perry's Chemical
 * Engineers' Handbook, section 6, memory). Angular stones have more (a cube about 1), so falls come out a little too
 * fast and landings a little too hard. No currents, no drag on turning, no squeeze film under a landing stone.
 *
 * @param densityKgM3 density of the water
 * @param mineralKgM3 density of the stone's solid part
 * @param levelM height of the water's surface
 * @param dragCoefficient C
 * @param addedShare added mass as a share of the water displaced by the hull
 */
public record WaterModel(double densityKgM3, double mineralKgM3, double levelM, double dragCoefficient, double addedShare) {
  /** A sphere's drag coefficient in Newton's range (Perry's Chemical Engineers' Handbook, section 6; memory). */
  public static final double SPHERE_DRAG = 0.445;

  /** A sphere's added mass as a share of the water it displaces (exact, potential flow). */
  public static final double SPHERE_ADDED = 0.5;

  public WaterModel {
    if (!(densityKgM3 > 0)) throw new IllegalArgumentException("densityKgM3 must be above 0, was " + densityKgM3);
    if (!(mineralKgM3 > densityKgM3)) {
      throw new IllegalArgumentException("mineralKgM3 must be above the water's density, was " + mineralKgM3);
    }
    if (!(dragCoefficient >= 0)) throw new IllegalArgumentException("dragCoefficient must be 0 or more, was " + dragCoefficient);
    if (!(addedShare >= 0)) throw new IllegalArgumentException("addedShare must be 0 or more, was " + addedShare);
  }

  /** Water with the coefficients of a sphere. */
  public static WaterModel of(double densityKgM3, double mineralKgM3, double levelM) {
    return new WaterModel(densityKgM3, mineralKgM3, levelM, SPHERE_DRAG, SPHERE_ADDED);
  }

  /** Weight under water, newtons; below zero when it floats. */
  double submergedWeightN(double dryMassKg, double sealedVolumeM3) {
    return Gravity.G * (dryMassKg * (1 - densityKgM3 / mineralKgM3) - densityKgM3 * sealedVolumeM3);
  }

  /** A dry body as it moves in this water, its pores full. */
  PlayBody flooded(MotionBody dry, RockBody shape) {
    double volume = shape.solid().volumeM3();
    double wet = shape.dryMassKg() + shape.poreWaterKg();
    double moving = wet + addedShare * densityKgM3 * volume;
    MotionBody body = new MotionBody(dry.name(), dry.surface(), dry.lobes(), moving, dry.centre(),
        dry.inertia().times(wet / dry.massKg()), dry.pose());
    double frontal = Math.PI * Math.pow(3 * volume / (4 * Math.PI), 2.0 / 3);
    return new PlayBody(body, wet * Gravity.G, submergedWeightN(shape.dryMassKg(), shape.sealedVolumeM3()), frontal);
  }

  /** Drag on a body moving through the water. */
  Wrench drag(PlayBody body, Twist velocity, double submergedShare) {
    Vec3 v = velocity.velocity();
    double f = 0.5 * densityKgM3 * dragCoefficient * body.frontalAreaM2() * submergedShare * v.norm();
    return new Wrench(v.times(-f), Vec3.ZERO);
  }
}
