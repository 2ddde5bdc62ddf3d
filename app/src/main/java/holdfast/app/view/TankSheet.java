package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.edit.Outcome;
import holdfast.app.report.Quantity;
import holdfast.app.report.TypedNumber;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Palette;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import holdfast.model.scene.UsMeasure;
import imgui.ImGui;
import imgui.type.ImString;
import java.util.LinkedHashMap;
import java.util.Map;

/** Lengths and glass of the tank, its floor, sand and water. */
final class TankSheet {
  /** Where fields begin, in units of the panels. */
  private static final int COLUMN = 150;
  private static final String[] LENGTHS =
      {"length", "width", "height", "side glass", "bottom glass", "water level", "sand", "cell"};
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;
  private final Map<String, ImString> typed = new LinkedHashMap<>();
  private final ImString title = new ImString(80);
  private Tank.BottomSupport support = Tank.BottomSupport.UNKNOWN;
  private Floor.Kind floor = Floor.Kind.GRID;
  private boolean tempered;
  private String problem = "";

  TankSheet(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
    for (String l : LENGTHS) typed.put(l, new ImString(16));
  }

  void draw(boolean fresh) {
    if (fresh) fill();
    Sheets.head(ui, "The tank",
        "All lengths inside the glass. Measure the panes: what the bottom bears depends on their thickness.");
    ui.label("Name of the scene", COLUMN);
    ui.entry("title", title, 260);
    ui.label("Inside", COLUMN);
    length("length", "long");
    ImGui.sameLine();
    length("width", "deep");
    ImGui.sameLine();
    length("height", "high");
    ui.label("Glass", COLUMN);
    length("side glass", "sides");
    ImGui.sameLine();
    length("bottom glass", "bottom");
    ui.label("", COLUMN);
    if (ui.checkInRow("the bottom pane is tempered", tempered)) tempered = !tempered;
    ui.label("Bottom rests on", COLUMN);
    ui.row("support");
    for (Tank.BottomSupport s : Tank.BottomSupport.values()) {
      if (ui.toggle(words(s), support == s)) support = s;
      ImGui.sameLine(0, ui.px(2));
    }
    ui.rowEnd();
    ImGui.newLine();
    ui.label("Water", COLUMN);
    length("water level", "above the bottom");
    ui.label("Sand", COLUMN);
    length("sand", "deep");
    ui.label("Floor", COLUMN);
    ui.row("floor");
    for (Floor.Kind k : Floor.Kind.values()) {
      if (ui.toggle(k.word(), floor == k)) floor = k;
      ImGui.sameLine(0, ui.px(2));
    }
    ui.rowEnd();
    ImGui.newLine();
    ui.label("Grid cell", COLUMN);
    length("cell", "wide");
    if (!problem.isEmpty()) ui.wrapped(problem, Palette.INK);
    Sheets.foot(ui);
    if (ui.mainButton("Change the tank", 150) || ui.entered()) submit();
    ImGui.sameLine();
    if (ui.button("Cancel")) commands.closeSheet();
  }

  private static String words(Tank.BottomSupport s) {
    return switch (s) {
      case EDGES -> "its edges";
      case FULL -> "foam, all over";
      case UNKNOWN -> "not known";
    };
  }

  private void length(String id, String after) {
    ui.entry(id, typed.get(id), 62);
    ImGui.sameLine();
    ui.small(bench.units().sign(Quantity.LENGTH) + " " + after, Palette.INK_SOFT);
  }

  private void fill() {
    problem = "";
    Scene s = bench.scene();
    Tank t = s.tank();
    title.set(s.name());
    double[] values = {t.lengthMm(), t.widthMm(), t.heightMm(), t.sideGlassMm(), t.bottomGlassMm(), s.water().levelMm(),
        s.sand().depthMm(), s.floor().cellMm()};
    for (int i = 0; i < LENGTHS.length; i++) typed.get(LENGTHS[i]).set(bench.units().typed(Quantity.LENGTH, values[i]));
    support = t.bottomSupport();
    floor = s.floor().kind();
    tempered = t.temperedBottom();
  }

  private void submit() {
    double unit = bench.units() == Units.US ? UsMeasure.INCH_MM : 1;
    double[] v = new double[LENGTHS.length];
    for (int i = 0; i < v.length; i++) {
      try {
        v[i] = TypedNumber.of(typed.get(LENGTHS[i]).get()) * unit;
      } catch (NumberFormatException e) {
        problem = "'" + typed.get(LENGTHS[i]).get() + "' is not a number.";
        return;
      }
    }
    Scene s = bench.scene();
    Tank t = s.tank();
    Tank tank = new Tank(v[0], v[1], v[2], v[3], v[4], support, tempered, t.drilledBottom(), t.openings(), t.viewedFrom(),
        t.mayTouch());
    Floor f = new Floor(floor, v[7], s.floor().wallMm(), s.floor().thicknessMm(), s.floor().marginMm(), s.floor().extent());
    Edit change = new Edit.Together("change the tank", java.util.List.of(
        new Edit.Furnish(tank, f, new Scene.Sand(v[6], s.sand().bulkKgPerL()),
            new Scene.Water(v[5], s.water().salinity(), s.water().temperatureC())),
        new Edit.Entitle(title.get().strip())));
    Outcome outcome = bench.document().apply(change);
    problem = outcome.match(done -> "", why -> why);
    if (problem.isEmpty()) {
      commands.closeSheet();
      bench.sight().fit();
    }
  }
}
