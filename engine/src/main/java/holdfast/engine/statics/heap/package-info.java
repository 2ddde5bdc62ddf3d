/**
 * Bodies, links and loads: what the statics are asked about, and what their answers are made of.
 *
 * <p>{@link holdfast.engine.statics.heap.SceneHeap} makes a {@link holdfast.engine.statics.heap.Heap} of a scene:
 * {@code PlacedRocks} finds its contacts, and after an edit only those of what moved; {@code BearingLinks},
 * {@code BondLinks} and {@code SandBearing} make {@link holdfast.engine.statics.heap.Link}s of them.
 * {@link holdfast.engine.statics.heap.Weights} are its loads in every {@link holdfast.engine.statics.heap.State},
 * {@link holdfast.engine.statics.heap.Push} what may come on top.
 *
 * <p>{@link holdfast.engine.statics.heap.Patch} is one contact in its plane, {@link holdfast.engine.statics.heap.Elements} the
 * forces that a link can give. An answer shows {@link holdfast.engine.statics.heap.Forces}, or the
 * {@link holdfast.engine.statics.heap.Mechanism} by which the heap gives way and the
 * {@link holdfast.engine.statics.heap.Movement} that it ends in.
 */
package holdfast.engine.statics.heap;
