/**
 * Whether a heap stands, stays, and what more it bears: the questions that the rest of the engine asks.
 *
 * <p>{@link holdfast.engine.statics.PartJudge} judges one separate heap under its weight,
 * {@link holdfast.engine.statics.StateJudges} every heap in every state of the tank;
 * {@link holdfast.engine.statics.Recall} keeps what was found for the next check of the same scene.
 * {@link holdfast.engine.statics.LoadCase} searches how much more is borne: a margin is a load that was seen to stay, and is
 * never above what the balance allows. {@link holdfast.engine.statics.LooseBlocksSolver} answers for a bare file of blocks.
 *
 * <p>What they are made of, each package knowing only those before it: {@code solver}, factors of matrices and cone programs,
 * which knows no rock; {@code heap}, what a heap is and how a scene becomes one; {@code balance}, whether some forces balance a
 * load; {@code rest}, whether the heap remains. Each has its {@code Tolerances}.
 */
package holdfast.engine.statics;
