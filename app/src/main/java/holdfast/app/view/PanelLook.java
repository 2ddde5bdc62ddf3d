package holdfast.app.view;

import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import imgui.ImFont;
import imgui.ImFontConfig;
import imgui.ImGui;
import imgui.ImGuiStyle;
import imgui.flag.ImGuiCol;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * Letters, colours and measures of the panels, all from the one palette.
 *
 * @param body of what is read
 * @param strong of names and headings
 * @param small of remarks
 * @param title of the panels' own titles
 */
record PanelLook(ImFont body, ImFont strong, ImFont small, ImFont title) {
  private static final short[] LETTERS = {0x20, 0x17F, 0x386, 0x3CE, 0x400, 0x45F, 0x2010, 0x2026, 0x2212, 0x2212, 0x2264, 0x2265,
    0};

  /** Puts the look on; the panels' library must have a context. */
  static PanelLook of(float scale) {
    ImGui.getIO().setIniFilename(null);
    PanelLook look = new PanelLook(font("Roboto-Regular.ttf", 15, scale), font("Roboto-Medium.ttf", 15, scale),
        font("Roboto-Regular.ttf", 13, scale), font("Roboto-Medium.ttf", 18, scale));
    style(scale);
    return look;
  }

  private static ImFont font(String file, float size, float scale) {
    try (InputStream in = PanelLook.class.getResourceAsStream("/com/formdev/flatlaf/fonts/roboto/" + file)) {
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

  private static void style(float scale) {
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
}
