package holdfast.app.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Scans stay with their scene. */
class ScanHomeTest {
  @TempDir
  Path folder;
  private Path home;
  private Path elsewhere;

  @BeforeEach
  void folders() throws IOException {
    home = Files.createDirectories(folder.resolve("scene"));
    elsewhere = Files.createDirectories(folder.resolve("scans"));
  }

  @Test
  void whatLiesThereIsNamedFromThere() throws IOException {
    Files.createDirectories(home.resolve("rocks"));
    Files.writeString(home.resolve("rocks/a.obj"), "a");
    assertThat(ScanHome.nameOf(Path.of("rocks", "a.obj"), home)).isEqualTo("rocks/a.obj");
    assertThat(ScanHome.nameOf(home.resolve("rocks/a.obj"), home)).isEqualTo("rocks/a.obj");
    assertThat(ScanHome.nameOf(home.resolve("rocks/../rocks/a.obj"), home)).isEqualTo("rocks/a.obj");
  }

  @Test
  void whatLiesElsewhereIsCopiedOnceAndNeverOverAnother() throws IOException {
    Path scan = Files.writeString(elsewhere.resolve("a.obj"), "a");
    assertThat(ScanHome.nameOf(scan, home)).isEqualTo("a.obj");
    assertThat(home.resolve("a.obj")).hasContent("a");
    assertThat(ScanHome.nameOf(scan, home)).as("the same scan again").isEqualTo("a.obj");
    Files.writeString(scan, "another");
    assertThat(ScanHome.nameOf(scan, home)).isEqualTo("a 2.obj");
    assertThat(home.resolve("a.obj")).hasContent("a");
    assertThat(home.resolve("a 2.obj")).hasContent("another");
    try (var left = Files.list(home)) {
      assertThat(left).hasSize(2);
    }
  }

  @Test
  void aSceneThatIsSavedElsewhereTakesItsScansAlong() throws IOException {
    Files.writeString(home.resolve("a.obj"), "a");
    Scene s = Scenes.small().withRocks(List.of(new Rock("scanned", Rock.Kind.DRY, new Rock.Mesh("a.obj", 1),
        new Rock.Weighed(1, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty())));
    ScanHome.carry(s, home, elsewhere);
    assertThat(elsewhere.resolve("a.obj")).hasContent("a");
    ScanHome.carry(s, home, elsewhere);
    Files.writeString(elsewhere.resolve("a.obj"), "not the same");
    assertThatThrownBy(() -> ScanHome.carry(s, home, elsewhere)).isInstanceOf(IOException.class).hasMessageContaining("a.obj");
    assertThat(elsewhere.resolve("a.obj")).hasContent("not the same");
  }
}
