/**
 * Whether some admissible forces balance a load, however they came about, and how far a load can grow before none do. Nothing
 * that stays lies above.
 *
 * <p>{@link holdfast.engine.statics.balance.ForceBalance} asks it with shear and twist of a patch in one ellipse about its
 * centre of pressure: a cone program. {@link holdfast.engine.statics.balance.PushBound} asks it with friction at the corners of
 * every contact, where the answer is convex and is enclosed between forces and a mechanism, both worked out anew
 * ({@code CornerModel}, followed by {@code CornerPath} over {@code CornerCones} and {@code FastenedCones}), of pushes all round
 * a point together ({@code CornerRound}, {@code CornerStart}).
 * {@link holdfast.engine.statics.balance.CornerBalance} tells for sure what links cannot hold, however few of them are there.
 */
package holdfast.engine.statics.balance;
