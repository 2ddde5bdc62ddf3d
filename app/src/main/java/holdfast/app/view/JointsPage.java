package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.report.JointNumbers;
import holdfast.app.report.JointNumbers.Pair;
import holdfast.app.report.Quantity;
import holdfast.app.report.SeverityLook;
import holdfast.app.report.TypedNumber;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.engine.bonding.JointSearch;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Severity;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.UsMeasure;
import holdfast.model.shape.RockBody;
import imgui.ImDrawList;
import imgui.ImGui;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The joints of the heap, and what fixes the one that is open. */
final class JointsPage {
  private static final double ROD_MM = 8;
  private static final double ROD_DEPTH_MM = 30;
  private final Workbench bench;
  private final Ui ui;
  private Optional<Pair> open = Optional.empty();
  private int openNumber;

  JointsPage(Workbench bench, Ui ui) {
    this.bench = bench;
    this.ui = ui;
  }

  Optional<Pair> open() {
    return open;
  }

  /** Pairs that a finding wants fixed; notes under the same code tell of heaps that no joint mends. */
  List<Pair> wanted() {
    return bench.findings().stream()
        .filter(f -> f.code() == Code.NEEDS_BOND && f.severity() == Severity.FAIL && f.about().size() == 2)
        .map(f -> new Pair(f.about().get(0), f.about().get(1))).toList();
  }

  void open(String a, String b) {
    open = Optional.of(new Pair(a, b));
  }

  void draw() {
    Optional<CheckReport> report = bench.report();
    if (report.isEmpty()) return;
    JointNumbers numbers = JointNumbers.of(bench.scene(),
        report.get().joints().stream().map(j -> new Pair(j.a(), j.b())).toList());
    if (numbers.pairs().isEmpty()) ui.wrapped("No two rocks bear on each other.", Palette.INK_SOFT);
    if (numbers.fixed() > 0) ui.small("Fixed: the numbers of the build sheet", Palette.INK_SOFT);
    for (int i = 0; i < numbers.pairs().size(); i++) {
      if (i == numbers.fixed() && i > 0) ui.small("Not fixed", Palette.INK_SOFT);
      Pair p = numbers.pairs().get(i);
      row(p, report.get().joints().stream().filter(j -> p.is(j.a(), j.b())).findFirst(), i + 1);
    }
  }

  private void row(Pair j, Optional<CheckReport.JointLine> found, int number) {
    boolean on = open.filter(p -> p.is(j.a(), j.b())).isPresent();
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    float w = ImGui.getContentRegionAvailX();
    float line = ImGui.getFontSize();
    float h = 2 * line + ui.px(15);
    boolean pressed = ImGui.invisibleButton("joint " + number, w, h);
    ui.note("joint " + number);
    ui.row("joints");
    pressed |= ui.stop("joint " + number, on, Focus.Kind.PRESS);
    ui.rowEnd();
    ImDrawList d = ImGui.getWindowDrawList();
    if (on || ImGui.isItemHovered()) {
      d.addRectFilled(x, y, x + w, y + h, (on ? Palette.ACCENT_SOFT : Palette.PANEL_SUNK).packed(), ui.px(6));
    }
    d.addText(x + ui.px(9), y + ui.px(6), Palette.INK_SOFT.packed(), Integer.toString(number));
    ImGui.setCursorScreenPos(x + ui.px(30), y + ui.px(6));
    ui.strong(j.a() + " and " + j.b());
    ImGui.setCursorScreenPos(x + ui.px(30), y + line + ui.px(9));
    ui.text(found.map(this::words).orElse("fixed, but the rocks do not touch"), Palette.INK_SOFT);
    ImGui.setCursorScreenPos(x, y + h + ui.px(2));
    // A joint that is fixed goes to the fixed ones: it stays in sight.
    if (on && number != openNumber) ImGui.setScrollHereY(0.5f);
    if (on) openNumber = number;
    if (on) choices(j);
    if (pressed) open = on ? Optional.empty() : Optional.of(j);
  }

  private String words(CheckReport.JointLine j) {
    String area = j.areaMm2() >= 0.5 ? Scale.area(j.areaMm2(), bench.units()) : "on a point or an edge";
    return j.bond() == JointSpec.Bond.NONE ? "not fixed, " + area
        : j.bond().word() + ", " + Scale.number(100 * j.use(), 0) + " % of its strength used";
  }

  private void choices(Pair j) {
    ImGui.indent(ui.px(30));
    JointSpec now = bench.scene().joint(j.a(), j.b()).orElse(JointSpec.paste(j.a(), j.b(), JointSpec.Bond.NONE, 0));
    ui.row("bonds");
    for (JointSpec.Bond b : JointSpec.Bond.values()) {
      if (ui.toggle(b.word(), now.bond() == b)) bench.apply(new Edit.Fix(spec(j, b).madeIn(now.madeIn())));
      ImGui.sameLine(0, ui.px(2));
    }
    ui.rowEnd();
    ImGui.newLine();
    if (now.bond() != JointSpec.Bond.NONE && now.bond() != JointSpec.Bond.ROD) amount(j, now);
    if (now.bond() == JointSpec.Bond.ROD) {
      ui.small("rod " + Scale.length(now.rodDiameterMm(), bench.units()) + " thick, "
          + Scale.length(now.rodDepthMm(), bench.units()) + " deep in each rock", Palette.INK_SOFT);
      if (ui.check("glued in", now.rodGlued())) {
        bench.apply(new Edit.Fix(new JointSpec(now.a(), now.b(), now.bond(), 0, now.rodDiameterMm(), now.rodDepthMm(),
            !now.rodGlued(), now.madeIn())));
      }
    }
    if (now.bonded() && ui.check("made in the tank, not on the bench", now.madeIn() == JointSpec.MadeIn.TANK)) {
      bench.apply(new Edit.Fix(now.madeIn(
          now.madeIn() == JointSpec.MadeIn.TANK ? JointSpec.MadeIn.BENCH : JointSpec.MadeIn.TANK)));
    }
    ui.gap(6);
    ImGui.unindent(ui.px(30));
  }

  private void amount(Pair j, JointSpec now) {
    Optional<String> typed = ui.field("amount of paste", bench.units().briefNumber(Quantity.SMALL_VOLUME, now.amountMl()), 64);
    ImGui.sameLine();
    ui.soft(bench.units().sign(Quantity.SMALL_VOLUME));
    if (typed.isEmpty()) return;
    try {
      double v = TypedNumber.of(typed.get());
      double ml = bench.units() == Units.US ? v * UsMeasure.FLUID_OUNCE_ML : v;
      if (ml > 0) bench.apply(new Edit.Fix(JointSpec.paste(j.a(), j.b(), now.bond(), ml).madeIn(now.madeIn())));
    } catch (NumberFormatException e) {
      bench.tell("'" + typed.get() + "' is not a number.", SeverityLook.WARN);
    }
  }

  private JointSpec spec(Pair j, JointSpec.Bond bond) {
    return bond == JointSpec.Bond.ROD
        ? new JointSpec(j.a(), j.b(), bond, 0, ROD_MM, ROD_DEPTH_MM, true)
        : JointSpec.paste(j.a(), j.b(), bond, bond == JointSpec.Bond.NONE ? 0 : usualMl(j));
  }

  /** As much as the search for joints reckons with: by the smaller of the two rocks. */
  private double usualMl(Pair j) {
    return JointSearch.usualMl(Stream.of(j.a(), j.b()).flatMap(n -> bench.stones().body(n).stream())
        .mapToDouble(RockBody::dryMassKg).min().orElse(Double.POSITIVE_INFINITY));
  }

  /** Fixes with mortar what the findings want fixed; as one step. */
  void fixWanted() {
    List<Pair> wanted = wanted();
    List<Edit> fixes = wanted.stream().<Edit>map(j -> new Edit.Fix(spec(j, JointSpec.Bond.MORTAR))).toList();
    boolean one = wanted.size() == 1;
    String name = one ? fixes.get(0).name() : "fix " + wanted.size() + " joints with mortar";
    if (!wanted.isEmpty() && bench.apply(new Edit.Together(name, fixes))) {
      bench.tell((one ? "One joint is" : wanted.size() + " joints are") + " in mortar now. The page Joints shows them.",
          SeverityLook.FINE);
    }
  }
}
