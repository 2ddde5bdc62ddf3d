package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import imgui.ImDrawList;
import imgui.ImFont;
import imgui.ImGui;
import imgui.flag.ImGuiCol;
import java.util.List;
import java.util.function.UnaryOperator;

/** What is read in the panels: text in its few sizes, headings, rules, and the shapes of severity. */
class PanelText {
  private final float scale;
  private final ImFont strong;
  private final ImFont small;
  private final ImFont title;
  private final Wrapping wrapping = new Wrapping();
  private final Wrapping smallWrapping = new Wrapping();
  private final Wrapping strongWrapping = new Wrapping();
  private UnaryOperator<String> called = UnaryOperator.identity();

  /** The panels' library must have a context. */
  PanelText(float scale) {
    this.scale = scale;
    PanelLook look = PanelLook.of(scale);
    strong = look.strong();
    small = look.small();
    title = look.title();
  }

  float scale() {
    return scale;
  }

  /** Pixels of a length in units of an ordinary screen. */
  float px(double units) {
    return (float) (units * scale);
  }

  /** From here on texts are written so: for names whose letters there are not. */
  void call(UnaryOperator<String> as) {
    called = as;
  }

  // -- text ---------------------------------------------------------------------------------------------------------

  void text(String words, Colour c) {
    ImGui.pushStyleColor(ImGuiCol.Text, c.packed());
    ImGui.textUnformatted(called.apply(words));
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
    String whole = called.apply(words);
    String out = whole;
    for (int n = whole.length(); n > 1 && ImGui.calcTextSize(out).x > pixels; n--) {
      out = whole.substring(0, n - 1).strip() + "…";
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
    lines(smallWrapping.lines(called.apply(words), ImGui.getContentRegionAvailX(), t -> ImGui.calcTextSize(t).x), c);
    ImGui.popFont();
  }

  /** The lines of a text at this width, in pixels. */
  List<String> brokenAt(String words, float width) {
    return wrapping.lines(called.apply(words), width, t -> ImGui.calcTextSize(t).x);
  }

  /** The lines of a title in strong letters at this width, in pixels. */
  List<String> strongBrokenAt(String words, float width) {
    ImGui.pushFont(strong);
    List<String> out = strongWrapping.lines(called.apply(words), width, t -> ImGui.calcTextSize(t).x);
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
