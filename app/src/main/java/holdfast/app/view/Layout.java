package holdfast.app.view;

/**
 * Where the parts of the window lie, in pixels from its top left.
 *
 * @param strip there is a strip of controls beneath the picture
 */
record Layout(int width, int height, float scale, boolean strip) {
  private static final int TOP = 52;
  private static final int LEFT = 276;
  private static final int RIGHT = 344;
  private static final int FOOT = 38;
  private static final int STRIP = 112;

  float top() {
    return Math.round(TOP * scale);
  }

  float left() {
    return Math.round(LEFT * scale);
  }

  float right() {
    return Math.round(RIGHT * scale);
  }

  float foot() {
    return Math.round(FOOT * scale);
  }

  /** Height of the strip beneath the picture; 0 without one. */
  float stripHeight() {
    return strip ? Math.round(STRIP * scale) : 0;
  }

  int sceneX() {
    return (int) left();
  }

  int sceneY() {
    return (int) top();
  }

  int sceneWidth() {
    return Math.max(64, width - (int) left() - (int) right());
  }

  int sceneHeight() {
    return Math.max(64, height - (int) top() - (int) foot() - (int) stripHeight());
  }

  boolean inScene(double x, double y) {
    return x >= sceneX() && y >= sceneY() && x < sceneX() + sceneWidth() && y < sceneY() + sceneHeight();
  }
}
