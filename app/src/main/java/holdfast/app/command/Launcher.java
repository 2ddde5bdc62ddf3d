package holdfast.app.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * Parses a command line, runs the one subcommand and turns every outcome into an exit code: what was asked on standard
 * output, a calm message on standard error, never a trace unless HOLDFAST_TRACE is set.
 */
public final class Launcher {
  private final Console console;

  public Launcher(Console console) {
    this.console = console;
  }

  /** Runs one command line and returns its exit code. */
  public int run(String... given) {
    String[] args = given.length > 0 && given[0].equals("help") ? helpAsOption(given) : given;
    if (args.length > 1 && optionBeforeCommand(args)) return ExitCode.WRONG_INPUT.number();
    // Of a command that is not known nothing else is worth a word.
    if (args.length > 1 && !args[0].startsWith("-") && CommandTable.of(args[0]).isEmpty()) args = new String[] {args[0]};
    try {
      CommandLine root = commandLine(args.length == 0 ? Optional.empty() : CommandTable.of(args[0]));
      if (args.length == 0) {
        root.usage(console.err(), Ansi.OFF);
        return ExitCode.WRONG_INPUT.number();
      }
      return root.execute(args);
    } catch (Exception | StackOverflowError | OutOfMemoryError | LinkageError | AssertionError e) {
      return ours(e);
    }
  }

  /** Runs one command that is no part of the table; for tests of what becomes of its failures. */
  int run(Subcommand command) {
    command.attach(console);
    try {
      return dressed(new CommandLine(command)).execute();
    } catch (StackOverflowError | OutOfMemoryError | LinkageError | AssertionError e) {
      return ours(e);
    }
  }

  private boolean optionBeforeCommand(String[] args) {
    if (!args[0].startsWith("-") || List.of("-h", "--help", "--version").contains(args[0])) return false;
    if (Arrays.stream(args).noneMatch(a -> CommandTable.of(a).isPresent())) return false;
    console.say("'" + args[0] + "' is no option here.", List.of(
        "Options go after the command, as in: holdfast check SCENE --format json", "holdfast --help lists the commands."));
    return true;
  }

  private static String[] helpAsOption(String[] args) {
    List<String> next = new ArrayList<>(Arrays.asList(args).subList(1, args.length));
    next.add("--help");
    return next.toArray(String[]::new);
  }

  /** The parser; only {@code chosen} is a real command, the others are there to be listed. */
  private CommandLine commandLine(Optional<CommandTable> chosen) throws IOException {
    CommandSpec spec = CommandSpec.forAnnotatedObject(new RootCommand());
    spec.version("holdfast " + version());
    CommandLine root = new CommandLine(spec);
    for (CommandTable c : CommandTable.values()) {
      if (chosen.isPresent() && chosen.get() == c) {
        Subcommand made = c.make();
        made.attach(console);
        root.addSubcommand(c.word(), made);
      } else {
        root.addSubcommand(c.word(), CommandSpec.create());
      }
      root.getSubcommands().get(c.word()).getCommandSpec().usageMessage().header(c.summary());
    }
    return dressed(root);
  }

  private CommandLine dressed(CommandLine root) {
    root.setOut(new PrintWriter(console.out(), true));
    root.setErr(new PrintWriter(console.err(), true));
    root.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    root.setUsageHelpWidth(100);
    root.setUsageHelpAutoWidth(false);
    root.setOverwrittenOptionsAllowed(false);
    root.setParameterExceptionHandler((e, typed) -> wrongUse(e));
    root.setExecutionExceptionHandler((e, line, parsed) -> failed(e));
    return root;
  }

  private static String version() throws IOException {
    try (InputStream in = Launcher.class.getResourceAsStream("/holdfast/app/version.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    }
  }

  private int wrongUse(ParameterException e) {
    CommandLine line = e.getCommandLine();
    CommandSpec spec = line.getCommandSpec();
    boolean atRoot = spec.parent() == null;
    List<String> hints = new ArrayList<>();
    String message;
    Optional<String> unknown = unknown(e);
    if (unknown.isPresent()) {
      String first = unknown.get();
      boolean option = first.startsWith("-");
      if (option && atRoot) {
        message = "'" + first + "' is no option here.";
      } else if (option) {
        message = "there is no option '" + first + "' for holdfast " + spec.name() + ".";
      } else if (atRoot) {
        message = "there is no command '" + first + "'.";
      } else {
        message = "'" + first + "' is one argument too many for holdfast " + spec.name() + ".";
      }
      List<String> known = option ? optionNames(spec) : atRoot ? List.copyOf(line.getSubcommands().keySet()) : List.of();
      Nearest.to(first.replaceFirst("=.*", ""), known).ifPresent(n -> hints.add(0, "Did you mean " + n + "?"));
    } else if (e instanceof MissingParameterException m && !m.getMissing().isEmpty()) {
      List<String> labels = m.getMissing().stream().map(a -> a instanceof OptionSpec o
          ? o.longestName() + " " + o.paramLabel() : a.paramLabel()).toList();
      message = (atRoot ? "" : spec.name() + " needs ") + String.join(" and ", labels) + ".";
    } else {
      message = e.getMessage().strip();
      if (!message.endsWith(".")) message += ".";
      message = Character.toLowerCase(message.charAt(0)) + message.substring(1);
      message = message.replaceFirst("' is not an? (int|long)\\.$", "' is no whole number, or too large a one.")
          .replaceFirst("' is not a double\\.$", "' is not a number.");
    }
    hints.add(atRoot ? "holdfast --help lists the commands." : "Usage: " + synopsis(line));
    if (!atRoot) hints.add("holdfast " + spec.name() + " --help says more.");
    console.say(message, hints);
    return ExitCode.WRONG_INPUT.number();
  }

  /**
   * What the command does not know; an option also where something else is missing, which may be because its word was taken for
   * that option's.
   */
  private static Optional<String> unknown(ParameterException e) {
    if (e instanceof UnmatchedArgumentException u) return u.getUnmatched().stream().findFirst();
    if (!(e instanceof MissingParameterException)) return Optional.empty();
    return e.getCommandLine().getUnmatchedArguments().stream().filter(a -> a.startsWith("-")).findFirst();
  }

  /** Those with a name worth misspelling. */
  private static List<String> optionNames(CommandSpec spec) {
    return spec.options().stream().flatMap(o -> Arrays.stream(o.names())).filter(n -> n.startsWith("--")).toList();
  }

  private static String synopsis(CommandLine line) {
    return line.getHelp().synopsis(0).strip();
  }

  private int failed(Exception e) {
    if (e instanceof InputProblem p) {
      console.say(p.getMessage(), p.hints());
      return ExitCode.WRONG_INPUT.number();
    }
    if (e instanceof FileSystemException f && f.getFile() != null) {
      console.say(f.getFile() + ": " + reason(f) + ".", List.of());
      return ExitCode.WRONG_INPUT.number();
    }
    return ours(e);
  }

  private static String reason(FileSystemException f) {
    if (f instanceof NoSuchFileException) return "there is no such file or folder";
    if (f instanceof AccessDeniedException) return "may not be read or written";
    return f.getReason() == null ? "could not be read or written" : f.getReason().toLowerCase(java.util.Locale.ROOT);
  }

  private int ours(Throwable e) {
    if (e instanceof OutOfMemoryError) {
      console.say("ran out of memory.", List.of("Give it more: JAVA_TOOL_OPTIONS=-Xmx4g holdfast …"));
    } else {
      String what = e.getMessage() == null || e.getMessage().isBlank() ? e.getClass().getSimpleName() : e.getMessage().strip();
      console.say("something went wrong inside the program, not in what you typed: " + what, List.of(
          "Nothing it may have printed so far should be relied on.",
          "HOLDFAST_TRACE=1 in the environment shows where it happened."));
    }
    if (console.traceWanted()) {
      StringWriter trace = new StringWriter();
      e.printStackTrace(new PrintWriter(trace));
      console.err().print(trace);
    }
    return ExitCode.OURS.number();
  }
}
