/**
 * The command line: one {@link holdfast.app.command.Subcommand} a job, listed in
 * {@link holdfast.app.command.CommandTable}. {@link holdfast.app.command.Launcher} parses, runs one and turns whatever
 * happens into an exit code and a calm message; {@link holdfast.app.command.Console} is where its output goes, so that
 * tests run every command in process.
 *
 * <p>To add a command: extend {@code Subcommand}, keep engine types out of its fields and method signatures (so that
 * {@code --help} loads none of them), add a constant to {@code CommandTable}.
 */
package holdfast.app.command;
