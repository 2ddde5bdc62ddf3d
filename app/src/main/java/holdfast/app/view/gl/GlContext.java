package holdfast.app.view.gl;

import static org.lwjgl.glfw.GLFW.*;
import static org.lwjgl.system.MemoryUtil.NULL;

import java.util.function.Function;
import org.lwjgl.glfw.GLFWErrorCallback;
import org.lwjgl.opengl.GL;
import org.lwjgl.opengl.GL11;
import org.lwjgl.opengl.GLCapabilities;
import org.lwjgl.system.Configuration;
import org.lwjgl.system.Platform;

/**
 * A window, seen or unseen, with an OpenGL 3.3 core context that is current on the calling thread.
 *
 * <p>Unseen contexts need no display server on Linux: the library's null platform with a context from EGL draws the
 * same picture as a real window. Elsewhere a hidden window does.
 */
public final class GlContext implements AutoCloseable {
  private static final int LEAST_WIDTH = 1024;
  private static final int LEAST_HEIGHT = 640;
  private final long window;
  private final boolean seen;
  private final String renderer;

  private GlContext(long window, boolean seen, String renderer) {
    this.window = window;
    this.seen = seen;
    this.renderer = renderer;
  }

  /** What came of asking for a context. */
  public sealed interface Opening {
    /** It is there, and current. */
    record Opened(GlContext context) implements Opening {}

    /** None can be had here; the reason is a sentence for people. */
    record Refused(String reason) implements Opening {}

    /** Both cases. */
    default <T> T match(Function<GlContext, T> opened, Function<String, T> refused) {
      return this instanceof Opened o ? opened.apply(o.context()) : refused.apply(((Refused) this).reason());
    }
  }

  /** A context without a window that anyone sees. */
  public static Opening unseen(int width, int height) {
    return open("Holdfast", width, height, false);
  }

  /** A window on the screen. */
  public static Opening seen(String title, int width, int height) {
    return open(title, width, height, true);
  }

  private static Opening open(String title, int width, int height, boolean seen) {
    try {
      return tryOpen(title, width, height, seen);
    } catch (LinkageError | RuntimeException e) {
      return new Opening.Refused("The graphics library could not be started: " + firstLine(e) + ".");
    }
  }

  private static Opening tryOpen(String title, int width, int height, boolean seen) {
    StringBuilder said = new StringBuilder();
    GLFWErrorCallback listener = GLFWErrorCallback.create((code, text) -> said.append(GLFWErrorCallback.getDescription(text)));
    GLFWErrorCallback before = glfwSetErrorCallback(listener);
    if (before != null) before.free();
    boolean linux = Platform.get() == Platform.LINUX;
    boolean bare = !seen && linux;
    if (seen && linux) {
      // Asked here, so that the libraries beneath do not try in vain and complain on standard error.
      boolean x = !System.getenv().getOrDefault("DISPLAY", "").isBlank();
      boolean wayland = !System.getenv().getOrDefault("WAYLAND_DISPLAY", "").isBlank();
      if (!x && !wayland) {
        return new Opening.Refused("There is no display to open a window on: neither DISPLAY nor WAYLAND_DISPLAY is set.");
      }
      if (!wayland) glfwInitHint(GLFW_PLATFORM, GLFW_PLATFORM_X11);
    }
    if (bare) {
      Configuration.OPENGL_CONTEXT_API.set("EGL");
      glfwInitHint(GLFW_PLATFORM, GLFW_PLATFORM_NULL);
    }
    if (!glfwInit()) {
      return new Opening.Refused(seen
          ? "There is no display to open a window on" + because(said) + "."
          : "Pictures need OpenGL 3.3, and it could not be started" + because(said) + ".");
    }
    glfwDefaultWindowHints();
    glfwWindowHint(GLFW_VISIBLE, seen ? GLFW_TRUE : GLFW_FALSE);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
    if (bare) glfwWindowHint(GLFW_CONTEXT_CREATION_API, GLFW_EGL_CONTEXT_API);
    long window = glfwCreateWindow(width, height, title, NULL, NULL);
    if (window == NULL) {
      glfwTerminate();
      return new Opening.Refused("OpenGL 3.3 is needed and is not there" + because(said) + ".");
    }
    glfwMakeContextCurrent(window);
    if (seen) keepLargeEnough(window);
    GLCapabilities can = GL.createCapabilities(true);
    if (!can.OpenGL33) {
      glfwDestroyWindow(window);
      glfwTerminate();
      return new Opening.Refused("OpenGL 3.3 is needed; this machine offers " + GL11.glGetString(GL11.GL_VERSION) + ".");
    }
    return new Opening.Opened(new GlContext(window, seen, GL11.glGetString(GL11.GL_RENDERER)));
  }

  /** The controls along the top need this much room. */
  private static void keepLargeEnough(long window) {
    float[] scale = new float[1];
    glfwGetWindowContentScale(window, scale, null);
    float s = Math.max(1, scale[0]);
    glfwSetWindowSizeLimits(window, Math.round(LEAST_WIDTH * s), Math.round(LEAST_HEIGHT * s), GLFW_DONT_CARE, GLFW_DONT_CARE);
  }

  private static String because(StringBuilder said) {
    return said.isEmpty() ? "" : ": " + said.toString().replaceAll("\\.$", "");
  }

  private static String firstLine(Throwable e) {
    String text = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    return text.lines().findFirst().orElse(text).replaceAll("\\.$", "");
  }

  /** The window's handle. */
  public long window() {
    return window;
  }

  public boolean seen() {
    return seen;
  }

  /** What draws, in the driver's words. */
  public String renderer() {
    return renderer;
  }

  /** Pixels of the drawing surface: width, height. */
  public int[] pixels() {
    int[] w = new int[1];
    int[] h = new int[1];
    glfwGetFramebufferSize(window, w, h);
    return new int[] {w[0], h[0]};
  }

  /** How large text and controls should be drawn, 1 on an ordinary screen. */
  public float scale() {
    if (!seen) return 1;
    float[] x = new float[1];
    float[] y = new float[1];
    glfwGetWindowContentScale(window, x, y);
    return Math.max(1, x[0]);
  }

  @Override
  public void close() {
    glfwMakeContextCurrent(NULL);
    GL.setCapabilities(null);
    glfwDestroyWindow(window);
    glfwTerminate();
    GLFWErrorCallback last = glfwSetErrorCallback(null);
    if (last != null) last.free();
  }
}
