package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.edit.Scenes;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lwjgl.glfw.GLFW;

/** Keys as fast as they come, and what the help sheet says of them. */
class WindowKeysTest extends WindowCase {
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
    List<String> listed = HelpSheet.keys().stream().flatMap(k -> Arrays.stream(k.split(",\\s+|\\s{2,}"))).toList();
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
    List<Object> s = new ArrayList<>(List.of(d.bench.scene(), d.bench.sight().camera(), d.bench.sight().moving(), d.bench.mode(),
        d.window.commands().sheet(), d.window.commands().wantsToQuit(), d.bench.shown().cutWay(), d.bench.chosen(),
        d.bench.chores().busy()));
    for (Shown.Layer l : Shown.Layer.values()) s.add(d.bench.shown().has(l));
    return s;
  }
}
