package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import imgui.ImGui;
import java.util.Optional;

/** The strip along the foot: news, or a hint for what one is doing. */
final class FootStrip {
  private final Workbench bench;
  private final Ui ui;
  private final Hints hints;

  FootStrip(Workbench bench, Ui ui, Hints hints) {
    this.bench = bench;
    this.ui = ui;
    this.hints = hints;
  }

  void draw(Layout at) {
    Panels.begin("foot", 0, at.height() - at.foot(), at.width(), at.foot(), ui, 16, 0);
    Panels.edge('t');
    float y = ImGui.getWindowPosY() + at.foot() / 2;
    ImGui.setCursorPosY((at.foot() - ImGui.getFontSize()) / 2);
    Optional<Notice> n = bench.notice();
    if (n.isPresent()) {
      ui.shape(n.get().look(), ImGui.getWindowPosX() + ui.px(22), y, 12);
      ImGui.setCursorPosX(ui.px(38));
      ui.text(bench.units().prose(n.get().text()), Palette.INK);
    } else {
      ui.soft(hints.forNow());
      if (hints.current().isPresent()) {
        ImGui.sameLine(0, ui.px(12));
        if (ui.link("Got it", "hint got it")) hints.wave();
      }
    }
    String file = bench.filing().changedOutside() ? "the file was changed by somebody else"
        : bench.filing().file().map(f -> f.getFileName().toString()).orElse("no file yet");
    float w = ImGui.calcTextSize(file).x;
    ImGui.sameLine(at.width() - w - ui.px(16));
    ui.text(file, bench.filing().changedOutside() ? Palette.FAIL : Palette.INK_FAINT.toward(Palette.INK_SOFT, 0.7));
    Panels.end();
  }
}
