package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A display whose graphics are too old: the command says so in a sentence and ends with 3. The driver pretends to be old
 * (a documented variable of the Mesa library). Left out where there is no virtual display.
 */
class OldGraphicsTest {
  @TempDir
  Path folder;

  @Test
  void isToldPlainly() throws Exception {
    for (String n : List.of("xvfb-run", "xauth")) {
      boolean there = List.of(System.getenv().getOrDefault("PATH", "").split(":")).stream()
          .anyMatch(p -> Files.isExecutable(Path.of(p, n)));
      if (!there) System.err.println("Left out, no " + n + " here: too old graphics were not tried.");
      assumeTrue(there, () -> "no " + n + " here");
    }
    ProcessBuilder run = new ProcessBuilder("xvfb-run", "-a", Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-cp", System.getProperty("java.class.path"), "holdfast.app.Main", "view").redirectErrorStream(true);
    run.environment().put("MESA_GL_VERSION_OVERRIDE", "2.1");
    run.environment().put("HOLDFAST_HOME", folder.resolve("user").toString());
    Process p = run.start();
    p.getOutputStream().close();
    String words = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(p.waitFor(120, TimeUnit.SECONDS)).isTrue();
    assertThat(words).contains("OpenGL 3.3 is needed").contains("holdfast picture")
        .doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(p.exitValue()).isEqualTo(3);
  }
}
