package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code holdfast picture} and {@code holdfast view} as a newcomer types them, each in a process of its own without a display. */
class PictureCommandTest {
  @TempDir
  Path folder;

  private record Said(int exit, String out, String err) {}

  private static Path scene(String name) {
    Path p = Path.of("").toAbsolutePath();
    while (!Files.isRegularFile(p.resolve("scenes/cube.json"))) p = p.getParent();
    return p.resolve("scenes").resolve(name + ".json");
  }

  private Said holdfast(String display, String... args) throws IOException, InterruptedException {
    List<String> line = new java.util.ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
        System.getProperty("java.class.path"), "holdfast.app.Main"));
    line.addAll(Arrays.asList(args));
    File out = folder.resolve("out.txt").toFile();
    File err = folder.resolve("err.txt").toFile();
    ProcessBuilder b = new ProcessBuilder(line).redirectOutput(out).redirectError(err);
    b.environment().keySet().removeAll(List.of("DISPLAY", "WAYLAND_DISPLAY", "XDG_RUNTIME_DIR"));
    if (!display.isEmpty()) b.environment().put("DISPLAY", display);
    b.environment().put("HOLDFAST_HOME", folder.resolve("user").toString());
    Process p = b.start();
    assertThat(p.waitFor(180, TimeUnit.SECONDS)).isTrue();
    return new Said(p.exitValue(), Files.readString(out.toPath()), Files.readString(err.toPath()));
  }

  @ParameterizedTest
  @CsvSource({"front, 320x200", "left, 300 x 400", "top, 160x160", "corner, 900×500"})
  void everySideAndSize(String view, String size) throws Exception {
    Path to = folder.resolve("heap.png");
    Said said = holdfast("", "picture", scene("nano").toString(), "-o", to.toString(), "--view", view, "--size", size, "--names");
    assumeTrue(said.exit != 3 || !said.err.contains("OpenGL"), () -> "no graphics here: " + said.err);
    assertThat(said.exit).as(said.err).isZero();
    assertThat(said.out).startsWith("Wrote " + to);
    BufferedImage image = ImageIO.read(to.toFile());
    String[] wh = size.split("\\s*[x×]\\s*");
    assertThat(image.getWidth()).isEqualTo(Integer.parseInt(wh[0]));
    assertThat(image.getHeight()).isEqualTo(Integer.parseInt(wh[1]));
    long tones = Arrays.stream(image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth())).distinct().count();
    assertThat(tones).as("the tank is on it").isGreaterThan(200);
    try (var left = Files.list(folder)) {
      assertThat(left.filter(f -> f.getFileName().toString().startsWith("."))).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "--view back | --view must be front, left, top or corner, was 'back'.",
    "--size 100x100 | --size: width and height must be from 160 to 8192, was '100x100'.",
    "--size 9000x500 | --size: width and height must be from 160 to 8192, was '9000x500'.",
    "--size wide | --size must be two numbers with an x between them, such as 1280x800, was 'wide'.",
    "--of rocks | --of must be tank or pane, was 'rocks'."})
  void wrongOptionsAreToldAndNothingIsWritten(String option, String words) {
    String[] o = option.split(" ");
    Path to = folder.resolve("heap.png");
    Run run = Run.holdfast("picture", scene("nano").toString(), "-o", to.toString(), o[0], o[1]);
    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.err()).contains(words);
    assertThat(to).doesNotExist();
  }

  @Test
  void wrongFilesAreTold() {
    assertThat(Run.holdfast("picture", scene("nano").toString()).exit()).as("no -o").isEqualTo(2);
    assertThat(Run.holdfast("picture", scene("nano").toString(), "-o", folder.resolve("heap.jpg").toString()).err()).contains(".png");
    assertThat(Run.holdfast("picture", scene("nano").toString(), "-o", folder.resolve("no/heap.png").toString()).err())
        .contains("there is no such folder to write to");
    assertThat(Run.holdfast("picture", "no-such.json", "-o", folder.resolve("heap.png").toString()).err()).contains("no-such.json");
  }

  @Test
  void viewWithoutADisplaySaysSoAndEndsWithThree() throws Exception {
    Said said = holdfast("", "view", scene("nano").toString());
    assertThat(said.exit).isEqualTo(3);
    assertThat(said.err).startsWith("holdfast: There is no display to open a window on: neither DISPLAY nor WAYLAND_DISPLAY is set.");
    assertThat(said.err).contains("holdfast picture draws a scene without a display.");
    assertThat(said.out).isEmpty();
  }

  @Test
  void viewOnADisplayThatIsNotThereSaysSoAndEndsWithThree() throws Exception {
    Said said = holdfast(":987", "view");
    assertThat(said.exit).isEqualTo(3);
    assertThat(said.err).startsWith("holdfast: There is no display to open a window on").contains(":987");
  }

  @Test
  void viewOfAWrongSceneIsTheUsersToMend() throws Exception {
    Said said = holdfast("", "view", folder.resolve("missing.json").toString());
    assertThat(said.exit).isEqualTo(2);
    assertThat(said.err).contains("missing.json");
  }
}
