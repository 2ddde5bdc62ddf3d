package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.report.SeverityLook;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Palette;
import holdfast.model.scene.Setting;
import imgui.ImGui;
import java.util.Optional;
import java.util.OptionalDouble;

/** Every figure that the judgement rests on: value, unit, and how the default is known. */
final class FiguresSheet {
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;

  FiguresSheet(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
  }

  void draw(boolean fresh) {
    Sheets.head(ui, "Figures", "What the judgement rests on. Defaults that nobody published say so: put your own in.");
    ImGui.beginChild("table", 0, ImGui.getContentRegionAvailY() - ui.px(44), false);
    String group = "";
    for (Setting s : Setting.values()) {
      String g = s.key().substring(0, s.key().indexOf('.'));
      if (!g.equals(group)) {
        ui.heading(g);
        group = g;
      }
      row(s);
    }
    ImGui.endChild();
    Sheets.foot(ui);
    if (ui.mainButton("Close", 90)) commands.closeSheet();
  }

  private void row(Setting s) {
    boolean given = bench.scene().settings().given().containsKey(s);
    Optional<String> typed = ui.field(s.key(), Units.plain(bench.scene().settings().get(s)), 84);
    typed.ifPresent(t -> change(s, t));
    ImGui.sameLine();
    ui.small(s.unit(), Palette.INK_SOFT);
    ImGui.sameLine(ui.px(196));
    ImGui.pushTextWrapPos(ImGui.getWindowWidth() - ui.px(given ? 120 : 20));
    ui.small(s.about() + " (" + s.grade().word() + ")", given ? Palette.INK : Palette.INK_SOFT);
    ImGui.popTextWrapPos();
    if (given) {
      ImGui.sameLine(ImGui.getWindowWidth() - ui.px(104));
      if (ui.button("default##" + s.key(), 82, true)) bench.apply(new Edit.Set(s, OptionalDouble.empty()));
    }
  }

  private void change(Setting s, String typed) {
    try {
      bench.apply(new Edit.Set(s, OptionalDouble.of(Double.parseDouble(typed.replace(',', '.')))));
    } catch (NumberFormatException e) {
      bench.tell("'" + typed + "' is not a number.", SeverityLook.WARN);
    }
  }
}
