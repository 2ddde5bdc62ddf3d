/**
 * What to buy and what it weighs: rock by kind against the tank's volume, prices, the floor panel cut from stock, sand,
 * net water, salt and the load on the stand.
 *
 * <p>Start at {@link holdfast.engine.supply.Supply#of}. {@link holdfast.engine.supply.Volumes} holds the balance of
 * volumes on which all weights rest; {@link holdfast.engine.supply.FloorCuts} divides the floor and
 * {@link holdfast.engine.supply.PanelPacking} lays the pieces out on stock panels.
 */
package holdfast.engine.supply;
