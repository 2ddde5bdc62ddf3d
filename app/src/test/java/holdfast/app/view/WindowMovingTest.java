package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.edit.Scenes;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Projector;
import holdfast.model.geom.Vec3;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/**
 * Rocks are chosen, moved, turned and bumped. Expected places follow from the scene's own figures: a block of 80 mm on a slab of
 * 60 mm on a grid of 10 mm.
 */
class WindowMovingTest extends WindowCase {
  private static final int LEFT = GLFW.GLFW_MOUSE_BUTTON_LEFT;
  private static final double HALF_CELL = 12.7 / 2;

  @Test
  void clickChoosesAndClickBesideLetsGo() {
    Projector.Spot p = d.spot("block");
    d.click(p.x(), p.y());
    assertThat(d.bench.chosen()).contains("block");
    d.click(d.window.layout().sceneX() + 12, d.window.layout().sceneY() + 12);
    assertThat(d.bench.chosen()).isEmpty();
    d.click("slab");
    assertThat(d.bench.chosen()).contains("slab");
    d.key(GLFW.GLFW_KEY_T, 0);
    assertThat(d.bench.chosen()).contains("block");
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
    Camera before = d.bench.sight().camera();
    d.moveTo(500, 600);
    d.moveTo(600, 600);
    d.release(LEFT, 0);
    assertThat(d.bench.sight().camera()).isEqualTo(before);
    assertThat(d.bench.scene()).isEqualTo(Scenes.small());
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
    double cells = (free.x() - 10) / HALF_CELL;
    assertThat(Math.abs(cells - Math.rint(cells))).as("off the grid").isGreaterThan(1e-3);
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
    Layout l = d.window.layout();
    double mmPerPx = 1e3 * new Projector(d.bench.sight().camera(), l.sceneWidth(), l.sceneHeight())
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
