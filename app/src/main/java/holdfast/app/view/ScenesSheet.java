package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Scale;
import holdfast.model.io.ReadResult;
import holdfast.model.io.SceneReader;
import holdfast.model.io.TankSize;
import holdfast.model.io.TankSizes;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import imgui.ImGui;
import imgui.type.ImString;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Where scenes come from and go to: a new tank, a worked example, recent scenes, files. */
final class ScenesSheet {
  private static final double BELOW_RIM_MM = 25;
  private static final String EXAMPLE = "/holdfast/app/view/cube.json";
  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;
  private final ImString path = new ImString(512);
  private List<Path> nearby = List.of();
  /** The file that is there already, about which was asked. */
  private Optional<Path> asked = Optional.empty();

  ScenesSheet(Workbench bench, Ui ui, Commands commands) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
  }

  // -- first start --------------------------------------------------------------------------------------------------

  void first(boolean fresh) {
    Sheets.head(ui, "Which tank is it for?",
        "Pick a common size, or the nearest: every length can be changed later. Sizes are outside the glass; "
            + "the glass is a guess until you measure yours.");
    float half = (ImGui.getContentRegionAvailX() - ui.px(24)) / 2;
    float listHeight = ImGui.getContentRegionAvailY() - ui.px(4);
    ImGui.beginChild("sizes", half + ui.px(60), listHeight, false);
    for (TankSize s : sizes()) size(s);
    ImGui.endChild();
    ImGui.sameLine(0, ui.px(24));
    ImGui.beginChild("others", 0, listHeight, false);
    ui.strong("Or look at a worked example");
    ui.wrapped("Rocks in place and joints fixed: see what is found, mend it, undo what you like.", Palette.INK_SOFT);
    if (ui.mainButton("Open the example", 150)) example();
    recent();
    ui.gap(10);
    if (ui.button("Open a file…")) commands.openSheet(Sheets.Kind.SCENES);
    ImGui.endChild();
  }

  private void size(TankSize s) {
    float x = ImGui.getCursorScreenPosX();
    float y = ImGui.getCursorScreenPosY();
    float w = ImGui.getContentRegionAvailX() - ui.px(8);
    float h = ui.px(29);
    boolean pressed = ImGui.invisibleButton("size " + s.name(), w, h);
    ui.note("size " + s.name());
    boolean over = ImGui.isItemHovered();
    ui.row("sizes");
    pressed |= ui.stop("size " + s.name(), false, Focus.Kind.PRESS);
    ui.rowEnd();
    if (over) {
      ImGui.getWindowDrawList().addRectFilled(x, y, x + w, y + h, Palette.ACCENT_SOFT.packed(), ui.px(5));
    }
    float text = y + (h - ImGui.getFontSize()) / 2;
    ImGui.getWindowDrawList().addText(x + ui.px(10), text, Palette.INK.packed(), s.name().replace("x", " × "));
    String litres = bench.units().brief(holdfast.app.report.Quantity.VOLUME, Math.rint(s.litres()));
    ImGui.getWindowDrawList().addText(x + ui.px(168), text, Palette.INK_SOFT.packed(), litres);
    String glass = "glass " + Scale.length(s.glassMm(), bench.units());
    ImGui.getWindowDrawList().addText(x + ui.px(248), text, Palette.INK_FAINT.toward(Palette.INK_SOFT, 0.6).packed(), glass);
    if (pressed) commands.startNew(empty(s));
  }

  /** The common sizes, those in the chosen units first. */
  private List<TankSize> sizes() {
    List<TankSize> all = TankSizes.all();
    if (bench.units() == Units.METRIC) return all;
    return Stream.concat(all.stream().filter(t -> t.name().endsWith("in")), all.stream().filter(t -> !t.name().endsWith("in")))
        .toList();
  }

  static Scene empty(TankSize s) {
    Tank t = new Tank(s.lengthMm(), s.widthMm(), s.heightMm(), s.glassMm(), s.glassMm(), s.support(), false, false,
        List.of(), List.of(Side.FRONT), List.of());
    return new Scene("new tank", t, Floor.DEFAULT, Scene.Sand.DEFAULT, new Scene.Water(s.heightMm() - BELOW_RIM_MM, 35, 25),
        List.of(), List.of(), List.of(), List.of(), List.of(), Settings.DEFAULT);
  }

  /** The worked example that comes with the program: the cube of the shipped scenes, which passes its check. */
  static Optional<Scene> exampleScene() {
    try (InputStream in = ScenesSheet.class.getResourceAsStream(EXAMPLE)) {
      if (in == null) return Optional.empty();
      ReadResult<Scene> r = SceneReader.read(new String(in.readAllBytes(), StandardCharsets.UTF_8), "example");
      return r.match(Optional::of, refused -> Optional.empty());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private void example() {
    exampleScene().ifPresentOrElse(commands::startNew, () -> bench.tell("The example cannot be read.", SeverityLook.WARN));
  }

  private void recent() {
    List<Path> recent = bench.filing().recent();
    if (recent.isEmpty()) return;
    ui.gap(8);
    ui.strong("Lately open");
    for (Path p : recent) {
      if (ui.link(p.getFileName().toString(), "recent " + p.getFileName())) commands.open(p);
      Panels.tip(ui, p.toString());
    }
  }

  // -- files --------------------------------------------------------------------------------------------------------

  void files(boolean fresh) {
    if (fresh) {
      asked = Optional.empty();
      path.set(bench.filing().file().map(Path::toString)
          .orElse(Path.of("").toAbsolutePath().resolve(plainName(bench.scene().name()) + ".json").toString()));
      nearby = jsonIn(bench.filing().folder());
    }
    Sheets.head(ui, "Scenes", "A scene is one file that ends in .json.");
    ui.strong("File");
    ui.entry("scene file", path, 440);
    if (Browse.available()) {
      ImGui.sameLine();
      if (ui.button("Browse…")) Browse.open().ifPresent(p -> path.set(p.toString()));
    }
    Path typed = typed();
    if (ui.mainButton("Open", 90)) commands.open(typed);
    ImGui.sameLine();
    // Another scene is not written over at a first press.
    boolean sure = asked.filter(typed::equals).isPresent();
    if (ui.button(sure ? "Write over it" : "Save here")) {
      if (!sure && taken(typed)) asked = Optional.of(typed);
      else if (commands.saveAs(typed)) commands.closeSheet();
    }
    ImGui.sameLine();
    if (ui.button("New tank…")) commands.openSheet(Sheets.Kind.FIRST);
    if (sure) ui.wrapped("There is a file of that name already. Write over it, or type another name.", Palette.INK);
    ui.gap(6);
    ImGui.beginChild("lists", 0, ImGui.getContentRegionAvailY() - ui.px(44), false);
    recent();
    if (!nearby.isEmpty()) {
      ui.gap(8);
      ui.strong("In this folder");
      for (Path p : nearby) if (ui.link(p.getFileName().toString(), "file " + p.getFileName())) commands.open(p);
    }
    ImGui.endChild();
    Sheets.foot(ui);
    if (ui.button("Close")) commands.closeSheet();
  }

  /** There is a file that is not the one worked on. */
  private boolean taken(Path file) {
    try {
      Optional<Path> own = bench.filing().file();
      return Files.exists(file) && (own.isEmpty() || !Files.isSameFile(own.get(), file));
    } catch (IOException e) {
      // What cannot be told is asked about.
      return true;
    }
  }

  private Path typed() {
    String t = path.get().strip();
    try {
      return Path.of(t.endsWith(".json") ? t : t + ".json");
    } catch (java.nio.file.InvalidPathException e) {
      return Path.of("scene.json");
    }
  }

  /** A title as a plain name for a file, without an ending. */
  static String plainName(String title) {
    String plain = title.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    return plain.isEmpty() ? "scene" : plain;
  }

  private static List<Path> jsonIn(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.getFileName().toString().endsWith(".json") && !f.getFileName().toString().startsWith("."))
          .sorted().limit(40).toList();
    } catch (IOException e) {
      // A folder that cannot be listed offers nothing; the path can still be typed.
      return List.of();
    }
  }
}
