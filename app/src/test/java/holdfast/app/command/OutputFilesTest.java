package holdfast.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.model.io.SceneFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file that cannot be written is told by the name that was typed, and nothing is left beside it. */
class OutputFilesTest {
  /** Longer than any usual file system takes: 255 bytes on most (common knowledge). */
  private static final String LONG = "x".repeat(300);

  @TempDir
  Path folder;
  private Path scene;

  @BeforeEach
  void save() throws IOException {
    scene = folder.resolve("small.json");
    SceneFiles.save(scene, Scenes.small());
  }

  @Test
  void whatCannotBeWrittenIsTold() throws IOException {
    String in = scene.toString();
    String bump = "bump " + in + " --rock block --toward left --impulse 0.1 ";
    for (String command : List.of("new 60x30x35cm -o FILE.json", "settle " + in + " -o FILE.json", "sheet " + in + " -o FILE.pdf",
        "picture " + in + " --of pane -o FILE.png", bump + "--frames FILE.json", bump + "--section FILE.png")) {
      String[] typed = command.replace("FILE", folder.resolve(LONG).toString()).split(" ");
      Run r = Run.holdfast(typed);
      assertThat(r.exit()).as(command).isEqualTo(2);
      String named = typed[typed.length - 1];
      assertThat(r.err().lines().filter(l -> l.startsWith("holdfast: " + named + ": "))).as(r.err()).hasSize(1);
      assertThat(r.err()).as(command).doesNotContain("inside the program", "Exception");
      try (var left = Files.list(folder)) {
        assertThat(left).containsExactly(scene);
      }
    }
  }

  /** A name that just fits is taken: what is written beside it first has a short one. */
  @Test
  void aLongNameThatFitsIsTaken() {
    Path longest = folder.resolve("x".repeat(250) + ".json");
    assertThat(Run.holdfast("new", "60x30x35cm", "-o", longest.toString()).exit()).isZero();
    assertThat(longest).exists();
  }
}
