package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.report.SettingUnits;
import holdfast.app.report.SeverityLook;
import holdfast.app.report.TypedNumber;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Palette;
import holdfast.model.scene.Grade;
import holdfast.model.scene.Setting;
import imgui.ImGui;
import java.util.Locale;
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
        ui.heading(heading(g));
        group = g;
      }
      row(s);
    }
    ImGui.endChild();
    Sheets.foot(ui);
    if (ui.mainButton("Close", 90)) commands.closeSheet();
  }

  private static String heading(String group) {
    return switch (group) {
      case "push" -> "Pushes and shaking";
      case "contact" -> "Contacts";
      case "weight" -> "Weights";
      case "gap" -> "Room";
      case "bond" -> "Bonds and rock";
      case "glass" -> "Glass and what is beneath";
      case "handling" -> "Handling and cement";
      case "vary" -> "Variations";
      case "price" -> "Prices";
      default -> group.substring(0, 1).toUpperCase(Locale.ROOT) + group.substring(1);
    };
  }

  private void row(Setting s) {
    Units units = bench.units();
    boolean given = bench.scene().settings().given().containsKey(s);
    Optional<String> typed = ui.field(s.key(), SettingUnits.shown(s, bench.scene().settings().get(s), units), 84);
    typed.ifPresent(t -> change(s, t));
    ImGui.sameLine();
    ui.small(SettingUnits.sign(s, units), Palette.INK_SOFT);
    ImGui.sameLine(ui.px(208));
    ImGui.pushTextWrapPos(ImGui.getWindowWidth() - ui.px(given ? 120 : 20));
    ui.small(units.prose(s.about()) + " (" + known(s) + ")", given ? Palette.INK : Palette.INK_SOFT);
    ImGui.popTextWrapPos();
    if (given) {
      ImGui.sameLine(ImGui.getWindowWidth() - ui.px(104));
      if (ui.button("default##" + s.key(), 82, true)) bench.apply(new Edit.Set(s, OptionalDouble.empty()));
    }
  }

  /** How the default is known. */
  private static String known(Setting s) {
    return s.grade() == Grade.MEMORY ? "from memory: check it" : s.grade().word();
  }

  private void change(Setting s, String typed) {
    Units units = bench.units();
    try {
      double value = SettingUnits.metric(s, TypedNumber.of(typed), units);
      if (s.admits(value)) bench.apply(new Edit.Set(s, OptionalDouble.of(value)));
      else bench.tell("Must be " + (s.whole() ? "a whole number " : "") + "from "
          + SettingUnits.shown(s, s.least(), units) + " to " + SettingUnits.shown(s, s.most(), units) + " "
          + SettingUnits.sign(s, units) + ".", SeverityLook.WARN);
    } catch (NumberFormatException e) {
      bench.tell("'" + typed + "' is not a number.", SeverityLook.WARN);
    }
  }
}
