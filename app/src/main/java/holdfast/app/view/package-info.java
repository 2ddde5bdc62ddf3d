/**
 * The viewport and the picture command, the only packages that load a graphics library. {@code gl} holds the library at
 * arm's length, {@code draw} draws a scene; here are the window, its panels and its tools.
 */
package holdfast.app.view;
