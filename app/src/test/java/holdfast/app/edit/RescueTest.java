package holdfast.app.edit;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.model.io.ReadResult;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Unsaved work comes back, and a process that is killed while saving leaves a whole file. */
class RescueTest {
  @TempDir
  Path folder;

  @Test
  void keepsFindsAndDiscards() throws IOException {
    Rescue r = Rescue.beside(folder.resolve("heap.json"));
    assertThat(r.found()).isEmpty();
    r.keep(Scenes.small());
    assertThat(r.found().orElseThrow().scene()).isEqualTo(Scenes.small());
    assertThat(Rescue.beside(folder.resolve("heap.json")).found()).isPresent();
    r.discard();
    assertThat(r.found()).isEmpty();
  }

  @Test
  void brokenCopyIsNoWork() throws IOException {
    Rescue r = Rescue.untitled(folder);
    Files.writeString(r.file(), "{\"format\": ");
    assertThat(r.found()).isEmpty();
  }

  @Test
  void noticesForeignChange() throws IOException {
    Path file = folder.resolve("heap.json");
    SceneFiles.save(file, Scenes.small());
    FileMark mark = FileMark.of(file).orElseThrow();
    assertThat(mark.changed()).isFalse();
    SceneFiles.saveText(file, Files.readString(file));
    assertThat(mark.changed()).as("the same bytes written again").isFalse();
    SceneFiles.saveText(file, Files.readString(file).replace("small", "smaxx"));
    assertThat(mark.changed()).isTrue();
    Files.delete(file);
    assertThat(mark.changed()).isTrue();
  }

  @Test
  void recentScenesLatestFirstWithoutThoseGone() throws IOException {
    RecentScenes recent = new RecentScenes(folder.resolve("state"));
    Path a = Files.writeString(folder.resolve("a.json"), "a");
    Path b = Files.writeString(folder.resolve("b.json"), "b");
    recent.opened(a);
    recent.opened(b);
    recent.opened(a);
    assertThat(recent.list()).containsExactly(a, b);
    Files.delete(a);
    assertThat(recent.list()).containsExactly(b);
  }

  @Test
  void userFolderByTheCustomOfEachSystem() {
    // XDG Base Directory Specification 0.8: $XDG_STATE_HOME, default $HOME/.local/state (published).
    Path home = Path.of("/home/someone");
    assertThat(UserFolder.of("Linux", home, Map.of())).isEqualTo(home.resolve(".local/state/holdfast"));
    assertThat(UserFolder.of("Linux", home, Map.of("XDG_STATE_HOME", "/s"))).isEqualTo(Path.of("/s/holdfast"));
    assertThat(UserFolder.of("Mac OS X", home, Map.of())).isEqualTo(home.resolve("Library/Application Support/Holdfast"));
    assertThat(UserFolder.of("Windows 11", home, Map.of("APPDATA", "/d"))).isEqualTo(Path.of("/d/Holdfast"));
  }

  /** The other process: saves again and again, and says after each save which one it was. */
  static final class Saver {
    public static void main(String[] args) throws IOException {
      Path file = Path.of(args[0]);
      Document d = new Document(Scenes.small());
      for (int i = 1; i <= 200; i++) {
        d.apply(new Edit.Entitle("save " + i));
        SceneFiles.save(file, d.scene());
        Rescue.beside(file).keep(d.scene());
        System.out.println(i);
        System.out.flush();
      }
    }
  }

  @Test
  void killedAtAnyMomentOfTwoHundredSavesLosesNoScene() throws Exception {
    long seed = 77;
    Random random = new Random(seed);
    Path file = folder.resolve("heap.json");
    for (int round = 0; round < 6; round++) {
      Process p = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xshare:auto",
          "-cp", System.getProperty("java.class.path"), Saver.class.getName(), file.toString()).redirectErrorStream(true).start();
      int last = 0;
      int killAt = 1 + random.nextInt(199);
      try (BufferedReader out = new BufferedReader(new InputStreamReader(p.getInputStream(), StandardCharsets.UTF_8))) {
        for (String line = out.readLine(); line != null; line = out.readLine()) {
          last = Integer.parseInt(line.strip());
          if (last == killAt) {
            Thread.sleep(0, random.nextInt(900_000));
            p.toHandle().destroyForcibly();
          }
        }
      }
      p.waitFor();
      assertThat(last).as("seed %d round %d: the saver ran", seed, round).isGreaterThanOrEqualTo(killAt);
      for (Path kept : List.of(file, Rescue.beside(file).file())) {
        ReadResult<Scene> read = SceneReader.read(kept);
        int number = read.match(s -> Integer.parseInt(s.name().substring(5)), refused -> -1);
        assertThat(number).as("seed %d round %d, %s", seed, round, kept.getFileName()).isGreaterThanOrEqualTo(last);
      }
    }
  }
}
