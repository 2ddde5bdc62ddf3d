package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.edit.Rescue;
import holdfast.app.edit.Scenes;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Projector;
import holdfast.engine.check.CheckReport;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneFiles;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lwjgl.glfw.GLFW;

/**
 * The real window without a display: clicks, drags, keys, typing. Expected places follow from the scene's own figures: a
 * block of 80 mm on a slab of 60 mm on a grid of 10 mm.
 */
class WindowTest {
  private static final int LEFT = GLFW.GLFW_MOUSE_BUTTON_LEFT;
  private static final int RIGHT = GLFW.GLFW_MOUSE_BUTTON_RIGHT;
  private static final double HALF_CELL = 12.7 / 2;

  @TempDir
  Path folder;
  private WindowDriver d;

  /** Says nothing about any scene: these tests are about the window. */
  static CheckReport nothingFound(Scene s, Shapes shapes, boolean full) {
    return new CheckReport(s, CheckReport.Verdict.PASSES, "Nothing was found.", List.of(), List.of(), List.of(),
        List.of(new CheckReport.JointLine("slab", "block", 1, 10000, 0, JointSpec.Bond.NONE, 0)), List.of(), List.of(),
        Optional.empty(), List.of());
  }

  private static Scene read(Path file) {
    return SceneReader.read(file).match(s -> s, refused -> {
      throw new AssertionError(refused.rendered());
    });
  }

  @BeforeEach
  void open() {
    d = new WindowDriver(Scenes.small(), folder.resolve("user"), WindowTest::nothingFound);
  }

  @AfterEach
  void close() {
    if (d != null) d.close();
  }

  // -- camera -------------------------------------------------------------------------------------------------------

  @Test
  void standardViewsByKeyAndButton() {
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    assertThat(d.bench.camera().pitchDeg()).isEqualTo(90);
    assertThat(d.bench.camera().flat()).isTrue();
    d.click("Front");
    d.rest();
    assertThat(d.bench.camera().pitchDeg()).isEqualTo(0);
    assertThat(d.bench.camera().yawDeg()).isEqualTo(90);
  }

  @Test
  void circlesSlidesAndZooms() {
    Camera before = d.bench.camera();
    d.drag(320, 600, 420, 640, LEFT, 0);
    assertThat(d.bench.camera().yawDeg()).isNotCloseTo(before.yawDeg(), within(5.0));
    assertThat(d.bench.camera().pitchDeg()).isGreaterThan(before.pitchDeg());
    Camera circled = d.bench.camera();
    d.drag(500, 600, 560, 600, RIGHT, 0);
    assertThat(d.bench.camera().target().distanceTo(circled.target())).isGreaterThan(0.01);
    d.window.scroll(0, 3);
    d.frames(2);
    assertThat(d.bench.camera().distanceM()).isLessThan(circled.distanceM());
    d.key(GLFW.GLFW_KEY_F, 0);
    d.rest();
    Projector.Spot corner = d.spot(new Vec3(0, 0, 0));
    assertThat(d.window.layout().inScene(corner.x(), corner.y())).isTrue();
  }

  // -- choosing and moving ------------------------------------------------------------------------------------------

  @Test
  void clickChoosesAndClickBesideLetsGo() {
    Projector.Spot p = d.spot("block");
    d.click(p.x(), p.y());
    assertThat(d.bench.chosen()).contains("block");
    d.click(d.window.layout().sceneX() + 12, d.window.layout().sceneY() + 12);
    assertThat(d.bench.chosen()).isEmpty();
    d.click("slab");
    assertThat(d.bench.chosen()).contains("slab");
    d.key(GLFW.GLFW_KEY_TAB, 0);
    assertThat(d.bench.chosen()).contains("block");
  }

  @Test
  void dragMovesInHalfCellsAndRidesOnWhatIsBelowAndIsOneUndo() {
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    Projector.Spot from = d.spot("block");
    Projector.Spot to = d.spot(new Vec3(0.47, 0.20, 0.1));
    d.drag(from.x() + 30, from.y() + 30, to.x() + 30, to.y() + 30, LEFT, 0);
    Vec3 at = d.placement("block").atMm();
    assertThat(at.x()).isCloseTo(470, within(HALF_CELL + 2));
    // The grid starts 10 mm from the pane.
    assertThat((at.x() - 10) / HALF_CELL).isCloseTo(Math.rint((at.x() - 10) / HALF_CELL), within(1e-9));
    assertThat(at.z()).as("off the slab, on the grid").isCloseTo(10, within(1e-6));
    assertThat(d.bench.document().stepsDone()).isEqualTo(1);
    d.key(GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    assertThat(d.placement("block").atMm()).isEqualTo(new Vec3(300, 200, 70));
    d.key(GLFW.GLFW_KEY_Y, GLFW.GLFW_MOD_CONTROL);
    assertThat(d.placement("block").atMm()).isEqualTo(at);
  }

  /** With Alt the grid does not count, with Shift the height stays. */
  @Test
  void dragWithAltIsFreeAndWithShiftKeepsItsHeight() {
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    Projector.Spot from = d.spot("block");
    Projector.Spot to = d.spot(new Vec3(0.4737, 0.20, 0.1));
    d.drag(from.x() + 30, from.y() + 30, to.x() + 30, to.y() + 30, LEFT, GLFW.GLFW_MOD_ALT);
    Vec3 free = d.placement("block").atMm();
    assertThat(Math.abs((free.x() - 10) / HALF_CELL - Math.rint((free.x() - 10) / HALF_CELL))).as("off the grid").isGreaterThan(1e-3);
    d.key(GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    d.drag(from.x() + 30, from.y() + 30, to.x() + 30, to.y() + 30, LEFT, GLFW.GLFW_MOD_SHIFT);
    assertThat(d.placement("block").atMm().z()).isEqualTo(70);
    assertThat(d.placement("block").atMm().x()).isGreaterThan(400);
  }

  @Test
  void keysNudgeTurnDropAndLock() {
    d.click("block");
    d.key(GLFW.GLFW_KEY_RIGHT, 0);
    d.key(GLFW.GLFW_KEY_UP, GLFW.GLFW_MOD_SHIFT);
    d.key(GLFW.GLFW_KEY_PAGE_UP, GLFW.GLFW_MOD_SHIFT);
    assertThat(d.placement("block").atMm().distanceTo(new Vec3(301, 212.7, 82.7))).isLessThan(1e-9);
    d.key(GLFW.GLFW_KEY_SPACE, 0);
    assertThat(d.placement("block").atMm().z()).as("back on the slab").isCloseTo(70, within(1e-6));
    d.key(GLFW.GLFW_KEY_COMMA, 0);
    assertThat(Math.toDegrees(d.placement("block").turn().angleRad())).isCloseTo(5, within(1e-9));
    d.key(GLFW.GLFW_KEY_L, 0);
    Vec3 locked = d.placement("block").atMm();
    d.key(GLFW.GLFW_KEY_LEFT, 0);
    assertThat(d.placement("block").atMm()).isEqualTo(locked);
    assertThat(d.bench.notice().orElseThrow().text()).contains("locked");
  }

  @Test
  void ringTurnsAndArrowLifts() {
    d.click("block");
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    var stone = d.bench.stone("block").orElseThrow();
    Vec3 c = Handles.middle(stone);
    double r = Handles.radius(stone);
    Projector.Spot a = d.spot(c.plusTimes(r, Vec3.heading(0)));
    Projector.Spot b = d.spot(c.plusTimes(r, Vec3.heading(40)));
    d.drag(a.x(), a.y(), b.x(), b.y(), LEFT, 0);
    assertThat(RockSheet.degreesZyx(d.placement("block").turn())[0]).isCloseTo(40, within(1.0));
    assertThat(d.bench.stone("block").orElseThrow().centreInTank().distanceTo(c)).as("turns about its centre").isLessThan(1e-9);
    d.key(GLFW.GLFW_KEY_1, 0);
    d.rest();
    Vec3 top = new Vec3(c.x(), c.y(), d.bench.stone("block").orElseThrow().high().z() + 0.012);
    Projector.Spot grip = d.spot(top);
    d.drag(grip.x(), grip.y() - 20, grip.x(), grip.y() - 70, LEFT, 0);
    double mmPerPx = 1e3 * new Projector(d.bench.camera(), d.window.layout().sceneWidth(), d.window.layout().sceneHeight())
        .metresPerPixel(c);
    assertThat(d.placement("block").atMm().z()).isCloseTo(70 + 50 * mmPerPx, within(2.0));
  }

  /** The ring about the line of sight of the front view tilts the rock about the line from front to back. */
  @Test
  void uprightRingTilts() {
    d.click("block");
    d.key(GLFW.GLFW_KEY_1, 0);
    d.rest();
    var stone = d.bench.stone("block").orElseThrow();
    Vec3 c = Handles.middle(stone);
    double r = Handles.radius(stone);
    Projector.Spot a = d.spot(c.plusTimes(r, Vec3.X));
    double up = Math.toRadians(25);
    Projector.Spot b = d.spot(c.plusTimes(r * Math.cos(up), Vec3.X).plusTimes(r * Math.sin(up), Vec3.Z));
    d.drag(a.x(), a.y(), b.x(), b.y(), LEFT, 0);
    var turn = d.placement("block").turn();
    assertThat(Math.toDegrees(turn.angleRad())).isCloseTo(25, within(1.5));
    assertThat(turn.rotate(Vec3.Y).distanceTo(Vec3.Y)).as("about the line from front to back").isLessThan(1e-9);
    assertThat(turn.rotate(Vec3.X).z()).as("its right side rises").isPositive();
    assertThat(d.bench.document().stepsDone()).isEqualTo(1);
  }

  /** Keys without frames between them, as fast as they come. */
  private void press(int times, int key, int mods) {
    for (int i = 0; i < times; i++) {
      d.window.key(key, 0, GLFW.GLFW_PRESS, mods);
      d.window.key(key, 0, GLFW.GLFW_RELEASE, 0);
    }
  }

  /** Every step has a name and can be taken back, however many they were. */
  @Test
  void undoHasNoEndAndEveryStepHasAName() {
    d.click("block");
    press(300, GLFW.GLFW_KEY_RIGHT, 0);
    press(200, GLFW.GLFW_KEY_COMMA, 0);
    d.frames(2);
    Scene after = d.bench.scene();
    assertThat(d.bench.document().stepsDone()).isEqualTo(500);
    assertThat(d.bench.document().undoName()).contains("turn block");
    for (int i = 0; i < 500; i++) {
      press(1, GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
      assertThat(d.bench.notice().orElseThrow().text()).isEqualTo(i < 200 ? "Undone: turn block" : "Undone: move block");
    }
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
    press(1, GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
    assertThat(d.bench.notice().orElseThrow().text()).isEqualTo("Nothing to undo.");
    press(500, GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL | GLFW.GLFW_MOD_SHIFT);
    assertThat(d.bench.scene()).isEqualTo(after);
  }

  /** The help sheet lists every letter and figure that does something, alone or with Ctrl. */
  @Test
  void helpListsEveryKey() {
    List<String> listed = HelpSheet.keys().stream().flatMap(k -> java.util.Arrays.stream(k.split(",\\s+|\\s{2,}"))).toList();
    for (int mods : new int[] {0, GLFW.GLFW_MOD_CONTROL}) {
      for (int key = GLFW.GLFW_KEY_0; key <= GLFW.GLFW_KEY_Z; key++) {
        if (key > GLFW.GLFW_KEY_9 && key < GLFW.GLFW_KEY_A) continue;
        // P is for a rock of the tray, the others for one in the tank; there is something to take back and something that was.
        d.bench.choose(Optional.of(key == GLFW.GLFW_KEY_P ? "spare" : "block"));
        press(2, GLFW.GLFW_KEY_RIGHT, 0);
        press(1, GLFW.GLFW_KEY_Z, GLFW.GLFW_MOD_CONTROL);
        Object before = state();
        press(1, key, mods);
        boolean does = !state().equals(before);
        String name = (mods == 0 ? "" : "Ctrl ") + (char) key;
        assertThat(listed.contains(name)).as(name + (does ? " does something" : " does nothing")).isEqualTo(does);
        d.window.commands().stay();
        d.window.commands().mode(Workbench.Mode.ARRANGE);
        d.rest();
        while (d.bench.document().stepsDone() > 0) d.bench.undo();
      }
    }
  }

  private Object state() {
    List<Object> s = new java.util.ArrayList<>(List.of(d.bench.scene(), d.bench.camera(), d.bench.moving(), d.bench.mode(),
        d.window.commands().sheet(), d.window.commands().wantsToQuit(), d.bench.shown().cutWay(), d.bench.chosen(),
        d.bench.chores().busy()));
    for (Shown.Layer l : Shown.Layer.values()) s.add(d.bench.shown().has(l));
    return s;
  }

  @Test
  void typedNumbersMoveAndTurn() {
    d.click("block");
    d.type("right", "345.5");
    d.enter();
    assertThat(d.placement("block").atMm().x()).isEqualTo(345.5);
    d.type("about up", "30");
    d.enter();
    assertThat(Math.toDegrees(d.placement("block").turn().angleRad())).isCloseTo(30, within(1e-9));
    d.click("in lb");
    assertThat(d.bench.units()).isEqualTo(Units.US);
    d.type("up", "4");
    d.enter();
    // 4 inches; the inch is 25.4 mm exactly (NIST SP 811, published).
    assertThat(d.placement("block").atMm().z()).isCloseTo(101.6, within(1e-9));
    d.type("up", "four");
    d.enter();
    assertThat(d.bench.notice().orElseThrow().text()).isEqualTo("'four' is not a number.");
  }

  @Test
  void steadyRestSettlesOnWhatIsBelow() {
    d.click("block");
    for (int i = 0; i < 20; i++) d.key(GLFW.GLFW_KEY_PAGE_UP, 0);
    d.click("Steady rest");
    d.rest();
    assertThat(d.placement("block").atMm().z()).isCloseTo(70, within(0.5));
    assertThat(d.bench.document().undoName()).contains("settle block");
  }

  // -- rocks come and go --------------------------------------------------------------------------------------------

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

  /** A tap brings the place and the press at once, without a frame between: it counts where it is, not where the pointer was. */
  @Test
  void aTapRightAfterAPanelMeetsTheRock() {
    d.moveTo(100, 300);
    Projector.Spot p = d.spot("block");
    d.window.pointer(p.x(), p.y(), 1);
    d.window.button(LEFT, true, 0);
    d.window.button(LEFT, false, 0);
    d.frames(3);
    assertThat(d.bench.chosen()).contains("block");
    // And what is dragged out of a panel stays the panel's.
    d.moveTo(100, 600);
    d.press(LEFT, 0);
    Camera before = d.bench.camera();
    d.moveTo(500, 600);
    d.moveTo(600, 600);
    d.release(LEFT, 0);
    assertThat(d.bench.camera()).isEqualTo(before);
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

  // -- joints, tank, looks ------------------------------------------------------------------------------------------

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

  @Test
  void tankSheetChangesTheTank() {
    d.click("Tank…");
    d.frames(3);
    d.type("length", "800");
    d.type("water level", "350");
    d.click("Change the tank");
    d.rest();
    assertThat(d.bench.scene().tank().lengthMm()).isEqualTo(800);
    assertThat(d.bench.scene().water().levelMm()).isEqualTo(350);
    assertThat(d.bench.document().undoName()).contains("change the tank");
  }

  @Test
  void cutsOpenAndShowsLayers() {
    d.click("Show");
    int[] whole = d.window.pixels();
    d.click("left to right");
    d.rest();
    assertThat(d.window.pixels()).isNotEqualTo(whole);
    assertThat(d.bench.shown().cutWay()).isEqualTo(Shown.CutWay.ALONG);
    d.click("names");
    assertThat(d.bench.shown().has(Shown.Layer.NAMES)).isTrue();
  }

  // -- files --------------------------------------------------------------------------------------------------------

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
    d.close();
    d = new WindowDriver(Scenes.small(), folder.resolve("user"), WindowTest::nothingFound);
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

  // -- judgement ----------------------------------------------------------------------------------------------------

  @Test
  void judgementOfAnOlderSceneIsNeverShown() {
    d.rest();
    assertThat(d.bench.report().orElseThrow().scene()).isEqualTo(d.bench.scene());
    d.click("block");
    for (int i = 0; i < 30; i++) {
      d.key(GLFW.GLFW_KEY_RIGHT, 0);
      Optional<CheckReport> r = d.bench.report();
      if (r.isPresent()) assertThat(r.get().scene()).isEqualTo(d.bench.scene());
    }
    d.rest();
    assertThat(d.bench.report().orElseThrow().scene()).isEqualTo(d.bench.scene());
  }

  @Test
  void drawsOnlyWhenSomethingChanged() {
    d.rest();
    long frames = d.window.frames();
    for (int i = 0; i < 50; i++) d.frame();
    assertThat(d.window.frames()).isEqualTo(frames);
    long scenes = d.window.scenesPainted();
    d.moveTo(20, 20);
    d.frames(3);
    assertThat(d.window.frames()).isGreaterThan(frames);
    assertThat(d.window.scenesPainted()).as("panels moved, the picture did not").isEqualTo(scenes);
  }

  /** On a slow machine things that move are drawn with one sample a pixel, and finely again as soon as they are still. */
  @Test
  void sketchesWhileThingsMoveAndDrawsFinelyWhenTheyAreStill() {
    d.close();
    d = new WindowDriver(Scenes.small(), folder.resolve("user"), WindowTest::nothingFound, new ViewWindow.Quality(4, 512, 0));
    d.rest();
    assertThat(d.window.sketched()).isFalse();
    d.moveTo(320, 600);
    d.press(RIGHT, 0);
    d.moveTo(330, 610);
    assertThat(d.window.sketched()).isTrue();
    d.moveTo(320, 600);
    d.release(RIGHT, 0);
    d.rest();
    assertThat(d.window.sketched()).isFalse();
    // The same view as a window shows it that never moved.
    int[] still = d.window.pixels();
    Camera there = d.bench.camera();
    d.close();
    d = new WindowDriver(Scenes.small(), folder.resolve("user"), WindowTest::nothingFound, new ViewWindow.Quality(4, 512, 1e9));
    d.bench.setCamera(there);
    d.moveTo(320, 600);
    d.press(RIGHT, 0);
    d.moveTo(330, 610);
    assertThat(d.window.sketched()).as("fast enough to be drawn finely").isFalse();
    d.moveTo(320, 600);
    d.release(RIGHT, 0);
    d.bench.setCamera(there);
    d.rest();
    assertThat(Pictures.worst(Pictures.of(still, Graphics.WIDTH, Graphics.HEIGHT),
        Pictures.of(d.window.pixels(), Graphics.WIDTH, Graphics.HEIGHT))).isLessThan(1);
  }

  /** Shadows are kept while only the view changes, and cast anew when a rock moves: else they would lie where it was. */
  @Test
  void shadowsFollowTheRocks() {
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    d.bench.apply(new holdfast.app.edit.Edit.Move("move", "block", new Vec3(480, 100, 10), holdfast.model.geom.Quat.IDENTITY));
    d.rest();
    int[] moved = d.window.pixels();
    Scene after = d.bench.scene();
    d.close();
    d = new WindowDriver(after, folder.resolve("other"), WindowTest::nothingFound);
    d.key(GLFW.GLFW_KEY_3, 0);
    d.rest();
    Layout l = d.window.layout();
    assertThat(Pictures.worst(
        Pictures.of(moved, Graphics.WIDTH, Graphics.HEIGHT).getSubimage(l.sceneX(), l.sceneY(), l.sceneWidth(), l.sceneHeight()),
        Pictures.of(d.window.pixels(), Graphics.WIDTH, Graphics.HEIGHT)
            .getSubimage(l.sceneX(), l.sceneY(), l.sceneWidth(), l.sceneHeight()))).isLessThan(1);
  }

  @Test
  void bumpIsPulledPlayedAndToldInNewtonSeconds() {
    d.key(GLFW.GLFW_KEY_B, 0);
    d.key(GLFW.GLFW_KEY_1, 0);
    d.rest();
    Projector.Spot p = d.spot("block");
    d.moveTo(p.x(), p.y());
    d.press(LEFT, 0);
    d.moveTo(p.x() - 60, p.y());
    d.moveTo(p.x() - 120, p.y());
    assertThat(d.window.hands().pulled()).isPresent();
    assertThat(d.window.hands().pulled().get().impulseNs().x()).as("flies the other way").isPositive();
    d.release(LEFT, 0);
    d.rest();
    assertThat(d.bench.notice().map(Notice::text).orElse("")).startsWith("Played: ");
  }
}
