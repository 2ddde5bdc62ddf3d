package holdfast.app.report.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Upright letters of a page where they stand, as a reader of the file finds them. */
final class Letters extends PDFTextStripper {
  /** Points by which boxes of two letters may overlap: kerning, and the room that a letter's box has round its ink. */
  private static final double SLACK_PT = 0.8;

  /** Height of a letter over its line, of the size of the type: capitals of most faces (common practice). */
  private static final double HIGH = 0.7;

  private record Letter(String what, double x0, double y0, double x1, double y1) {}

  private final List<Letter> letters = new ArrayList<>();

  private Letters() {
    setSuppressDuplicateOverlappingText(false);
  }

  @Override
  protected void processTextPosition(TextPosition p) {
    super.processTextPosition(p);
    if (p.getDir() != 0 || p.getUnicode().isBlank()) return;
    Letter l = new Letter(p.getUnicode(), p.getXDirAdj(), p.getYDirAdj() - HIGH * p.getFontSizeInPt(),
        p.getXDirAdj() + p.getWidthDirAdj(), p.getYDirAdj());
    // A light edge is drawn before the letter itself, at the same place.
    if (!letters.contains(l)) letters.add(l);
  }

  /** The pairs of letters that stand on each other, page by page. */
  static List<String> covered(PDDocument document) throws IOException {
    List<String> found = new ArrayList<>();
    for (int page = 1; page <= document.getNumberOfPages(); page++) {
      Letters of = new Letters();
      of.setStartPage(page);
      of.setEndPage(page);
      of.getText(document);
      for (int i = 0; i < of.letters.size(); i++) {
        for (int j = i + 1; j < of.letters.size(); j++) {
          Letter a = of.letters.get(i);
          Letter b = of.letters.get(j);
          double w = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
          double h = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
          if (w > SLACK_PT && h > SLACK_PT) {
            found.add("page " + page + ": '" + a.what + "' and '" + b.what + "' at " + Math.round(a.x0) + ", "
                + Math.round(a.y0));
          }
        }
      }
    }
    return found;
  }
}
