package holdfast.app.report.sheet;

import holdfast.app.report.sheet.Canvas.Face;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Text and tables one under the other, with a new page when one is full. Sizes are for reading at arm's length. */
final class Flow {
  static final double TEXT = 3.7;

  /** A paragraph of so many lines at most is not broken over two pages. */
  private static final int WHOLE_LINES = 6;
  static final double LINE = 5.0;
  private static final double CELL = 1.6;

  /** Height of the head of a table. */
  private static final double HEAD = LINE + 1.6;

  /** Room between the rows of a table, and over a heading; less where that saves a page that would be next to empty. */
  private static final double ROW = 1.6;
  private static final double TIGHT_ROW = 0.8;
  private static final double OVER = 7;
  private static final double TIGHT_OVER = 6;

  /** Share of a page; a last page that is filled less is worth saving. */
  private static final double NEXT_TO_EMPTY = 0.3;

  private final Canvas c;
  private final Supplier<Frame> nextPage;
  private final double row;
  private final double over;
  private Frame frame;
  private double y;
  private int pages;

  /** A heading that waits for what follows, to stay on its page, and the least room for that. */
  private String waiting = "";
  private double waitingWith;

  /** Starts on a new page; {@code nextPage} makes one with its heading. */
  Flow(Canvas c, Supplier<Frame> nextPage) {
    this(c, nextPage, false);
  }

  private Flow(Canvas c, Supplier<Frame> nextPage, boolean tight) {
    this.c = c;
    this.nextPage = nextPage;
    row = tight ? TIGHT_ROW : ROW;
    over = tight ? TIGHT_OVER : OVER;
    newPage();
  }

  /**
   * Draws something that fills pages, on nothing but the flow that it is given; with less room between rows where that saves a
   * last page with next to nothing on it.
   */
  static void fill(Canvas c, String heading, String aside, Consumer<Flow> filling) {
    boolean tight = false;
    try (Canvas trial = c.blank()) {
      Flow loose = filled(trial, heading, aside, filling, false);
      if (loose.pages > 1 && loose.frame.top() - loose.y < NEXT_TO_EMPTY * loose.frame.height()) {
        tight = filled(trial, heading, aside, filling, true).pages < loose.pages;
      }
    }
    filled(c, heading, aside, filling, tight);
  }

  private static Flow filled(Canvas c, String heading, String aside, Consumer<Flow> filling, boolean tight) {
    Flow flow = new Flow(c, () -> Frame.newPage(c, heading, aside), tight);
    filling.accept(flow);
    flow.open(0);
    return flow;
  }

  private void newPage() {
    frame = nextPage.get();
    pages++;
    y = frame.top();
  }

  Frame frame() {
    return frame;
  }

  /** Makes room for something of a given height; on a new page when this one has none left. */
  double take(double height) {
    open(height);
    if (y - height < frame.y() && y < frame.top()) newPage();
    y -= height;
    return y;
  }

  void space(double mm) {
    open(0);
    y -= mm;
  }

  void heading(String words) {
    heading(words, 24);
  }

  /** A heading that stays on a page with at least some of what follows. */
  void heading(String words, double withMm) {
    open(0);
    waiting = words;
    waitingWith = withMm;
  }

  /** Draws a heading that waits, on a page that has room for so much under it. */
  private void open(double height) {
    if (waiting.isEmpty()) return;
    String words = waiting;
    waiting = "";
    room(12 + Math.max(height, waitingWith));
    y -= over;
    c.brush(Ink.BLACK);
    c.text(words, frame.x(), y, 4.8, Face.BOLD);
    y -= 3;
  }

  /** A new page where this one has less room than that. */
  private void room(double height) {
    if (y - height < frame.y() && y < frame.top()) newPage();
  }

  /** A paragraph; a short one stays on one page. */
  void paragraph(String text) {
    List<String> lines = c.wrap(text, frame.width(), TEXT, Face.REGULAR);
    open(LINE * Math.min(WHOLE_LINES, lines.size()));
    if (lines.size() <= WHOLE_LINES) room(LINE * lines.size());
    for (String line : lines) {
      double at = take(LINE);
      c.brush(Ink.BLACK);
      c.text(line, frame.x(), at + 1.3, TEXT, Face.REGULAR);
    }
  }

  /** A framed caution across the page. */
  void caution(String text) {
    caution(cautionLines(text));
  }

  /** Cautions one under the other; none stands on a page without another of them. */
  void cautions(List<String> texts) {
    List<List<String>> all = texts.stream().map(this::cautionLines).toList();
    double[] heights = all.stream().mapToDouble(Flow::cautionHeight).toArray();
    for (int k = 0; k < all.size(); k++) {
      double together = together(heights, k);
      open(together);
      if (together <= frame.height()) room(together);
      caution(all.get(k));
    }
  }

  private List<String> cautionLines(String text) {
    return c.wrap(text, frame.width() - 12, TEXT, Face.REGULAR);
  }

  private static double cautionHeight(List<String> lines) {
    return LINE * lines.size() + 4.5;
  }

  private void caution(List<String> lines) {
    double height = cautionHeight(lines) - 1.5;
    double at = take(height + 1.5);
    box(c, frame.x(), at, frame.width(), height);
    double line = at + height - 1.5;
    c.brush(Ink.BLACK);
    for (String l : lines) {
      line -= LINE;
      c.text(l, frame.x() + 9, line + 1.3, TEXT, Face.REGULAR);
    }
  }

  /**
   * Height of what must not be parted from item {@code k} of a list after it: the first two stay together, and so do the last
   * two; of three, then, all.
   */
  private static double together(double[] heights, int k) {
    int last = k == heights.length - 2 ? k + 1 : k;
    if (k == 0) last = heights.length <= 3 ? heights.length - 1 : 1;
    return Arrays.stream(heights, k, last + 1).sum();
  }

  /** A tinted frame with a warning sign, its lower left corner given. */
  static void box(Canvas c, double x, double y, double width, double height) {
    c.brush(Ink.CAUTION_FILL);
    c.fillRectangle(x, y, width, height);
    c.pen(Ink.CAUTION, 0.4);
    c.rectangle(x, y, width, height);
    double top = y + height - 2;
    c.polygon(List.of(new double[] {x + 2, top - 4}, new double[] {x + 6.4, top - 4}, new double[] {x + 4.2, top - 0.2}));
    c.brush(Ink.CAUTION);
    c.textCentred("!", x + 4.2, top - 3.5, 3.4, Face.BOLD);
  }

  /** One column of a table: heading, share of the width, and whether its cells stand at the right. */
  record Column(String heading, double share, boolean right) {
    static Column left(String heading, double share) {
      return new Column(heading, share, false);
    }

    static Column right(String heading, double share) {
      return new Column(heading, share, true);
    }
  }

  /** A table; cells wrap, rows stay whole, and the head is repeated on a new page. */
  void table(List<Column> columns, List<List<String>> rows) {
    grouped(columns, rows.stream().map(List::of).toList());
  }

  /** A table whose groups of rows stay on one page; none stands on a page without another of them. */
  void grouped(List<Column> columns, List<List<List<String>>> groups) {
    double total = columns.stream().mapToDouble(Column::share).sum();
    double[] widths = columns.stream().mapToDouble(k -> k.share / total * frame.width()).toArray();
    double[] heights = groups.stream()
        .mapToDouble(g -> g.stream().mapToDouble(r -> height(cells(r, widths))).sum()).toArray();
    double first = HEAD + (groups.isEmpty() ? 0 : together(heights, 0));
    open(first);
    if (first <= frame.height()) room(first);
    head(columns, widths);
    boolean fresh = true;
    for (int g = 0; g < groups.size(); g++) {
      double together = together(heights, g);
      if (HEAD + together > frame.height()) together = heights[g];
      if (!fresh && y - together < frame.y()) {
        newPage();
        head(columns, widths);
      }
      fresh = false;
      List<List<String>> group = groups.get(g);
      for (int k = 0; k < group.size(); k++) row(columns, widths, cells(group.get(k), widths), k == group.size() - 1);
    }
    y -= 2;
  }

  private List<List<String>> cells(List<String> row, double[] widths) {
    List<List<String>> cells = new ArrayList<>();
    for (int i = 0; i < widths.length; i++) cells.add(c.wrap(row.get(i), widths[i] - 3 * CELL, TEXT, Face.REGULAR));
    return cells;
  }

  private double height(List<List<String>> cells) {
    return cells.stream().mapToInt(List::size).max().orElse(1) * LINE + row;
  }

  private void row(List<Column> columns, double[] widths, List<List<String>> cells, boolean last) {
    double height = height(cells);
    y -= height;
    double x = frame.x();
    c.brush(Ink.BLACK);
    for (int i = 0; i < widths.length; i++) {
      double at = y + height - row / 2;
      for (String line : cells.get(i)) {
        at -= LINE;
        if (columns.get(i).right) c.textRight(line, x + widths[i] - 2 * CELL, at + 1.4, TEXT, Face.REGULAR);
        else c.text(line, x + CELL, at + 1.4, TEXT, i == 0 ? Face.BOLD : Face.REGULAR);
      }
      x += widths[i];
    }
    c.pen(last ? Ink.PALE : Ink.FAINT, last ? 0.25 : 0.15);
    c.line(frame.x(), y, frame.right(), y);
  }

  private void head(List<Column> columns, double[] widths) {
    if (y - 2 * HEAD < frame.y()) newPage();
    y -= HEAD;
    c.brush(Ink.FAINT);
    c.fillRectangle(frame.x(), y, frame.width(), HEAD);
    c.brush(Ink.BLACK);
    double x = frame.x();
    for (int i = 0; i < widths.length; i++) {
      Column k = columns.get(i);
      if (k.right) c.textRight(k.heading, x + widths[i] - 2 * CELL, y + 2, 3.3, Face.BOLD);
      else c.text(k.heading, x + CELL, y + 2, 3.3, Face.BOLD);
      x += widths[i];
    }
  }
}
