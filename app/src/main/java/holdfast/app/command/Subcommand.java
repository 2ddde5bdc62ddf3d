package holdfast.app.command;

import holdfast.app.report.Units;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/**
 * One job of the program. A subclass declares its own options and parameters, does its work in {@link #run} and writes
 * through {@link #console}. It throws {@link InputProblem} for anything the user can put right.
 */
public abstract class Subcommand implements Callable<Integer> {
  @Spec
  protected CommandSpec spec;

  @Option(names = "--format", paramLabel = "text|json", converter = FormatWord.class,
      description = "Text for people or JSON for programs. Default: ${DEFAULT-VALUE}.")
  protected Format format = Format.TEXT;

  @Option(names = "--units", paramLabel = "metric|us", converter = UnitsWord.class,
      description = "Millimetres, kilograms and newtons (the default), or inches, pounds and pounds-force. "
          + "JSON is always metric.")
  protected Units units = Units.METRIC;

  @Option(names = {"-q", "--quiet"}, description = "No progress, and no more than the verdict where there is one.")
  protected boolean quiet;

  @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
  private boolean help;

  private Console console;

  final void attach(Console to) {
    console = to;
  }

  protected final Console console() {
    return console;
  }

  @Override
  public final Integer call() throws Exception {
    return run().number();
  }

  /** Does the job. */
  protected abstract ExitCode run() throws Exception;

  /** A progress line on standard error for as long as the returned object is open; only on a terminal, after a second. */
  protected final Progress progress(String what) {
    return Progress.show(console, what, quiet);
  }

  /** Does a job, and says on standard error what it is once that has taken over a second; only on a terminal. */
  protected final <T> T telling(String what, Supplier<T> job) {
    Progress progress = progress(what);
    try {
      return job.get();
    } finally {
      progress.close();
    }
  }

  /** Prints to standard output, lines ending in a bare newline on every system. */
  protected final void print(String text) {
    console.out().print(text);
  }

  static final class FormatWord implements ITypeConverter<Format> {
    @Override
    public Format convert(String value) {
      return word(Format.values(), value);
    }
  }

  static final class UnitsWord implements ITypeConverter<Units> {
    @Override
    public Units convert(String value) {
      return word(Units.values(), value);
    }
  }

  private static <E extends Enum<E>> E word(E[] all, String value) {
    for (E e : all) {
      if (e.name().equalsIgnoreCase(value)) return e;
    }
    List<String> words = java.util.Arrays.stream(all).map(e -> e.name().toLowerCase(Locale.ROOT)).toList();
    throw new TypeConversionException("must be " + String.join(" or ", words) + ", was '" + value + "'");
  }
}
