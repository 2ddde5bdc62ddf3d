package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.app.edit.Scenes;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The command itself in a window of a real display server, with a synthetic mouse and keyboard: click a rock, drag it, turn
 * it by its ring, take that back, save, leave. What the document is at each step is read from the file that it saves. Left
 * out where there is no virtual display.
 */
class RealWindowTest {
  private static final List<String> NEEDED = List.of("xvfb-run", "xauth", "xdotool");
  /** The window as the command opens it, and the screen it is given. */
  private static final int WIDTH = 1440;
  private static final int HEIGHT = 900;
  private static final double HALF_CELL = 12.7 / 2;

  /**
   * Waits for the window, checks its size, does what {@code steps} says and waits for the program's own end. {@code saved
   * NAME} saves as a person would and keeps a copy of the file; {@code drag} goes from place to place in small steps.
   */
  private static final String DRIVE = """
      scene=$1; kept=$2; steps=$3; shift 3
      "$@" & program=$!
      window=
      for i in $(seq 1 240); do
        window=$(xdotool search --onlyvisible --name '^Holdfast$' 2>/dev/null | head -1)
        [ -n "$window" ] && break
        kill -0 $program 2>/dev/null || exit 71
        sleep 0.5
      done
      [ -n "$window" ] || exit 72
      eval "$(xdotool getwindowgeometry --shell "$window")"
      [ "$WIDTH,$HEIGHT" = "1440,900" ] || { kill $program; echo "window of $WIDTH x $HEIGHT"; exit 74; }
      sleep 4
      xdotool windowfocus "$window"
      at() { xdotool mousemove --window "$window" "$1" "$2"; sleep "${3:-0.3}"; }
      key() { xdotool key "$1"; sleep "${2:-1}"; }
      drag() {
        at "$1" "$2" 1
        xdotool mousedown 1; sleep 0.5
        for i in 1 2 3 4 5 6 7 8; do at $(( $1 + ($3 - $1) * i / 8 )) $(( $2 + ($4 - $2) * i / 8 )); done
        sleep 1; xdotool mouseup 1; sleep 1
      }
      saved() {
        touch "$kept/mark"; sleep 0.1
        xdotool key ctrl+s
        for i in $(seq 1 60); do [ "$scene" -nt "$kept/mark" ] && break; sleep 0.5; done
        [ "$scene" -nt "$kept/mark" ] || { kill $program; echo "nothing saved: $1"; exit 75; }
        cp "$scene" "$kept/$1.json"
      }
      . "$steps"
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

  /** Runs the command on the small scene and does the steps in its window. */
  private void drive(String steps) throws IOException, InterruptedException {
    for (String n : NEEDED) {
      if (!there(n)) System.err.println("Left out, no " + n + " here: the real window was not tried.");
      assumeTrue(there(n), () -> "no " + n + " here");
    }
    Path scene = folder.resolve("heap.json");
    SceneFiles.save(scene, Scenes.small());
    Path script = Files.writeString(folder.resolve("drive.sh"), DRIVE);
    Path todo = Files.writeString(folder.resolve("steps.sh"), steps);
    Path log = folder.resolve("log.txt");
    ProcessBuilder run = new ProcessBuilder("xvfb-run", "-a", "-s", "-screen 0 " + WIDTH + "x" + HEIGHT + "x24", "bash",
        script.toString(), scene.toString(), folder.toString(), todo.toString(),
        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", System.getProperty("java.class.path"),
        "holdfast.app.Main", "view", scene.toString()).redirectErrorStream(true).redirectOutput(log.toFile());
    run.environment().put("HOLDFAST_HOME", folder.resolve("user").toString());
    Process p = run.start();
    boolean ended = p.waitFor(300, TimeUnit.SECONDS);
    if (!ended) p.descendants().forEach(ProcessHandle::destroyForcibly);
    assertThat(ended).as("ended; it said: " + Files.readString(log)).isTrue();
    assertThat(p.exitValue()).as(Files.readString(log)).isZero();
  }

  private Scene kept(String name) {
    return SceneReader.read(folder.resolve(name + ".json")).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    });
  }

  private Placement block(String name) {
    return kept(name).placement("block").orElseThrow();
  }

  /** The view from above of a window of that size, as the key for it shows it. */
  private static Projector fromAbove(Tableau t) {
    Layout l = new Layout(WIDTH, HEIGHT, 1, false);
    Camera c = Camera.fit(Camera.View.TOP, t.low(), t.high(), l.sceneWidth() / (double) l.sceneHeight(), 0.12);
    return new Projector(c, l.sceneWidth(), l.sceneHeight());
  }

  private static String place(Projector eye, Vec3 p) {
    Layout l = new Layout(WIDTH, HEIGHT, 1, false);
    Projector.Spot s = eye.spot(p);
    return Math.round(s.x() + l.sceneX()) + " " + Math.round(s.y() + l.sceneY());
  }

  @Test
  void choosesByKeyMovesSavesAndLeaves() throws IOException, InterruptedException {
    drive("""
        at 640 420 1
        at 660 430
        xdotool click 4; sleep 1
        key t
        key t
        key Right
        saved moved
        """);
    // Two steps of T choose the second rock; the right arrow moves it by a millimetre.
    assertThat(block("moved").atMm().x()).isEqualTo(301);
  }

  /** The block of 100 mm stands in the middle of the tank, on the slab, at 300, 200 and 70 mm. */
  @Test
  void clicksDragsTurnsAndTakesBackByMouse() throws IOException, InterruptedException {
    Tableau t = new SceneStones(name -> ScanFiles.load(folder, name)).tableau(Scenes.small());
    Projector eye = fromAbove(t);
    Stone block = t.stones().stream().filter(s -> s.name().equals("block")).findFirst().orElseThrow();
    double top = block.high().z();
    Vec3 ringAt = Handles.middle(block);
    double ring = Handles.radius(block);
    List<String> steps = new ArrayList<>();
    steps.add("key 3 3");
    steps.add("at " + place(eye, new Vec3(0.32, 0.22, top)) + " 1");
    steps.add("xdotool click 1; sleep 1");
    // The click chose it: the key moves it.
    steps.add("key Right; saved clicked; key ctrl+z; saved unclicked");
    steps.add("drag " + place(eye, new Vec3(0.32, 0.22, top)) + " " + place(eye, new Vec3(0.49, 0.16, top)));
    steps.add("saved dragged; key ctrl+z; saved undone; key ctrl+y; saved redone; key ctrl+z");
    steps.add("drag " + place(eye, ringAt.plusTimes(ring, Vec3.heading(0))) + " "
        + place(eye, ringAt.plusTimes(ring, Vec3.heading(40))));
    steps.add("saved turned; key ctrl+z; saved unturned");
    drive(String.join("\n", steps) + "\n");

    Vec3 before = new Vec3(300, 200, 70);
    assertThat(block("clicked").atMm()).isEqualTo(new Vec3(301, 200, 70));
    assertThat(kept("unclicked")).isEqualTo(Scenes.small());
    // 170 mm to the right and 60 to the front, in half cells of the grid, which starts 10 mm from the pane; off the slab.
    Vec3 at = block("dragged").atMm();
    assertThat(at.x()).isCloseTo(470, within(HALF_CELL + 2));
    assertThat(at.y()).isCloseTo(140, within(HALF_CELL + 2));
    assertThat((at.x() - 10) / HALF_CELL).isCloseTo(Math.rint((at.x() - 10) / HALF_CELL), within(1e-6));
    assertThat(at.z()).as("off the slab, on the grid").isCloseTo(10, within(1e-6));
    assertThat(kept("undone")).as("the whole drag is one step").isEqualTo(Scenes.small());
    assertThat(kept("redone")).isEqualTo(kept("dragged"));
    assertThat(RockSheet.degreesZyx(block("turned").turn())[0]).isCloseTo(40, within(3.0));
    assertThat(block("turned").atMm().distanceTo(before)).as("turned in its place").isLessThan(0.01);
    assertThat(kept("unturned")).isEqualTo(Scenes.small());
  }
}
