/**
 * Draws a scene. A {@link holdfast.app.view.draw.Tableau} of tank and {@link holdfast.app.view.draw.Stone}s goes with a
 * {@link holdfast.app.view.draw.Camera}, {@link holdfast.app.view.draw.Looks} and {@link holdfast.app.view.draw.Marks}
 * into {@link holdfast.app.view.draw.Renderer}; {@link holdfast.app.view.draw.Brush} then writes on the picture what is
 * to be read. {@link holdfast.app.view.draw.Palette} has every colour, {@link holdfast.app.view.draw.Picking} finds what
 * lies under the pointer. Floats live here and no further: the engine knows doubles only.
 */
package holdfast.app.view.draw;
