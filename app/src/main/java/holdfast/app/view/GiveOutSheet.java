package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.app.report.Units;
import holdfast.app.report.sheet.Sheet;
import holdfast.app.report.sheet.SheetContent;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Palette;
import holdfast.engine.bonding.JointDemands;
import holdfast.engine.build.StageJudge;
import holdfast.engine.check.Check;
import holdfast.engine.check.CheckOptions;
import holdfast.engine.check.CheckReport;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.model.io.SceneFiles;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import imgui.ImGui;
import imgui.type.ImString;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What leaves the window: a picture of a chosen size, and the build sheet. */
final class GiveOutSheet {
  /** Where fields begin, in units of the panels. */
  private static final int COLUMN = 96;
  /** Pixels along a side of a picture, the same bounds as those of the command. */
  static final int LEAST_PX = 160;
  static final int MOST_PX = 8192;

  private final Workbench bench;
  private final Ui ui;
  private final Commands commands;
  private final ScenePainter painter;
  private final ImString picture = new ImString(512);
  private final ImString width = new ImString("1600", 8);
  private final ImString height = new ImString("1000", 8);
  private final ImString pdf = new ImString(512);
  private Optional<Camera.View> from = Optional.empty();
  private boolean names;
  private boolean footprint = true;
  private Sheet.Paper paper = Sheet.Paper.A4;
  private String problem = "";
  /** Files that this window wrote. */
  private final Set<Path> own = new HashSet<>();
  /** A file that is there, and the person was told so. */
  private Optional<Path> asked = Optional.empty();

  GiveOutSheet(Workbench bench, Ui ui, Commands commands, ScenePainter painter) {
    this.bench = bench;
    this.ui = ui;
    this.commands = commands;
    this.painter = painter;
  }

  void draw(boolean fresh) {
    if (fresh) fill();
    Sheets.head(ui, "Picture and build sheet", "A file that is there is written over only when you say so.");
    ui.strong("Picture");
    ui.label("File", COLUMN);
    ui.entry("picture file", picture, 400);
    ui.label("Seen", COLUMN);
    ui.row("seen");
    if (ui.toggle("as now", from.isEmpty())) from = Optional.empty();
    for (Camera.View v : Camera.View.values()) {
      ImGui.sameLine(0, ui.px(2));
      if (ui.toggle("from " + (v == Camera.View.TOP ? "above" : v == Camera.View.CORNER ? "a corner" : "the " + v.word()),
          from.filter(v::equals).isPresent())) from = Optional.of(v);
    }
    ui.rowEnd();
    ui.label("Size", COLUMN);
    ui.entry("picture width", width, 62);
    ImGui.sameLine();
    ui.soft("×");
    ImGui.sameLine();
    ui.entry("picture height", height, 62);
    ImGui.sameLine();
    ui.soft("pixels");
    if (from.isPresent()) {
      ImGui.sameLine(0, ui.px(24));
      if (ui.checkInRow("names on the rocks", names)) names = !names;
    }
    ui.label("", COLUMN);
    if (ui.mainButton(words("Write the picture", picture, ".png"), 150)) writePicture();
    ui.gap(10);
    ui.strong("Build sheet");
    ui.label("File", COLUMN);
    ui.entry("sheet file", pdf, 400);
    ui.label("Paper", COLUMN);
    ui.row("paper");
    for (Sheet.Paper p : Sheet.Paper.values()) {
      if (ui.toggle(p == Sheet.Paper.A4 ? "A4" : "Letter", paper == p)) paper = p;
      ImGui.sameLine(0, ui.px(2));
    }
    ui.rowEnd();
    ImGui.sameLine(0, ui.px(24));
    if (ui.checkInRow("footprint at full size", footprint)) footprint = !footprint;
    ui.label("", COLUMN);
    if (ui.mainButton(words("Write the sheet", pdf, ".pdf"), 150)) writeSheet();
    ImGui.sameLine();
    ui.small("judges the scene in full first", Palette.INK_SOFT);
    if (!problem.isEmpty()) ui.wrapped(problem, Palette.INK);
    Sheets.foot(ui);
    if (ui.button("Close")) commands.closeSheet();
  }

  private void fill() {
    problem = "";
    asked = Optional.empty();
    Path folder = bench.filing().folder();
    String stem = bench.filing().file().map(f -> f.getFileName().toString().replaceFirst("\\.json$", ""))
        .orElse(ScenesSheet.plainName(bench.scene().name()));
    picture.set(folder.resolve(stem + ".png").toString());
    pdf.set(folder.resolve(stem + ".pdf").toString());
    paper = bench.units() == Units.US ? Sheet.Paper.LETTER : Sheet.Paper.A4;
  }

  // -- picture ------------------------------------------------------------------------------------------------------

  private void writePicture() {
    Optional<Path> to = file(picture, ".png");
    Optional<Integer> w = pixels(width);
    Optional<Integer> h = pixels(height);
    if (to.isEmpty() || !mayWrite(to.get())) return;
    if (w.isEmpty() || h.isEmpty()) {
      problem = "Width and height must be whole numbers from " + LEAST_PX + " to " + MOST_PX + ".";
      return;
    }
    BufferedImage image = from.isEmpty() ? painter.picture(w.get(), h.get())
        : painter.picture(new PictureMaker.Wish(from.get(), w.get(), h.get(), bench.units(), names));
    write("picture", to.get(), bench.chores(), () -> Pngs.bytes(image));
  }

  private static Optional<Integer> pixels(ImString typed) {
    try {
      int v = Integer.parseInt(typed.get().strip());
      return v >= LEAST_PX && v <= MOST_PX ? Optional.of(v) : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  // -- sheet --------------------------------------------------------------------------------------------------------

  private void writeSheet() {
    Optional<Path> to = file(pdf, ".pdf");
    if (to.isEmpty() || !mayWrite(to.get())) return;
    Scene scene = bench.scene();
    Shapes shapes = bench.stones().shapes(scene);
    if (!shapes.sound()) {
      problem = "'" + shapes.problems().get(0).rock() + "' has no shape: " + shapes.problems().get(0).reason() + ".";
      return;
    }
    Optional<CheckReport> known = bench.found().filter(Judge.Found::full).flatMap(Judge.Found::report);
    Units units = bench.units();
    Sheet.Paper size = paper;
    boolean full = footprint;
    write("sheet", to.get(), bench.plans(), () -> {
      CheckReport check = known.orElseGet(() -> Check.run(scene, shapes, CheckOptions.DEFAULT));
      SheetContent content =
          SheetContent.of(scene, shapes, Optional.of(check), new StageJudge(scene, shapes.placed()),
              (plan, pieces) -> JointDemands.of(SceneHeap.of(scene, shapes.placed()), pieces, CheckOptions.DEFAULT.threads()));
      return Sheet.pdf(content, size, units, full);
    });
  }

  // -- files --------------------------------------------------------------------------------------------------------

  /** The bytes of a file, made elsewhere. */
  private interface Bytes {
    byte[] make() throws Exception;
  }

  private void write(String what, Path to, Chores lane, Bytes bytes) {
    commands.closeSheet();
    own.add(to.toAbsolutePath());
    bench.tellUntilDone("Writing the " + what + "…");
    lane.start(() -> {
      byte[] content = bytes.make();
      SceneFiles.saveBytes(to, content);
      return to;
    }, done -> bench.tell("Wrote the " + what + " " + done, SeverityLook.FINE),
        why -> bench.tell("The " + what + " was not written: " + why, SeverityLook.FAIL));
  }

  /** What this window wrote is written anew; another file is not written over at a first press. */
  private boolean mayWrite(Path to) {
    Path file = to.toAbsolutePath();
    if (!Files.exists(file) || own.contains(file) || asked.filter(file::equals).isPresent()) return true;
    asked = Optional.of(file);
    problem = "There is a file of that name already. Write over it, or type another name.";
    return false;
  }

  private String words(String usual, ImString typed, String ending) {
    return asked.filter(p -> p.toString().equals(absolute(typed.get().strip(), ending))).isPresent()
        ? "Write over it##" + ending : usual;
  }

  private static String absolute(String typed, String ending) {
    try {
      return named(typed, ending).toAbsolutePath().toString();
    } catch (InvalidPathException e) {
      return "";
    }
  }

  private static Path named(String typed, String ending) {
    return Path.of(typed.toLowerCase(Locale.ROOT).endsWith(ending) ? typed : typed + ending);
  }

  /** The typed file with its ending; empty, and the reason shown, when nothing can be written there. */
  private Optional<Path> file(ImString typed, String ending) {
    String t = typed.get().strip();
    try {
      Path p = named(t, ending);
      Path folder = p.toAbsolutePath().getParent();
      if (t.isEmpty()) problem = "Name the file.";
      else if (Files.isDirectory(p)) problem = p + " is a folder.";
      else if (folder == null || !Files.isDirectory(folder)) problem = folder + ": there is no such folder.";
      else {
        problem = "";
        return Optional.of(p);
      }
    } catch (InvalidPathException e) {
      problem = "'" + t + "' is no name for a file.";
    }
    return Optional.empty();
  }
}
