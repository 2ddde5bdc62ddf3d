package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.app.edit.Scenes;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The command itself in a window of a real display server, with a synthetic mouse and keyboard: choose a rock by its
 * keys, move it, save, leave. Left out where there is no virtual display.
 */
class RealWindowTest {
  private static final List<String> NEEDED = List.of("xvfb-run", "xauth", "xdotool");
  private static final String SCRIPT = """
      "$@" & program=$!
      window=
      for i in $(seq 1 240); do
        window=$(xdotool search --onlyvisible --name '^Holdfast$' 2>/dev/null | head -1)
        [ -n "$window" ] && break
        kill -0 $program 2>/dev/null || exit 71
        sleep 0.5
      done
      [ -n "$window" ] || exit 72
      sleep 4
      xdotool windowfocus "$window"
      xdotool mousemove 640 420 && sleep 1
      xdotool mousemove 660 430 click 4 && sleep 1
      xdotool key Tab && sleep 1
      xdotool key Tab && sleep 1
      xdotool key Right && sleep 1
      xdotool key ctrl+s && sleep 2
      xdotool key ctrl+q
      for i in $(seq 1 120); do kill -0 $program 2>/dev/null || break; sleep 0.5; done
      kill -0 $program 2>/dev/null && { kill $program; exit 73; }
      wait $program
      """;

  @TempDir
  Path folder;

  private static boolean there(String program) {
    return List.of(System.getenv().getOrDefault("PATH", "").split(":")).stream().anyMatch(p -> Files.isExecutable(Path.of(p, program)));
  }

  @Test
  void opensMovesSavesAndLeaves() throws IOException, InterruptedException {
    for (String n : NEEDED) {
      if (!there(n)) System.err.println("Left out, no " + n + " here: the real window was not tried.");
      assumeTrue(there(n), () -> "no " + n + " here");
    }
    Path scene = folder.resolve("heap.json");
    SceneFiles.save(scene, Scenes.small());
    Path script = Files.writeString(folder.resolve("drive.sh"), SCRIPT);
    Path log = folder.resolve("log.txt");
    ProcessBuilder run = new ProcessBuilder("xvfb-run", "-a", "-s", "-screen 0 1440x900x24", "bash", script.toString(),
        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", System.getProperty("java.class.path"),
        "holdfast.app.Main", "view", scene.toString()).redirectErrorStream(true).redirectOutput(log.toFile());
    run.environment().put("HOLDFAST_HOME", folder.resolve("user").toString());
    Process p = run.start();
    boolean ended = p.waitFor(300, TimeUnit.SECONDS);
    if (!ended) p.descendants().forEach(ProcessHandle::destroyForcibly);
    assertThat(ended).as("ended; it said: " + Files.readString(log)).isTrue();
    assertThat(p.exitValue()).as(Files.readString(log)).isZero();
    Scene saved = SceneReader.read(scene).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    });
    // Two steps of Tab choose the second rock; the right arrow moves it by a millimetre.
    assertThat(saved.placement("block").orElseThrow().atMm().x()).isEqualTo(301);
  }
}
