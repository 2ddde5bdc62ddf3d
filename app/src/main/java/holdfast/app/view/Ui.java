package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import imgui.ImDrawList;
import imgui.ImFont;
import imgui.ImFontConfig;
import imgui.ImGui;
import imgui.ImGuiIO;
import imgui.ImGuiStyle;
import imgui.flag.ImGuiCol;
import imgui.flag.ImGuiInputTextFlags;
import imgui.flag.ImGuiKey;
import imgui.flag.ImGuiStyleVar;
import imgui.type.ImString;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The look of the panels and the few controls they are made of. Every control notes where it was drawn, so that it can be
 * found by its words.
 */
final class Ui {
  private static final short[] LETTERS = {0x20, 0xFF, 0x2010, 0x2026, 0x2212, 0x2212, 0x2264, 0x2265, 0};
  private final float scale;
  private final ImFont body;
  private final ImFont strong;
  private final ImFont small;
  private final ImFont title;
  private final Map<String, Place> places = new LinkedHashMap<>();
  private final Wrapping wrapping = new Wrapping();
  private final Wrapping smallWrapping = new Wrapping();
  private final Wrapping strongWrapping = new Wrapping();
  private final Map<String, ImString> typing = new LinkedHashMap<>();

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
    this.scale = scale;
    ImGuiIO io = ImGui.getIO();
    io.setIniFilename(null);
    body = font("Roboto-Regular.ttf", 15);
    strong = font("Roboto-Medium.ttf", 15);
    small = font("Roboto-Regular.ttf", 13);
    title = font("Roboto-Medium.ttf", 18);
    style();
  }

  private ImFont font(String file, float size) {
    try (InputStream in = Ui.class.getResourceAsStream("/com/formdev/flatlaf/fonts/roboto/" + file)) {
      if (in == null) throw new IllegalStateException("letters missing: " + file);
      ImFontConfig config = new ImFontConfig();
      config.setOversampleH(2);
      config.setOversampleV(1);
      ImFont f = ImGui.getIO().getFonts().addFontFromMemoryTTF(in.readAllBytes(), Math.round(size * scale), config, LETTERS);
      config.destroy();
      return f;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void style() {
    ImGuiStyle s = ImGui.getStyle();
    ImGui.styleColorsLight();
    colour(s, ImGuiCol.Text, Palette.INK);
    colour(s, ImGuiCol.TextDisabled, Palette.INK_FAINT);
    colour(s, ImGuiCol.WindowBg, Palette.PANEL);
    colour(s, ImGuiCol.ChildBg, Palette.PANEL.solid(0));
    colour(s, ImGuiCol.PopupBg, Palette.PANEL);
    colour(s, ImGuiCol.Border, Palette.RULE);
    colour(s, ImGuiCol.FrameBg, Palette.PANEL_SUNK);
    colour(s, ImGuiCol.FrameBgHovered, Palette.ACCENT_SOFT.toward(Palette.PANEL_SUNK, 0.5));
    colour(s, ImGuiCol.FrameBgActive, Palette.ACCENT_SOFT);
    colour(s, ImGuiCol.Button, Palette.PANEL_SUNK);
    colour(s, ImGuiCol.ButtonHovered, Palette.ACCENT_SOFT.toward(Palette.PANEL_SUNK, 0.4));
    colour(s, ImGuiCol.ButtonActive, Palette.ACCENT_SOFT);
    colour(s, ImGuiCol.Header, Palette.ACCENT_SOFT);
    colour(s, ImGuiCol.HeaderHovered, Palette.ACCENT_SOFT.toward(Palette.PANEL, 0.45));
    colour(s, ImGuiCol.HeaderActive, Palette.ACCENT_SOFT);
    colour(s, ImGuiCol.CheckMark, Palette.ACCENT);
    colour(s, ImGuiCol.SliderGrab, Palette.ACCENT);
    colour(s, ImGuiCol.SliderGrabActive, Palette.ACCENT);
    colour(s, ImGuiCol.Separator, Palette.RULE);
    colour(s, ImGuiCol.ScrollbarBg, Palette.PANEL.solid(0));
    colour(s, ImGuiCol.ScrollbarGrab, Palette.RULE);
    colour(s, ImGuiCol.ScrollbarGrabHovered, Palette.INK_FAINT);
    colour(s, ImGuiCol.ScrollbarGrabActive, Palette.INK_FAINT);
    colour(s, ImGuiCol.TextSelectedBg, Palette.ACCENT_SOFT);
    colour(s, ImGuiCol.NavHighlight, Palette.ACCENT);
    colour(s, ImGuiCol.ModalWindowDimBg, Palette.INK.solid(0.28));
    s.setWindowRounding(0);
    s.setFrameRounding(5 * scale);
    s.setPopupRounding(8 * scale);
    s.setGrabRounding(5 * scale);
    s.setScrollbarRounding(6 * scale);
    s.setScrollbarSize(9 * scale);
    s.setWindowBorderSize(0);
    s.setPopupBorderSize(1);
    s.setFrameBorderSize(0);
    s.setWindowPadding(16 * scale, 14 * scale);
    s.setFramePadding(10 * scale, 6 * scale);
    s.setItemSpacing(8 * scale, 7 * scale);
    s.setItemInnerSpacing(7 * scale, 6 * scale);
    s.setGrabMinSize(14 * scale);
    s.setDisabledAlpha(0.45f);
  }

  private static void colour(ImGuiStyle s, int which, Colour c) {
    s.setColor(which, c.r(), c.g(), c.b(), c.a());
  }

  // -- frame --------------------------------------------------------------------------------------------------------

  void newFrame() {
    places.clear();
  }

  float scale() {
    return scale;
  }

  float px(double units) {
    return (float) (units * scale);
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

  // -- text ---------------------------------------------------------------------------------------------------------

  void text(String words, Colour c) {
    ImGui.pushStyleColor(ImGuiCol.Text, c.packed());
    ImGui.textUnformatted(words);
    ImGui.popStyleColor();
  }

  void soft(String words) {
    text(words, Palette.INK_SOFT);
  }

  /** What a field is called, at its left; the field begins at this column. */
  void label(String words, double column) {
    ImGui.alignTextToFramePadding();
    soft(words);
    ImGui.sameLine(px(column));
  }

  void small(String words, Colour c) {
    ImGui.pushFont(small);
    text(words, c);
    ImGui.popFont();
  }

  void strong(String words) {
    ImGui.pushFont(strong);
    text(words, Palette.INK);
    ImGui.popFont();
  }

  void title(String words) {
    ImGui.pushFont(title);
    text(words, Palette.INK);
    ImGui.popFont();
  }

  /** A title cut to this many pixels, with dots where it was cut. */
  String shortened(String words, float pixels) {
    ImGui.pushFont(title);
    String out = words;
    for (int n = words.length(); n > 1 && ImGui.calcTextSize(out).x > pixels; n--) {
      out = words.substring(0, n - 1).strip() + "…";
    }
    ImGui.popFont();
    return out;
  }

  /** The name of a group of controls, with air above. */
  void heading(String words) {
    gap(6);
    ImGui.pushFont(strong);
    text(words, Palette.INK_SOFT);
    ImGui.popFont();
  }

  /** Text broken into lines at the panel's width. */
  void wrapped(String words, Colour c) {
    lines(brokenAt(words, ImGui.getContentRegionAvailX()), c);
  }

  /** The same in small letters. */
  void smallWrapped(String words, Colour c) {
    ImGui.pushFont(small);
    lines(smallWrapping.lines(words, ImGui.getContentRegionAvailX(), t -> ImGui.calcTextSize(t).x), c);
    ImGui.popFont();
  }

  /** The lines of a text at this width, in pixels. */
  List<String> brokenAt(String words, float width) {
    return wrapping.lines(words, width, t -> ImGui.calcTextSize(t).x);
  }

  /** The lines of a title in strong letters at this width, in pixels. */
  List<String> strongBrokenAt(String words, float width) {
    ImGui.pushFont(strong);
    List<String> out = strongWrapping.lines(words, width, t -> ImGui.calcTextSize(t).x);
    ImGui.popFont();
    return out;
  }

  void lines(List<String> lines, Colour c) {
    text(String.join("\n", lines), c);
  }

  void gap(double units) {
    ImGui.dummy(0, px(units));
  }

  void rule() {
    gap(2);
    ImDrawList d = ImGui.getWindowDrawList();
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    d.addLine(x, y, x + ImGui.getContentRegionAvailX(), y, Palette.RULE.packed(), 1);
    gap(4);
  }

  // -- controls -----------------------------------------------------------------------------------------------------

  boolean button(String words) {
    return button(words, 0, true);
  }

  /** A button of this width in units, or as wide as its words need. */
  boolean button(String words, double width, boolean enabled) {
    if (!enabled) ImGui.beginDisabled();
    boolean pressed = ImGui.button(words, px(width), 0);
    note(words.replaceFirst("##.*", ""));
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
    int c = (ImGui.isItemHovered() ? Palette.INK : Palette.ACCENT).packed();
    ImGui.getWindowDrawList().addText(x, y, c, words);
    return pressed;
  }

  /** A button that stays pressed while {@code on}. */
  boolean toggle(String words, boolean on) {
    ImGui.pushStyleColor(ImGuiCol.Button, (on ? Palette.ACCENT_SOFT : Palette.PANEL.solid(0)).packed());
    ImGui.pushStyleColor(ImGuiCol.Text, (on ? Palette.ACCENT : Palette.INK_SOFT).packed());
    boolean pressed = button(words);
    ImGui.popStyleColor(2);
    return pressed;
  }

  boolean check(String words, boolean on) {
    ImGui.pushStyleVar(ImGuiStyleVar.FramePadding, px(4), px(3));
    boolean changed = ImGui.checkbox(words, on);
    ImGui.popStyleVar();
    note(words.replaceFirst("##.*", ""));
    return changed;
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
    ImGui.setNextItemWidth(px(width));
    ImGui.inputText("##" + id, typed, ImGuiInputTextFlags.AutoSelectAll);
    note(id);
    boolean done = ImGui.isItemDeactivatedAfterEdit();
    if (ImGui.isItemActive()) typing.put(id, typed);
    else typing.remove(id);
    return done ? Optional.of(typed.get().strip()) : Optional.empty();
  }

  /** Text in a field of a sheet that is kept by the caller. */
  void entry(String id, ImString value, double width) {
    ImGui.setNextItemWidth(px(width));
    ImGui.inputText("##" + id, value, ImGuiInputTextFlags.AutoSelectAll);
    note(id);
  }

  // -- severity -----------------------------------------------------------------------------------------------------

  static Colour colour(SeverityLook look) {
    return switch (look) {
      case FAIL -> Palette.FAIL;
      case UNDECIDED -> Palette.UNDECIDED;
      case WARN -> Palette.WARN;
      case NOTE -> Palette.NOTE;
      case FINE -> Palette.FINE;
    };
  }

  /**
   * The shape of a severity about a point: a square fails, a triangle warns, a ring notes, a disc is fine, a diamond is
   * undecided.
   */
  void shape(SeverityLook look, float x, float y, double size) {
    ImDrawList d = ImGui.getWindowDrawList();
    float r = px(size / 2);
    int c = colour(look).packed();
    switch (look) {
      case FAIL -> d.addRectFilled(x - r * 0.88f, y - r * 0.88f, x + r * 0.88f, y + r * 0.88f, c, r * 0.2f);
      case WARN -> d.addTriangleFilled(x, y - r, x + r, y + r * 0.8f, x - r, y + r * 0.8f, c);
      case UNDECIDED -> d.addQuadFilled(x, y - r * 1.1f, x + r * 1.1f, y, x, y + r * 1.1f, x - r * 1.1f, y, c);
      case NOTE -> d.addCircle(x, y, r * 0.8f, c, 20, px(2));
      case FINE -> d.addCircleFilled(x, y, r * 0.9f, c, 24);
    }
  }
}
