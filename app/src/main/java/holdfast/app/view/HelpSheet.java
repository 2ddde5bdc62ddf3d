package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import imgui.ImGui;
import java.util.Arrays;
import java.util.List;

/** Everything the keyboard and the pointer do, on one sheet. */
final class HelpSheet {
  private static final String[][] POINTER = {
    {"click a rock", "choose it"},
    {"drag a rock", "slide it over what lies below; half cells of the grid"},
    {"with Alt, with Shift", "without the grid; at the same height"},
    {"drag a ring", "turn it; with Shift by 15°, with Alt finely"},
    {"drag the arrow", "lift or lower it"},
    {"drag beside the rocks", "circle the view"},
    {"drag with the right button", "slide the view"},
    {"turn the wheel", "come nearer, go back"},
    {"double-click on the tray", "set that rock down"},
    {"click a joint's number", "say what fixes it"},
    {"click a finding", "fly there, see it drawn"},
    {"drop a file on the window", "open it"},
  };
  private static final String[][] KEYS = {
    {"1  2  3  4", "front, left, top, corner"},
    {"F", "all in sight"},
    {"T, Shift T", "next rock, rock before"},
    {"arrow keys", "move by a millimetre; with Shift by a cell"},
    {"Page Up, Page Down", "lift, lower by a millimetre"},
    {", and .", "turn about up by 5°; with Shift by 1°"},
    {"Space", "drop onto what lies below"},
    {"R", "find a steady rest here"},
    {"P", "set down the chosen rock of the tray"},
    {"D", "duplicate"},
    {"L", "lock, unlock"},
    {"Backspace", "back to the tray"},
    {"Delete", "remove from the scene"},
    {"A", "add a rock"},
    {"B", "bump: pull an arrow from a rock"},
    {"G", "stages of building; left, right: stage by stage"},
    {"J, N", "joints, names"},
    {"C", "cut open: next way"},
    {"Ctrl Z, Ctrl Y", "undo, redo"},
    {"Ctrl S, Ctrl O", "save; scenes: open, save elsewhere"},
    {"Ctrl N, Ctrl Q", "another tank, leave"},
    {"Ctrl E", "picture and build sheet"},
    {"F1", "this sheet"},
    {"Esc", "let go, close"},
  };
  private static final String[][] WALK = {
    {"Tab, Shift Tab", "to the next control, to the one before"},
    {"F6, Shift F6", "to the next panel, to the one before"},
    {"arrow keys", "within a list or a row; move a slider"},
    {"Enter, Space", "what a click does there"},
    {"Esc", "back to the picture"},
  };
  private final Ui ui;

  /** The keys that are listed, as they are written there. */
  static List<String> keys() {
    return Arrays.stream(KEYS).map(k -> k[0]).toList();
  }
  private final Commands commands;
  private final Hints hints;

  HelpSheet(Ui ui, Commands commands, Hints hints) {
    this.hints = hints;
    this.ui = ui;
    this.commands = commands;
  }

  void draw(boolean fresh) {
    ui.title("Keys and pointer");
    ui.gap(4);
    float height = ImGui.getContentRegionAvailY() - ui.px(44);
    float half = ImGui.getContentRegionAvailX() / 2;
    ImGui.beginChild("pointer", half - ui.px(10), height, false);
    ui.strong("Pointer");
    for (String[] line : POINTER) line(line);
    ui.gap(8);
    ui.strong("Buttons and lists by keyboard");
    for (String[] line : WALK) line(line);
    ui.gap(8);
    ui.strong("What the marks mean");
    legend(holdfast.app.report.SeverityLook.FAIL, "fails: not safe");
    legend(holdfast.app.report.SeverityLook.UNDECIDED, "undecided: treat as not safe");
    legend(holdfast.app.report.SeverityLook.WARN, "look at it before going on");
    legend(holdfast.app.report.SeverityLook.NOTE, "worth knowing");
    legend(holdfast.app.report.SeverityLook.FINE, "nothing wrong was found");
    ImGui.endChild();
    ImGui.sameLine(0, ui.px(20));
    ImGui.beginChild("keys", 0, height, false);
    ui.strong("Keys");
    for (String[] line : KEYS) line(line);
    ImGui.endChild();
    Sheets.foot(ui);
    if (ui.mainButton("Close", 90)) commands.closeSheet();
    ImGui.sameLine();
    if (ui.button("Show all hints again")) {
      hints.again();
      commands.closeSheet();
    }
  }

  private void line(String[] words) {
    ui.small(words[0], Palette.INK);
    ImGui.sameLine(ui.px(142));
    ImGui.pushTextWrapPos(0);
    ui.small(words[1], Palette.INK_SOFT);
    ImGui.popTextWrapPos();
  }

  private void legend(holdfast.app.report.SeverityLook look, String words) {
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    ui.shape(look, x + ui.px(8), y + ui.px(8), 12);
    ImGui.setCursorScreenPos(x + ui.px(24), y);
    ui.small(words, Palette.INK_SOFT);
  }
}
