/**
 * The graphics library at arm's length: a context with or without a display ({@link holdfast.app.view.gl.GlContext}),
 * shader programs, vertex buffers, and pictures to draw into ({@link holdfast.app.view.gl.Target}). Nothing here knows
 * a rock. Every object belongs to the thread that made its context.
 */
package holdfast.app.view.gl;
