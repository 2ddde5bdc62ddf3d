package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.KnownHints;
import holdfast.app.edit.Scenes;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneReader;
import holdfast.model.io.TankSizes;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lwjgl.glfw.GLFW;

/** What goes in and out of the real window: files, pictures, the sheet, scans, figures; first start and hints. */
class WindowFilesTest {
  private static final int CTRL = GLFW.GLFW_MOD_CONTROL;

  @TempDir
  Path folder;
  private WindowDriver d;

  @BeforeEach
  void open() {
    d = new WindowDriver(Scenes.small(), folder.resolve("user"), WindowTest::nothingFound);
  }

  @AfterEach
  void close() {
    d.close();
  }

  private static Scene read(Path file) {
    return SceneReader.read(file).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    });
  }

  private String notice() {
    return d.bench.notice().map(Notice::text).orElse("");
  }

  // -- picture and sheet --------------------------------------------------------------------------------------------

  @ParameterizedTest
  @CsvSource({"as now, 320, 500", "from the front, 640, 400", "from the left, 400, 400", "from above, 512, 300", "from a corner, 300, 240"})
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
    assertThat(java.util.Arrays.stream(image.getRGB(0, 0, width, height, null, 0, width)).distinct().count()).isGreaterThan(300);
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

  // -- files --------------------------------------------------------------------------------------------------------

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
    Scene other = Scenes.small().withJoints(java.util.List.of());
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

  // -- rocks and figures --------------------------------------------------------------------------------------------

  @ParameterizedTest
  // A glTF file has y up (glTF 2.0, section 3.4, published): the side along y is the height then.
  @CsvSource({"obj, 0.06", "ply, 0.06", "stl, 0.06", "glb, 0.08"})
  void aScanBecomesARockOnTheTray(String ending, double heightM) throws IOException {
    Path file = folder.resolve("heap.json");
    SceneFiles.save(file, Scenes.small());
    ScanFilesTest.box(folder, ending);
    d.window.commands().open(file);
    d.frames(3);
    d.key(GLFW.GLFW_KEY_A, 0);
    d.frames(3);
    d.type("name", "scanned");
    d.click("a scan");
    d.frames(2);
    d.type("scan file", "box." + ending);
    d.type("unit", "1");
    d.type("weight", "0.8");
    d.click("Add to the tray");
    d.frames(3);
    assertThat(d.bench.scene().rock("scanned").map(Rock::form)).contains(new Rock.Mesh("box." + ending, 1));
    d.key(GLFW.GLFW_KEY_P, 0);
    double height = d.bench.stone("scanned").orElseThrow().high().z() - d.bench.stone("scanned").orElseThrow().low().z();
    assertThat(height).isBetween(heightM - 1e-4, heightM + 1e-4);
  }

  /** A scan from another folder is copied beside the scene, which can then be read again; an unsaved one is saved first. */
  @Test
  void aDroppedScanIsKeptBesideTheScene() throws IOException {
    Path scans = Files.createDirectories(folder.resolve("scans"));
    Path scan = ScanFilesTest.box(scans, "stl");
    d.window.commands().dropped(scan);
    d.frames(3);
    d.type("name", "scanned");
    d.type("weight", "0.8");
    d.click("Add to the tray");
    d.frames(3);
    assertThat(d.window.commands().sheet()).as("no file yet").contains(Sheets.Kind.ADD_ROCK);
    d.click("Cancel");
    Path file = Files.createDirectories(folder.resolve("home")).resolve("heap.json");
    assertThat(d.window.commands().saveAs(file)).isTrue();
    d.window.commands().dropped(scan);
    d.frames(3);
    d.type("name", "scanned");
    d.type("weight", "0.8");
    d.click("Add to the tray");
    d.frames(3);
    assertThat(d.bench.scene().rock("scanned").map(Rock::form)).contains(new Rock.Mesh("box.stl", 1));
    assertThat(folder.resolve("home/box.stl")).hasSameBinaryContentAs(scan);
    d.key(GLFW.GLFW_KEY_S, CTRL);
    assertThat(read(file)).isEqualTo(d.bench.scene());
    // Saved elsewhere, the scan comes along.
    Path other = Files.createDirectories(folder.resolve("other")).resolve("heap.json");
    assertThat(d.window.commands().saveAs(other)).isTrue();
    assertThat(read(other)).isEqualTo(d.bench.scene());
    // A file in metres is taken as such.
    d.window.commands().dropped(ScanFilesTest.box(scans, "glb"));
    d.frames(3);
    d.type("name", "large");
    d.type("weight", "8000");
    d.click("Add to the tray");
    d.frames(3);
    assertThat(d.bench.scene().rock("large").map(Rock::form)).contains(new Rock.Mesh("box.glb", 1000));
  }

  @Test
  void figuresAreTypedRefusedAndGivenBack() {
    d.click("Figures…");
    d.frames(3);
    d.type("push.tier_n", "50");
    d.enter();
    assertThat(d.bench.scene().settings().get(Setting.PUSH_TIER_N)).isEqualTo(50);
    d.type("push.tier_n", "0.05");
    d.enter();
    assertThat(d.bench.scene().settings().get(Setting.PUSH_TIER_N)).isEqualTo(50);
    assertThat(notice()).isEqualTo("Must be from 0.1 to 500 N.");
    d.click("default");
    assertThat(d.bench.scene().settings().get(Setting.PUSH_TIER_N)).isEqualTo(20);
    assertThat(d.bench.scene().settings().given()).isEmpty();
  }

  /** In US units figures are shown, typed and refused in them. The pound-force is 4.4482216 N (NIST SP 811, published). */
  @Test
  void figuresFollowTheChosenUnits() {
    d.click("in lb");
    d.click("Figures…");
    d.frames(3);
    d.type("push.tier_n", "10");
    d.enter();
    assertThat(d.bench.scene().settings().get(Setting.PUSH_TIER_N)).isBetween(44.4822, 44.4823);
    d.type("push.tier_n", "200");
    d.enter();
    assertThat(notice()).isEqualTo("Must be from 0.02248 to 112.4 lbf.");
    d.type("push.shake_g", "0.2");
    d.enter();
    assertThat(d.bench.scene().settings().get(Setting.SHAKE_G)).isEqualTo(0.2);
  }

  @Test
  void describesAndRemovesWithUndo() {
    d.click("block");
    d.click("Describe…");
    d.frames(3);
    d.type("weight", "1.6");
    d.click("Change it");
    d.frames(2);
    assertThat(d.bench.chosenRock().orElseThrow().mass()).isInstanceOfSatisfying(Rock.Weighed.class, w -> assertThat(w.kg()).isEqualTo(1.6));
    d.click("Remove");
    assertThat(d.bench.scene().rock("block")).isEmpty();
    d.click("Undo");
    d.click("Undo");
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
    d.click("Redo");
    assertThat(d.bench.document().redoName()).contains("remove block");
  }

  // -- first start and hints ----------------------------------------------------------------------------------------

  @Test
  void firstStartOffersTanksAndTheExample() {
    d.window.commands().begin();
    d.moveTo(640, 20);
    d.click("size 60x40x40 cm");
    assertThat(d.bench.scene().rocks()).isEmpty();
    assertThat(d.bench.scene().tank().lengthMm()).isBetween(570.0, 600.0);
    d.window.commands().begin();
    d.moveTo(640, 20);
    d.click("Open the example");
    assertThat(d.bench.scene()).isEqualTo(read(Judged.folder().resolve("cube.json")));
  }

  /** Who reads inches finds the sizes that are sold in inches first. */
  @Test
  void firstStartInInches() {
    d.click("in lb");
    d.window.commands().begin();
    d.moveTo(640, 20);
    d.frames(3);
    assertThat(d.window.ui().place("size 24x12x16 in").orElseThrow().y())
        .isLessThan(d.window.ui().place("size 30x30x30 cm").orElseThrow().y());
    d.click("size 48x24x24 in");
    // Outside 48 in; 25.4 mm each (exact), less the glass.
    assertThat(d.bench.scene().tank().lengthMm() + 2 * d.bench.scene().tank().sideGlassMm()).isBetween(1219.1, 1219.3);
  }

  @Test
  void hintsGoAwayAndStayAway() {
    String first = d.window.hints().forNow();
    assertThat(first).isEqualTo("Click a rock to choose it.");
    d.click("hint got it");
    d.frames(2);
    assertThat(d.window.hints().forNow()).isNotEqualTo(first);
    d.close();
    d = new WindowDriver(Scenes.small(), folder.resolve("user"), WindowTest::nothingFound);
    assertThat(d.window.hints().knows(Hints.Lesson.CHOOSE)).as("after the next start").isTrue();
    assertThat(new KnownHints(folder.resolve("user")).words()).contains("choose");
    // What is done is learnt too.
    d.click("block");
    d.key(GLFW.GLFW_KEY_B, 0);
    d.frames(2);
    assertThat(d.window.hints().knows(Hints.Lesson.BUMP)).isTrue();
    d.key(GLFW.GLFW_KEY_ESCAPE, 0);
    d.key(GLFW.GLFW_KEY_F1, 0);
    d.frames(3);
    d.click("Show all hints again");
    assertThat(d.window.hints().knows(Hints.Lesson.CHOOSE)).isFalse();
  }

  /** All hints waved away: the foot of the window is empty. */
  @Test
  void noHintIsLeftWhenAllAreKnown() {
    for (int i = 0; i < Hints.Lesson.values().length && d.window.hints().current().isPresent(); i++) {
      d.click("hint got it");
      d.frames(2);
    }
    assertThat(d.window.hints().forNow()).isEmpty();
    assertThat(d.window.ui().place("hint got it")).isEmpty();
  }
}
