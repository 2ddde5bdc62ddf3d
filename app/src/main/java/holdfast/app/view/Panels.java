package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import imgui.ImGui;
import imgui.flag.ImGuiCond;
import imgui.flag.ImGuiStyleVar;
import imgui.flag.ImGuiWindowFlags;

/** Fixed panels along the edges of the window, and the sheets that lie over it. */
final class Panels {
  private static final int FIXED = ImGuiWindowFlags.NoTitleBar | ImGuiWindowFlags.NoResize | ImGuiWindowFlags.NoMove
      | ImGuiWindowFlags.NoCollapse | ImGuiWindowFlags.NoSavedSettings | ImGuiWindowFlags.NoBringToFrontOnFocus
      | ImGuiWindowFlags.NoNavFocus;

  private Panels() {}

  static void begin(String name, float x, float y, float width, float height, Ui ui, double padX, double padY) {
    ImGui.setNextWindowPos(x, y, ImGuiCond.Always);
    ImGui.setNextWindowSize(width, height, ImGuiCond.Always);
    ImGui.pushStyleVar(ImGuiStyleVar.WindowPadding, ui.px(padX), ui.px(padY));
    ImGui.begin(name, FIXED);
    ui.panel(name);
    ImGui.popStyleVar();
  }

  static void end() {
    ImGui.end();
  }

  /** A line along one edge of the window drawn last: {@code side} is l, r, t or b. */
  static void edge(char side) {
    float x = ImGui.getWindowPosX();
    float y = ImGui.getWindowPosY();
    float w = ImGui.getWindowWidth();
    float h = ImGui.getWindowHeight();
    int c = Palette.RULE.packed();
    ImGui.getWindowDrawList().pushClipRect(x, y, x + w, y + h, false);
    switch (side) {
      case 'l' -> ImGui.getWindowDrawList().addLine(x, y, x, y + h, c, 1);
      case 'r' -> ImGui.getWindowDrawList().addLine(x + w - 1, y, x + w - 1, y + h, c, 1);
      case 't' -> ImGui.getWindowDrawList().addLine(x, y, x + w, y, c, 1);
      default -> ImGui.getWindowDrawList().addLine(x, y + h - 1, x + w, y + h - 1, c, 1);
    }
    ImGui.getWindowDrawList().popClipRect();
  }

  /** Words beside the pointer while it rests on the control drawn last, or beneath that while the keyboard is on it. */
  static void tip(Ui ui, String words) {
    boolean hovered = ImGui.isItemHovered();
    if (!hovered && !ui.marked()) return;
    if (!hovered) ImGui.setNextWindowPos(ImGui.getItemRectMinX(), ImGui.getItemRectMaxY() + ui.px(6), ImGuiCond.Always);
    ImGui.pushStyleVar(ImGuiStyleVar.WindowPadding, ui.px(10), ui.px(7));
    ImGui.beginTooltip();
    ImGui.pushTextWrapPos(ui.px(320));
    ui.small(words, Palette.INK);
    ImGui.popTextWrapPos();
    ImGui.endTooltip();
    ImGui.popStyleVar();
  }

  /** A sheet in the middle of the window; true while it is to be filled. Close it with {@link #endSheet}. */
  static boolean beginSheet(String name, Layout at, Ui ui, double width, double height) {
    float w = Math.min(ui.px(width), at.width() - ui.px(40));
    float h = Math.min(ui.px(height), at.height() - ui.px(40));
    ImGui.setNextWindowPos((at.width() - w) / 2, (at.height() - h) / 2, ImGuiCond.Always);
    ImGui.setNextWindowSize(w, h, ImGuiCond.Always);
    ImGui.pushStyleVar(ImGuiStyleVar.WindowPadding, ui.px(26), ui.px(22));
    ImGui.pushStyleVar(ImGuiStyleVar.WindowRounding, ui.px(10));
    if (!ImGui.isPopupOpen(name)) ImGui.openPopup(name);
    boolean open = ImGui.beginPopupModal(name, ImGuiWindowFlags.NoTitleBar | ImGuiWindowFlags.NoResize | ImGuiWindowFlags.NoMove
        | ImGuiWindowFlags.NoSavedSettings);
    ImGui.popStyleVar(2);
    ui.panel(Focus.SHEET);
    return open;
  }

  static void endSheet() {
    ImGui.endPopup();
  }
}
