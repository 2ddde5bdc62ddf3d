package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import imgui.ImDrawList;
import imgui.ImGui;
import java.util.List;
import java.util.Optional;

/** The left panel: rocks in the tank, rocks on the tray, and the sheet of the chosen one. */
final class RocksPanel {
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;
  private final RockSheet sheet;

  RocksPanel(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
    sheet = new RockSheet(bench, ui, commands);
  }

  void draw(Layout at) {
    float height = at.height() - at.top() - at.foot();
    Panels.begin("rocks", 0, at.top(), at.left(), height, ui, 16, 8);
    Panels.edge('r');
    boolean one = bench.chosenRock().isPresent();
    List<Placement> placed = bench.scene().placements();
    List<Rock> tray = bench.scene().rocks().stream().filter(r -> bench.scene().placement(r.name()).isEmpty()).toList();
    // The buttons stay in sight however long the lists are.
    buttons();
    float list = one ? height - ui.px(sheet.height()) : height - ui.px(8);
    ImGui.beginChild("lists", 0, list - ui.px(14) - ImGui.getCursorPosY() + ui.px(8), false);
    ui.heading("In the tank");
    count(placed.size());
    String first = tray.isEmpty() ? "Nothing yet. Add a rock first." : "Nothing yet. Set down a rock from the tray below.";
    if (placed.isEmpty()) ui.wrapped(first, Palette.INK_SOFT);
    for (Placement p : placed) bench.scene().rock(p.rock()).ifPresent(r -> row(r, true));
    ui.heading("On the tray");
    count(tray.size());
    for (Rock r : tray) row(r, false);
    ImGui.endChild();
    if (one) sheet.draw();
    Panels.end();
  }

  private void buttons() {
    ui.gap(2);
    // In an empty scene this is what the moment is about.
    boolean add = bench.scene().rocks().isEmpty() ? ui.mainButton("Add a rock…", 0) : ui.button("Add a rock…", 0, true);
    if (add) commands.openSheet(Sheets.Kind.ADD_ROCK);
    ImGui.sameLine();
    if (ui.button("Tank…", 0, true)) commands.openSheet(Sheets.Kind.TANK);
    ImGui.sameLine();
    if (ui.button("Figures…", 0, true)) commands.openSheet(Sheets.Kind.SETTINGS);
  }

  private void count(int n) {
    ImGui.sameLine();
    ui.text(Integer.toString(n), Palette.INK_FAINT);
  }

  private void row(Rock r, boolean placed) {
    boolean on = bench.chosen().filter(r.name()::equals).isPresent();
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    float w = ImGui.getContentRegionAvailX();
    float h = ui.px(27);
    boolean pressed = ImGui.invisibleButton("row " + r.name(), w, h);
    boolean over = ImGui.isItemHovered();
    ui.note((placed ? "" : "tray ") + r.name());
    ui.row(placed ? "in the tank" : "on the tray");
    boolean walkedTo = ui.stop((placed ? "" : "tray ") + r.name(), on, Focus.Kind.CHOICE);
    ui.rowEnd();
    ImDrawList d = ImGui.getWindowDrawList();
    if (on || over || bench.hovered().filter(r.name()::equals).isPresent()) {
      d.addRectFilled(x, y, x + w, y + h, (on ? Palette.ACCENT_SOFT : Palette.PANEL_SUNK).packed(), ui.px(5));
    }
    kindMark(d, r.kind(), x + ui.px(13), y + h / 2);
    float text = y + (h - ImGui.getFontSize()) / 2;
    String weight = bench.stones().body(r.name()).map(b -> Scale.mass(b.dryMassKg(), bench.units())).orElse("no shape");
    float right = ImGui.calcTextSize(weight).x + ui.px(8);
    String name = ui.shortened(r.name(), w - ui.px(28 + 10) - right);
    d.addText(x + ui.px(28), text, Palette.INK.packed(), name);
    d.addText(x + w - right, text, Palette.INK_SOFT.packed(), weight);
    if (!placed) Panels.tip(ui, "Double-click, or press P, to set it down.");
    else if (!name.equals(r.name())) Panels.tip(ui, r.name());
    if (pressed || walkedTo) {
      bench.choose(Optional.of(r.name()));
      if (!placed && pressed && ImGui.isMouseDoubleClicked(0)) commands.setDown(r.name());
    }
    if (!placed && over && ImGui.isMouseDoubleClicked(0)) commands.setDown(r.name());
  }

  /** Kinds by shape as well as tone: a plain disc is dry, a dotted one living, a square cast. */
  private void kindMark(ImDrawList d, Rock.Kind kind, float x, float y) {
    int c = Palette.stone(kind).toward(Palette.INK, 0.12).packed();
    switch (kind) {
      case DRY -> d.addCircleFilled(x, y, ui.px(6), c, 20);
      case LIVE -> {
        d.addCircleFilled(x, y, ui.px(6), c, 20);
        d.addCircleFilled(x - ui.px(2), y - ui.px(1.5), ui.px(1.4), Palette.PANEL.packed(), 8);
        d.addCircleFilled(x + ui.px(2.4), y + ui.px(1.6), ui.px(1.4), Palette.PANEL.packed(), 8);
      }
      case CAST -> d.addRectFilled(x - ui.px(5.5), y - ui.px(5.5), x + ui.px(5.5), y + ui.px(5.5), c, ui.px(1));
    }
  }
}
