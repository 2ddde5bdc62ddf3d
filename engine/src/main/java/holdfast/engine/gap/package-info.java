/**
 * Room round the rocks.
 *
 * <p>{@link holdfast.engine.gap.Gaps} holds what is measured in one go: rock to pane, rock to device, heights, arm's
 * reach and growing room. {@link holdfast.engine.gap.ReachMap} says, pane by pane, what a cleaner of a given size
 * ({@link holdfast.engine.gap.Cleaner}) can wipe when it is moved along the glass from the rim.
 * {@link holdfast.engine.gap.DeadWater} finds pockets that water hardly reaches. All of it is plain
 * figures beside their limits; what they mean for the verdict is decided elsewhere. Metres throughout.
 */
package holdfast.engine.gap;
