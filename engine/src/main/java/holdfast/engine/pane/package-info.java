/**
 * The bottom pane: what the rocks' feet do to it.
 *
 * <p>The way through, in order:
 * <ol>
 *   <li>{@link holdfast.engine.pane.PaneLoad} what comes in: for each {@link holdfast.engine.pane.LoadCase} the feet, each
 *       with the least and most force it may carry. Nothing here knows how those ranges were found.
 *   <li>{@link holdfast.engine.pane.FloorSpread} foot to {@link holdfast.engine.pane.Patch}: the area of glass that takes
 *       the force once spot, grid or sheet have had their say.
 *   <li>{@link holdfast.engine.pane.EdgePlate} (carried on four edges) and {@link holdfast.engine.pane.FoamPlate} (bedded on
 *       foam, edges free): bending of the pane under one newton on a patch, and under water.
 *   <li>{@link holdfast.engine.pane.Envelope} the greatest surface stress at a place over all foot forces that the ranges
 *       and the weight admit.
 *   <li>{@link holdfast.engine.pane.GlassStrength} what the glass may bear, {@link holdfast.engine.pane.StonePoint} what a
 *       point or a dropped stone does, {@link holdfast.model.scene.UsualGlass} what is usual.
 *   <li>{@link holdfast.engine.pane.BottomPane} the entry point, and its {@link holdfast.engine.pane.PaneReport}.
 * </ol>
 *
 * <p>Metres, newtons and pascals inside; names say otherwise where they differ.
 */
package holdfast.engine.pane;
