package holdfast.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The jar and the start script as they are built, run as other processes. */
class PackagedTest {
  private static final Path TARGET = Path.of("target").toAbsolutePath();

  @TempDir
  Path dir;

  private record Ended(int exit, String out, String err) {}

  @Test
  void theJarStarts() throws Exception {
    Ended help = jar("--help");
    assertThat(help.exit).isZero();
    assertThat(help.out).startsWith("Plans the rockwork of a marine tank");
    assertThat(help.err).isEmpty();
    assertThat(jar("--version").out).matches("holdfast \\d.*\\R");
    assertThat(jar("no-such-thing").exit).isEqualTo(2);
  }

  @Test
  void helpLoadsNeitherTheEngineNorAWindowLibrary() throws Exception {
    for (String[] args : List.of(new String[] {"--help"}, new String[] {"new", "--help"})) {
      Ended r = run(Map.of(), command(List.of(java(), "-verbose:class", "-jar", TARGET.resolve("holdfast.jar").toString()), args));
      assertThat(r.exit).isZero();
      assertThat(r.out).contains("holdfast.app.command.Launcher");
      assertThat(r.out.lines().filter(l -> l.contains("holdfast.engine.") || l.contains("org.lwjgl") || l.contains("pdfbox"))).isEmpty();
    }
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void theScriptStartsTheJarAndRemembersItsClasses() throws Exception {
    Path cache = dir.resolve("cache");
    Map<String, String> env = Map.of("HOLDFAST_CACHE", cache.toString());
    Ended first = run(env, script("defaults", "--format", "json"));
    assertThat(first.exit).isZero();
    assertThat(first.err).isEmpty();
    assertThat(Files.list(cache)).hasSize(1).allSatisfy(p -> assertThat(p.toString()).endsWith(".jsa"));
    Ended second = run(env, script("defaults", "--format", "json"));
    assertThat(second).isEqualTo(first);
    assertThat(run(env, script("defaults", "--format", "xml")).exit).isEqualTo(2);
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void theScriptDoesWithoutACacheAndFromAnotherFolderThroughALink() throws Exception {
    Path link = Files.createSymbolicLink(dir.resolve("hf"), TARGET.resolve("holdfast"));
    for (String cache : List.of("none", "/dev/null/nowhere")) {
      Ended r = run(Map.of("HOLDFAST_CACHE", cache), command(List.of(link.toString()), "--version"));
      assertThat(r.exit).isZero();
      assertThat(r.err).isEmpty();
      assertThat(run(Map.of("HOLDFAST_CACHE", cache), command(List.of(link.toString()), "defaults")).err).isEmpty();
    }
    Files.delete(link);
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aReaderThatStopsEarlyIsNoError() throws Exception {
    Ended r = run(Map.of("HOLDFAST_CACHE", "none"), List.of("sh", "-c",
        "{ \"$0\" defaults; echo $? >&2; } | head -n 1 >/dev/null", TARGET.resolve("holdfast").toString()));
    assertThat(r.err).isEqualTo("0\n");
  }

  private Ended jar(String... args) throws IOException, InterruptedException {
    return run(Map.of(), command(List.of(java(), "-jar", TARGET.resolve("holdfast.jar").toString()), args));
  }

  private static List<String> script(String... args) {
    return command(List.of(TARGET.resolve("holdfast").toString()), args);
  }

  private static List<String> command(List<String> start, String... args) {
    List<String> all = new ArrayList<>(start);
    all.addAll(List.of(args));
    return all;
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  private Ended run(Map<String, String> environment, List<String> command) throws IOException, InterruptedException {
    Path out = Files.createTempFile(dir, "out", "");
    Path err = Files.createTempFile(dir, "err", "");
    ProcessBuilder builder = new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
    builder.environment().putAll(environment);
    // Options for every Java machine of this environment would add a line of their own to standard error.
    builder.environment().remove("JAVA_TOOL_OPTIONS");
    builder.environment().remove("_JAVA_OPTIONS");
    builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    Process p = builder.start();
    if (!p.waitFor(2, TimeUnit.MINUTES)) {
      p.destroyForcibly();
      throw new AssertionError(command + " did not end");
    }
    return new Ended(p.exitValue(), Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
  }
}
