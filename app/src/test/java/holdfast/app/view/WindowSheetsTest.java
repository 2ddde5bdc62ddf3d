package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.KnownHints;
import holdfast.app.edit.Scenes;
import holdfast.model.scene.Setting;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/** The tank, its figures, the first start and the hints. */
class WindowSheetsTest extends WindowCase {
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
    d = window(Scenes.small(), PLAIN);
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
