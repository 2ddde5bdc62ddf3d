/**
 * Light: how much of the lamps' light reaches the upper surface of each living rock past all the other rock and through
 * the water. {@link holdfast.engine.light.LightReport#of} is the entry; {@link holdfast.engine.light.LampLight} is the
 * irradiance of one small surface under the lamps.
 */
package holdfast.engine.light;
