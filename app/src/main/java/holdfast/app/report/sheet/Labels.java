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

  /** Half of what is kept free round the point that a circle belongs to. */
  private static final double POINT_MM = 0.7;

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

  /** Numbers in circles, none over the point of another. */
  void marks(List<String> numbers, List<double[]> points) {
    List<double[]> places = new ArrayList<>();
    for (int i = 0; i < numbers.size(); i++) {
      double[] own = points.get(i);
      int before = taken.size();
      for (int j = 0; j < points.size(); j++) {
        double[] p = points.get(j);
        if (j != i) keepFree(p[0] - POINT_MM, p[1] - POINT_MM, 2 * POINT_MM, 2 * POINT_MM);
      }
      double r = radius(numbers.get(i));
      double[] at = place(own[0], own[1], 2 * r, 2 * r);
      taken.subList(before, before + points.size() - 1).clear();
      places.add(at);
    }
    // All leaders first: a circle is never crossed by one.
    for (int i = 0; i < numbers.size(); i++) {
      double[] from = points.get(i);
      double[] to = places.get(i);
      if (Math.hypot(to[0] - from[0], to[1] - from[1]) <= radius(numbers.get(i))) continue;
      canvas.pen(Ink.BLACK, 0.2);
      canvas.line(from[0], from[1], to[0], to[1]);
      canvas.brush(Ink.BLACK);
      canvas.circle(from[0], from[1], 0.5, true, false);
    }
    for (int i = 0; i < numbers.size(); i++) {
      canvas.pen(Ink.BLACK, 0.35);
      canvas.brush(Ink.PAPER);
      canvas.circle(places.get(i)[0], places.get(i)[1], radius(numbers.get(i)), true, true);
      canvas.brush(Ink.BLACK);
      canvas.textCentred(numbers.get(i), places.get(i)[0], places.get(i)[1] - 1.15, 3.2, Face.BOLD);
    }
  }

  private static double radius(String number) {
    return number.length() > 1 ? 2.9 : 2.5;
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

  /**
   * Middle of the cheapest place: what it covers of other labels and what its leader does, then what it covers of lines, then
   * how far off it stands.
   */
  private double[] place(double x, double y, double w, double h) {
    double[] best = {x, y};
    double least = Double.POSITIVE_INFINITY;
    for (double ring : RINGS_MM) {
      for (int k = 0; k < (ring == 0 ? 1 : DIRECTIONS); k++) {
        double a = 2 * Math.PI * k / DIRECTIONS;
        double cx = Math.max(x0 + w / 2, Math.min(x1 - w / 2, x + ring * Math.cos(a)));
        double cy = Math.max(y0 + h / 2, Math.min(y1 - h / 2, y + ring * Math.sin(a)));
        double cost = 40 * covered(cx - w / 2, cy - h / 2, cx + w / 2, cy + h / 2)
            + crossed(cx - w / 2, cy - h / 2, cx + w / 2, cy + h / 2) + 0.6 * ring
            + (ring == 0 ? 0 : 4 * underOthers(x, y, cx, cy));
        if (cost < least - 1e-9) {
          least = cost;
          best = new double[] {cx, cy};
        }
      }
    }
    taken.add(new double[] {best[0] - w / 2, best[1] - h / 2, best[0] + w / 2, best[1] + h / 2});
    lines.add(new double[] {x, y, best[0], best[1]});
    return best;
  }

  /** Length of avoided lines inside a rectangle. */
  private double crossed(double ax, double ay, double bx, double by) {
    double sum = 0;
    for (double[] l : lines) sum += inside(l[0], l[1], l[2], l[3], ax, ay, bx, by);
    return sum;
  }

  /** Length of a leader that lies under other labels. */
  private double underOthers(double x, double y, double cx, double cy) {
    double sum = 0;
    for (double[] t : taken) sum += inside(x, y, cx, cy, t[0], t[1], t[2], t[3]);
    return sum;
  }

  /** Length of a line inside a rectangle. */
  private static double inside(double x0, double y0, double x1, double y1, double ax, double ay, double bx, double by) {
    double dx = x1 - x0;
    double dy = y1 - y0;
    double from = 0;
    double to = 1;
    double[][] sides = {{-dx, x0 - ax}, {dx, bx - x0}, {-dy, y0 - ay}, {dy, by - y0}};
    for (double[] side : sides) {
      if (side[0] == 0) {
        if (side[1] < 0) to = -1;
      } else if (side[0] < 0) {
        from = Math.max(from, side[1] / side[0]);
      } else {
        to = Math.min(to, side[1] / side[0]);
      }
    }
    return to > from ? (to - from) * Math.hypot(dx, dy) : 0;
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
