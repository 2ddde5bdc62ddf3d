package holdfast.app.report.sheet;

import holdfast.app.report.sheet.Canvas.Face;
import java.util.ArrayList;
import java.util.List;

/**
 * Names and numbers beside what they name, so that none covers another and few cover a line: each goes to the cheapest
 * place among its own point and rings round it, with a thin leader when it has to stand off.
 */
final class Labels {
  private static final double[] RINGS_MM = {0, 5, 8, 11, 14, 18, 23, 28, 34, 41, 50};
  private static final int DIRECTIONS = 16;

  private final Canvas canvas;
  private final double x0;
  private final double y0;
  private final double x1;
  private final double y1;
  private final List<double[]> taken = new ArrayList<>();
  private final List<double[]> lines = new ArrayList<>();

  /** Labels that stay inside a rectangle of the page. */
  Labels(Canvas canvas, double x0, double y0, double x1, double y1) {
    this.canvas = canvas;
    this.x0 = x0;
    this.y0 = y0;
    this.x1 = x1;
    this.y1 = y1;
  }

  /** Keeps a place free. */
  void keepFree(double x, double y, double width, double height) {
    taken.add(new double[] {x, y, x + width, y + height});
  }

  /** Lines that labels should rather not cover, ends in millimetres of the page. */
  void avoid(List<Drawing.Stroke> strokes, Scaled s) {
    for (Drawing.Stroke k : strokes) {
      if (k.kind() == Drawing.Kind.OUTLINE) lines.add(new double[] {s.x(k.x1()), s.y(k.y1()), s.x(k.x2()), s.y(k.y2())});
    }
  }

  /** A number in a circle. */
  void mark(String number, double x, double y) {
    double r = number.length() > 1 ? 2.9 : 2.5;
    double[] at = place(x, y, 2 * r, 2 * r);
    if (Math.hypot(at[0] - x, at[1] - y) > r) {
      canvas.pen(Ink.BLACK, 0.2);
      canvas.line(x, y, at[0], at[1]);
      canvas.brush(Ink.BLACK);
      canvas.circle(x, y, 0.5, true, false);
    }
    canvas.pen(Ink.BLACK, 0.35);
    canvas.brush(Ink.PAPER);
    canvas.circle(at[0], at[1], r, true, true);
    canvas.brush(Ink.BLACK);
    canvas.textCentred(number, at[0], at[1] - 1.15, 3.2, Face.BOLD);
  }

  /** A name, with a second line in plain letters. */
  void name(String name, String second, double x, double y) {
    double w = Math.max(canvas.width(name, 3.3, Face.BOLD), canvas.width(second, 2.8, Face.REGULAR)) + 1.6;
    double h = second.isEmpty() ? 4.4 : 7.8;
    double[] at = place(x, y, w, h);
    if (Math.abs(at[0] - x) > w / 2 || Math.abs(at[1] - y) > h / 2) {
      canvas.pen(Ink.GREY, 0.2);
      double reach = Math.min(1, Math.min(w / 2 / Math.max(1e-9, Math.abs(at[0] - x)), h / 2 / Math.max(1e-9,
          Math.abs(at[1] - y))));
      canvas.line(x, y, at[0] + (x - at[0]) * reach, at[1] + (y - at[1]) * reach);
      canvas.brush(Ink.GREY);
      canvas.circle(x, y, 0.5, true, false);
    }
    canvas.brush(Ink.BLACK);
    halo(name, at[0], at[1] + h / 2 - 3.4, 3.3, Face.BOLD);
    if (!second.isEmpty()) halo(second, at[0], at[1] - h / 2 + 1.2, 2.8, Face.REGULAR);
  }

  private void halo(String line, double x, double y, double size, Face face) {
    canvas.haloText(line, x - canvas.width(line, size, face) / 2, y, size, face);
  }

  /** Middle of the cheapest place: what it covers of other labels, then of lines, then how far off it stands. */
  private double[] place(double x, double y, double w, double h) {
    double[] best = {x, y};
    double least = Double.POSITIVE_INFINITY;
    for (double ring : RINGS_MM) {
      for (int k = 0; k < (ring == 0 ? 1 : DIRECTIONS); k++) {
        double a = 2 * Math.PI * k / DIRECTIONS;
        double cx = Math.max(x0 + w / 2, Math.min(x1 - w / 2, x + ring * Math.cos(a)));
        double cy = Math.max(y0 + h / 2, Math.min(y1 - h / 2, y + ring * Math.sin(a)));
        double cost = 40 * covered(cx - w / 2, cy - h / 2, cx + w / 2, cy + h / 2)
            + crossed(cx - w / 2, cy - h / 2, cx + w / 2, cy + h / 2) + 0.6 * ring;
        if (cost < least - 1e-9) {
          least = cost;
          best = new double[] {cx, cy};
        }
      }
    }
    taken.add(new double[] {best[0] - w / 2, best[1] - h / 2, best[0] + w / 2, best[1] + h / 2});
    return best;
  }

  /** Length of avoided lines inside a rectangle. */
  private double crossed(double ax, double ay, double bx, double by) {
    double sum = 0;
    for (double[] l : lines) {
      double dx = l[2] - l[0];
      double dy = l[3] - l[1];
      double from = 0;
      double to = 1;
      double[][] sides = {{-dx, l[0] - ax}, {dx, bx - l[0]}, {-dy, l[1] - ay}, {dy, by - l[1]}};
      for (double[] side : sides) {
        if (side[0] == 0) {
          if (side[1] < 0) to = -1;
        } else if (side[0] < 0) {
          from = Math.max(from, side[1] / side[0]);
        } else {
          to = Math.min(to, side[1] / side[0]);
        }
      }
      if (to > from) sum += (to - from) * Math.hypot(dx, dy);
    }
    return sum;
  }

  private double covered(double ax, double ay, double bx, double by) {
    double sum = 0;
    for (double[] t : taken) {
      double w = Math.min(bx, t[2]) - Math.max(ax, t[0]);
      double h = Math.min(by, t[3]) - Math.max(ay, t[1]);
      if (w > 0 && h > 0) sum += w * h;
    }
    return sum;
  }
}
