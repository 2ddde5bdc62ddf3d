/**
 * The program for people: {@link holdfast.app.Main} starts it, {@code command} holds one class a subcommand,
 * {@code report} writes what a check found as text and JSON, {@code view} is the only package that loads a window
 * library. Everything that computes lives in the engine.
 */
package holdfast.app;
