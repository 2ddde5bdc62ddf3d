/**
 * Whether a heap remains as it is: a balance may rest on squeeze that nothing creates, what comes to rest here does not.
 *
 * <p>{@link holdfast.engine.statics.rest.Resting} lets the heap come to rest on contacts that give a little, from no forces at
 * all ({@code CompliantHeap}), in steps of {@code RestStep}, with friction that some pressure can give ({@code TwistArm}). Rest
 * under the heap's own weight is looked at again: {@link holdfast.engine.statics.rest.CornerCheck} with every bearing on its
 * corners, {@link holdfast.engine.statics.rest.StiffnessCheck} with contacts of other stiffnesses.
 * {@link holdfast.engine.statics.rest.Superposition} answers for loads on a heap at rest, quickly ({@code KnownResponses},
 * {@code ShearLaws}); it never says no.
 */
package holdfast.engine.statics.rest;
