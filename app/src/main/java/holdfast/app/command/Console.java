package holdfast.app.command;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Where a command writes: standard output for what was asked, standard error for messages and progress, both UTF-8 on
 * every system, and what is known about the other end. A reader that goes away ({@code holdfast check … | head}) is
 * not an error; a full disk is.
 */
public final class Console {
  private final Sink outSink;
  private final PrintStream out;
  private final PrintStream err;
  private final boolean outIsTerminal;
  private final boolean errIsTerminal;
  private final Map<String, String> environment;

  public Console(
      OutputStream out, OutputStream err, boolean outIsTerminal, boolean errIsTerminal, Map<String, String> environment) {
    this.outSink = new Sink(out);
    this.out = new PrintStream(outSink, false, StandardCharsets.UTF_8);
    this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
    this.outIsTerminal = outIsTerminal;
    this.errIsTerminal = errIsTerminal;
    this.environment = Map.copyOf(environment);
  }

  /**
   * The console of this process. Java 17 cannot ask for one stream whether it is a terminal: the start scripts say so in
   * the property {@code holdfast.terminal} ({@code out}, {@code err}, both or neither); without it, a terminal is taken
   * for granted only when both input and output are one.
   */
  public static Console ofProcess() {
    String told = System.getProperty("holdfast.terminal");
    boolean both = told == null && System.console() != null;
    List<String> ends = told == null ? List.of() : Arrays.asList(told.split(","));
    return new Console(
        new java.io.BufferedOutputStream(new FileOutputStream(FileDescriptor.out), 1 << 16),
        new FileOutputStream(FileDescriptor.err),
        both || ends.contains("out"), both || ends.contains("err"), System.getenv());
  }

  public PrintStream out() {
    return out;
  }

  public PrintStream err() {
    return err;
  }

  public boolean errIsTerminal() {
    return errIsTerminal;
  }

  /** Whether to colour what goes to standard output: only on a terminal, and never against the user's NO_COLOR. */
  public boolean colour() {
    return outIsTerminal && environment.getOrDefault("NO_COLOR", "").isEmpty()
        && !"dumb".equals(environment.get("TERM"));
  }

  /** The user asked to see where a fault of ours comes from. */
  public boolean traceWanted() {
    return !environment.getOrDefault("HOLDFAST_TRACE", "").isEmpty();
  }

  /** A message to the user, with what would be right beneath it. */
  public void say(String message, List<String> hints) {
    err.print("holdfast: " + message + "\n");
    hints.forEach(h -> err.print("  " + h.replace("\n", "\n  ") + "\n"));
    err.flush();
  }

  /** Writes out what is left; returns the exit code, changed if what was asked for could not be written. */
  public int finish(int exit) {
    out.flush();
    IOException trouble = outSink.trouble;
    if (trouble == null || readerWentAway(trouble)) return exit;
    say("could not write the output: " + trouble.getMessage() + ".", List.of());
    return ExitCode.OURS.number();
  }

  private static boolean readerWentAway(IOException e) {
    String m = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT);
    return m.contains("broken pipe") || m.contains("pipe is being closed") || m.contains("pipe has been ended");
  }

  /** Remembers the first failure of a stream; {@link PrintStream} would swallow its reason. */
  private static final class Sink extends OutputStream {
    private final OutputStream to;
    private IOException trouble;

    Sink(OutputStream to) {
      this.to = to;
    }

    @Override
    public void write(int b) {
      write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] b, int off, int len) {
      if (trouble != null) return;
      try {
        to.write(b, off, len);
      } catch (IOException e) {
        trouble = e;
      }
    }

    @Override
    public void flush() {
      if (trouble != null) return;
      try {
        to.flush();
      } catch (IOException e) {
        trouble = e;
      }
    }
  }
}
