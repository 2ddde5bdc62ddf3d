package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.edit.ScanHome;
import holdfast.app.report.Quantity;
import holdfast.app.report.SeverityLook;
import holdfast.app.report.TypedNumber;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Palette;
import holdfast.model.scene.Rock;
import holdfast.model.scene.UsMeasure;
import holdfast.model.shape.RockShapes;
import holdfast.model.shape.ShapeResult;
import imgui.ImGui;
import imgui.type.ImString;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

/** Describes a rock: measurements and weight, or a scan. For a new rock or for one that is there. */
final class RockForm {
  /** Where fields begin, in units of the panels. */
  private static final int COLUMN = 130;
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;
  private final ImString name = new ImString(80);
  private final ImString length = new ImString(16);
  private final ImString width = new ImString(16);
  private final ImString height = new ImString(16);
  private final ImString weight = new ImString(16);
  private final ImString scan = new ImString(512);
  private final ImString unitMm = new ImString(16);
  private Rock.Kind kind = Rock.Kind.DRY;
  private Rock.Look look = Rock.Look.BLOCK;
  private Rock.Weighing weighing = Rock.Weighing.DRY;
  private boolean scanned;
  private boolean slimy;
  private long seed = 1;
  private String problem = "";
  /** The rock goes into the tank at once. */
  private boolean setDown;

  RockForm(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
  }

  void draw(boolean fresh, boolean existing) {
    if (fresh) fill(existing ? bench.chosenRock() : Optional.empty());
    Sheets.head(ui, existing ? "Describe the rock" : "Add a rock",
        "Measure length, width and height over the farthest points, and weigh it: the weight decides more than the shape.");
    ui.label("Name", COLUMN);
    if (fresh) ImGui.setKeyboardFocusHere();
    ui.entry("name", name, 240);
    if (fresh) ui.beginHere("name");
    ui.label("Kind", COLUMN);
    ui.row("kind");
    for (Rock.Kind k : Rock.Kind.values()) {
      if (ui.toggle(k.word(), kind == k)) {
        kind = k;
        slimy = k == Rock.Kind.LIVE;
      }
      ImGui.sameLine(0, ui.px(2));
    }
    ImGui.newLine();
    ui.row("shape");
    ui.label("Shape from", COLUMN);
    if (ui.toggle("measurements", !scanned)) scanned = false;
    ImGui.sameLine(0, ui.px(2));
    if (ui.toggle("a scan", scanned)) scanned = true;
    ui.rowEnd();
    if (scanned) scanFields();
    else sizeFields();
    ui.label("Weight", COLUMN);
    ui.entry("weight", weight, 80);
    ImGui.sameLine();
    ui.soft(bench.units().sign(Quantity.MASS) + ",");
    ImGui.sameLine();
    ui.row("weighing");
    for (Rock.Weighing w : Rock.Weighing.values()) {
      if (ui.toggle(w == Rock.Weighing.DRY ? "weighed dry" : w.word(), weighing == w)) weighing = w;
      ImGui.sameLine(0, ui.px(2));
    }
    ui.rowEnd();
    ImGui.newLine();
    ui.label("Surface", COLUMN);
    if (ui.checkInRow("overgrown, slippery", slimy)) slimy = !slimy;
    if (!problem.isEmpty()) ui.wrapped(problem, Palette.INK);
    Sheets.foot(ui);
    boolean entered = ui.entered();
    setDown = !existing && (ui.mainButton("Add and set down", 140) || entered);
    if (setDown) submit(false);
    if (!existing) ImGui.sameLine();
    if (existing ? ui.mainButton("Change it", 140) || entered : ui.button("Add to the tray")) submit(existing);
    ImGui.sameLine();
    if (ui.button("Cancel")) commands.closeSheet();
  }

  private void sizeFields() {
    ui.label("Look", COLUMN);
    ui.row("look");
    for (Rock.Look l : Rock.Look.values()) {
      if (ui.toggle(l.word(), look == l)) look = l;
      ImGui.sameLine(0, ui.px(1));
      if (l == Rock.Look.SHELF) {
        ImGui.newLine();
        ui.label("", COLUMN);
      }
    }
    ui.rowEnd();
    ImGui.newLine();
    ui.label("Size", COLUMN);
    ui.entry("length", length, 66);
    ImGui.sameLine();
    ui.soft("×");
    ImGui.sameLine();
    ui.entry("width", width, 66);
    ImGui.sameLine();
    ui.soft("×");
    ImGui.sameLine();
    ui.entry("height", height, 66);
    ImGui.sameLine();
    ui.soft(bench.units().sign(Quantity.LENGTH));
    ui.label("", COLUMN);
    if (ui.button("Another of its kind")) seed++;
    ImGui.sameLine();
    ui.small("form " + seed, Palette.INK_SOFT);
  }

  private void scanFields() {
    ui.label("File", COLUMN);
    ui.entry("scan file", scan, Browse.available() ? 280 : 380);
    if (Browse.available()) {
      ImGui.sameLine();
      if (ui.button("Browse…")) Browse.scan().ifPresent(this::scanFrom);
    }
    ui.label("", COLUMN);
    ui.small("OBJ, PLY, STL or GLB; it is copied beside the scene's file", Palette.INK_SOFT);
    ui.label("One unit is", COLUMN);
    ui.entry("unit", unitMm, 66);
    ImGui.sameLine();
    ui.soft("mm");
    ImGui.sameLine();
    ui.small("1 for a scan in millimetres, 1000 for one in metres", Palette.INK_SOFT);
  }

  private void scanFrom(Path file) {
    scanned = true;
    scan.set(file.toString());
    unitMm.set(Units.plain(ScanFiles.usualUnitMm(file.getFileName().toString())));
  }

  private void fill(Optional<Rock> rock) {
    problem = "";
    name.set(rock.map(Rock::name).orElse(""));
    kind = rock.map(Rock::kind).orElse(Rock.Kind.DRY);
    slimy = rock.map(Rock::slimy).orElse(false);
    scanned = rock.map(r -> r.form() instanceof Rock.Mesh).orElse(false);
    Rock.Measured m = rock.map(Rock::form).filter(f -> f instanceof Rock.Measured).map(f -> (Rock.Measured) f)
        .orElse(new Rock.Measured(Rock.Look.BLOCK, 160, 130, 110, 1));
    look = m.look();
    seed = m.seed();
    length.set(bench.units().typed(Quantity.LENGTH, m.lengthMm()));
    width.set(bench.units().typed(Quantity.LENGTH, m.widthMm()));
    height.set(bench.units().typed(Quantity.LENGTH, m.heightMm()));
    Rock.Mesh mesh = rock.map(Rock::form).filter(f -> f instanceof Rock.Mesh).map(f -> (Rock.Mesh) f)
        .orElse(new Rock.Mesh("", 1));
    scan.set(mesh.file());
    unitMm.set(Units.plain(mesh.unitMm()));
    Optional<Rock.Weighed> w = rock.map(Rock::mass).filter(x -> x instanceof Rock.Weighed).map(x -> (Rock.Weighed) x);
    weighing = w.map(Rock.Weighed::state).orElse(Rock.Weighing.DRY);
    weight.set(w.map(x -> bench.units().briefNumber(Quantity.MASS, x.kg())).orElse(""));
    commands.takeScan().ifPresent(this::scanFrom);
  }

  private void submit(boolean existing) {
    double mm = bench.units() == Units.US ? UsMeasure.INCH_MM : 1;
    double kg = bench.units() == Units.US ? UsMeasure.POUND_KG : 1;
    Optional<Double> l = number(length, mm);
    Optional<Double> w = number(width, mm);
    Optional<Double> h = number(height, mm);
    Optional<Double> mass = number(weight, kg);
    Optional<Double> unit = number(unitMm, 1);
    if (name.get().isBlank()) {
      problem = "Give it a name.";
    } else if (!scanned && (l.isEmpty() || w.isEmpty() || h.isEmpty())) {
      problem = "Length, width and height must be numbers above 0.";
    } else if (scanned && (scan.get().isBlank() || unit.isEmpty())) {
      problem = "Name the file, and say how many millimetres its unit is.";
    } else if (scanned && bench.filing().file().isEmpty()) {
      problem = "Save the scene first: a scan is kept beside the scene's file.";
    } else if (mass.isEmpty() && !(existing && bench.chosenRock().map(r -> r.mass() instanceof Rock.BulkDensity).orElse(false))) {
      problem = "Weigh it: the weight must be a number above 0.";
    } else {
      Rock.Form form = scanned ? new Rock.Mesh(scan.get().strip(), unit.get())
          : keptForm(existing).orElse(new Rock.Measured(look, l.orElseThrow(), w.orElseThrow(), h.orElseThrow(), seed));
      Rock.Mass m = mass.<Rock.Mass>map(v -> new Rock.Weighed(v, weighing, OptionalDouble.empty()))
          .orElseGet(() -> bench.chosenRock().orElseThrow().mass());
      give(new Rock(name.get().strip(), kind, form, m,
          bench.chosenRock().filter(r -> existing).map(Rock::sealedVolumeMl).orElse(0.0), slimy,
          bench.chosenRock().filter(r -> existing).map(Rock::removable).orElse(false),
          bench.chosenRock().filter(r -> existing).map(Rock::pricePerKg).orElse(OptionalDouble.empty())), existing);
    }
  }

  /** A rock given by points or lobes keeps its shape. */
  private Optional<Rock.Form> keptForm(boolean existing) {
    return bench.chosenRock().filter(r -> existing).map(Rock::form)
        .filter(f -> f instanceof Rock.Points || f instanceof Rock.Lobes);
  }

  private void give(Rock rock, boolean existing) {
    Path folder = bench.filing().folder();
    ShapeResult shaped = RockShapes.body(rock, bench.scene().settings(), file -> ScanFiles.load(folder, file));
    if (shaped instanceof ShapeResult.Unusable u) {
      problem = u.reason().substring(0, 1).toUpperCase(java.util.Locale.ROOT) + u.reason().substring(1) + ".";
      return;
    }
    if (rock.form() instanceof Rock.Mesh m) {
      try {
        String name = ScanHome.nameOf(Path.of(m.file()), folder);
        if (!name.equals(m.file())) {
          scan.set(name);
          submit(existing);
          return;
        }
      } catch (IOException e) {
        problem = "The scan could not be copied beside the scene's file: " + e.getMessage() + ".";
        return;
      }
    }
    long gesture = bench.newGesture();
    boolean done = bench.apply(existing ? new Edit.Describe(bench.chosen().orElseThrow(), rock) : new Edit.Add(rock), gesture);
    if (!done) {
      problem = bench.notice().map(Notice::text).orElse("");
      return;
    }
    bench.choose(Optional.of(rock.name()));
    if (setDown) commands.setDown(rock.name(), gesture);
    bench.tell(existing ? "Changed " + rock.name() : setDown ? rock.name() + " is set down. Drag it where it is to go."
        : rock.name() + " is on the tray. Press P to set it down.", SeverityLook.FINE);
    commands.closeSheet();
  }

  private static Optional<Double> number(ImString typed, double unit) {
    try {
      double v = TypedNumber.of(typed.get());
      return v > 0 ? Optional.of(v * unit) : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }
}
