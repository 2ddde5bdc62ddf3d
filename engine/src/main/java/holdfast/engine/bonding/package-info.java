/**
 * Which joints to fix. {@link holdfast.engine.bonding.TierQuestion} asks whether a heap bears what the settings ask of it;
 * {@link holdfast.engine.bonding.JointSearch} finds a set of joints with which it does, and where there are not too many it
 * proves that no cheaper one does ({@code CheapestSet}, {@code HittingSet});
 * {@link holdfast.engine.bonding.JointDemands} tells what each joint is then asked for, in place and in the hands, beside
 * what it takes.
 */
package holdfast.engine.bonding;
