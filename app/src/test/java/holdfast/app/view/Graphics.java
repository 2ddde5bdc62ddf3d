package holdfast.app.view;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.app.view.gl.GlContext;

/** One unseen context for all tests of this process; tests are left out, and say so, where there is none. */
final class Graphics {
  static final int WIDTH = 1280;
  static final int HEIGHT = 800;
  private static GlContext context;
  private static String reason;

  private Graphics() {}

  static synchronized GlContext context() {
    if (context == null && reason == null) {
      GlContext.unseen(WIDTH, HEIGHT).match(c -> context = c, why -> {
        reason = why;
        System.err.println("Left out, no graphics here: " + why);
        return null;
      });
    }
    assumeTrue(context != null, () -> "no graphics here: " + reason);
    return context;
  }
}
