package holdfast.app.view;

import imgui.glfw.ImGuiImplGlfw;
import java.util.Arrays;
import org.lwjgl.glfw.GLFW;

/** The panels' input, made to close properly on displays that have no cursor shapes to give. */
final class PanelInput extends ImGuiImplGlfw {
  /** Cursors of the library, with the missing ones left out when it closes. */
  private static final class Cursors extends Data {
    void onlyThoseThere() {
      long spare = 0;
      for (int i = 0; i < mouseCursors.length; i++) {
        if (mouseCursors[i] != 0) continue;
        spare = GLFW.glfwCreateStandardCursor(GLFW.GLFW_ARROW_CURSOR);
        mouseCursors[i] = spare;
      }
      if (spare == 0) mouseCursors = Arrays.stream(mouseCursors).filter(c -> c != 0).toArray();
    }
  }

  @Override
  protected Data newData() {
    return new Cursors();
  }

  @Override
  public void shutdown() {
    ((Cursors) data).onlyThoseThere();
    super.shutdown();
  }
}
