/**
 * Factors of matrices made of blocks of six, one row of blocks a body, and programs over cones. Blocks and cones only: nothing
 * here knows a rock.
 *
 * <p>{@link holdfast.engine.statics.solver.BlockPattern} finds which blocks fill and in which order to take them;
 * {@link holdfast.engine.statics.solver.BlockCholesky} factors symmetric matrices on it,
 * {@link holdfast.engine.statics.solver.BlockLu} others, {@link holdfast.engine.statics.solver.DenseLu} small ones without a
 * pattern. {@link holdfast.engine.statics.solver.ConeProgram} is made of {@link holdfast.engine.statics.solver.Element}s,
 * {@link holdfast.engine.statics.solver.ConeSolver} solves it or proves that nothing does ({@code ConeSystem} its linear
 * system, {@link holdfast.engine.statics.solver.ConeScaling} the scaling of Nesterov and Todd).
 */
package holdfast.engine.statics.solver;
