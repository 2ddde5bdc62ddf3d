package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.check.CheckWatch;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Command;

class ConsoleTest {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @Test
  void colourOnlyOnATerminalAndNeverAgainstTheUsersWish() {
    assertThat(console(true, Map.of()).colour()).isTrue();
    assertThat(console(false, Map.of()).colour()).isFalse();
    assertThat(console(true, Map.of("NO_COLOR", "1")).colour()).isFalse();
    assertThat(console(true, Map.of("NO_COLOR", "")).colour()).isTrue();
    assertThat(console(true, Map.of("TERM", "dumb")).colour()).isFalse();
  }

  @Test
  void outputIsUtf8WhateverThePlatformThinks() {
    Console c = console(false, Map.of());
    c.out().print("■ 5 mm² →");
    c.finish(0);
    assertThat(out.toByteArray()).isEqualTo("■ 5 mm² →".getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void progressIsShownAfterASecondOnATerminalAndWiped() throws Exception {
    Console c = console(true, Map.of());
    Progress p = Progress.show(c, "Checking", false);
    // Waits for what is to be seen rather than for a time; the loop's limit is only there against hanging.
    for (int i = 0; i < 600 && err.size() == 0; i++) Thread.sleep(50);
    assertThat(err.toString(StandardCharsets.UTF_8)).startsWith("\r\u001b[KChecking … ");
    p.close();
    assertThat(err.toString(StandardCharsets.UTF_8)).endsWith("\r\u001b[K");
  }

  @Test
  void progressTellsHowManyVariationsAreDone() throws Exception {
    Console c = console(true, Map.of());
    try (Progress p = Progress.show(c, "Checking", false)) {
      p.watching("Checking cube.json").at(CheckWatch.Stage.VARIATIONS, 37, 100);
      for (int i = 0; i < 600 && err.size() == 0; i++) Thread.sleep(50);
    }
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("Checking cube.json, variations 37 of 100 … ");
  }

  @Test
  void progressTellsHowFarTheLeastJointsAreProven() throws Exception {
    Console c = console(true, Map.of());
    try (Progress p = Progress.show(c, "Checking", false)) {
      CheckWatch watch = p.watching("Checking cube.json");
      watch.best(5);
      watch.at(CheckWatch.Stage.JOINTS, 128, 1471);
      for (int i = 0; i < 600 && err.size() == 0; i++) Thread.sleep(50);
    }
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("Checking cube.json, which joints to fix: 5 would do, cheaper sets 128 of 1471 … ");
  }

  @Test
  void noProgressWhenQuietOrWhenNoTerminal() {
    for (Progress p : List.of(Progress.show(console(true, Map.of()), "Checking", true),
        Progress.show(console(false, Map.of()), "Checking", false))) {
      assertThat(p.isSpeaking()).isFalse();
      p.close();
    }
    assertThat(err.size()).isZero();
  }

  @Command
  private static final class Breaks extends Subcommand {
    private final Throwable with;

    Breaks(Throwable with) {
      this.with = with;
    }

    @Override
    protected ExitCode run() throws Exception {
      if (with instanceof Error e) throw e;
      throw (Exception) with;
    }
  }

  @Test
  void aFaultOfOursIsSaidCalmlyAndShownOnRequestOnly() {
    for (Throwable fault : List.of(new IllegalStateException("the matrix is odd"), new AssertionError("the matrix is odd"),
        new StackOverflowError("the matrix is odd"), new NoClassDefFoundError("the matrix is odd"))) {
      err.reset();
      assertThat(new Launcher(console(false, Map.of())).run(new Breaks(fault))).isEqualTo(3);
      assertThat(err.toString(StandardCharsets.UTF_8)).isEqualTo("""
          holdfast: something went wrong inside the program, not in what you typed: the matrix is odd
            Nothing it may have printed so far should be relied on.
            HOLDFAST_TRACE=1 in the environment shows where it happened.
          """);
      assertThat(new Launcher(console(false, Map.of("HOLDFAST_TRACE", "1"))).run(new Breaks(fault))).isEqualTo(3);
      assertThat(err.toString(StandardCharsets.UTF_8)).contains("\tat holdfast.app.command.ConsoleTest");
    }
    assertThat(out.size()).isZero();
  }

  @Test
  void outOfMemory() {
    assertThat(new Launcher(console(false, Map.of())).run(new Breaks(new OutOfMemoryError("Java heap space")))).isEqualTo(3);
    assertThat(err.toString(StandardCharsets.UTF_8)).startsWith("holdfast: ran out of memory.\n");
  }

  @Test
  void aFileThatCannotBeWrittenIsTheUsersToMend() {
    assertThat(new Launcher(console(false, Map.of()))
        .run(new Breaks(new java.nio.file.AccessDeniedException("/etc/shadow.json")))).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).isEqualTo("holdfast: /etc/shadow.json: may not be read or written.\n");
  }

  private Console console(boolean terminal, Map<String, String> environment) {
    OutputStream to = out;
    return new Console(to, err, terminal, terminal, environment);
  }
}
