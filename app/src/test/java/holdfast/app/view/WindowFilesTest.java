package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Rescue;
import holdfast.app.edit.Scenes;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.TankSizes;
import holdfast.model.scene.Scene;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lwjgl.glfw.GLFW;

/** What goes in and out of the window: scene files, pictures, the sheet. */
class WindowFilesTest extends WindowCase {
  private static final int CTRL = GLFW.GLFW_MOD_CONTROL;

  @Test
  void savesAndComesBackAfterACrash() throws IOException {
    Path file = folder.resolve("heap.json");
    SceneFiles.save(file, Scenes.small());
    assertThat(d.window.commands().open(file)).isTrue();
    d.frames(3);
    d.click("block");
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    d.frames(80);
    assertThat(Files.exists(Rescue.beside(file).file())).as("a side copy after two seconds").isTrue();
    assertThat(read(file)).as("the file itself is untouched").isEqualTo(Scenes.small());
    // The program ends here without saving; another one opens the file.
    Scene unsaved = d.bench.scene();
    d = window(Scenes.small(), PLAIN);
    d.window.commands().open(file);
    d.frames(4);
    d.click("Bring it back");
    assertThat(d.bench.scene()).isEqualTo(unsaved);
    assertThat(d.bench.document().unsaved()).isTrue();
    d.frames(3);
    d.key(GLFW.GLFW_KEY_S, GLFW.GLFW_MOD_CONTROL);
    assertThat(read(file)).isEqualTo(unsaved);
    assertThat(Files.exists(Rescue.beside(file).file())).isFalse();
    assertThat(d.bench.filing().recent()).contains(file.toAbsolutePath());
  }

  @Test
  void warnsBeforeWritingOverForeignChanges() throws IOException {
    Path file = folder.resolve("heap.json");
    SceneFiles.save(file, Scenes.small());
    d.window.commands().open(file);
    d.frames(3);
    d.click("block");
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    String foreign = Files.readString(file).replace("\"small\"", "\"theirs\"");
    Files.writeString(file, foreign);
    d.key(GLFW.GLFW_KEY_S, GLFW.GLFW_MOD_CONTROL);
    d.frames(3);
    assertThat(Files.readString(file)).isEqualTo(foreign);
    d.click("Write over it");
    assertThat(Files.readString(file)).contains("\"small\"");
  }

  @Test
  void savesUnderANewNameAndFindsItAgainAmongTheRecent() {
    Path file = folder.resolve("mine.json");
    d.key(GLFW.GLFW_KEY_S, CTRL);
    d.frames(3);
    d.type("scene file", file.toString());
    d.click("Save here");
    assertThat(read(file)).isEqualTo(Scenes.small());
    d.key(GLFW.GLFW_KEY_N, CTRL);
    d.frames(3);
    d.click("size 60x30x35 cm");
    assertThat(d.bench.scene().rocks()).isEmpty();
    d.key(GLFW.GLFW_KEY_O, CTRL);
    d.frames(3);
    d.click("recent mine.json");
    d.frames(3);
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
  }

  /** Saving under the name of another scene asks first; under the own name it does not. */
  @Test
  void anotherSceneIsNotWrittenOverUnasked() throws IOException {
    Path other = folder.resolve("other.json");
    Scene theirs = ScenesSheet.empty(TankSizes.named("60x30x35 cm").orElseThrow());
    SceneFiles.save(other, theirs);
    d.key(GLFW.GLFW_KEY_S, CTRL);
    d.frames(3);
    d.type("scene file", other.toString());
    d.click("Save here");
    d.frames(2);
    assertThat(read(other)).isEqualTo(theirs);
    assertThat(d.window.ui().place("Write over it")).isPresent();
    // Another name is no longer that question.
    Path mine = folder.resolve("mine.json");
    d.type("scene file", mine.toString());
    d.frames(2);
    d.click("Save here");
    assertThat(read(mine)).isEqualTo(Scenes.small());
    d.key(GLFW.GLFW_KEY_O, CTRL);
    d.frames(3);
    d.click("Save here");
    assertThat(d.window.commands().sheet()).as("the own file").isEmpty();
    d.key(GLFW.GLFW_KEY_O, CTRL);
    d.frames(3);
    d.type("scene file", other.toString());
    d.click("Save here");
    d.frames(2);
    d.click("Write over it");
    assertThat(read(other)).isEqualTo(Scenes.small());
  }

  @Test
  void unsavedWorkIsAskedAboutBeforeAnythingTakesItsPlace() throws IOException {
    Path file = folder.resolve("other.json");
    Scene other = Scenes.small().withJoints(List.of());
    SceneFiles.save(file, ScenesSheet.empty(TankSizes.named("60x30x35 cm").orElseThrow()));
    d.click("block");
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    Scene work = d.bench.scene();
    d.window.commands().open(file);
    d.frames(3);
    assertThat(d.bench.scene()).as("still there").isEqualTo(work);
    d.click("Stay");
    d.frames(2);
    assertThat(d.bench.scene()).isEqualTo(work).isNotEqualTo(other);
    d.window.commands().open(file);
    d.frames(3);
    d.click("Leave without saving");
    d.frames(2);
    assertThat(d.bench.scene().rocks()).isEmpty();
    d.key(GLFW.GLFW_KEY_Q, CTRL);
    assertThat(d.window.commands().wantsToQuit()).isTrue();
  }

  @Test
  void aFileThatIsNoSceneIsRefusedInWords() throws IOException {
    Path file = Files.writeString(folder.resolve("torn.json"), "{\"format\": \"holdfast-scene/1\"");
    assertThat(d.window.commands().open(file)).isFalse();
    assertThat(notice()).contains("torn.json");
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
  }

  @Test
  void aFileChangedOutsideIsToldWhileOneWorks() throws IOException {
    Path file = folder.resolve("heap.json");
    SceneFiles.save(file, Scenes.small());
    d.window.commands().open(file);
    d.frames(3);
    assertThat(d.bench.filing().changedOutside()).isFalse();
    Files.writeString(file, Files.readString(file).replace("\"small\"", "\"theirs\""));
    // It is looked at every three seconds.
    d.frames(120);
    assertThat(d.bench.filing().changedOutside()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"as now, 320, 500", "from the front, 640, 400", "from the left, 400, 400", "from above, 512, 300",
    "from a corner, 300, 240"})
  void picturesOfAnySizeAndSide(String from, int width, int height) throws IOException {
    Path to = folder.resolve("heap.png");
    d.key(GLFW.GLFW_KEY_E, CTRL);
    d.frames(3);
    d.type("picture file", to.toString());
    d.click(from);
    d.type("picture width", String.valueOf(width));
    d.type("picture height", String.valueOf(height));
    d.click("Write the picture");
    d.rest();
    assertThat(notice()).isEqualTo("Wrote the picture " + to);
    BufferedImage image = ImageIO.read(to.toFile());
    assertThat(image.getWidth()).isEqualTo(width);
    assertThat(image.getHeight()).isEqualTo(height);
    // Not an empty sheet: the tank and its stones are on it.
    assertThat(Arrays.stream(image.getRGB(0, 0, width, height, null, 0, width)).distinct().count()).isGreaterThan(300);
    // The window draws on as before.
    assertThat(d.window.commands().sheet()).isEmpty();
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
  }

  @Test
  void aSizeThatCannotBeIsRefusedInWords() {
    d.key(GLFW.GLFW_KEY_E, CTRL);
    d.frames(3);
    d.type("picture file", folder.resolve("heap.png").toString());
    for (String wrong : new String[] {"12", "9000", "wide", ""}) {
      d.type("picture width", wrong);
      d.click("Write the picture");
      d.rest();
      assertThat(d.window.commands().sheet()).as(wrong).contains(Sheets.Kind.GIVE_OUT);
    }
    d.type("picture width", "640");
    d.type("picture file", folder.resolve("nowhere/heap.png").toString());
    d.click("Write the picture");
    d.rest();
    assertThat(d.window.commands().sheet()).contains(Sheets.Kind.GIVE_OUT);
    assertThat(folder.resolve("heap.png")).doesNotExist();
  }

  /** A stranger's file is written over at the second press only; what the window wrote itself is written anew at the first. */
  @Test
  void aFileThatIsThereIsWrittenOverOnlyWhenAskedTwice() throws IOException {
    Path to = folder.resolve("heap.png");
    Files.writeString(to, "not a picture");
    d.key(GLFW.GLFW_KEY_E, CTRL);
    d.frames(3);
    d.type("picture file", to.toString());
    d.type("picture width", "320");
    d.click("Write the picture");
    d.rest();
    assertThat(d.window.commands().sheet()).contains(Sheets.Kind.GIVE_OUT);
    assertThat(to).hasContent("not a picture");
    d.click("Write over it");
    d.rest();
    assertThat(ImageIO.read(to.toFile()).getWidth()).isEqualTo(320);
    d.key(GLFW.GLFW_KEY_E, CTRL);
    d.frames(3);
    d.type("picture file", to.toString());
    d.type("picture width", "400");
    d.click("Write the picture");
    d.rest();
    assertThat(ImageIO.read(to.toFile()).getWidth()).isEqualTo(400);
  }

  @Test
  void sheetIsJudgedAndWritten() throws IOException {
    Path to = folder.resolve("heap.pdf");
    d.click("Give out");
    d.frames(3);
    d.type("sheet file", to.toString());
    d.click("Letter");
    d.click("footprint at full size");
    d.click("Write the sheet");
    d.rest();
    assertThat(notice()).isEqualTo("Wrote the sheet " + to);
    try (PDDocument pdf = Loader.loadPDF(to.toFile())) {
      assertThat(pdf.getNumberOfPages()).isGreaterThan(3);
      // Letter, lying: 11 by 8.5 inches of 72 points (ANSI/ASME Y14.1, published).
      assertThat(pdf.getPage(0).getMediaBox().getWidth()).isBetween(791.9f, 792.1f);
      assertThat(new PDFTextStripper().getText(pdf)).contains("small", "slab", "block");
    }
  }
}
