package holdfast.app.view;

/** Where the parts of the window lie, in pixels from its top left. */
record Layout(int width, int height, float scale, boolean bare) {
  private static final int TOP = 52;
  private static final int LEFT = 276;
  private static final int RIGHT = 344;
  private static final int FOOT = 38;

  float top() {
    return Math.round(TOP * scale);
  }

  float left() {
    return bare ? 0 : Math.round(LEFT * scale);
  }

  float right() {
    return bare ? 0 : Math.round(RIGHT * scale);
  }

  float foot() {
    return Math.round(FOOT * scale);
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
    return Math.max(64, height - (int) top() - (int) foot());
  }

  boolean inScene(double x, double y) {
    return x >= sceneX() && y >= sceneY() && x < sceneX() + sceneWidth() && y < sceneY() + sceneHeight();
  }
}
