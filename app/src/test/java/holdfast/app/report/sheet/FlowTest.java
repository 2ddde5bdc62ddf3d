package holdfast.app.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Where pages break: nothing of a kind stands on a page alone, and a heading never without what it is of (definition). */
class FlowTest {
  private static List<String> pages(Consumer<Flow> filling) throws IOException {
    try (Canvas c = new Canvas(297, 210, "breaks")) {
      filling.accept(new Flow(c, () -> Frame.newPage(c, "Page", "")));
      List<String> found = new ArrayList<>();
      try (PDDocument d = Loader.loadPDF(c.bytes())) {
        for (int p = 1; p <= d.getNumberOfPages(); p++) {
          PDFTextStripper one = new PDFTextStripper();
          one.setStartPage(p);
          one.setEndPage(p);
          found.add(one.getText(d));
        }
      }
      return found;
    }
  }

  private static int times(String text, String what) {
    return text.split(what, -1).length - 1;
  }

  /** So many lines stand above, and so many items follow; on every page one of them has another beside it. */
  private static void noneAlone(int before, int items, List<String> pages) {
    String which = before + " lines, " + items + " items";
    assertThat(pages.stream().mapToInt(p -> times(p, "item")).sum()).as(which).isEqualTo(items);
    for (String p : pages) {
      if (items > 1) assertThat(times(p, "item")).as(which).isNotEqualTo(1);
      if (p.contains("Over them")) assertThat(p).as(which).contains("item 1 ");
    }
  }

  @Test
  void noRowOfATableStandsAlone() throws IOException {
    for (int before : new int[] {0, 20, 22, 24, 25, 26, 27, 28, 29, 30}) {
      for (int n : new int[] {1, 2, 3, 4, 5, 19, 20, 21, 22, 23, 24, 25}) {
        List<List<String>> rows = IntStream.rangeClosed(1, n).mapToObj(i -> List.of("item " + i + " ", "of them")).toList();
        noneAlone(before, n, pages(f -> {
          for (int i = 0; i < before; i++) f.paragraph("line");
          f.heading("Over them");
          f.table(List.of(Flow.Column.left("What", 1), Flow.Column.left("Of", 1)), rows);
        }));
      }
    }
  }

  @Test
  void noCautionStandsAlone() throws IOException {
    for (int before : new int[] {0, 20, 24, 26, 27, 28, 29, 30}) {
      for (int n : new int[] {1, 2, 3, 4, 7, 15, 16, 17, 18}) {
        List<String> texts = IntStream.rangeClosed(1, n).mapToObj(i -> "item " + i + " of them").toList();
        noneAlone(before, n, pages(f -> {
          for (int i = 0; i < before; i++) f.paragraph("line");
          f.heading("Over them");
          f.cautions(texts);
        }));
      }
    }
  }

  /** What is taller than a page is parted rather than lost or preceded by an empty page. */
  @Test
  void aTallRowStillHasItsPlace() throws IOException {
    String tall = "word ".repeat(20 * 60);
    List<String> pages = pages(f -> f.table(List.of(Flow.Column.left("What", 1), Flow.Column.left("Of", 1)),
        List.of(List.of("item 1", "short"), List.of("item 2", tall), List.of("item 3", "short"))));
    assertThat(String.join("", pages)).contains("item 1", "item 2", "item 3");
    assertThat(pages.get(0)).contains("item 1");
  }
}
