/**
 * The program for people: {@link holdfast.app.Main} starts it, {@code command} holds one class a subcommand,
 * {@code report} writes what a check found as text and JSON and {@code report.sheet} as a build sheet, {@code edit} is the
 * document with its edits and undo, {@code view} is the only package that loads a window library. Everything that computes
 * lives in the engine.
 */
package holdfast.app;
