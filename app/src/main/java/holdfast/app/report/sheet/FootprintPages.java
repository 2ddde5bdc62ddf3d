package holdfast.app.report.sheet;

import holdfast.app.report.Units;
import holdfast.app.report.sheet.Canvas.Face;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.GridCells;
import holdfast.model.scene.UsMeasure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The footprint at full size, to be cut, joined and laid in the tank: outlines of the rocks that stand on the floor, the
 * patches they bear on, the cells. Neighbouring tiles overlap; crop marks show where one ends.
 */
final class FootprintPages {
  private static final double OVERLAP_MM = 10;
  private static final double AROUND_MM = 12;

  /** Half the height that a cell's number takes. */
  private static final double NUMBER_MM = 1.5;

  /** A tile that shows less than this of a rock, metres, does not name it. */
  private static final double LEAST_SEEN_M = 0.006;

  /** How large a rock's words are against the usual, and how finely a place for them is looked for. */
  private static final double[] SHARES = {1, 0.75, 0.55};
  private static final double STEP_MM = 3;

  /** Room for the map of the tiles in the heading, and what stands to the right of it. */
  private static final double MAP_HIGH_MM = 9;
  private static final double MAP_WIDE_MM = 40;
  private static final double ASIDE_MM = 62;

  private final Canvas c;
  private final SheetContent content;
  private final Figures f;
  private final List<Integer> base;
  private final Drawing drawing;
  private final double tileX;
  private final double tileY;
  private final double left;
  private final double low;
  private final int columns;
  private final int rows;

  FootprintPages(Canvas c, SheetContent content, Figures f) {
    this.c = c;
    this.f = f;
    this.content = content;
    this.base = List.copyOf(content.plan().supports().base());
    this.drawing = new Drawing(Drawing.View.PLAN, base.stream().map(content.hulls()::get).toList());
    tileX = c.widthMm() - 2 * Frame.MARGIN_MM - 14;
    tileY = c.heightMm() - 2 * Frame.MARGIN_MM - 22;
    List<List<double[]>> all = new ArrayList<>();
    for (int i = 0; i < base.size(); i++) all.addAll(drawing.shadows(i));
    double[] box = all.isEmpty() ? new double[] {0, 0, 0.1, 0.1} : Flat.box(all);
    double width = (box[2] - box[0]) * 1e3 + 2 * AROUND_MM;
    double height = (box[3] - box[1]) * 1e3 + 2 * AROUND_MM;
    columns = count(width, tileX);
    rows = count(height, tileY);
    // The rocks stand in the middle of the tiles.
    left = box[0] * 1e3 - AROUND_MM - (columns * (tileX - OVERLAP_MM) + OVERLAP_MM - width) / 2;
    low = box[1] * 1e3 - AROUND_MM - (rows * (tileY - OVERLAP_MM) + OVERLAP_MM - height) / 2;
  }

  private static int count(double length, double tile) {
    return Math.max(1, (int) Math.ceil((length - OVERLAP_MM) / (tile - OVERLAP_MM) - 1e-9));
  }

  void draw() {
    if (base.isEmpty()) return;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        if (holdsRock(column, row)) tile(column, row);
      }
    }
  }

  private double tileLeft(int column) {
    return left + column * (tileX - OVERLAP_MM);
  }

  private double tileLow(int row) {
    return low + row * (tileY - OVERLAP_MM);
  }

  /** Whether a tile shows rock that the tiles to its left and in front of it don't: what overlaps is on those already. */
  private boolean holdsRock(int column, int row) {
    double x0 = (tileLeft(column) + (column > 0 ? OVERLAP_MM : 0)) * 1e-3;
    double y0 = (tileLow(row) + (row > 0 ? OVERLAP_MM : 0)) * 1e-3;
    double x1 = (tileLeft(column) + tileX) * 1e-3;
    double y1 = (tileLow(row) + tileY) * 1e-3;
    for (int i = 0; i < base.size(); i++) {
      double[] b = Flat.box(drawing.shadows(i));
      if (b[0] < x1 && b[2] > x0 && b[1] < y1 && b[3] > y0) return true;
    }
    return false;
  }

  /** A corner of the tile for the ruler where no outline runs through it, else the one at the front right. */
  private double[] rulerPlace(Scaled s, double x, double y) {
    double[] first = {x + tileX - 108, y + 4};
    for (double py : new double[] {first[1], y + tileY - 11}) {
      for (double px : new double[] {first[0], x + 6}) {
        boolean free = true;
        for (Drawing.Stroke k : drawing.strokes(false)) {
          if (k.kind() == Drawing.Kind.CREASE) continue;
          free &= !meets(s.x(k.x1()), s.y(k.y1()), s.x(k.x2()), s.y(k.y2()), px - 3, py - 3, px + 105, py + 8);
        }
        if (free) return new double[] {px, py};
      }
    }
    return first;
  }

  /** Whether a stretch of line has a part in a rectangle. */
  private static boolean meets(double ax, double ay, double bx, double by, double x0, double y0, double x1, double y1) {
    double from = 0;
    double to = 1;
    double[][] sides = {{ax, bx - ax, x0, x1}, {ay, by - ay, y0, y1}};
    for (double[] k : sides) {
      if (k[1] == 0) {
        if (k[0] < k[2] || k[0] > k[3]) return false;
        continue;
      }
      double t0 = (k[2] - k[0]) / k[1];
      double t1 = (k[3] - k[0]) / k[1];
      from = Math.max(from, Math.min(t0, t1));
      to = Math.min(to, Math.max(t0, t1));
    }
    return from <= to;
  }

  private static String name(int column, int row) {
    return "row " + (row + 1) + ", column " + (column + 1);
  }

  private void tile(int column, int row) {
    Frame.newPage(c, "Footprint at full size: " + name(column, row), "print at 100 %, not fitted to the page");
    double x = Frame.MARGIN_MM + 7;
    double y = Frame.MARGIN_MM + 8;
    Scaled s = new Scaled(1, x - tileLeft(column), y - tileLow(row));
    c.clipped(x, y, tileX, tileY, () -> {
      double[] window = {
        (tileLeft(column) + OVERLAP_MM) * 1e-3, (tileLow(row) + OVERLAP_MM) * 1e-3,
        (tileLeft(column) + tileX - OVERLAP_MM) * 1e-3, (tileLow(row) + tileY - OVERLAP_MM) * 1e-3};
      double[] ruler = rulerPlace(s, x, y);
      List<double[]> taken = new ArrayList<>();
      taken.add(new double[] {ruler[0] - 2, ruler[1] - 2, ruler[0] + 104, ruler[1] + 7});
      List<Place> places = new ArrayList<>();
      for (int i = 0; i < base.size(); i++) {
        rockPlace(s, i, window, taken).ifPresent(p -> {
          places.add(p);
          taken.addAll(p.boxes());
        });
      }
      cells(s, tileLeft(column), tileLow(row), taken);
      feet(s);
      places.forEach(this::rockWords);
      ruler(ruler[0], ruler[1]);
      // The outlines last: neither words nor ruler may hide where the rock goes.
      c.pen(Ink.BLACK, 0.6);
      for (Drawing.Stroke k : drawing.strokes(false)) {
        if (k.kind() != Drawing.Kind.CREASE) c.line(s.x(k.x1()), s.y(k.y1()), s.x(k.x2()), s.y(k.y2()));
      }
    });
    marks(x, y);
    c.brush(Ink.BLACK);
    c.text("Front of the tank is at the bottom edge. Overlap " + f.mm(OVERLAP_MM)
        + ". Rows count from the front, columns from the left; "
        + rows + " by " + columns + " in all, tiles without more rock left out.", x + 2, Frame.MARGIN_MM + 0.5, 3, Face.REGULAR);
    map(column, row);
  }

  /** The grid; its numbers where no words stand. */
  private void cells(Scaled s, double fromX, double fromY, List<double[]> taken) {
    GridCells g = GridCells.of(content.scene());
    Floor.Extent e = content.scene().floor().extentIn(content.scene().tank());
    double x1 = e.xMm() + e.lengthMm();
    double y1 = e.yMm() + e.widthMm();
    for (int i = 0; i <= g.columns(); i++) {
      double x = Math.min(x1, e.xMm() + i * g.cellMm());
      if (x < fromX - 20 || x > fromX + tileX + 20) continue;
      c.pen(i % 5 == 0 ? Ink.PALE : Ink.FAINT, i % 5 == 0 ? 0.3 : 0.2);
      c.line(s.x(x * 1e-3), s.y(e.yMm() * 1e-3), s.x(x * 1e-3), s.y(y1 * 1e-3));
    }
    for (int j = 0; j <= g.rows(); j++) {
      double y = Math.min(y1, e.yMm() + j * g.cellMm());
      if (y < fromY - 20 || y > fromY + tileY + 20) continue;
      c.pen(j % 5 == 0 ? Ink.PALE : Ink.FAINT, j % 5 == 0 ? 0.3 : 0.2);
      c.line(s.x(e.xMm() * 1e-3), s.y(y * 1e-3), s.x(x1 * 1e-3), s.y(y * 1e-3));
    }
    c.brush(Ink.GREY);
    for (int i = 5; i <= g.columns(); i += 5) {
      for (int j = 5; j <= g.rows(); j += 5) {
        double x = e.xMm() + (i - 0.5) * g.cellMm();
        double y = e.yMm() + (j - 0.5) * g.cellMm();
        String cell = GridCells.format(i, j);
        double half = c.width(cell, 2.6, Face.REGULAR) / 2 + 0.5;
        double at = s.x(x * 1e-3);
        double up = s.y(y * 1e-3);
        // Whole, or left to the neighbour's tile: the edge would cut a number into another one.
        if (at - half < s.x(fromX * 1e-3) || at + half > s.x((fromX + tileX) * 1e-3)
            || up - NUMBER_MM < s.y(fromY * 1e-3) || up + NUMBER_MM > s.y((fromY + tileY) * 1e-3)) continue;
        if (taken.stream().anyMatch(b -> at + half > b[0] && at - half < b[2] && up + NUMBER_MM > b[1] && up - NUMBER_MM < b[3])) continue;
        c.textCentred(cell, at, up - 0.9, 2.6, Face.REGULAR);
      }
    }
    c.pen(Ink.GREY, 0.5);
    c.rectangle(s.x(e.xMm() * 1e-3), s.y(e.yMm() * 1e-3), s.length(e.lengthMm() * 1e-3), s.length(e.widthMm() * 1e-3));
  }

  /** The patches that bear, hatched. */
  private void feet(Scaled s) {
    for (SheetContent.Foot foot : content.feet()) {
      List<double[]> p = Flat.hull(foot.polygon().stream().map((Vec3 v) -> new double[] {v.x(), v.y()}).toList());
      if (p.size() < 3) {
        double[] a = p.get(0);
        c.brush(Ink.BLACK);
        c.circle(s.x(a[0]), s.y(a[1]), 1.5, true, false);
        continue;
      }
      c.pen(Ink.GREY, 0.2);
      double[] b = Flat.box(List.of(p));
      double reach = (b[3] - b[1]);
      for (double k = b[0] - reach; k < b[2]; k += 0.004) hatch(s, p, k, b[1], reach);
      c.pen(Ink.GREY, 0.35);
      c.polygon(s.all(p));
    }
  }

  /** The part of a line at 45 degrees that lies in a convex polygon. */
  private void hatch(Scaled s, List<double[]> p, double x, double y, double length) {
    double from = 0;
    double to = length;
    for (int i = 0; i < p.size(); i++) {
      double[] a = p.get(i);
      double[] b = p.get((i + 1) % p.size());
      double nx = b[1] - a[1];
      double ny = a[0] - b[0];
      double at = nx * (x - a[0]) + ny * (y - a[1]);
      double along = nx + ny;
      if (along > 0) to = Math.min(to, -at / along);
      else if (along < 0) from = Math.max(from, -at / along);
      else if (at > 0) return;
    }
    if (from < to) c.line(s.x(x + from), s.y(y + from), s.x(x + to), s.y(y + to));
  }

  /** What stands by a rock, the middle of its name on the page, and how large it is against the usual. */
  private record Place(String name, String top, double x, double y, double w, double share) {
    /** The words, and the arrow under them: least and greatest x and y. */
    List<double[]> boxes() {
      return List.of(new double[] {x - w / 2, y - 8 * share, x + w / 2, y + 6 * share},
          new double[] {x - 4 * share, y - 22 * share, x + 11 * share, y - 8 * share});
    }
  }

  /**
   * Name and arrow go in the middle of what this tile shows of a rock; nowhere if that is next to nothing. Where they would lie
   * across an outline they go to the nearest place on the rock where they don't, smaller if need be.
   */
  private Optional<Place> rockPlace(Scaled s, int i, double[] window, List<double[]> taken) {
    RockArt.Spot at = RockArt.seenMiddle(drawing, i, base.size(), window);
    if (at.depthM() < LEAST_SEEN_M) return Optional.empty();
    Place usual = null;
    for (double share : SHARES) {
      Place p = place(s, i, at, window, share);
      if (usual == null) usual = p;
      Optional<Place> free = nearestFree(s, p, i, window, taken);
      if (free.isPresent()) return free;
    }
    return Optional.of(usual);
  }

  private Place place(Scaled s, int i, RockArt.Spot at, double[] window, double share) {
    // The words and the arrow under them lie about the place as far as the tile lets them.
    double y = Math.max(s.y(window[1]) + 22 * share, Math.min(s.y(window[3]) - 6 * share, s.y(at.y()) + 8 * share));
    String name = content.plan().rocks().get(base.get(i));
    String top = "top at " + f.mm(content.rockLine(base.get(i)).topMm());
    double w = Math.max(c.width(name, 6 * share, Face.BOLD), c.width(top, 3.6 * share, Face.REGULAR)) + 4 * share;
    return new Place(name, top, s.x(at.x()), y, w, share);
  }

  /** The place nearest to one where the words meet no outline and nothing that is taken, on the rock and on the tile. */
  private Optional<Place> nearestFree(Scaled s, Place p, int rock, double[] window, List<double[]> taken) {
    double reach = 1e3 * Math.hypot(window[2] - window[0], window[3] - window[1]);
    double[] shadow = Flat.box(drawing.shadows(rock));
    double dx0 = STEP_MM * Math.ceil((s.x(Math.max(window[0], shadow[0])) - p.x) / STEP_MM);
    double dy0 = STEP_MM * Math.ceil((s.y(Math.max(window[1], shadow[1])) - p.y) / STEP_MM);
    Place best = null;
    double least = reach;
    for (double dx = dx0; p.x + dx <= s.x(Math.min(window[2], shadow[2])); dx += STEP_MM) {
      for (double dy = dy0; p.y + dy <= s.y(Math.min(window[3], shadow[3])); dy += STEP_MM) {
        double far = Math.hypot(dx, dy);
        if (far >= least) continue;
        Place q = new Place(p.name, p.top, p.x + dx, p.y + dy, p.w, p.share);
        if (!free(s, q, rock, window, taken)) continue;
        best = q;
        least = far;
      }
    }
    return Optional.ofNullable(best);
  }

  private boolean free(Scaled s, Place p, int rock, double[] window, List<double[]> taken) {
    for (double[] b : p.boxes()) {
      if (b[0] < s.x(window[0]) || b[2] > s.x(window[2]) || b[1] < s.y(window[1]) || b[3] > s.y(window[3])) return false;
      for (double[] t : taken) if (b[0] < t[2] && b[2] > t[0] && b[1] < t[3] && b[3] > t[1]) return false;
      for (Drawing.Stroke k : drawing.strokes(false)) {
        if (k.kind() == Drawing.Kind.CREASE) continue;
        if (meets(s.x(k.x1()), s.y(k.y1()), s.x(k.x2()), s.y(k.y2()), b[0] - 1, b[1] - 1, b[2] + 1, b[3] + 1)) return false;
      }
    }
    // No outline runs through the words: they lie on the rock altogether, or off it altogether.
    double x = p.x - s.x(0);
    double y = p.y - s.y(0);
    return drawing.shadows(rock).stream().anyMatch(o -> Flat.depth(o, x * 1e-3, y * 1e-3) > 0);
  }

  private void rockWords(Place p) {
    double x = p.x();
    double y = p.y();
    double k = p.share();
    c.brush(Ink.PAPER);
    for (double[] b : p.boxes()) c.fillRectangle(b[0], b[1], b[2] - b[0], b[3] - b[1]);
    c.brush(Ink.BLACK);
    c.textCentred(p.name(), x, y, 6 * k, Face.BOLD);
    c.textCentred(p.top(), x, y - 5.5 * k, 3.6 * k, Face.REGULAR);
    c.pen(Ink.BLACK, 0.8);
    c.line(x, y - 9 * k, x, y - 21 * k);
    c.line(x, y - 21 * k, x - 2.5 * k, y - 17 * k);
    c.line(x, y - 21 * k, x + 2.5 * k, y - 17 * k);
    c.text("front", x + 3 * k, y - 16 * k, 3.2 * k, Face.REGULAR);
  }

  /** Crop marks at the corners, and where the next tile begins. */
  private void marks(double x, double y) {
    c.pen(Ink.BLACK, 0.25);
    for (double cx : new double[] {x, x + tileX}) {
      for (double cy : new double[] {y, y + tileY}) {
        double dx = cx == x ? -1 : 1;
        double dy = cy == y ? -1 : 1;
        c.line(cx + dx * 1.5, cy, cx + dx * 6.5, cy);
        c.line(cx, cy + dy * 1.5, cx, cy + dy * 5.5);
      }
    }
    c.pen(Ink.PALE, 0.2, 1, 1);
    c.rectangle(x, y, tileX, tileY);
    c.rectangle(x + OVERLAP_MM, y + OVERLAP_MM, tileX - 2 * OVERLAP_MM, tileY - 2 * OVERLAP_MM);
  }

  /** A length to measure after printing. */
  private void ruler(double x, double y) {
    c.brush(Ink.PAPER);
    c.fillRectangle(x - 2, y - 2, 106, 9);
    c.pen(Ink.BLACK, 0.3);
    boolean metric = f.units() == Units.METRIC;
    int parts = metric ? 10 : 8;
    double step = metric ? 10 : UsMeasure.INCH_MM / 2;
    c.line(x, y, x + parts * step, y);
    for (int i = 0; i <= parts; i++) c.line(x + step * i, y, x + step * i, y + (2 * i % parts == 0 ? 2.5 : 1.5));
    c.brush(Ink.BLACK);
    c.textCentred((metric ? "100 mm (3.94 in)" : "4 in (101.6 mm)") + " on paper, or the print is not at full size",
        x + parts * step / 2, y + 3.5, 2.8, Face.REGULAR);
  }

  /** Which tile this is, in small, in the heading: nothing of the tile is hidden. */
  private void map(int column, int row) {
    double u = Math.min(3, Math.min(MAP_HIGH_MM / rows, MAP_WIDE_MM / columns));
    double x = c.widthMm() - Frame.MARGIN_MM - ASIDE_MM - columns * u;
    double y = c.heightMm() - Frame.MARGIN_MM - 8;
    for (int i = 0; i < columns; i++) {
      for (int j = 0; j < rows; j++) {
        boolean here = i == column && j == row;
        c.brush(here ? Ink.BLACK : holdsRock(i, j) ? Ink.PALE : Ink.PAPER);
        c.fillRectangle(x + i * u, y + j * u, u, u);
        c.pen(Ink.GREY, 0.2);
        c.rectangle(x + i * u, y + j * u, u, u);
      }
    }
  }
}
