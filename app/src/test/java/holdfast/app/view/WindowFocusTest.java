package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Edit;
import holdfast.app.edit.Scenes;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Palette;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/**
 * Everything that the pointer reaches, the keyboard reaches, with a mark that is seen. The keys are those of desktop programs
 * at large: Tab and Shift Tab walk, arrows walk within a list or a row, Enter and Space press, Esc lets go (common practice).
 */
class WindowFocusTest extends WindowCase {
  private static final int SHIFT = GLFW.GLFW_MOD_SHIFT;

  private static CheckReport three(Scene s, Shapes shapes, Judge.Depth depth, CheckWatch watch) {
    List<Finding> found = new ArrayList<>();
    for (String w : List.of("first", "second", "third")) {
      found.add(new Finding(Code.LOOSE, Severity.WARN, List.of("block"), OptionalDouble.empty(), OptionalDouble.empty(), "",
          Optional.empty(), "The " + w + " of three.", ""));
    }
    CheckReport r = nothingFound(s, shapes, depth, watch);
    return new CheckReport(s, r.verdict(), r.headline(), found, r.states(), r.rocks(), r.joints(), r.feet(), r.gaps(),
        r.pane(), r.cautions());
  }

  private void withFindings() {
    open(Scenes.small(), WindowFocusTest::three);
    d.rest();
  }

  private String at() {
    return d.window.ui().focus().at().map(s -> s.id().substring(s.id().indexOf('/') + 1)).orElse("");
  }

  private void tab(int mods) {
    d.key(GLFW.GLFW_KEY_TAB, mods);
    d.frames(3);
  }

  /** Walks on until the control with these words has the mark. */
  private void tabTo(String words) {
    List<String> seen = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      tab(0);
      if (at().equals(words)) return;
      seen.add(at());
    }
    throw new AssertionError("no '" + words + "' on the way " + seen);
  }

  private void press(int key) {
    d.key(key, 0);
    d.frames(3);
  }

  /** One round passes every control that stands alone and every row once, and comes back to where it began. */
  @Test
  void tabGoesRoundAndShiftTabGoesBack() {
    withFindings();
    List<String> round = new ArrayList<>();
    tab(0);
    assertThat(at()).isEqualTo("Scenes");
    do {
      round.add(at());
      tab(0);
    } while (!at().equals("Scenes") && round.size() < 80);
    assertThat(round).doesNotHaveDuplicates()
        .containsSubsequence("Scenes", "Save", "Give out", "Corner", "Arrange", "mm kg", "Help",
            "Add a rock…", "Tank…", "Figures…", "slab", "tray spare", "Findings 3", "finding 0", "hint got it")
        .doesNotContain("finding 1", "Front", "Joints", "block");
    List<String> back = new ArrayList<>();
    for (int i = 0; i < round.size(); i++) {
      tab(SHIFT);
      back.add(0, at());
    }
    assertThat(back).isEqualTo(round);
  }

  /** Whatever the window shows to be clicked, the keyboard comes to, by Tab and the arrows. */
  @Test
  void everyControlIsReached() {
    withFindings();
    d.bench.apply(new Edit.Remove("spare"));
    d.rest();
    d.click("Show");
    d.click("block");
    d.frames(3);
    Set<String> reached = new LinkedHashSet<>();
    tab(0);
    String first = at();
    do {
      String entry = at();
      for (int key : new int[] {GLFW.GLFW_KEY_HOME, GLFW.GLFW_KEY_RIGHT, GLFW.GLFW_KEY_DOWN}) {
        // A row is walked from its first to its last; within a panel an arrow goes where it will.
        boolean row = !d.window.ui().focus().at().orElseThrow().group().isEmpty();
        for (int i = 0; i < (row && key != GLFW.GLFW_KEY_HOME ? 8 : 1); i++) {
          reached.add(at());
          if (row) press(key);
        }
        reached.add(at());
      }
      if (!d.window.ui().focus().at().orElseThrow().group().isEmpty()) d.rest();
      tab(0);
      assertThat(at()).as("on from " + entry).isNotEqualTo(entry);
    } while (!at().equals(first) && reached.size() < 200);
    Set<String> shown = new LinkedHashSet<>();
    d.window.ui().words().forEach(shown::add);
    // There is nothing to redo: that button is out of use.
    shown.remove("Redo");
    assertThat(reached).containsAll(shown);
  }

  @Test
  void arrowsWalkTheFindingsAndEnterOpensThem() {
    withFindings();
    tabTo("finding 0");
    press(GLFW.GLFW_KEY_DOWN);
    press(GLFW.GLFW_KEY_DOWN);
    assertThat(at()).isEqualTo("finding 2");
    press(GLFW.GLFW_KEY_DOWN);
    assertThat(at()).as("the last").isEqualTo("finding 2");
    assertThat(d.bench.opened()).isEmpty();
    press(GLFW.GLFW_KEY_UP);
    press(GLFW.GLFW_KEY_ENTER);
    assertThat(d.bench.opened()).contains(d.bench.findings().get(1));
    assertThat(d.bench.chosen()).contains("block");
    assertThat(d.bench.scene()).as("no rock was moved").isEqualTo(Scenes.small());
    press(GLFW.GLFW_KEY_HOME);
    assertThat(at()).isEqualTo("finding 0");
    press(GLFW.GLFW_KEY_SPACE);
    assertThat(d.bench.opened()).contains(d.bench.findings().get(0));
    // Esc first gives the keys back to the picture, then closes the finding.
    press(GLFW.GLFW_KEY_ESCAPE);
    assertThat(at()).isEmpty();
    assertThat(d.bench.opened()).isPresent();
    press(GLFW.GLFW_KEY_RIGHT);
    assertThat(d.placement("block").atMm().x()).isEqualTo(301);
  }

  @Test
  void pagesAndTogglesOfTheShowPage() {
    withFindings();
    tabTo("Findings 3");
    press(GLFW.GLFW_KEY_RIGHT);
    press(GLFW.GLFW_KEY_RIGHT);
    assertThat(at()).isEqualTo("Show");
    tab(0);
    String layer = Shown.Layer.WATER.word();
    assertThat(at()).isEqualTo(layer);
    boolean on = d.bench.shown().has(Shown.Layer.WATER);
    press(GLFW.GLFW_KEY_SPACE);
    assertThat(d.bench.shown().has(Shown.Layer.WATER)).isEqualTo(!on);
    press(GLFW.GLFW_KEY_SPACE);
    assertThat(d.bench.shown().has(Shown.Layer.WATER)).isEqualTo(on);
    tabTo(Shown.CutWay.NONE.word());
    press(GLFW.GLFW_KEY_DOWN);
    press(GLFW.GLFW_KEY_SPACE);
    assertThat(d.bench.shown().cutWay()).isEqualTo(Shown.CutWay.values()[1]);
    tab(0);
    double share = d.bench.shown().cutShare();
    press(GLFW.GLFW_KEY_RIGHT);
    assertThat(d.bench.shown().cutShare()).isGreaterThan(share);
    press(GLFW.GLFW_KEY_LEFT);
    assertThat(d.bench.shown().cutShare()).isCloseTo(share, org.assertj.core.data.Offset.offset(1e-9));
  }

  @Test
  void viewsAndModesAreRows() {
    tabTo("Corner");
    press(GLFW.GLFW_KEY_LEFT);
    assertThat(at()).isEqualTo("Top");
    press(GLFW.GLFW_KEY_ENTER);
    d.rest();
    assertThat(d.bench.sight().camera().pitchDeg()).isEqualTo(d.bench.sight().fitted(Camera.View.TOP).pitchDeg());
    tabTo("Arrange");
    press(GLFW.GLFW_KEY_RIGHT);
    press(GLFW.GLFW_KEY_RIGHT);
    press(GLFW.GLFW_KEY_SPACE);
    assertThat(d.bench.mode()).isEqualTo(Workbench.Mode.STAGES);
    d.rest();
    tabTo("stage slider");
    int shown = d.window.stages().shown();
    press(GLFW.GLFW_KEY_LEFT);
    assertThat(d.window.stages().shown()).isEqualTo(shown - 1);
  }

  @Test
  void arrowsChooseRocksAndF6GoesFromPanelToPanel() {
    press(GLFW.GLFW_KEY_F6);
    assertThat(at()).isEqualTo("Scenes");
    press(GLFW.GLFW_KEY_F6);
    assertThat(at()).isEqualTo("Add a rock…");
    tabTo("slab");
    press(GLFW.GLFW_KEY_DOWN);
    assertThat(d.bench.chosen()).contains("block");
    tabTo("tray spare");
    press(GLFW.GLFW_KEY_ENTER);
    assertThat(d.bench.chosen()).contains("spare");
    tabTo("Set down");
    press(GLFW.GLFW_KEY_ENTER);
    assertThat(d.bench.scene().placement("spare")).isPresent();
    d.key(GLFW.GLFW_KEY_F6, SHIFT);
    d.frames(2);
    assertThat(at()).isEqualTo("Scenes");
  }

  /** A field that Tab comes to is typed into at once, and what was typed counts when Tab leaves it. */
  @Test
  void fieldsAreTypedIntoAndLeft() {
    d.click("block");
    tabTo("right");
    for (char c : "320".toCharArray()) {
      d.window.letter(c);
      d.frames(1);
    }
    tab(0);
    assertThat(d.placement("block").atMm().x()).isEqualTo(320);
    assertThat(d.bench.document().stepsDone()).isEqualTo(1);
    assertThat(at()).isEqualTo("about up");
    tab(SHIFT);
    assertThat(at()).isEqualTo("right");
    tab(0);
    assertThat(d.bench.document().stepsDone()).as("nothing was typed").isEqualTo(1);
    // Letters meant for a field are no commands.
    d.enter();
    press(GLFW.GLFW_KEY_D);
    assertThat(d.bench.scene().rocks()).hasSize(3);
  }

  /** A whole sheet without the pointer: only its own controls are reached, and the mark is back where it was afterwards. */
  @Test
  void aSheetByKeyboard() {
    tabTo("Figures…");
    press(GLFW.GLFW_KEY_ENTER);
    d.frames(4);
    assertThat(d.window.commands().sheet()).contains(Sheets.Kind.SETTINGS);
    tab(0);
    assertThat(at()).isEqualTo("push.tier_n");
    for (char c : "50".toCharArray()) {
      d.window.letter(c);
      d.frames(1);
    }
    tab(0);
    assertThat(d.bench.scene().settings().get(Setting.PUSH_TIER_N)).isEqualTo(50);
    // It comes into sight however far down it is.
    tab(SHIFT);
    tab(SHIFT);
    tabTo("Close");
    tab(SHIFT);
    d.frames(3);
    Ui.Place last = d.window.ui().focus().at().orElseThrow().place();
    assertThat(last.y1()).isLessThan(d.window.ui().place("Close").orElseThrow().y0() + 1);
    tab(0);
    press(GLFW.GLFW_KEY_ENTER);
    d.frames(4);
    assertThat(d.window.commands().sheet()).isEmpty();
    assertThat(at()).isEqualTo("Figures…");
  }

  /** A rock described and set down by keys alone. */
  @Test
  void aRockIsAddedByKeyboard() {
    press(GLFW.GLFW_KEY_A);
    d.frames(4);
    for (char c : "ledge".toCharArray()) {
      d.window.letter(c);
      d.frames(1);
    }
    tabTo("weight");
    for (char c : "2".toCharArray()) {
      d.window.letter(c);
      d.frames(1);
    }
    d.enter();
    assertThat(d.window.commands().sheet()).isEmpty();
    assertThat(d.bench.scene().placement("ledge")).isPresent();
  }

  @Test
  void jointIsFixedByKeyboard() {
    d.rest();
    tabTo("Findings 0");
    press(GLFW.GLFW_KEY_RIGHT);
    tabTo("joint 1");
    press(GLFW.GLFW_KEY_ENTER);
    tab(0);
    assertThat(at()).as("what is in force").isEqualTo("none");
    press(GLFW.GLFW_KEY_RIGHT);
    press(GLFW.GLFW_KEY_ENTER);
    assertThat(d.bench.scene().joint("slab", "block").orElseThrow().bond()).isEqualTo(JointSpec.Bond.values()[1]);
  }

  /** The mark is a line in the palette's colour round the control, and the pointer takes it away. */
  @Test
  void theMarkIsSeen() {
    tabTo("Help");
    Ui.Place p = d.window.ui().place("Help").orElseThrow();
    assertThat(marked(p)).isGreaterThan(40);
    d.click("block");
    d.frames(3);
    assertThat(marked(p)).isZero();
    // The walk goes on from what was clicked.
    tab(0);
    assertThat(at()).isEqualTo("tray spare");
  }

  private int marked(Ui.Place p) {
    int[] pixels = d.window.pixels();
    int n = 0;
    int want = (int) (Palette.FOCUS.r() * 255 + 0.5) << 16 | (int) (Palette.FOCUS.g() * 255 + 0.5) << 8
        | (int) (Palette.FOCUS.b() * 255 + 0.5);
    int y = Math.round(p.y0()) - 2;
    for (int x = (int) p.x0(); x < p.x1(); x++) if (pixels[y * Graphics.WIDTH + x] == want) n++;
    return n;
  }
}
