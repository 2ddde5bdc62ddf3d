package holdfast.app.view;

import static org.lwjgl.glfw.GLFW.*;

import java.nio.file.Path;
import org.lwjgl.glfw.GLFWDropCallback;

/** Hands the display's events to a window. */
final class DisplayEvents {
  private DisplayEvents() {}

  static void listen(long display, ViewWindow to) {
    glfwSetCursorEnterCallback(display, (w, in) -> to.pointerIn(in));
    glfwSetCursorPosCallback(display, (w, x, y) -> to.pointer(x, y, pixelsPerUnit(w)));
    glfwSetMouseButtonCallback(display, (w, button, action, mods) -> to.button(button, action == GLFW_PRESS, mods));
    glfwSetScrollCallback(display, (w, dx, dy) -> to.scroll(dx, dy));
    glfwSetKeyCallback(display, (w, key, code, action, mods) -> to.key(key, code, action, mods));
    glfwSetCharCallback(display, (w, c) -> to.letter(c));
    glfwSetWindowRefreshCallback(display, w -> to.refresh());
    glfwSetWindowFocusCallback(display, (w, on) -> to.focused(on));
    glfwSetDropCallback(display, (w, count, names) -> to.dropped(Path.of(GLFWDropCallback.getName(names, 0))));
  }

  /** Some screens count places in larger units than pixels. */
  private static double pixelsPerUnit(long display) {
    int[] size = new int[1];
    int[] pixels = new int[1];
    glfwGetWindowSize(display, size, null);
    glfwGetFramebufferSize(display, pixels, null);
    return size[0] > 0 ? pixels[0] / (double) size[0] : 1;
  }
}
