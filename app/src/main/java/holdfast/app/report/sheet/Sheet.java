package holdfast.app.report.sheet;

import holdfast.app.report.Units;
import holdfast.app.report.sheet.Canvas.Face;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

/** The build sheet as a PDF: the same content and options give the same bytes. */
public final class Sheet {
  private static final String TITLE = "Build sheet: ";

  /** Size of the remark on names, and from line to line. */
  private static final double REMARK_MM = 3;
  private static final double REMARK_LINE_MM = 3.8;

  private Sheet() {}

  /** Sizes of paper, lying. */
  public enum Paper {
    A4(297, 210), LETTER(279.4, 215.9);

    private final double widthMm;
    private final double heightMm;

    Paper(double widthMm, double heightMm) {
      this.widthMm = widthMm;
      this.heightMm = heightMm;
    }
  }

  /**
   * The bytes of the file.
   *
   * @param footprint with the footprint at full size at the end
   */
  public static byte[] pdf(SheetContent content, Paper paper, Units units, boolean footprint) {
    Figures f = new Figures(units);
    try (Canvas c = new Canvas(paper.widthMm, paper.heightMm, TITLE + content.scene().name())) {
      PaperNames names = PaperNames.of(content.scene(), c::draws);
      c.call(names);
      new PlanPage(c, content, f).draw();
      remark(c, names);
      new ElevationPage(c, content, f).draw();
      new TablePages(c, content, f).draw();
      new StagePages(c, content, f).draw();
      new TurningPages(c, content, f).draw();
      new SupplyPages(c, content, f).draw();
      new DayPages(c, content, f).draw();
      if (footprint) new FootprintPages(c, content, f).draw();
      footers(c);
      return c.bytes();
    }
  }

  /** Which things the sheet calls otherwise than the scene, since its font cannot write their names; nothing when none. */
  public static Optional<String> calledOtherwise(SheetContent content) {
    try (Canvas c = new Canvas(Paper.A4.widthMm, Paper.A4.heightMm, "")) {
      return PaperNames.of(content.scene(), c::draws).remark();
    }
  }

  /** At the foot of the first page, over the footer. */
  private static void remark(Canvas c, PaperNames names) {
    if (names.remark().isEmpty()) return;
    double width = c.widthMm() - 2 * Frame.MARGIN_MM;
    List<String> lines = c.wrap(names.remark().get(), width, REMARK_MM, Face.REGULAR);
    if (lines.size() > 2) lines = c.wrap(names.shortRemark().orElseThrow(), width, REMARK_MM, Face.REGULAR);
    c.brush(Ink.BLACK);
    double y = Frame.MARGIN_MM - 1.5 + REMARK_LINE_MM * (lines.size() - 1);
    for (String line : lines) {
      c.text(line, Frame.MARGIN_MM, y, REMARK_MM, Face.REGULAR);
      y -= REMARK_LINE_MM;
    }
  }

  /** Whether the file is a sheet that was written here. */
  public static boolean isOne(Path file) {
    try (PDDocument d = Loader.loadPDF(file.toFile())) {
      PDDocumentInformation about = d.getDocumentInformation();
      return Canvas.PROGRAM.equals(about.getCreator()) && String.valueOf(about.getTitle()).startsWith(TITLE);
    } catch (IOException | RuntimeException e) {
      return false; // what cannot be read is not known to be ours
    }
  }

  private static void footers(Canvas c) {
    for (int i = 0; i < c.pages(); i++) {
      c.reopen(i);
      c.brush(Ink.GREY);
      double y = Frame.MARGIN_MM - 6;
      c.text("Plans and screens a layout; certifies nothing. Makers, local codes and licensed trades go before it.",
          Frame.MARGIN_MM, y, 3, Face.REGULAR);
      c.textRight((i + 1) + " of " + c.pages(), c.widthMm() - Frame.MARGIN_MM, y, 3, Face.REGULAR);
    }
  }
}
