package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import imgui.ImDrawList;
import imgui.ImGui;
import imgui.flag.ImGuiCol;
import imgui.flag.ImGuiInputTextFlags;
import imgui.flag.ImGuiKey;
import imgui.flag.ImGuiStyleVar;
import imgui.type.ImString;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The few controls that the panels are made of, and their text. Every control notes where it was drawn, so that it can be
 * found by its words, and is reached by the keyboard as well as by the pointer ({@link Focus}).
 */
final class Ui extends PanelText {
  private final Map<String, Place> places = new LinkedHashMap<>();
  private final Map<String, ImString> typing = new LinkedHashMap<>();
  private final Focus focus = new Focus();
  private String panel = "";
  private String group = "";
  private boolean lastMarked;

  /** Where a control was drawn in the latest frame, pixels from the top left. */
  record Place(float x0, float y0, float x1, float y1) {
    float x() {
      return (x0 + x1) / 2;
    }

    float y() {
      return (y0 + y1) / 2;
    }
  }

  /** The panels' library must have a context. */
  Ui(float scale) {
    super(scale);
  }

  // -- frame --------------------------------------------------------------------------------------------------------

  void newFrame() {
    places.clear();
    focus.newFrame();
  }

  /** All panels are drawn; {@code steady} when nothing is being worked out that could bring a control back. */
  void endFrame(boolean steady) {
    focus.endFrame(steady);
  }

  /** The controls that follow are of this panel. */
  void panel(String name) {
    panel = name;
    group = "";
    lastMarked = false;
  }

  /** The controls that follow are one list or one row of choices: the keyboard comes to it once and walks it by arrows. */
  void row(String name) {
    group = panel + "/" + name;
  }

  /** Those that follow stand alone again. */
  void rowEnd() {
    group = "";
  }

  Focus focus() {
    return focus;
  }

  /** Where the control with these words is. */
  Optional<Place> place(String words) {
    return Optional.ofNullable(places.get(words));
  }

  Iterable<String> words() {
    return places.keySet();
  }

  /** Notes the place of the control drawn last. */
  void note(String words) {
    places.put(words, new Place(ImGui.getItemRectMinX(), ImGui.getItemRectMinY(), ImGui.getItemRectMaxX(),
        ImGui.getItemRectMaxY()));
  }

  // -- keyboard -----------------------------------------------------------------------------------------------------

  /** The control drawn last is reached by the keyboard too; true when it was pressed there. */
  boolean stop(String words, boolean on, Focus.Kind kind) {
    return stop(focus.id(panel, words), on, kind, group);
  }

  private boolean stop(String id, boolean on, Focus.Kind kind, String of) {
    Place p = new Place(ImGui.getItemRectMinX(), ImGui.getItemRectMinY(), ImGui.getItemRectMaxX(), ImGui.getItemRectMaxY());
    boolean pressed = focus.add(new Focus.Stop(id, panel, of, on, kind, p));
    lastMarked = focus.on(id);
    if (lastMarked) mark(p, focus.comesTo(id));
    return pressed;
  }

  /** The mark round what the keyboard is on, brought into sight when it has just come there. */
  private void mark(Place p, boolean comes) {
    float top = ImGui.getWindowPosY();
    float bottom = top + ImGui.getWindowHeight();
    float left = ImGui.getWindowPosX();
    if (comes && (p.y0 < top || p.y1 > bottom)) ImGui.setScrollHereY(0.5f);
    float out = px(2);
    ImDrawList d = ImGui.getForegroundDrawList();
    d.pushClipRect(left - 2 * out, top - out, left + ImGui.getWindowWidth() + 2 * out, bottom + out, false);
    d.addRect(p.x0 - out, p.y0 - out, p.x1 + out, p.y1 + out, Palette.FOCUS.packed(), px(6), 0, px(2));
    d.popClipRect();
  }

  /** The control drawn last has the keyboard's mark. */
  boolean marked() {
    return lastMarked;
  }

  /** The walk by keyboard begins at the control drawn last. */
  void beginHere(String words) {
    focus.beginAt(new Focus.Stop(panel + "/" + words, panel, group, false, Focus.Kind.FIELD, places.get(words)));
  }

  /** Steps by which the keyboard moved the lever drawn last. */
  int lever(String words) {
    String id = focus.id(panel, words);
    stop(id, false, Focus.Kind.LEVER, "");
    return focus.pulled(id);
  }

  // -- controls -----------------------------------------------------------------------------------------------------

  boolean button(String words) {
    return button(words, 0, true);
  }

  /** A button of this width in units, or as wide as its words need. */
  boolean button(String words, double width, boolean enabled) {
    return button(words, width, enabled, false, Focus.Kind.PRESS);
  }

  private boolean button(String words, double width, boolean enabled, boolean on, Focus.Kind kind) {
    if (!enabled) ImGui.beginDisabled();
    boolean pressed = ImGui.button(words, px(width), 0);
    note(words.replaceFirst("##.*", "").replace('\n', ' '));
    if (enabled) pressed |= stop(words, on, kind);
    else lastMarked = false;
    if (!enabled) ImGui.endDisabled();
    return pressed && enabled;
  }

  /** The one button that the moment is about. */
  boolean mainButton(String words, double width) {
    ImGui.pushStyleColor(ImGuiCol.Button, Palette.ACCENT.packed());
    ImGui.pushStyleColor(ImGuiCol.ButtonHovered, Palette.ACCENT.toward(Palette.PANEL, 0.12).packed());
    ImGui.pushStyleColor(ImGuiCol.ButtonActive, Palette.ACCENT.toward(Palette.INK, 0.2).packed());
    ImGui.pushStyleColor(ImGuiCol.Text, Palette.PANEL.packed());
    boolean pressed = button(words, width, true);
    ImGui.popStyleColor(4);
    return pressed;
  }

  /** Words that can be pressed, found by {@code id}. */
  boolean link(String words, String id) {
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    boolean pressed = ImGui.invisibleButton(id, ImGui.calcTextSize(words).x + px(4), ImGui.getFontSize() + px(4));
    note(id);
    pressed |= stop(id, false, Focus.Kind.PRESS);
    int c = (ImGui.isItemHovered() ? Palette.INK : Palette.ACCENT).packed();
    ImGui.getWindowDrawList().addText(x, y, c, words);
    return pressed;
  }

  /** A button that stays pressed while {@code on}. */
  boolean toggle(String words, boolean on) {
    return toggle(words, on, Focus.Kind.PRESS);
  }

  /** One of a row of which the arrow keys choose at once. */
  boolean tab(String words, boolean on) {
    return toggle(words, on, Focus.Kind.CHOICE);
  }

  private boolean toggle(String words, boolean on, Focus.Kind kind) {
    ImGui.pushStyleColor(ImGuiCol.Button, (on ? Palette.ACCENT_SOFT : Palette.PANEL.solid(0)).packed());
    ImGui.pushStyleColor(ImGuiCol.Text, (on ? Palette.ACCENT : Palette.INK_SOFT).packed());
    boolean pressed = button(words, 0, true, on, kind);
    ImGui.popStyleColor(2);
    return pressed;
  }

  boolean check(String words, boolean on) {
    box();
    boolean changed = ImGui.checkbox(words, on);
    boxEnd();
    note(words.replaceFirst("##.*", ""));
    return changed | stop(words, false, Focus.Kind.PRESS);
  }

  /** One of several of which one is in force. */
  boolean choice(String words, boolean on) {
    box();
    boolean pressed = ImGui.radioButton(words, on);
    boxEnd();
    note(words);
    return pressed | stop(words, on, Focus.Kind.PRESS);
  }

  /** A small box with an edge: an empty one is to be seen as well. */
  private void box() {
    ImGui.pushStyleVar(ImGuiStyleVar.FramePadding, px(4), px(3));
    ImGui.pushStyleVar(ImGuiStyleVar.FrameBorderSize, Math.max(1, px(1)));
    ImGui.pushStyleColor(ImGuiCol.Border, Palette.INK_FAINT.packed());
  }

  private static void boxEnd() {
    ImGui.popStyleColor();
    ImGui.popStyleVar(2);
  }

  /** Enter was pressed: what the main button of a sheet does. */
  boolean entered() {
    return ImGui.isKeyPressed(ImGuiKey.Enter, false) || ImGui.isKeyPressed(ImGuiKey.KeypadEnter, false);
  }

  /** A tick box in a row of taller controls. */
  boolean checkInRow(String words, boolean on) {
    ImGui.setCursorPosY(ImGui.getCursorPosY() + px(3));
    return check(words, on);
  }

  /** A line of text to be typed; what was typed once it is finished with Enter or by leaving the field. */
  Optional<String> field(String id, String value, double width) {
    ImString typed = typing.get(id);
    if (typed == null) typed = new ImString(value, 256);
    boolean left = input(id, typed, width);
    boolean done = left ? typing.containsKey(id) && !typed.get().equals(value) : ImGui.isItemDeactivatedAfterEdit();
    if (ImGui.isItemActive()) typing.put(id, typed);
    else typing.remove(id);
    return done ? Optional.of(typed.get().strip()) : Optional.empty();
  }

  /** Text in a field of a sheet that is kept by the caller. */
  void entry(String id, ImString value, double width) {
    input(id, value, width);
  }

  /** The field itself; true when the keyboard has just walked away from it. */
  private boolean input(String words, ImString value, double width) {
    String id = focus.id(panel, words);
    boolean left = focus.leaves(id);
    ImGui.setNextItemWidth(px(width));
    if (focus.comesTo(id)) ImGui.setKeyboardFocusHere();
    // The library ends the typing in a field that is not drawn: for one frame another one stands in its place.
    ImGui.inputText((left ? "##left " : "##") + words, value, ImGuiInputTextFlags.AutoSelectAll);
    note(words);
    stop(id, false, Focus.Kind.FIELD, group);
    return left;
  }
}
