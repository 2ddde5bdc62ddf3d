package holdfast.app.command;

import holdfast.engine.check.CheckWatch;

/**
 * Says on standard error what is being done, once it has taken over a second, and wipes the line when done. Nothing is
 * written when standard error is not a terminal.
 */
public final class Progress implements AutoCloseable {
  private static final long FIRST_MS = 1000;
  private static final long EVERY_MS = 500;
  private static final String WIPE = "\r\u001b[K";

  private final Console console;
  private final Thread teller;
  private volatile String what;
  private volatile boolean done;
  private boolean shown;

  private Progress(Console console, String what, boolean speak) {
    this.console = console;
    this.what = what;
    if (speak) {
      teller = new Thread(this::tell, "progress");
      teller.setDaemon(true);
      teller.start();
    } else {
      teller = null;
    }
  }

  static Progress show(Console console, String what, boolean quiet) {
    return new Progress(console, what, console.errIsTerminal() && !quiet);
  }

  /** Whether anything may be shown. */
  boolean isSpeaking() {
    return teller != null;
  }

  /** The next thing that is being done. */
  public void now(String next) {
    what = next;
  }

  /**
   * Tells what a check is at, behind {@code doing}: "Checking cube.json, variations 37 of 100", or "Checking cube.json, which
   * joints to fix: 5 would do, cheaper sets 128 of 1471".
   */
  CheckWatch watching(String doing) {
    return new CheckWatch() {
      private volatile int joints;

      @Override
      public void at(Stage stage, int done, int of) {
        String count = of > 0 ? " " + done + " of " + of : "";
        boolean best = stage == Stage.JOINTS && joints > 0;
        now(doing + ", " + stage.words() + (best ? ": " + joints + " would do" + (of > 0 ? ", cheaper sets" : "") : "") + count);
      }

      @Override
      public void best(int many) {
        joints = many;
      }
    };
  }

  private void tell() {
    long start = System.nanoTime();
    try {
      Thread.sleep(FIRST_MS);
      while (true) {
        synchronized (this) {
          if (done) return;
          shown = true;
          console.err().printf("%s%s … %d s", WIPE, what, (System.nanoTime() - start) / 1_000_000_000L);
          console.err().flush();
        }
        Thread.sleep(EVERY_MS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    if (teller == null) return;
    synchronized (this) {
      done = true;
      if (shown) {
        console.err().print(WIPE);
        console.err().flush();
      }
    }
    teller.interrupt();
  }
}
