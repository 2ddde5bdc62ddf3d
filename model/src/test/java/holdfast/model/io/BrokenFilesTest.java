package holdfast.model.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes wrong between the disk and the text, and with files that a scene names. */
class BrokenFilesTest {
  @TempDir Path folder;

  @Test
  void thereIsNoSuchFile() {
    Path file = folder.resolve("none.json");
    assertThat(rendered(file)).isEqualTo(file + ": $: found no such file; must be the name of a JSON file\n");
  }

  @Test
  void theNameIsThatOfAFolder() {
    assertThat(rendered(folder)).isEqualTo(folder + ": $: found a folder; must be a JSON file\n");
  }

  @Test
  void theFileIsEmpty() throws IOException {
    Path file = Files.createFile(folder.resolve("empty.json"));
    assertThat(rendered(file)).isEqualTo(file + ": $: found an empty file; must hold a JSON object\n");
  }

  @Test
  void theFileIsNoText() throws IOException {
    Path file = Files.write(folder.resolve("picture.json"), new byte[] {(byte) 0x89, 'P', 'N', 'G', (byte) 0xff, 0});
    assertThat(rendered(file)).isEqualTo(file + ": $: found bytes that are not UTF-8; must be JSON text in UTF-8\n");
  }

  @Test
  void aByteOrderMarkDoesNoHarm() throws IOException {
    Path file = Files.write(folder.resolve("marked.json"), ("\uFEFF" + BrokenScene.GOOD).getBytes(StandardCharsets.UTF_8));
    assertThat(rendered(file)).isEqualTo("read\n");
  }

  @Test
  void meshFilesAreLookedForBesideTheScene() throws IOException {
    String text = BrokenScene.GOOD.replace(
        "\"points_mm\": [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100]]", "\"mesh_file\": \"scans/chunk.obj\"");
    Path file = Files.writeString(folder.resolve("scanned.json"), text);
    assertThat(rendered(file)).isEqualTo(file
        + ":15: $.rocks[1].form.mesh_file: found \"scans/chunk.obj\"; must be a file, and there is none at "
        + folder.resolve("scans/chunk.obj") + "\n");
    Files.createDirectory(folder.resolve("scans"));
    Files.createFile(folder.resolve("scans/chunk.obj"));
    assertThat(rendered(file)).isEqualTo("read\n");
  }

  @Test
  void tooMuchText() {
    String text = BrokenScene.GOOD + " ".repeat(JsonText.MAX_CHARS);
    assertThat(BrokenScene.rendered(text)).isEqualTo("small.json: $: found " + text.length()
        + " characters; must have at most 32000000\n");
  }

  private static String rendered(Path file) {
    return SceneReader.read(file).match(s -> "read\n", ReadResult.Refused::rendered);
  }
}
