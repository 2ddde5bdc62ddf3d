/**
 * Which joints to fix. {@link holdfast.engine.bonding.TierQuestion} asks whether a heap bears what the settings ask of it;
 * {@link holdfast.engine.bonding.JointSearch} finds a set of joints with which it does.
 */
package holdfast.engine.bonding;
