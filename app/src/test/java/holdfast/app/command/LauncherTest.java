package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a newcomer types first, and the slips of the hand. */
class LauncherTest {
  @Test
  void withoutArgumentsItSaysWhatItCanDoAndCountsAsWrongUse() {
    Run r = Run.holdfast();
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.out()).isEmpty();
    assertThat(r.err()).contains("Usage: holdfast COMMAND", "defaults");
  }

  @Test
  void helpGoesToStandardOutput() {
    Run r = Run.holdfast("--help");
    assertThat(r.exit()).isZero();
    assertThat(r.err()).isEmpty();
    assertThat(r.out()).contains("Usage: holdfast COMMAND", "Exit code: 0 fine, 1");
    assertThat(r.out().lines().mapToInt(String::length).max().getAsInt()).isLessThanOrEqualTo(100);
    assertThat(Run.holdfast("help")).isEqualTo(r);
    assertThat(Run.holdfast("-h")).isEqualTo(r);
  }

  @ParameterizedTest
  @EnumSource(CommandTable.class)
  void everyCommandHasHelp(CommandTable command) {
    Run r = Run.holdfast(command.word(), "--help");
    assertThat(r.exit()).isZero();
    assertThat(r.err()).isEmpty();
    assertThat(r.out()).contains("Usage: holdfast " + command.word(), "--format", "--units");
    assertThat(r.out().lines().mapToInt(String::length).max().getAsInt()).isLessThanOrEqualTo(100);
    assertThat(Run.holdfast("help", command.word())).isEqualTo(r);
  }

  @Test
  void aVersion() {
    assertThat(Run.holdfast("--version").out()).matches("holdfast \\d+\\.\\d+\\.\\d+\\S*\\R");
  }

  @Test
  void aSlipInTheCommandIsMetWithTheNearestOne() {
    Run r = Run.holdfast("defualts");
    assertThat(r).isEqualTo(new Run(2, "", """
        holdfast: there is no command 'defualts'.
          Did you mean defaults?
          holdfast --help lists the commands.
        """));
  }

  @Test
  void aSlipInAnOptionIsMetWithTheNearestOne() {
    Run r = Run.holdfast("defaults", "--formt=json");
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.out()).isEmpty();
    assertThat(r.err()).startsWith("""
        holdfast: there is no option '--formt=json' for holdfast defaults.
          Did you mean --format?
          Usage: holdfast defaults""");
  }

  @Test
  void aWrongWordForAnOption() {
    Run r = Run.holdfast("defaults", "--format", "xml");
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.err()).startsWith("holdfast: invalid value for option '--format': must be text or json, was 'xml'.\n");
    assertThat(Run.holdfast("defaults", "--units=imperial").err()).contains("must be metric or us, was 'imperial'.");
  }

  @Test
  void anOptionBeforeTheCommand() {
    Run r = Run.holdfast("--format", "json", "defaults");
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.err()).contains("Options go after the command");
  }

  /** With a scene after it as well, where the scene is not what is wrong. */
  @Test
  void anOptionBeforeTheCommandAndItsScene() {
    Run r = Run.holdfast("--format", "json", "check", "heap.json");
    assertThat(r).isEqualTo(new Run(2, "", """
        holdfast: '--format' is no option here.
          Options go after the command, as in: holdfast check SCENE --format json
          holdfast --help lists the commands.
        """));
  }

  @Test
  void helpForACommandThatIsNone() {
    for (Run r : new Run[] {Run.holdfast("help", "chekc"), Run.holdfast("chekc", "--help"), Run.holdfast("chekc", "a", "-b")}) {
      assertThat(r).isEqualTo(new Run(2, "", """
          holdfast: there is no command 'chekc'.
            Did you mean check?
            holdfast --help lists the commands.
          """));
    }
  }

  @Test
  void aNumberThatIsNone() {
    for (String typed : new String[] {"many", "1.5", "99999999999"}) {
      assertThat(Run.holdfast("check", "heap.json", "--vary", typed).err()).startsWith(
          "holdfast: invalid value for option '--vary': '" + typed + "' is no whole number, or too large a one.\n");
    }
    assertThat(Run.holdfast("bump", "heap.json", "--impulse", "hard").err()).startsWith(
        "holdfast: invalid value for option '--impulse': 'hard' is not a number.\n");
  }

  /** Words that explain what was taken for granted, and no line broken in its middle. */
  @Test
  void helpSaysWhatIsTakenWithoutAWord() {
    assertThat(Run.holdfast("check", "--help").out()).contains("Default: text.");
    assertThat(Run.holdfast("solve", "--help").out()).contains("Default: json.");
    for (CommandTable c : CommandTable.values()) {
      assertThat(Run.holdfast(c.word(), "--help").out()).as(c.word()).doesNotContainPattern("[a-z],\\n[a-z]+ [^\\n]{0,40}\\n\\S");
    }
    assertThat(Run.holdfast("check").err()).startsWith("holdfast: check needs SCENE.\n");
  }

  /** One letter is no slip of another. */
  @Test
  void anOptionOfOneLetter() {
    assertThat(Run.holdfast("check", "-o", "out.txt").err()).startsWith("""
        holdfast: there is no option '-o' for holdfast check.
          Usage: holdfast check""");
  }

  /** What is wrong is told before what is missing. */
  @Test
  void anUnknownOptionWithoutAScene() {
    assertThat(Run.holdfast("check", "--colour").err()).startsWith("holdfast: there is no option '--colour' for holdfast check.\n");
    assertThat(Run.holdfast("check", "--colour", "never").err()).startsWith("holdfast: there is no option '--colour'");
    assertThat(Run.holdfast("check", "--unit=us").err()).startsWith("""
        holdfast: there is no option '--unit=us' for holdfast check.
          Did you mean --units?
        """);
    assertThat(Run.holdfast("check", "--units", "us").err()).startsWith("holdfast: check needs SCENE.\n");
  }

  @Test
  void aFileWithoutAName() {
    assertThat(Run.holdfast("check", "")).isEqualTo(new Run(2, "", "holdfast: the name of a file is empty.\n"));
  }

  @Test
  void anArgumentTooMany() {
    Run r = Run.holdfast("defaults", "push", "pull");
    assertThat(r.exit()).isEqualTo(2);
    assertThat(r.err()).startsWith("holdfast: 'pull' is one argument too many for holdfast defaults.\n");
  }

  @Test
  void aReaderThatGoesAwayIsNoError() {
    assertThat(exitWith(new IOException("Broken pipe"), new ByteArrayOutputStream())).isZero();
    assertThat(exitWith(new IOException("The pipe is being closed"), new ByteArrayOutputStream())).isZero();
  }

  @Test
  void aFullDiskIs() {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    assertThat(exitWith(new IOException("No space left on device"), err)).isEqualTo(3);
    assertThat(err.toString()).isEqualTo("holdfast: could not write the output: No space left on device.\n");
  }

  private static int exitWith(IOException trouble, OutputStream err) {
    OutputStream out = new OutputStream() {
      @Override
      public void write(int b) throws IOException {
        throw trouble;
      }
    };
    Console console = new Console(out, err, false, false, Map.of());
    return console.finish(new Launcher(console).run("defaults"));
  }
}
