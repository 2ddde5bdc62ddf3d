package holdfast.app;

import holdfast.app.command.Console;
import holdfast.app.command.Launcher;

/** The entry point. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    Console console = Console.ofProcess();
    int exit = new Launcher(console).run(args);
    System.exit(console.finish(exit));
  }
}
