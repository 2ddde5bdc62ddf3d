/**
 * Whether a heap stands, stays, and what more it bears.
 *
 * <p>A {@link holdfast.engine.statics.Heap} is bodies and {@link holdfast.engine.statics.Link}s;
 * {@link holdfast.engine.statics.SceneHeap} makes one of a scene, {@link holdfast.engine.statics.Weights} its loads in every
 * {@link holdfast.engine.statics.State}. {@link holdfast.engine.statics.ForceBalance} asks whether admissible forces exist: a
 * cone program ({@code ConeProgram}, {@code ConeSolver}, {@code ConeSystem}, {@code BlockCholesky}).
 * {@link holdfast.engine.statics.Resting} asks whether the heap remains, starting from no forces ({@code CompliantHeap},
 * {@code RestStep}, {@code BlockLu}) and with friction that some pressure can give ({@code TwistArm}); what it bears of its own
 * weight is looked at again ({@code CornerCheck}, {@code StiffnessCheck}). A load on a heap at rest is answered first by
 * superposition ({@code Superposition}, {@code KnownResponses}, {@code ShearLaws}), which never says no.
 * {@link holdfast.engine.statics.PushBound} encloses how far a load can grow before no forces balance it, with friction at the
 * corners of every contact ({@code CornerModel}, {@code CornerPath}, {@code CornerCones}, {@code FastenedCones}), of pushes all
 * round a point together ({@code CornerRound}, {@code CornerStart}); nothing that stays lies above it.
 * {@link holdfast.engine.statics.LoadCase} puts the two together: a margin is what the balance allows and staying confirms.
 * {@link holdfast.engine.statics.CornerBalance} tells for sure what links cannot hold, however few of them are there.
 * Every tolerance is in {@code Tolerances}.
 */
package holdfast.engine.statics;
