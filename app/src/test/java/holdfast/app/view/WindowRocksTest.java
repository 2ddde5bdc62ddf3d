package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.app.view.draw.Projector;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneFiles;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lwjgl.glfw.GLFW;

/** Rocks come, are described, joined and go. */
class WindowRocksTest extends WindowCase {
  private static final int CTRL = GLFW.GLFW_MOD_CONTROL;

  @Test
  void addsARockFromMeasurementsAndSetsItDown() {
    d.key(GLFW.GLFW_KEY_A, 0);
    d.frames(3);
    d.type("name", "Red keystone");
    d.click("slab");
    d.type("length", "120");
    d.type("width", "90");
    d.type("height", "60");
    d.type("weight", "0.9");
    d.click("Add to the tray");
    d.frames(3);
    Rock r = d.bench.scene().rock("Red keystone").orElseThrow();
    assertThat(r.form()).isEqualTo(new Rock.Measured(Rock.Look.SLAB, 120, 90, 60, 1));
    assertThat(d.window.commands().sheet()).isEmpty();
    d.key(GLFW.GLFW_KEY_P, 0);
    assertThat(d.placement("Red keystone").atMm().z()).isGreaterThan(9.99);
    d.key(GLFW.GLFW_KEY_BACKSPACE, 0);
    assertThat(d.bench.scene().placement("Red keystone")).isEmpty();
    d.key(GLFW.GLFW_KEY_DELETE, 0);
    assertThat(d.bench.scene().rock("Red keystone")).isEmpty();
    for (int i = 0; i < 4; i++) d.key(GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
  }

  /** The short way: described, added and set down at once, and one step to take back. */
  @Test
  void addsARockAndSetsItDownAtOnce() {
    d.key(GLFW.GLFW_KEY_A, 0);
    d.frames(3);
    d.type("name", "Red keystone");
    d.type("weight", "0.9");
    d.click("Add and set down");
    d.frames(3);
    assertThat(d.window.commands().sheet()).isEmpty();
    assertThat(d.bench.chosen()).contains("Red keystone");
    assertThat(d.placement("Red keystone").atMm().z()).isGreaterThan(9.99);
    assertThat(d.bench.document().stepsDone()).isEqualTo(1);
    d.key(GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
  }

  @Test
  void aRockThatCannotBeIsRefusedInWords() {
    d.key(GLFW.GLFW_KEY_A, 0);
    d.frames(3);
    d.type("name", "slab");
    d.type("weight", "1");
    d.click("Add to the tray");
    d.frames(2);
    assertThat(d.window.commands().sheet()).as("the sheet stays open").contains(Sheets.Kind.ADD_ROCK);
    assertThat(d.bench.scene().rocks()).hasSize(3);
    d.key(GLFW.GLFW_KEY_ESCAPE, 0);
    assertThat(d.window.commands().sheet()).isEmpty();
  }

  @Test
  void duplicatesUnderTheNextName() {
    d.click("block");
    d.key(GLFW.GLFW_KEY_D, 0);
    assertThat(d.bench.chosen()).contains("block 2");
    assertThat(d.placement("block 2").atMm().x()).isGreaterThan(d.placement("block").atMm().x());
    assertThat(d.bench.document().undoName()).contains("duplicate block");
  }

  @Test
  void trayRockIsSetDownByButtonAndByDoubleClick() {
    d.click("tray spare");
    d.click("Set down");
    assertThat(d.bench.scene().placement("spare")).isPresent();
    d.key(GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    assertThat(d.bench.scene().placement("spare")).isEmpty();
    d.click("tray spare");
    d.click("tray spare");
    assertThat(d.bench.scene().placement("spare")).isPresent();
    assertThat(d.bench.document().undoName()).contains("set down spare");
  }

  @Test
  void describesAndRemovesWithUndo() {
    d.click("block");
    d.click("Describe…");
    d.frames(3);
    d.type("weight", "1.6");
    d.click("Change it");
    d.frames(2);
    assertThat(d.bench.chosenRock().orElseThrow().mass()).isInstanceOfSatisfying(
        Rock.Weighed.class, w -> assertThat(w.kg()).isEqualTo(1.6));
    d.click("Remove");
    assertThat(d.bench.scene().rock("block")).isEmpty();
    d.click("Undo");
    d.click("Undo");
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
    d.click("Redo");
    assertThat(d.bench.document().redoName()).contains("remove block");
  }

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

  /** What was dropped on the window, under a name and with a weight. */
  private void addToTray(String name, String kg) {
    d.frames(3);
    d.type("name", name);
    d.type("weight", kg);
    d.click("Add to the tray");
    d.frames(3);
  }

  /** A scan from another folder is copied beside the scene, which can then be read again; an unsaved one is saved first. */
  @Test
  void aDroppedScanIsKeptBesideTheScene() throws IOException {
    Path scans = Files.createDirectories(folder.resolve("scans"));
    Path scan = ScanFilesTest.box(scans, "stl");
    d.window.commands().dropped(scan);
    addToTray("scanned", "0.8");
    assertThat(d.window.commands().sheet()).as("no file yet").contains(Sheets.Kind.ADD_ROCK);
    d.click("Cancel");
    Path file = Files.createDirectories(folder.resolve("home")).resolve("heap.json");
    assertThat(d.window.commands().saveAs(file)).isTrue();
    d.window.commands().dropped(scan);
    addToTray("scanned", "0.8");
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
    addToTray("large", "8000");
    assertThat(d.bench.scene().rock("large").map(Rock::form)).contains(new Rock.Mesh("box.glb", 1000));
  }

  @Test
  void jointIsFixedByClickingItsNumber() {
    d.key(GLFW.GLFW_KEY_J, 0);
    d.rest();
    // The slab's top lies at 70 mm; the block covers 250 to 350 by 150 to 250 mm of it.
    Projector.Spot joint = d.spot(new Vec3(0.30, 0.20, 0.07));
    d.click(joint.x(), joint.y());
    d.click("mortar");
    assertThat(d.bench.scene().joint("slab", "block").orElseThrow().bond()).isEqualTo(JointSpec.Bond.MORTAR);
    d.rest();
    d.type("amount of paste", "55");
    d.enter();
    assertThat(d.bench.scene().joint("slab", "block").orElseThrow().amountMl()).isEqualTo(55);
    d.key(GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    d.key(GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    assertThat(d.bench.scene().joints()).isEmpty();
  }

  @Test
  void jointIsFixedWithARodAndMadeInTheTank() {
    d.rest();
    d.click("Joints");
    d.click("joint 1");
    d.click("rod");
    d.rest();
    JointSpec rod = d.bench.scene().joint("slab", "block").orElseThrow();
    assertThat(rod.bond()).isEqualTo(JointSpec.Bond.ROD);
    assertThat(rod.rodDiameterMm()).isPositive();
    d.click("glued in");
    d.rest();
    assertThat(d.bench.scene().joint("slab", "block").orElseThrow().rodGlued()).isEqualTo(!rod.rodGlued());
    d.click("made in the tank, not on the bench");
    d.rest();
    assertThat(d.bench.scene().joint("slab", "block").orElseThrow().madeIn()).isEqualTo(JointSpec.MadeIn.TANK);
    d.click("none");
    d.rest();
    assertThat(d.bench.scene().joints()).isEmpty();
    assertThat(d.bench.document().undoName()).contains("free slab from block");
  }
}
