package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Palette;
import imgui.ImGui;
import java.util.Locale;

/** The strip along the top: the scene and its file, what can be undone, standard views, units, help. */
final class TopBar {
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;

  TopBar(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
  }

  void draw(Layout at) {
    Panels.begin("top", 0, 0, at.width(), at.top(), ui, 16, 10);
    Panels.edge('b');
    ImGui.alignTextToFramePadding();
    String state = bench.document().unsaved() ? "not saved" : bench.filing().file().isPresent() ? "saved" : "";
    String name = bench.scene().name().isBlank() ? "untitled" : bench.scene().name();
    float room = ui.px(252 - 16 - 14) - (state.isEmpty() ? 0 : ImGui.calcTextSize(state).x);
    String shown = ui.shortened(name, room);
    ui.title(shown);
    if (!shown.equals(name)) Panels.tip(ui, name);
    ImGui.sameLine();
    ImGui.alignTextToFramePadding();
    ui.small(state, Palette.INK_SOFT);
    ImGui.sameLine(ui.px(252));
    if (ui.button("Scenes")) commands.openSheet(Sheets.Kind.SCENES);
    ImGui.sameLine();
    if (ui.button("Save")) commands.save();
    ImGui.sameLine();
    if (ui.button("Give out")) commands.openSheet(Sheets.Kind.GIVE_OUT);
    Panels.tip(ui, "Writes a picture or the build sheet.");
    ImGui.sameLine(0, ui.px(20));
    if (ui.button("Undo", 0, bench.document().undoName().isPresent())) bench.undo();
    bench.document().undoName().ifPresent(n -> Panels.tip(ui, "Undo: " + n));
    ImGui.sameLine();
    if (ui.button("Redo", 0, bench.document().redoName().isPresent())) bench.redo();
    bench.document().redoName().ifPresent(n -> Panels.tip(ui, "Redo: " + n));
    ImGui.sameLine(0, ui.px(28));
    for (Camera.View v : Camera.View.values()) {
      String word = v.word().substring(0, 1).toUpperCase(Locale.ROOT) + v.word().substring(1);
      if (ui.toggle(word, looks(v))) bench.flyTo(v);
      ImGui.sameLine(0, ui.px(2));
    }
    if (ui.toggle("Fit", false)) bench.fit();
    ImGui.sameLine(0, ui.px(20));
    for (Workbench.Mode m : Workbench.Mode.values()) {
      if (ui.toggle(word(m), bench.mode() == m)) commands.mode(m);
      ImGui.sameLine(0, ui.px(2));
    }
    float end = at.width() - ui.px(16);
    ImGui.sameLine(end - ui.px(178));
    if (ui.toggle("mm kg", bench.units() == Units.METRIC)) bench.setUnits(Units.METRIC);
    ImGui.sameLine(0, ui.px(2));
    if (ui.toggle("in lb", bench.units() == Units.US)) bench.setUnits(Units.US);
    ImGui.sameLine(0, ui.px(14));
    if (ui.button("Help")) commands.openSheet(Sheets.Kind.HELP);
    Panels.end();
  }

  private static String word(Workbench.Mode m) {
    return switch (m) {
      case ARRANGE -> "Arrange";
      case BUMP -> "Bump";
      case STAGES -> "Build";
    };
  }

  private boolean looks(Camera.View v) {
    Camera c = bench.camera();
    Camera f = bench.fitted(v);
    return Math.abs(c.yawDeg() - f.yawDeg()) < 0.5 && Math.abs(c.pitchDeg() - f.pitchDeg()) < 0.5 && c.flat() == f.flat();
  }
}
