package holdfast.app.view;

import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import holdfast.engine.motion.SectionResult;
import imgui.ImDrawList;
import imgui.ImGui;
import imgui.ImVec2;
import java.util.List;

/** The same bump in a section along the blow, in a small picture beside the scene. */
record SectionStrip(SectionResult.Played played, long startNanos) {
  private static final double WIDTH = 300;
  private static final double HEIGHT = 204;
  /** Beneath the line of words above what is played; the heap itself lies lower. */
  private static final double BELOW_TOP = 44;
  private static final double ASIDE = 12;

  /** A place of the window is on the strip. */
  static boolean covers(Layout at, Ui ui, double x, double y) {
    double left = at.sceneX() + at.sceneWidth() - ui.px(WIDTH + ASIDE);
    double top = at.sceneY() + ui.px(BELOW_TOP);
    return x >= left && x < left + ui.px(WIDTH) && y >= top && y < top + ui.px(HEIGHT);
  }

  void draw(Layout at, Ui ui, long now, double speed) {
    float w = ui.px(WIDTH);
    float h = ui.px(HEIGHT);
    Panels.begin("section", at.sceneX() + at.sceneWidth() - w - ui.px(ASIDE), at.sceneY() + ui.px(BELOW_TOP), w, h, ui, 12, 9);
    ui.small("Section along the blow", Palette.INK_SOFT);
    ImDrawList d = ImGui.getWindowDrawList();
    float x0 = ImGui.getCursorScreenPosX();
    float y0 = ImGui.getCursorScreenPosY();
    float iw = ImGui.getContentRegionAvailX();
    float ih = h - (y0 - ImGui.getWindowPosY()) - ui.px(44);
    double left = 1e9;
    double right = -1e9;
    double top = 0.05;
    for (SectionResult.Piece p : played.pieces()) {
      if (!p.moves()) continue;
      for (List<double[]> poly : p.polygons()) {
        for (double[] q : poly) {
          left = Math.min(left, q[0] - 0.1);
          right = Math.max(right, q[0] + 0.1);
          top = Math.max(top, q[1] + 0.03);
        }
      }
    }
    double scale = Math.min(iw / Math.max(0.1, right - left), ih / top);
    double shift = x0 + (iw - (right - left) * scale) / 2 - left * scale;
    SectionResult.Frame frame = frame(now, speed);
    d.pushClipRect(x0, y0, x0 + iw, y0 + ih, true);
    int moving = 0;
    for (SectionResult.Piece p : played.pieces()) {
      Colour c = p.moves() ? Palette.DRY : Palette.BOTTOM;
      int number = moving;
      for (List<double[]> poly : p.polygons()) {
        ImVec2[] points = new ImVec2[poly.size()];
        for (int i = 0; i < points.length; i++) {
          double[] q = p.moves() && frame != null && number < frame.moves().size()
              ? frame.moves().get(number).apply(poly.get(i)) : poly.get(i);
          points[i] = new ImVec2((float) (shift + q[0] * scale), (float) (y0 + ih - q[1] * scale));
        }
        d.addConvexPolyFilled(points, points.length, c.packed());
        for (int i = 0; i < points.length; i++) {
          ImVec2 a = points[i];
          ImVec2 b = points[(i + 1) % points.length];
          d.addLine(a.x, a.y, b.x, b.y, Palette.INK_SOFT.packed(), 1);
        }
      }
      if (p.moves()) moving++;
    }
    d.popClipRect();
    ImGui.setCursorScreenPos(x0, y0 + ih + ui.px(4));
    String doubt = played.representative() ? "stands for the heap" : "only a hint: " + played.doubts().get(0);
    ui.smallWrapped(doubt, Palette.INK_SOFT);
    Panels.end();
  }

  private SectionResult.Frame frame(long now, double speed) {
    double t = (now - startNanos) * 1e-9 * speed;
    SectionResult.Frame shown = null;
    for (SectionResult.Frame f : played.frames()) if (f.timeS() <= t || shown == null) shown = f;
    return shown;
  }
}
