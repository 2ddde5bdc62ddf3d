package holdfast.app.view;

import holdfast.app.view.draw.Palette;
import imgui.ImGui;
import java.util.Optional;

/** The sheets that lie over the window, one at a time. */
final class Sheets {
  /** Which sheet. */
  enum Kind { FIRST, SCENES, GIVE_OUT, ADD_ROCK, DESCRIBE, TANK, SETTINGS, HELP, RESTORE, CHANGED, QUIT }

  /** A sheet's content; {@code fresh} is true on the first frame after it was opened. */
  interface Content {
    void draw(boolean fresh);
  }

  private final Ui ui;
  private final Commands commands;
  private final ScenesSheet scenes;
  private final GiveOutSheet giveOut;
  private final RockForm rock;
  private final TankSheet tank;
  private final FiguresSheet figures;
  private final HelpSheet help;
  private final AskSheets ask;
  private Optional<Kind> last = Optional.empty();

  Sheets(Workbench bench, Ui ui, Commands commands, Hints hints, ScenePainter painter) {
    this.ui = ui;
    this.commands = commands;
    scenes = new ScenesSheet(bench, ui, commands);
    giveOut = new GiveOutSheet(bench, ui, commands, painter);
    rock = new RockForm(bench, ui, commands);
    tank = new TankSheet(bench, ui, commands);
    figures = new FiguresSheet(bench, ui, commands);
    help = new HelpSheet(ui, commands, hints);
    ask = new AskSheets(bench, ui, commands);
  }

  void draw(Layout at) {
    Optional<Kind> now = commands.sheet();
    boolean fresh = !now.equals(last);
    last = now;
    if (now.isEmpty()) return;
    switch (now.get()) {
      case FIRST -> sheet(at, 720, 540, fresh, scenes::first);
      case SCENES -> sheet(at, 620, 500, fresh, scenes::files);
      case GIVE_OUT -> sheet(at, 660, 470, fresh, giveOut::draw);
      case ADD_ROCK -> sheet(at, 560, 520, fresh, f -> rock.draw(f, false));
      case DESCRIBE -> sheet(at, 560, 520, fresh, f -> rock.draw(f, true));
      case TANK -> sheet(at, 560, 560, fresh, tank::draw);
      case SETTINGS -> sheet(at, 760, 600, fresh, figures::draw);
      case HELP -> sheet(at, 760, 700, fresh, help::draw);
      case RESTORE -> sheet(at, 480, 190, fresh, f -> ask.restore());
      case CHANGED -> sheet(at, 520, 210, fresh, f -> ask.changed());
      case QUIT -> sheet(at, 480, 170, fresh, f -> ask.quit());
    }
  }

  private void sheet(Layout at, double width, double height, boolean fresh, Content content) {
    if (!Panels.beginSheet("sheet", at, ui, width, height)) return;
    content.draw(fresh);
    if (commands.sheet().isEmpty()) ImGui.closeCurrentPopup();
    Panels.endSheet();
  }

  /** The head of a sheet: its title and one line of explanation. */
  static void head(Ui ui, String title, String about) {
    ui.title(title);
    ui.wrapped(about, Palette.INK_SOFT);
    ui.gap(4);
  }

  /** Puts what follows at the foot of the sheet. */
  static void foot(Ui ui) {
    float y = ImGui.getWindowHeight() - ui.px(22) - ImGui.getFrameHeight();
    if (ImGui.getCursorPosY() < y) ImGui.setCursorPosY(y);
  }
}
