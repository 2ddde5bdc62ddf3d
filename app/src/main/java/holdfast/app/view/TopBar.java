package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Palette;
import imgui.ImGui;
import java.util.Locale;

/** The strip along the top: the scene and its file, what can be undone, standard views, units, help. */
final class TopBar {
  /** A window narrower than this, in units, has no room for all words. */
  private static final double ROOMY = 1230;

  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;

  TopBar(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
  }

  void draw(Layout at) {
    boolean narrow = at.width() < ui.px(ROOMY);
    float title = ui.px(narrow ? 160 : 252);
    Panels.begin("top", 0, 0, at.width(), at.top(), ui, 16, 10);
    Panels.edge('b');
    ImGui.alignTextToFramePadding();
    String state = bench.document().unsaved() ? "not saved" : bench.filing().file().isPresent() ? "saved" : "";
    String name = bench.scene().name().isBlank() ? "untitled" : bench.scene().name();
    float room = title - ui.px(16 + 14) - (state.isEmpty() ? 0 : ImGui.calcTextSize(state).x);
    String shown = ui.shortened(name, room);
    ui.title(shown);
    if (!shown.equals(name)) Panels.tip(ui, name);
    ImGui.sameLine();
    ImGui.alignTextToFramePadding();
    ui.small(state, Palette.INK_SOFT);
    ImGui.sameLine(title);
    if (ui.button("Scenes")) commands.openSheet(Sheets.Kind.SCENES);
    Panels.tip(ui, "Opens a scene, saves it elsewhere, begins a new tank: Ctrl O.");
    ImGui.sameLine();
    if (ui.button("Save")) commands.save();
    Panels.tip(ui, "Saves the scene in its file: Ctrl S.");
    ImGui.sameLine();
    if (ui.button("Give out")) commands.openSheet(Sheets.Kind.GIVE_OUT);
    Panels.tip(ui, "Writes a picture or the build sheet: Ctrl E.");
    ImGui.sameLine(0, ui.px(narrow ? 8 : 20));
    if (ui.button("Undo", 0, bench.document().undoName().isPresent())) bench.undo();
    bench.document().undoName().ifPresent(n -> Panels.tip(ui, "Undo: " + n));
    ImGui.sameLine();
    if (ui.button("Redo", 0, bench.document().redoName().isPresent())) bench.redo();
    bench.document().redoName().ifPresent(n -> Panels.tip(ui, "Redo: " + n));
    ImGui.sameLine(0, ui.px(narrow ? 8 : 28));
    ui.row("views");
    for (Camera.View v : Camera.View.values()) {
      String word = v.word().substring(0, 1).toUpperCase(Locale.ROOT) + v.word().substring(1);
      if (ui.toggle(word, looks(v))) bench.sight().flyTo(v);
      Panels.tip(ui, "Key " + (v.ordinal() + 1));
      ImGui.sameLine(0, ui.px(2));
    }
    if (ui.toggle("Fit", false)) bench.sight().fit();
    Panels.tip(ui, "Everything in sight: key F.");
    ImGui.sameLine(0, ui.px(narrow ? 8 : 20));
    ui.row("modes");
    for (Workbench.Mode m : Workbench.Mode.values()) {
      if (ui.toggle(word(m), bench.mode() == m)) commands.mode(m);
      Panels.tip(ui, about(m));
      ImGui.sameLine(0, ui.px(2));
    }
    ui.rowEnd();
    float end = at.width() - ui.px(16);
    ImGui.sameLine(end - ui.px(narrow ? 112 : 178));
    units(narrow);
    ImGui.sameLine(0, ui.px(narrow ? 6 : 14));
    if (ui.button("Help")) commands.openSheet(Sheets.Kind.HELP);
    Panels.end();
  }

  /** Both choices, or where there is no room the one that is in force, which a press changes. */
  private void units(boolean narrow) {
    boolean us = bench.units() == Units.US;
    if (narrow) {
      if (ui.toggle(us ? "in lb" : "mm kg", true)) bench.setUnits(us ? Units.METRIC : Units.US);
      Panels.tip(ui, us ? "Changes to millimetres and kilograms." : "Changes to inches and pounds.");
      return;
    }
    ui.row("units");
    if (ui.toggle("mm kg", !us)) bench.setUnits(Units.METRIC);
    ImGui.sameLine(0, ui.px(2));
    if (ui.toggle("in lb", us)) bench.setUnits(Units.US);
    ui.rowEnd();
  }

  private static String about(Workbench.Mode m) {
    return switch (m) {
      case ARRANGE -> "Choose, drag, turn and lift rocks.";
      case BUMP -> "Pull an arrow from a rock and see what a knock does: key B.";
      case STAGES -> "Goes through the stages of building: key G.";
    };
  }

  private static String word(Workbench.Mode m) {
    return switch (m) {
      case ARRANGE -> "Arrange";
      case BUMP -> "Bump";
      case STAGES -> "Build";
    };
  }

  private boolean looks(Camera.View v) {
    Camera c = bench.sight().camera();
    Camera f = bench.sight().fitted(v);
    return Math.abs(c.yawDeg() - f.yawDeg()) < 0.5 && Math.abs(c.pitchDeg() - f.pitchDeg()) < 0.5 && c.flat() == f.flat();
  }
}
