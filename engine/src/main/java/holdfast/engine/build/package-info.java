/**
 * How the heap is built: rocks fixed together as modules, whether they pass the opening and who lifts them, an order of
 * placing in which every stage stands, and the cement in batches that are used before they go off.
 *
 * <p>{@link holdfast.engine.build.Modules} finds the modules, {@link holdfast.engine.build.OpeningFit} passes them through
 * the rim on a straight lift and {@link holdfast.engine.build.Turning} those that must turn part way through,
 * {@link holdfast.engine.build.BuildOrder} searches the order with whatever judges a stage
 * ({@link holdfast.engine.build.Stander}), {@link holdfast.engine.build.Batches} sets the cement against the clock, and
 * {@link holdfast.engine.build.BuildPlan} puts them together: rock by rock on the bench, piece by piece into the tank, sand
 * before what stands on it, living rock last and after filling where its joints set under water.
 */
package holdfast.engine.build;
