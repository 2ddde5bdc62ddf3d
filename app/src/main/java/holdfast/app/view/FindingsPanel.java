package holdfast.app.view;

import holdfast.app.report.FigureText;
import holdfast.app.report.OwnFigures;
import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Palette;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import imgui.ImDrawList;
import imgui.ImGui;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The right panel: the verdict on the scene as it is now, what was found, joints, and what to show. */
final class FindingsPanel {
  /** The pages of the panel. */
  enum Page { FINDINGS, JOINTS, SHOW }

  /** Of the verdict while it is being worked out, in units. */
  private static final double JUDGING_HEIGHT = 92;

  private final Workbench bench;
  private final Ui ui;
  private final JointsPage joints;
  private final ShowPage show;
  private final RemedyButtons remedies;
  private Page page = Page.FINDINGS;
  /** The opened finding that was brought in sight. */
  private Finding inSight;

  FindingsPanel(Workbench bench, Ui ui) {
    this.bench = bench;
    this.ui = ui;
    joints = new JointsPage(bench, ui);
    show = new ShowPage(bench, ui);
    remedies = new RemedyButtons(bench, ui, joints);
  }

  JointsPage joints() {
    return joints;
  }

  void turnTo(Page other) {
    page = other;
  }

  void draw(Layout at) {
    float height = at.height() - at.top() - at.foot();
    Panels.begin("findings", at.width() - at.right(), at.top(), at.right(), height, ui, 16, 8);
    Panels.edge('l');
    verdict();
    ui.gap(2);
    ui.row("pages");
    for (Page p : Page.values()) {
      if (ui.tab(title(p), page == p)) page = p;
      ImGui.sameLine(0, ui.px(2));
    }
    ui.rowEnd();
    ImGui.newLine();
    ui.rule();
    ImGui.beginChild("page", 0, 0, false);
    switch (page) {
      case FINDINGS -> findings();
      case JOINTS -> joints.draw();
      case SHOW -> show.draw();
    }
    ImGui.endChild();
    Panels.end();
  }

  private String title(Page p) {
    String word = p.name().substring(0, 1) + p.name().substring(1).toLowerCase(Locale.ROOT);
    boolean counted = p == Page.FINDINGS && bench.report().isPresent() && bench.found().get().full();
    return counted ? word + " " + bench.findings().size() : word;
  }

  private void verdict() {
    ui.gap(4);
    float top = ImGui.getCursorPosY();
    Optional<CheckReport> report = bench.report();
    Optional<String> trouble = bench.found().flatMap(Judge.Found::trouble);
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    if (trouble.isPresent()) {
      ui.shape(SeverityLook.UNDECIDED, x + ui.px(10), y + ui.px(11), 18);
      ImGui.indent(ui.px(30));
      ui.title("Not judged");
      ui.wrapped(trouble.get(), Palette.INK_SOFT);
    } else if (report.isEmpty()) {
      nothingYet(x, y);
      ImGui.indent(ui.px(30));
      ui.title("Judging…");
      ui.wrapped("What was found before no longer counts.", Palette.INK_SOFT);
      at();
    } else if (!bench.found().get().full()) {
      soFar(report.get(), x, y);
    } else if (report.get().verdict() == CheckReport.Verdict.NOTHING) {
      nothingYet(x, y);
      ImGui.indent(ui.px(30));
      ui.title("Nothing to judge yet");
      ui.wrapped(bench.units().prose(report.get().headline()), Palette.INK_SOFT);
    } else {
      ui.shape(SeverityLook.of(report.get().verdict()), x + ui.px(10), y + ui.px(11), 18);
      ImGui.indent(ui.px(30));
      String word = report.get().verdict().word();
      ui.title(word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
      ui.wrapped(bench.units().prose(report.get().headline()), Palette.INK_SOFT);
      List<OwnFigures.Own> own = OwnFigures.of(bench.scene().settings());
      if (!own.isEmpty()) ui.smallWrapped("Rests on " + OwnFigures.count(own) + ": see Figures.", Palette.INK_SOFT);
    }
    ImGui.unindent(ui.px(30));
    // While answers come and go, what lies beneath stays where it is.
    if (!bench.judgementSettled()) ImGui.setCursorPosY(Math.max(ImGui.getCursorPosY(), top + ui.px(JUDGING_HEIGHT)));
  }

  /** What is being worked out, when that takes long. */
  private void at() {
    bench.judgement().at().ifPresent(words -> {
      ui.smallWrapped("Now: " + words, Palette.INK_SOFT);
      ui.note("judging at");
    });
  }

  /** The quick answer: a fail is one already, anything else is no verdict. */
  private void soFar(CheckReport quick, float x, float y) {
    Optional<SeverityLook> look = SoFar.look(quick);
    if (look.isPresent()) ui.shape(look.get(), x + ui.px(10), y + ui.px(11), 18);
    else nothingYet(x, y);
    ImGui.indent(ui.px(30));
    boolean held = bench.judgement().holding();
    Judge.Depth depth = bench.found().get().depth();
    String fine = SoFar.fine(depth);
    ui.title(look.map(l -> l == SeverityLook.FAIL ? "Fails" : "Undecided")
        .orElse(held ? fine.substring(0, 1).toUpperCase(Locale.ROOT) + fine.substring(1) : "Judging…"));
    ui.wrapped(SoFar.words(quick, depth, held), Palette.INK_SOFT);
    at();
  }

  /** A ring that is no severity. */
  private void nothingYet(float x, float y) {
    ImGui.getWindowDrawList().addCircle(x + ui.px(10), y + ui.px(11), ui.px(8), Palette.INK_FAINT.packed(), 24, ui.px(2));
  }

  private void findings() {
    Optional<CheckReport> report = bench.report();
    if (report.isEmpty()) return;
    if (bench.judgement().holding() && !bench.found().get().full()) {
      ui.wrapped("What is found is listed when you let the rock go.", Palette.INK_SOFT);
      return;
    }
    List<Finding> all = bench.findings();
    if (all.isEmpty() && bench.judgementSettled()) ui.wrapped("Nothing was found to be wrong.", Palette.INK_SOFT);
    for (int i = 0; i < all.size(); i++) {
      Severity s = all.get(i).severity();
      if (i == 0 || all.get(i - 1).severity() != s) group(s, all.stream().filter(f -> f.severity() == s).count());
      row(all.get(i), i);
    }
    ui.gap(6);
    ui.rule();
    for (String caution : report.get().cautions()) {
      ui.smallWrapped(bench.units().prose(caution), Palette.INK_SOFT);
    }
  }

  /** What the findings that follow have in common, and how many they are. */
  private void group(Severity s, long count) {
    ui.gap(1);
    ui.small(count + " " + switch (s) {
      case FAIL -> "not safe";
      case WARN -> "to look at before going on";
      case NOTE -> "worth knowing";
    }, Palette.INK_SOFT);
  }

  private void row(Finding f, int number) {
    boolean open = bench.opened().filter(f::equals).isPresent();
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    float w = ImGui.getContentRegionAvailX();
    float line = ImGui.getFontSize();
    String sentence = capital(FigureText.sentence(f, bench.units()));
    float indent = ui.px(32);
    List<String> lines = ui.brokenAt(sentence, w - indent - ui.px(8));
    List<String> heads = ui.strongBrokenAt(title(f), w - indent - ui.px(8));
    float h = (heads.size() + lines.size()) * line + ui.px(15);
    boolean pressed = ImGui.invisibleButton("finding " + number, w, h);
    ui.note("finding " + number);
    ui.row("findings");
    pressed |= ui.stop("finding " + number, open, Focus.Kind.PRESS);
    ui.rowEnd();
    boolean over = ImGui.isItemHovered();
    ImDrawList d = ImGui.getWindowDrawList();
    if (open || over) {
      d.addRectFilled(x, y, x + w, y + h, (open ? Palette.ACCENT_SOFT : Palette.PANEL_SUNK).packed(), ui.px(6));
    }
    ui.shape(look(f), x + ui.px(15), y + ui.px(6) + line / 2, 13);
    ImGui.setCursorScreenPos(x + indent, y + ui.px(6));
    ui.strong(String.join("\n", heads));
    ImGui.setCursorScreenPos(x + indent, y + heads.size() * line + ui.px(9));
    ui.lines(lines, Palette.INK_SOFT);
    ImGui.setCursorScreenPos(x, y + h + ui.px(2));
    if (open) details(f);
    if (open && !f.equals(inSight)) bringInSight(y);
    if (!open && f.equals(inSight)) inSight = null;
    if (pressed) bench.open(f);
  }

  /** What was opened last comes in sight to its end, or from its head on where it is longer than the page. */
  private void bringInSight(float head) {
    inSight = bench.opened().orElse(null);
    float below = ImGui.getCursorScreenPosY() - ImGui.getWindowPosY() - ImGui.getWindowHeight();
    float above = head - ImGui.getWindowPosY();
    if (below > 0) ImGui.setScrollY(ImGui.getScrollY() + Math.min(below, above));
  }

  private void details(Finding f) {
    ImGui.indent(ui.px(32));
    if (f.figure().isPresent()) {
      double figure = f.figure().getAsDouble();
      ui.wrapped(f.limit().isPresent()
          ? FigureText.against(figure, f.limit().getAsDouble(), f.unit(), f.severity(), bench.units())
          : FigureText.alone(figure, f.unit(), bench.units()), Palette.INK);
    }
    f.state().ifPresent(s -> ui.small("in the state: " + s.words(), Palette.INK_SOFT));
    if (!f.remedy().isBlank()) {
      ui.gap(1);
      ui.strong("What to do");
      ui.wrapped(bench.units().prose(f.remedy()), Palette.INK);
    }
    remedies.draw(f);
    ui.gap(6);
    ImGui.unindent(ui.px(32));
  }

  private String title(Finding f) {
    String t = f.title();
    boolean told = f.about().isEmpty()
        || f.title().contains(f.about().get(0)) && bench.scene().rocks().stream().noneMatch(r -> r.name().equals(f.about().get(0)));
    String who = told ? "" : f.about().get(0) + ": ";
    return capital(who + t);
  }

  private static String capital(String text) {
    return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private static SeverityLook look(Finding f) {
    return f.code() == Code.UNDECIDED ? SeverityLook.UNDECIDED : SeverityLook.of(f.severity());
  }
}
