package holdfast.app.view;

import imgui.ImGui;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Short questions: unsaved work found, a file changed by another, leaving without saving. */
final class AskSheets {
  private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d\u00a0MMMM\u00a0yyyy, HH:mm", Locale.ENGLISH);
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;

  AskSheets(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
  }

  void restore() {
    String when = bench.filing().found().map(f -> WHEN.format(f.when().toInstant().atZone(ZoneId.systemDefault()))).orElse("");
    Sheets.head(ui, "Unsaved work was found", "An earlier run ended before its work was saved. The copy is from " + when
        + ". The scene's own file has not been touched.");
    Sheets.foot(ui);
    if (ui.mainButton("Bring it back", 130)) commands.restore();
    ImGui.sameLine();
    if (ui.button("Throw it away")) commands.dropRescue();
  }

  void changed() {
    Sheets.head(ui, "The file was changed by somebody else", "Since you opened it, other content was written to "
        + bench.filing().file().map(Object::toString).orElse("the file") + ". Saving would write over that.");
    Sheets.foot(ui);
    if (ui.button("Write over it")) {
      commands.closeSheet();
      commands.save(true);
    }
    ImGui.sameLine();
    if (ui.button("Save under another name")) commands.openSheet(Sheets.Kind.SCENES);
    ImGui.sameLine();
    if (ui.mainButton("Leave it", 0)) commands.closeSheet();
  }

  void quit() {
    Sheets.head(ui, "Leave without saving?", bench.filing().file().isPresent()
        ? "There are changes that the file does not have." : "This scene is in no file yet.");
    Sheets.foot(ui);
    if (ui.mainButton("Save and leave", 0)) {
      commands.closeSheet();
      commands.save();
      if (!bench.document().unsaved()) commands.leaveAnyway();
    }
    ImGui.sameLine();
    if (ui.button("Leave without saving")) {
      commands.dropRescue();
      commands.leaveAnyway();
    }
    ImGui.sameLine();
    if (ui.button("Stay")) commands.stay();
  }
}
