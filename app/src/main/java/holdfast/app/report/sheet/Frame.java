package holdfast.app.report.sheet;

/**
 * The part of the page that is drawn on: inside the margins, under the heading, over the footer; millimetres.
 *
 * @param x left edge
 * @param y lower edge
 */
record Frame(double x, double y, double width, double height) {
  static final double MARGIN_MM = 12;
  private static final double HEAD_MM = 13;
  private static final double FOOT_MM = 8;

  static Frame of(Canvas c) {
    return new Frame(MARGIN_MM, MARGIN_MM + FOOT_MM, c.widthMm() - 2 * MARGIN_MM,
        c.heightMm() - 2 * MARGIN_MM - HEAD_MM - FOOT_MM);
  }

  double top() {
    return y + height;
  }

  double right() {
    return x + width;
  }

  /** A new page with its heading. */
  static Frame newPage(Canvas c, String heading, String aside) {
    c.page();
    c.brush(Ink.BLACK);
    double y = c.heightMm() - MARGIN_MM - 6;
    c.text(heading, MARGIN_MM, y, 7, Canvas.Face.BOLD);
    c.brush(Ink.GREY);
    c.textRight(aside, c.widthMm() - MARGIN_MM, y, 3.6, Canvas.Face.REGULAR);
    c.pen(Ink.BLACK, 0.5);
    c.line(MARGIN_MM, y - 3, c.widthMm() - MARGIN_MM, y - 3);
    return of(c);
  }
}
