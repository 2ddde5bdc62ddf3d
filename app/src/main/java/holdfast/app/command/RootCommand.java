package holdfast.app.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What {@code holdfast} alone says of itself. */
@Command(
    name = "holdfast",
    header = "Plans the rockwork of a marine tank and judges whether it stands.",
    synopsisHeading = "%nUsage: ",
    customSynopsis = "holdfast COMMAND …",
    optionListHeading = "%n",
    commandListHeading = "%nCommands:%n",
    footerHeading = "%n",
    footer = {
      "holdfast COMMAND --help says more about one.",
      "",
      "Exit code: 0 fine, 1 something that was judged fails, 2 the input is wrong, 3 a fault of ours."
    })
final class RootCommand {
  @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
  private boolean help;

  @Option(names = {"-V", "--version"}, versionHelp = true, description = "Show the version.")
  private boolean version;
}
