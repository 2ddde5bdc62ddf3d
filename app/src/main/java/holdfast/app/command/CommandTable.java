package holdfast.app.command;

import java.util.Arrays;
import java.util.Optional;

/**
 * The subcommands, in the order in which help lists them. Only the one that is run is made: the summaries here are all
 * that help needs.
 */
enum CommandTable {
  CHECK("check", "Say whether a layout stands, what each rock bears, what to mend and how."),
  SETTLE("settle", "Bring a rough sketch to rest on real contacts."),
  BUMP("bump", "Play a bump, or the removal of a rock: what falls, where, and how hard."),
  SHEET("sheet", "Write the build sheet of a scene as a PDF: what to buy, in which order to build, what to fix."),
  PICTURE("picture", "Draw a scene as a PNG, without a display."),
  VIEW("view", "Sketch a heap in a window, push it, see what holds."),
  NEW("new", "Write the scene of an empty tank."),
  ROCK("rock", "Describe a rock from its measurements or a scan: mass, volume, weight under water."),
  DEFAULTS("defaults", "Show every figure that a scene may set: unit, default, range, and where the default is from."),
  SOLVE("solve", "Judge a bare heap of blocks, to compare with textbooks and other solvers.");

  private final String word;
  private final String summary;

  CommandTable(String word, String summary) {
    this.word = word;
    this.summary = summary;
  }

  String word() {
    return word;
  }

  String summary() {
    return summary;
  }

  Subcommand make() {
    return switch (this) {
      case CHECK -> new CheckCommand();
      case NEW -> new NewCommand();
      case SHEET -> new SheetCommand();
      case VIEW -> new ViewCommand();
      case PICTURE -> new PictureCommand();
      case ROCK -> new RockCommand();
      case SETTLE -> new SettleCommand();
      case BUMP -> new BumpCommand();
      case DEFAULTS -> new DefaultsCommand();
      case SOLVE -> new SolveCommand();
    };
  }

  static Optional<CommandTable> of(String word) {
    return Arrays.stream(values()).filter(c -> c.word.equals(word)).findFirst();
  }
}
