package holdfast.app.view;

import static org.lwjgl.glfw.GLFW.*;

/** The keys that walk the controls and press them; whatever is not for a control is left to {@link Keyboard}. */
final class FocusKeys {
  private final Focus focus;

  FocusKeys(Focus focus) {
    this.focus = focus;
  }

  /**
   * True when the key is used up.
   *
   * @param typing a field is being typed in: all but the keys that leave it belong to it
   * @param sheet a sheet is open: Esc closes it, whatever the keyboard is on
   */
  boolean press(int key, int mods, boolean typing, boolean sheet) {
    boolean shift = (mods & GLFW_MOD_SHIFT) != 0;
    if ((mods & (GLFW_MOD_CONTROL | GLFW_MOD_SUPER | GLFW_MOD_ALT)) != 0) return false;
    if (key == GLFW_KEY_TAB) {
      focus.walk(shift);
      return true;
    }
    if (key == GLFW_KEY_F6) {
      focus.walkPanels(shift);
      return true;
    }
    return !typing && focus.at().isPresent() && marked(key, sheet, focus.at().get().kind() == Focus.Kind.FIELD);
  }

  private boolean marked(int key, boolean sheet, boolean field) {
    switch (key) {
      case GLFW_KEY_UP -> focus.arrow(0, -1);
      case GLFW_KEY_DOWN -> focus.arrow(0, 1);
      case GLFW_KEY_LEFT -> focus.arrow(-1, 0);
      case GLFW_KEY_RIGHT -> focus.arrow(1, 0);
      case GLFW_KEY_HOME -> focus.end(false);
      case GLFW_KEY_END -> focus.end(true);
      case GLFW_KEY_SPACE -> focus.press();
      case GLFW_KEY_ENTER, GLFW_KEY_KP_ENTER -> {
        // In a sheet Enter in a field is for its main button, as it is while one types there.
        if (sheet && field) return false;
        focus.press();
      }
      case GLFW_KEY_ESCAPE -> {
        if (sheet) return false;
        focus.letGo();
      }
      default -> {
        // What would be typed opens the field and does nothing else.
        if (!field || key <= GLFW_KEY_SPACE || key > GLFW_KEY_GRAVE_ACCENT) return false;
        focus.press();
      }
    }
    return true;
  }
}
